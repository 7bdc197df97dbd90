#pragma once

// How a floating lure comes to rest: draft, pitch and heel of the real cut shape.

#include "water/afloat/hull.hpp"

#include <optional>
#include <span>
#include <vector>

namespace evenfall::afloat {

/// What floats: the hull, the mass on it and the water under it.
struct Afloat {
    const Hull* hull = nullptr;
    double mass_kg = 0.0;
    Vec3 g_m; ///< centre of gravity
    double water_kg_m3 = 0.0;

    [[nodiscard]] double wanted_m3() const {
        return mass_kg / water_kg_m3;
    } ///< volume under water at rest (Archimedes)
    /// Heavier than the water it can push aside (or within 1e-7 of it): it does not float.
    [[nodiscard]] bool sinks() const { return !(wanted_m3() < hull->volume_m3() * (1.0 - 1e-7)); }
};

/// Which way up a lure lies: the nearest of the six.
enum class Posture { upright, on_its_side, on_its_back, nose_up, nose_down };

/// On nose or tail, where a heel means nothing.
[[nodiscard]] inline bool stands(Posture posture) {
    return posture == Posture::nose_up || posture == Posture::nose_down;
}

/// A state of rest: Archimedes' law holds and G lies plumb with B.
struct Rest {
    Vec3 up;                ///< world's up in the lure's axes
    double depth_m = 0.0;   ///< the water's surface is the plane up·r = depth
    double pitch_rad = 0.0; ///< nose-up positive, −π/2 to π/2
    double heel_rad = 0.0;  ///< starboard down positive, −π to π
    Posture posture = Posture::upright;
    bool is_neutral = false; ///< no way of turning brings it back, nor takes it further: it lies as it is put
    bool has_twin = false;   ///< the mirror image (heel the other way) is a rest as well; it is not listed

    double draft_fore_m = 0.0; ///< lowest point of the nose end under water; negative where it is clear of it
    double draft_aft_m = 0.0;
    double deepest_m = 0.0;     ///< lowest point of the wood under water
    double freeboard_m = 0.0;   ///< highest point of the wood over water; negative where all of it is under
    double volume_out = 0.0;    ///< share of the displaced volume that shows, 0 to 1
    double back_line_out = 0.0; ///< share of the back line that shows, gaps left out
    std::optional<double>
        nose_waterline_z_m; ///< where the water's surface meets x = nose and x = tail in the middle
    std::optional<double>
        tail_waterline_z_m; ///< plane (side view); absent when that view is level with the water

    double gm_transverse_m = 0.0;     ///< for heeling: metacentre over G, BM + (B over G)
    double gm_longitudinal_m = 0.0;   ///< for pitching
    double least_gm_m = 0.0;          ///< for the turn that meets least resistance; > 0: stable
    double righting_nm_per_deg = 0.0; ///< moment against the first degree of heel [N·m/°]
    double energy_j = 0.0;            ///< over the lowest rest of the list
};

/// The rest nearest to upright in which the lure does not heel: draft and pitch by Newton's method at heel 0.
/// It need not be stable: see gm_transverse_m. Absent where it sinks, or where pitching at heel 0 runs it up
/// on its nose or tail. The cheap path for a finger that drags: some 8 cuts of the hull.
[[nodiscard]] std::optional<Rest> upright_rest(const Afloat& afloat);

/// Every stable (or neutral) rest found, nearest to upright first; empty where it sinks.
///
/// Minimises E = m·g·(up·G − depth) + ρ·g·Φ(up, depth) (immersion.hpp) over all directions of up: stationary
/// where volume and moments balance, and a rest is accepted only where its second derivatives are positive.
/// Newton's method with the exact second derivatives; where those are not positive they are turned round, and
/// no step may raise E, so that every start ends in a rest. Where a start ends on a ridge it is pushed off to
/// both sides. Rests closer than 0.6° are one.
///
///   headings    attitudes to start from, besides nose up, nose down and slanting ones. Without them: heels
///   45° apart.
///               The zeros of a righting curve are good ones, and cost little.
///
/// Balance    volume within 1e-9 and arms within 1e-9 of the length; within 2e-5 where the waterline just
/// touches a section,
///            which is what the cut is good for there.
[[nodiscard]] std::vector<Rest> rests(const Afloat& afloat, std::span<const Attitude> headings);
[[nodiscard]] std::vector<Rest> rests(const Afloat& afloat);

/// E in joules at an attitude and depth; for checks.
[[nodiscard]] double energy_j(const Afloat& afloat, const Vec3& up, double depth_m);

/// Where a start on the sphere of directions comes to rest, and how it got there; for checks.
struct Descent {
    Vec3 up;
    double depth_m = 0.0;
    bool arrived = false;
    int cuts = 0;                 ///< evaluations of the hull
    std::vector<double> energy_j; ///< after each accepted step: never rises
};
[[nodiscard]] Descent descent(const Afloat& afloat, const Vec3& start_up);

} // namespace evenfall::afloat
