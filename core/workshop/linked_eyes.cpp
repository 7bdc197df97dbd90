#include "workshop/linked_eyes.hpp"

#include "base/root.hpp"
#include "base/trade.hpp"
#include "base/vec3.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace evenfall::joints {

namespace {

constexpr double pi = std::numbers::pi;
constexpr int samples = 48;
constexpr int starts = 24;
constexpr double neck_in_radii = 4.0; // a linked ring reaches no farther
constexpr double angle_step_rad = units::rad_from_deg(0.1);

/// A ring on its neck: `out` points along the neck, `across` is in the ring's plane too.
struct Eye {
    Vec3 middle;
    Vec3 out;
    Vec3 across;
    Vec3 normal;
    double radius_m;
    double wire_m;

    [[nodiscard]] Vec3 at(double angle) const {
        return middle + out * (radius_m * std::cos(angle)) + across * (radius_m * std::sin(angle));
    }
    [[nodiscard]] Vec3 neck_from() const { return middle + out * (radius_m + 0.5 * wire_m); }

    [[nodiscard]] double from_ring(const Vec3& p) const {
        const Vec3 r = p - middle;
        const double height = dot(r, normal);
        const double along = std::sqrt(std::max(0.0, dot(r, r) - height * height));
        return std::sqrt((along - radius_m) * (along - radius_m) + height * height);
    }
    [[nodiscard]] double from_neck(const Vec3& p) const {
        // The neck's far end does not matter: a linked ring stays within three radii of this ring's centre.
        const Vec3 from = neck_from();
        const double along = std::max(0.0, dot(p - from, out));
        return length(p - (from + out * along));
    }
};

/// Minimum of a function of the angle round a ring: sampled, then refined near the smallest sample.
template <class F>
double least_round(const F& f) {
    double best = std::numeric_limits<double>::infinity();
    double at = 0.0;
    for (int k = 0; k < samples; ++k) {
        const double angle = 2.0 * pi * k / samples;
        if (const double value = f(angle); value < best) {
            best = value;
            at = angle;
        }
    }
    for (double step = pi / samples; step > 1e-4; step *= 0.5) {
        const double before = f(at - step);
        const double behind = f(at + step);
        if (std::min(before, behind) >= best) continue;
        at += before < behind ? -step : step;
        best = std::min(before, behind);
    }
    return best;
}

double neck_to_neck(const Eye& a, const Eye& b) {
    // Nearest points of two segments: nearest points of their lines, each clamped to its own length in turn.
    const double whole = (neck_in_radii - 1.0) * a.radius_m - 0.5 * a.wire_m;
    const Vec3 between = b.neck_from() - a.neck_from();
    const double c = dot(a.out, b.out);
    const double sine2 = 1.0 - c * c;
    double s =
        sine2 > 1e-12 ? std::clamp((dot(between, a.out) - c * dot(between, b.out)) / sine2, 0.0, whole) : 0.0;
    double t = 0.0;
    for (int k = 0; k < 2; ++k) {
        t = std::clamp(s * c - dot(between, b.out), 0.0, whole);
        s = std::clamp(t * c + dot(between, a.out), 0.0, whole);
    }
    return length(between + b.out * t - a.out * s);
}

/// True where one ring passes through the other's hole once.
bool linked(const Eye& a, const Eye& b) {
    const double height = dot(b.middle - a.middle, a.normal);
    const double by_out = b.radius_m * dot(b.out, a.normal);
    const double by_across = b.radius_m * dot(b.across, a.normal);
    const double reach = std::hypot(by_out, by_across);
    if (reach <= std::abs(height)) return false;
    const double towards = std::atan2(by_across, by_out);
    const double half = std::acos(-height / reach);
    const bool one = length(b.at(towards + half) - a.middle) < a.radius_m;
    const bool other = length(b.at(towards - half) - a.middle) < a.radius_m;
    return one != other;
}

Eye fore_eye(const LinkedEyes& e) {
    const double c = std::cos(e.lean_rad);
    const double s = std::sin(e.lean_rad);
    return {{}, {-1.0, 0.0, 0.0}, {0.0, c, s}, {0.0, -s, c}, 0.5 * (e.inside_m + e.wire_m), e.wire_m};
}

Eye aft_eye(const LinkedEyes& e, double swing_rad, const Vec3& middle) {
    const double c = std::cos(swing_rad);
    const double s = std::sin(swing_rad);
    const auto turned = [c, s](const Vec3& v) { return Vec3{c * v.x - s * v.y, s * v.x + c * v.y, v.z}; };
    const Eye fore = fore_eye(e);
    return {middle,  turned({1.0, 0.0, 0.0}), turned(fore.normal), turned(fore.across), fore.radius_m,
            e.wire_m};
}

double clearance(const Eye& fore, const Eye& aft) {
    if (!linked(fore, aft)) return std::numeric_limits<double>::quiet_NaN();
    const double d = fore.wire_m;
    const double rings = least_round([&](double angle) { return fore.from_ring(aft.at(angle)); }) - d;
    const double fore_neck =
        least_round([&](double angle) { return fore.from_neck(aft.at(angle)); }) - 1.5 * d;
    const double aft_neck =
        least_round([&](double angle) { return aft.from_neck(fore.at(angle)); }) - 1.5 * d;
    return std::min({rings, fore_neck, aft_neck, neck_to_neck(fore, aft) - 2.0 * d});
}

/// True where some offset is free of interference at this angle.
bool free_at(const LinkedEyes& e, double swing_rad) {
    const Eye fore = fore_eye(e);
    const auto clear = [&](const Vec3& middle) { return clearance(fore, aft_eye(e, swing_rad, middle)); };
    // Tolerance for rounding: rings with D = d touch all the time.
    const double enough = -1e-9 * fore.radius_m;
    Vec3 best{};
    double most = -std::numeric_limits<double>::infinity();
    const auto look = [&](const Vec3& middle) {
        const double value = clear(middle);
        if (!(value > most)) return false;
        most = value;
        best = middle;
        return true;
    };
    // Starts with each ring's wire through the other's centre.
    const Eye aft = aft_eye(e, swing_rad, {});
    look(aft.out * fore.radius_m);
    for (int k = 0; k < starts && most < enough; ++k) {
        look(fore.at(2.0 * pi * k / starts));
        look(aft.at(2.0 * pi * k / starts) * -1.0);
    }
    if (!(most > -std::numeric_limits<double>::infinity())) return false;
    for (double step = 0.25 * fore.radius_m; step > 1e-4 * fore.radius_m && most < enough;) {
        bool better = false;
        const Vec3 from = best;
        for (int k = 0; k < 27 && most < enough; ++k) {
            const std::array<int, 3> way{k % 3 - 1, k / 3 % 3 - 1, k / 9 - 1};
            if (k != 13) better |= look(from + Vec3{1.0 * way[0], 1.0 * way[1], 1.0 * way[2]} * step);
        }
        if (!better) step *= 0.5;
    }
    return most >= enough;
}

} // namespace

LinkPlay link_play(const LinkedEyes& e) {
    const double play = std::max(0.0, e.inside_m - e.wire_m);
    const double shares = play / std::max(std::cos(e.lean_rad), std::sin(e.lean_rad));
    const Eye fore = fore_eye(e);
    // Half a turn about the necks maps a move to one side to one to the other.
    const auto across = [&](const Vec3& way) {
        const auto free = [&](double m) {
            return clearance(fore, aft_eye(e, 0.0, Vec3{fore.radius_m, 0.0, 0.0} + way * m)) >=
                   -1e-9 * fore.radius_m;
        };
        if (free(0.5 * shares)) return shares;
        return 2.0 * last_where(free, 0.0, 0.5 * shares, 1e-5 * shares);
    };
    return {play, across({0.0, 0.0, 1.0}), across({0.0, 1.0, 0.0})};
}

double link_clearance(const LinkedEyes& e, double swing_rad, const LinkOffset& o) {
    return clearance(fore_eye(e), aft_eye(e, swing_rad, {o.x_m, o.y_m, o.z_m}));
}

double link_swing(const LinkedEyes& e, double most_rad) {
    if (e.inside_m < e.wire_m) return 0.0;
    if (free_at(e, most_rad)) return most_rad;
    return last_where([&](double angle) { return free_at(e, angle); }, 0.0, most_rad, angle_step_rad);
}

} // namespace evenfall::joints
