#include "workshop/plan_rim.hpp"

#include "base/root.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::joints {

namespace {

constexpr int skin_points = 28;
constexpr int corner_points = 5;

/// A half width at or below this is no wood.
constexpr double no_wood_m = 1e-9;

struct Plane {
    const shape::Body& body;
    const RimRequest& ask;
    double face_x_m = 0.0;
    double tangent = 0.0;
    double away = 1.0; ///< +1: the segment is aft of its face
    double far_x_m = 0.0;

    [[nodiscard]] double side() const { return ask.way == SwingSide::starboard ? 1.0 : -1.0; }
    [[nodiscard]] double half_width(double x_m) const {
        return shape::skin_half_width(*body.lines, x_m, ask.z_m);
    }
    [[nodiscard]] double flank_x(double y_m) const { return face_x_m + away * std::abs(y_m) * tangent; }

    /// y on the closing side where flank and skin meet; 0 where there is no wood at the face.
    [[nodiscard]] double corner_y() const {
        const double widest = half_width(face_x_m);
        if (widest <= no_wood_m) return 0.0;
        if (tangent <= 0.0) return widest;
        const auto room = [&](double y) { return half_width(flank_x(y)) - y; };
        // A body that widens away from the joint: the corner is farther out than the width at the face.
        double far = widest;
        for (int k = 0; k < 8 && room(far) > 0.0; ++k)
            far *= 1.3;
        const double f = room(far);
        if (f > 0.0) return widest;
        return root_between(room, 0.0, far, room(0.0), f, {1e-9, 1e-10});
    }
};

Plane plane_of(const shape::Body& body, const RimRequest& ask) {
    const auto j = static_cast<std::size_t>(ask.joint);
    const document::Joint& joint = body.joints[j];
    Plane p{body, ask};
    if (ask.aft_part) {
        const shape::Segment& s = body.segments[j + 1];
        p.face_x_m = s.x_from_m;
        p.tangent = std::tan(joint.relief_aft_rad);
        p.away = 1.0;
        p.far_x_m = s.x_to_m;
    } else {
        const shape::Segment& s = body.segments[j];
        p.face_x_m = s.x_to_m;
        p.tangent = std::tan(joint.relief_fore_rad);
        p.away = -1.0;
        p.far_x_m = s.x_from_m;
    }
    return p;
}

struct Direction {
    double x;
    double y;
};

struct Place {
    double x;
    double y;
};

/// The half on the closing side, from the middle plane outward; the other half is its mirror image.
std::vector<Place> half_outline(const Plane& p) {
    const double coat_m = p.ask.coat_m;
    std::vector<Place> outline;
    const double corner_y = p.corner_y();
    const double cosine = 1.0 / std::hypot(1.0, p.tangent);
    const Direction flank_out{-p.away * cosine, p.tangent * cosine};

    double skin_from_x = p.face_x_m;
    if (corner_y > 0.0) {
        outline.push_back({p.face_x_m - p.away * coat_m / cosine, 0.0});
        skin_from_x = p.flank_x(corner_y);
        outline.push_back({skin_from_x + coat_m * flank_out.x, corner_y + coat_m * flank_out.y});
    }

    // Along the skin, points are closer together near the joint.
    std::vector<Place> skin;
    for (int k = 0; k <= skin_points; ++k) {
        const double share = static_cast<double>(k) / skin_points;
        const double x = skin_from_x + (p.far_x_m - skin_from_x) * share * share;
        const double y = k == 0 && corner_y > 0.0 ? corner_y : p.half_width(x);
        if (y > no_wood_m) skin.push_back({x, y});
    }
    if (skin.size() < 2) return outline;
    if (corner_y <= 0.0) outline.push_back({skin.front().x, 0.0});

    const auto skin_out = [&](std::size_t k) {
        const std::size_t a = k == 0 ? 0 : k - 1;
        const std::size_t b = std::min(k + 1, skin.size() - 1);
        const double along = skin[b].x - skin[a].x;
        const double out = skin[b].y - skin[a].y;
        const double length = std::hypot(along, out);
        return Direction{-std::copysign(1.0, along) * out / length, std::abs(along) / length};
    };
    if (corner_y > 0.0 && coat_m > 0.0) {
        const Direction to = skin_out(0);
        for (int k = 1; k < corner_points; ++k) {
            const double share = static_cast<double>(k) / corner_points;
            const Direction n{std::lerp(flank_out.x, to.x, share), std::lerp(flank_out.y, to.y, share)};
            const double length = std::hypot(n.x, n.y);
            outline.push_back({skin[0].x + coat_m * n.x / length, skin[0].y + coat_m * n.y / length});
        }
    }
    for (std::size_t k = 0; k < skin.size(); ++k) {
        const Direction n = skin_out(k);
        outline.push_back({skin[k].x + coat_m * n.x, skin[k].y + coat_m * n.y});
    }
    return outline;
}

} // namespace

PlanRim plan_rim(const shape::Body& body, const RimRequest& ask) {
    const Plane p = plane_of(body, ask);
    const std::vector<Place> half = half_outline(p);
    const double pin_y = p.side() * ask.pin.y_m; // relative to the closing side
    PlanRim rim;
    // With a pin in the middle plane the other half only opens.
    if (pin_y != 0.0) {
        for (std::size_t k = half.size(); k-- > 1;)
            rim.add(half[k].x - ask.pin.x_m, -half[k].y - pin_y);
    }
    for (const Place& at : half)
        rim.add(at.x - ask.pin.x_m, at.y - pin_y);
    return rim;
}

} // namespace evenfall::joints
