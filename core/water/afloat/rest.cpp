#include "water/afloat/rest.hpp"

#include "base/trade.hpp"
#include "water/afloat/descent.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::afloat {

namespace {

constexpr double same_rest_rad = 0.01; // 0.6°
constexpr double known_basin_rad =
    0.12;                         // a descent that comes this close to a known rest is taken to end there
constexpr double push_rad = 0.15; // rotation away from an unstable equilibrium

double angle_between(const Vec3& a, const Vec3& b) {
    const Vec3 d = a - b;
    return 2.0 * std::asin(std::min(1.0, 0.5 * length(d)));
}

Vec3 mirrored(const Vec3& up) {
    return {up.x, -up.y, up.z};
}

/// Metacentric height too small to matter: a turn by a degree gives an arm of a few micrometres at most.
double neutral_gm_m(const Afloat& afloat) {
    return 1e-4 * std::cbrt(afloat.hull->volume_m3());
}

/// The direction of rotation with the least stiffness, as a unit vector.
Vec3 least_stiff_direction(const FloatState& s) {
    const double half = 0.5 * (s.stiff_along - s.stiff_across);
    const double angle = 0.5 * std::atan2(s.stiff_mixed, half);
    return -std::sin(angle) * s.cut.level.along + std::cos(angle) * s.cut.level.across;
}

class Search {
public:
    explicit Search(const Afloat& afloat)
        : afloat_(afloat), mirrored_hull_(afloat.hull->is_mirrored() && std::abs(afloat.g_m.y) < 1e-9) {}

    [[nodiscard]] bool is_mirrored() const { return mirrored_hull_; }

    void from(const Vec3& up) { follow(with_right_volume(afloat_, up, depth_guess(up), nullptr), 2); }

    /// Standing on end: followed only where stiffness is not strongly negative in all directions. Above a
    /// lure that floats level it always is, and the descent would only repeat others.
    void from_end(double pitch_rad) {
        const Vec3 up = up_of({pitch_rad, 0.4});
        const FloatState s = with_right_volume(afloat_, up, depth_guess(up), nullptr);
        const double middle = 0.5 * (s.stiff_along + s.stiff_across);
        const double greatest = middle + std::hypot(0.5 * (s.stiff_along - s.stiff_across), s.stiff_mixed);
        if (greatest > -0.03 * afloat_.hull->length_m() * afloat_.wanted_m3()) follow(s, 2);
    }

    [[nodiscard]] std::vector<Rest> found() && {
        std::sort(rests_.begin(), rests_.end(), [](const Rest& a, const Rest& b) { return a.up.z > b.up.z; });
        double least = 0.0;
        for (const Rest& r : rests_)
            least = &r == &rests_.front() ? r.energy_j : std::min(least, r.energy_j);
        for (Rest& r : rests_)
            r.energy_j -= least;
        return std::move(rests_);
    }

private:
    [[nodiscard]] double depth_guess(const Vec3& up) const { return dot(up, afloat_.hull->centroid_m()); }

    [[nodiscard]] bool is_listed(const Vec3& up, double within_rad) const {
        return std::any_of(rests_.begin(), rests_.end(), [&](const Rest& r) {
            return angle_between(r.up, up) < within_rad ||
                   (r.has_twin && angle_between(r.up, mirrored(up)) < within_rad);
        });
    }

    void follow(const FloatState& start, int pushes_left) {
        bool known = false;
        const DescentEnd a = minimised(
            afloat_, start, [&](const FloatState& s) { return known = is_listed(s.up, known_basin_rad); });
        if (known || !a.arrived) return;
        Rest rest = rest_at(afloat_, a.state);
        if (rest.least_gm_m < -neutral_gm_m(afloat_)) {
            if (pushes_left == 0) return;
            const Vec3 way = least_stiff_direction(a.state);
            const bool leaves_plane = std::abs(way.y) > 0.5 && std::abs(a.state.up.y) < same_rest_rad;
            for (const double side : {1.0, -1.0}) {
                if (side < 0.0 && mirrored_hull_ && leaves_plane) break; // the other side is the mirror image
                const Vec3 up = turned(a.state.up, way, side * push_rad);
                follow(with_right_volume(afloat_, up, a.state.depth_m, nullptr), pushes_left - 1);
            }
            return;
        }
        if (is_listed(rest.up, same_rest_rad)) return;
        rest.is_neutral = rest.least_gm_m <= neutral_gm_m(afloat_);
        if (rest.is_neutral && is_listed_neutral(rest)) return;
        list(rest);
    }

    /// True where another neutral rest of the same energy is already listed; it represents all of them.
    [[nodiscard]] bool is_listed_neutral(const Rest& rest) const {
        const double tolerance = afloat_.mass_kg * units::standard_gravity_m_s2 * neutral_gm_m(afloat_);
        return std::any_of(rests_.begin(), rests_.end(), [&](const Rest& r) {
            return r.is_neutral && std::abs(r.energy_j - rest.energy_j) < tolerance;
        });
    }

    void list(Rest rest) {
        if (mirrored_hull_) {
            rest.has_twin = std::abs(rest.up.y) > 0.5 * same_rest_rad;
            if (rest.has_twin && rest.up.y > 0.0) { // lists the one of the two that heels to starboard
                rest.up = mirrored(rest.up);
                rest.heel_rad = -rest.heel_rad;
            }
        }
        rests_.push_back(rest);
    }

    const Afloat& afloat_;
    bool mirrored_hull_;
    std::vector<Rest> rests_;
};

} // namespace

std::optional<Rest> upright_rest(const Afloat& afloat, const Rest* near) {
    if (afloat.sinks() || !(afloat.mass_kg > 0.0)) return std::nullopt;
    const Vec3 up = near != nullptr ? near->up : Vec3{0.0, 0.0, 1.0};
    const double depth_m = near != nullptr ? near->depth_m : afloat.hull->centroid_m().z;
    const DescentEnd a = trimmed(afloat, with_right_volume(afloat, up, depth_m, nullptr), 1e-9);
    if (!a.arrived) return std::nullopt;
    return rest_at(afloat, a.state);
}

std::vector<Rest> rests(const Afloat& afloat, std::span<const Attitude> headings) {
    if (afloat.sinks() || !(afloat.mass_kg > 0.0)) return {};
    Search search(afloat);
    const auto from = [&](const Attitude& a) {
        search.from(up_of(a));
        const bool has_mirror_image = std::abs(std::sin(a.heel_rad)) > 1e-9;
        if (!search.is_mirrored() && has_mirror_image) search.from(up_of({a.pitch_rad, -a.heel_rad}));
    };
    for (const Attitude& a : headings)
        from(a);
    for (const double pitch : {1.45, -1.45})
        search.from_end(pitch);
    for (const double pitch : {0.7, -0.7})
        from({pitch, 2.2});
    return std::move(search).found();
}

std::vector<Rest> rests(const Afloat& afloat) {
    constexpr double eighth = 0.78539816339744831;
    const std::array<Attitude, 5> headings{
        {{0.0, 0.0}, {0.0, eighth}, {0.0, 2.0 * eighth}, {0.0, 3.0 * eighth}, {0.0, 4.0 * eighth}}};
    return rests(afloat, headings);
}

} // namespace evenfall::afloat
