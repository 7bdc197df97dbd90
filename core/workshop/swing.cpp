#include "workshop/swing.hpp"

#include "base/root.hpp"
#include "workshop/plan_rim.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace evenfall::joints {

namespace {

constexpr int levels = 24;
constexpr int refinings = 16;

/// Angles closer than this are equal: flat sides close at one angle at many heights, and rounding must not
/// choose among them.
constexpr double same_rad = 1e-12;

/// Tolerance of a distance: corners on the same circle must match despite rounding.
constexpr double same_m = 1e-12;

/// A gap narrower than this counts as closed: the remaining angle is below rounding.
constexpr double closed_m = 1e-9;

struct Contact {
    double angle_rad = std::numeric_limits<double>::infinity();
    double r_m = 0.0;
};

/// An outline in polar form about the pin: distance and direction, 0 straight aft, increasing towards the
/// closing side.
struct Polar {
    std::vector<double> r;
    std::vector<double> angle;
    std::vector<double> nearest; ///< least distance of the edge that starts at each point
};

Polar polar(const PlanRim& rim) {
    Polar p;
    p.r.reserve(rim.u.size());
    p.angle.reserve(rim.u.size());
    p.nearest.reserve(rim.u.size());
    for (std::size_t k = 0; k < rim.u.size(); ++k) {
        p.r.push_back(std::sqrt(rim.u[k] * rim.u[k] + rim.v[k] * rim.v[k]));
        p.angle.push_back(std::atan2(rim.v[k], rim.u[k]));
    }
    for (std::size_t k = 0; k + 1 < rim.u.size(); ++k) {
        const double du = rim.u[k + 1] - rim.u[k];
        const double dv = rim.v[k + 1] - rim.v[k];
        const double a = du * du + dv * dv;
        const double foot = -(rim.u[k] * du + rim.v[k] * dv);
        const bool inside = foot > 0.0 && foot < a;
        p.nearest.push_back(inside ? std::abs(rim.u[k] * dv - rim.v[k] * du) / std::sqrt(a)
                                   : std::min(p.r[k], p.r[k + 1]));
    }
    return p;
}

/// Calls `found` with every direction in which a point at distance r from the pin enters the outline.
template <class Found>
void directions_at(const PlanRim& rim, const Polar& p, double r, const Found& found) {
    for (std::size_t k = 0; k + 1 < rim.u.size(); ++k) {
        if (r < p.nearest[k] - same_m || r > std::max(p.r[k], p.r[k + 1]) + same_m) continue;
        const double u = rim.u[k];
        const double v = rim.v[k];
        const double du = rim.u[k + 1] - u;
        const double dv = rim.v[k + 1] - v;
        // |point + s·edge|² = r² for s from 0 to 1. At one root the edge leads away from the pin: there a
        // circle about the pin, followed as the joint closes, enters the wood. At the other it leaves the
        // wood, and it must have entered before.
        const double a = du * du + dv * dv;
        const double b = u * du + v * dv;
        const double c = p.r[k] * p.r[k] - r * r;
        if (a <= 0.0) continue;
        const double s = (-b + std::sqrt(std::max(0.0, b * b - a * c))) / a;
        if (s < -1e-9 || s > 1.0 + 1e-9) continue;
        found(std::atan2(v + s * dv, u + s * du));
    }
}

/// `turn_rad` is the angle from the aft edge to the fore one; a negative one is completed to a full turn.
void nearer(Contact& best, double turn_rad, double r_m) {
    const double angle_rad = turn_rad < 0.0 ? turn_rad + 2.0 * std::numbers::pi : turn_rad;
    if (angle_rad < best.angle_rad) best = {angle_rad, r_m};
}

Contact contact_of(const PlanRim& fore, const PlanRim& aft) {
    Contact best;
    const Polar f = polar(fore);
    const Polar a = polar(aft);
    for (std::size_t k = 0; k < f.r.size(); ++k)
        directions_at(aft, a, f.r[k], [&](double angle) { nearer(best, f.angle[k] - angle, f.r[k]); });
    for (std::size_t k = 0; k < a.r.size(); ++k)
        directions_at(fore, f, a.r[k], [&](double angle) { nearer(best, angle - a.angle[k], a.r[k]); });
    return best;
}

/// Gap left between the films of both faces, measured along the lure; the same at every height and width, and
/// larger where the faces are relieved.
double open_m(const document::Joint& joint, double coat_m) {
    return joint.gap_m -
           coat_m * (1.0 / std::cos(joint.relief_fore_rad) + 1.0 / std::cos(joint.relief_aft_rad));
}

} // namespace

Swing swing(const shape::Body& body, int joint, const Pin& pin, SwingSide way, double coat_m) {
    const auto at = [&](double z_m) {
        return contact_of(plan_rim(body, {joint, false, pin, way, z_m, coat_m}),
                          plan_rim(body, {joint, true, pin, way, z_m, coat_m}));
    };
    const document::Joint& cut = body.joints[static_cast<std::size_t>(joint)];
    const shape::Station station = body.lines->at(cut.at_m);
    if (open_m(cut, coat_m) <= closed_m)
        return {0.0, station.centre_z_m, std::hypot(cut.at_m - pin.x_m, pin.y_m), true};
    const double low = station.centre_z_m - station.half_height_m;
    const double step = 2.0 * station.half_height_m / levels;
    Contact best;
    double best_z = station.centre_z_m;
    const auto look = [&](double z_m) {
        const Contact c = at(z_m);
        if (c.angle_rad < best.angle_rad - same_rad) {
            best = c;
            best_z = z_m;
        }
        return c.angle_rad;
    };
    for (int k = 0; k < levels; ++k)
        look(low + (k + 0.5) * step);

    // About the least level there is one valley between its neighbours; look() keeps the least it meets.
    least_between(look, best_z - step, best_z + step, refinings, same_rad);

    if (!(best.angle_rad < most_swing_rad)) return {most_swing_rad, best_z, 0.0, false};
    return {best.angle_rad, best_z, best.r_m, true};
}

} // namespace evenfall::joints
