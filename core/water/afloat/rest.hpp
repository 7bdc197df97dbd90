#pragma once

// How a floating lure comes to rest: draft, pitch and heel of the shape as cut.

#include "water/afloat/hull.hpp"

#include <optional>
#include <span>
#include <vector>

namespace evenfall::afloat {

/// What floats: hull, mass and water.
struct Afloat {
    const FloatingHull* hull = nullptr;
    double mass_kg = 0.0;
    Vec3 g_m; ///< centre of gravity
    double water_kg_m3 = 0.0;

    [[nodiscard]] double wanted_m3() const {
        return mass_kg / water_kg_m3;
    } ///< volume under water at rest (Archimedes)
    /// Heavier than the water it displaces when submerged (or within 1e-7 of it).
    [[nodiscard]] bool sinks() const { return !(wanted_m3() < hull->volume_m3() * (1.0 - 1e-7)); }
};

/// Which way up a lure floats: the nearest of the six.
enum class Posture { upright, on_its_side, on_its_back, nose_up, nose_down };

/// On nose or tail, where heel is undefined.
[[nodiscard]] inline bool stands(Posture posture) {
    return posture == Posture::nose_up || posture == Posture::nose_down;
}

/// An equilibrium: weight equals buoyancy and G is vertically in line with B.
struct Rest {
    Vec3 up;                ///< vertical up in the lure's axes
    double depth_m = 0.0;   ///< the water surface is the plane up·r = depth
    double pitch_rad = 0.0; ///< nose-up positive, −π/2 to π/2
    double heel_rad = 0.0;  ///< starboard down positive, −π to π
    Posture posture = Posture::upright;
    bool is_neutral = false; ///< neutral equilibrium: turning it neither brings it back nor takes it further
    bool has_twin = false;   ///< the mirror image (heel the other way) is a rest too; it is not listed

    double draft_fore_m = 0.0; ///< lowest point of the nose end under water; negative where above the surface
    double draft_aft_m = 0.0;
    double deepest_m = 0.0;     ///< lowest point of the wood under water
    double freeboard_m = 0.0;   ///< highest point of the wood above water; negative where fully submerged
    double volume_out = 0.0;    ///< share of the displaced volume above water, 0 to 1
    double back_line_out = 0.0; ///< share of the back line above water, without gaps
    std::optional<double>
        nose_waterline_z_m; ///< height at which the water surface meets x = nose and x = tail
    std::optional<double> tail_waterline_z_m; ///< in the middle plane (side view); absent where that plane is
                                              ///< parallel to the surface

    double gm_transverse_m = 0.0;     ///< for heel: metacentre above G, BM + (B above G)
    double gm_longitudinal_m = 0.0;   ///< for pitch
    double least_gm_m = 0.0;          ///< for the direction with the least stiffness; > 0: stable
    double righting_nm_per_deg = 0.0; ///< moment against the first degree of heel [N·m/°]
    double energy_j = 0.0;            ///< relative to the lowest rest of the list
};

/// The rest nearest to upright without heel: draft and pitch by Newton's method at heel 0. It need not be
/// stable: see gm_transverse_m. Absent where it sinks, or where pitching at heel 0 leads to standing on nose
/// or tail. Fast: about 8 cuts of the hull, fewer from `near`, such a rest of nearly the same lure.
[[nodiscard]] std::optional<Rest> upright_rest(const Afloat& afloat, const Rest* near = nullptr);

/// Every stable (or neutral) rest found, nearest to upright first; empty where it sinks.
///
/// Minimises E = m·g·(up·G − depth) + ρ·g·Φ(up, depth) (immersion.hpp) over all directions of up: stationary
/// where volume and moments balance; a rest is accepted only where its second derivatives are positive.
/// Newton's method with the exact second derivatives, taken by absolute value where they are not positive; no
/// step may raise E, so every start ends in an equilibrium. From an unstable one it is pushed off to both
/// sides. Rests closer than 0.6° count as one.
///
///   headings  attitudes to start from, besides nose up, nose down and oblique ones. Without them: heels 45°
///             apart. The zeros of a righting curve are good starts and cost little.
///
/// Balance: volume within 1e-9 and arms within 1e-9 of the length; within 2e-5 where the waterline just
/// touches a section, the accuracy of the cut there.
[[nodiscard]] std::vector<Rest> rests(const Afloat& afloat, std::span<const Attitude> headings);
[[nodiscard]] std::vector<Rest> rests(const Afloat& afloat);

/// E [J] at an attitude and depth; for checks.
[[nodiscard]] double energy_j(const Afloat& afloat, const Vec3& up, double depth_m);

/// Where a start on the sphere of directions comes to rest, and the iteration's history; for checks.
struct DescentTrace {
    Vec3 up;
    double depth_m = 0.0;
    bool arrived = false;
    int cuts = 0;                 ///< evaluations of the hull
    std::vector<double> energy_j; ///< after each accepted step: never rises
};
[[nodiscard]] DescentTrace descent(const Afloat& afloat, const Vec3& start_up);

} // namespace evenfall::afloat
