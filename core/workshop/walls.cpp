#include "workshop/walls.hpp"

#include "body/bore.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace evenfall::joints {

namespace {

constexpr double far = std::numeric_limits<double>::infinity();

/// Heights of a hole, its drill point included.
HeightRange hole_heights(const document::Hole& hole, const holes::Bore& bore) {
    const double end = bore.mouth_z_m + bore.inward * (hole.depth_m + bore.cone_height_m);
    return {std::min(bore.mouth_z_m, end), std::max(bore.mouth_z_m, end)};
}

/// Distance from a point to a vertical box, seen from above; 0 inside.
double beside_box(const document::Pocket& p, double x_m, double y_m) {
    const double dx = std::max({p.x_from_m - x_m, 0.0, x_m - p.x_to_m});
    const double dy = std::max(std::abs(y_m - p.y_m) - 0.5 * p.width_m, 0.0);
    return std::hypot(dx, dy);
}

class Thinnest {
public:
    void see(WallKind between, double thickness_m, std::optional<int> hole = {}) {
        auto& held = found_[static_cast<std::size_t>(between)];
        if (!held || thickness_m < held->thickness_m) held = Wall{between, thickness_m, hole};
    }

    [[nodiscard]] std::vector<Wall> sorted() const {
        std::vector<Wall> out;
        for (const auto& wall : found_) {
            if (wall) out.push_back(*wall);
        }
        std::sort(out.begin(), out.end(),
                  [](const Wall& a, const Wall& b) { return a.thickness_m < b.thickness_m; });
        return out;
    }

private:
    std::array<std::optional<Wall>, 5> found_;
};

/// Wood in front of the pin: to the nearer flank on either side of the middle.
double before_pin(const document::Joint& joint, const shape::Body& body, std::size_t j,
                  const HingePlace& place) {
    const double relief = place.pocket_aft ? joint.relief_aft_rad : joint.relief_fore_rad;
    const double before = place.pocket_aft ? place.pin.x_m - body.segments[j + 1].x_from_m
                                           : body.segments[j].x_to_m - place.pin.x_m;
    return (before - std::abs(place.pin.y_m) * std::tan(relief)) * std::cos(relief) -
           0.5 * place.hinge.pin_diameter_m;
}

double beside_pocket(const document::Pocket& pocket, const shape::Body& body) {
    double least = far;
    const double out = std::abs(pocket.y_m) + 0.5 * pocket.width_m;
    for (const double x : {pocket.x_from_m, 0.5 * (pocket.x_from_m + pocket.x_to_m), pocket.x_to_m}) {
        for (const auto& z : {pocket.z_from_m, pocket.z_to_m}) {
            if (z) least = std::min(least, shape::skin_half_width(*body.lines, x, *z) - out);
        }
    }
    return least;
}

} // namespace

std::vector<Wall> walls(const document::Document& document, const shape::Body& body, int joint,
                        const HingePlace& place, const HeightRange& pin) {
    const auto j = static_cast<std::size_t>(joint);
    const bool has_pin = place.hinge.kind == document::HingeKind::pinned;
    const bool in_wood = pin.to_m > pin.from_m;
    const double pin_r = 0.5 * place.hinge.pin_diameter_m;
    Thinnest thinnest;

    if (has_pin) {
        thinnest.see(WallKind::pin_and_face, before_pin(document.joints[j], body, j, place));
        for (const EyePlace& eye : place.eyes) {
            const double skin = shape::skin_half_width(*body.lines, place.pin.x_m, eye.z_m);
            thinnest.see(WallKind::pin_and_skin, skin - std::abs(place.pin.y_m) - pin_r);
        }
    }
    for (const EyePlace& eye : place.eyes) {
        if (!eye.pocket) continue;
        const double wall = beside_pocket(document.pockets[static_cast<std::size_t>(*eye.pocket)], body);
        if (wall < far) thinnest.see(WallKind::pocket_and_skin, wall);
    }
    const int pin_segment = joint + (place.pocket_aft ? 1 : 0);
    for (std::size_t k = 0; k < document.holes.size(); ++k) {
        const document::Hole& hole = document.holes[k];
        const holes::Bore bore = holes::place(hole, body);
        if (hole.depth_m <= 0.0 || (bore.segment != joint && bore.segment != joint + 1)) continue;
        const double r = 0.5 * hole.diameter_m;
        const HeightRange heights = hole_heights(hole, bore);
        if (has_pin && in_wood && bore.segment == pin_segment && heights.meets(pin)) {
            thinnest.see(WallKind::pin_and_hole,
                         std::hypot(bore.x_m - place.pin.x_m, bore.y_m - place.pin.y_m) - r - pin_r,
                         static_cast<int>(k));
        }
        for (const EyePlace& eye : place.eyes) {
            if (!eye.pocket) continue;
            const document::Pocket& pocket = document.pockets[static_cast<std::size_t>(*eye.pocket)];
            const shape::Segment& wood = body.segments[static_cast<std::size_t>(bore.segment)];
            if (pocket.x_to_m <= wood.x_from_m || pocket.x_from_m >= wood.x_to_m ||
                !heights.meets(heights_of(pocket)))
                continue;
            thinnest.see(WallKind::pocket_and_hole, beside_box(pocket, bore.x_m, bore.y_m) - r,
                         static_cast<int>(k));
        }
    }
    return thinnest.sorted();
}

} // namespace evenfall::joints
