#include "joints/hinge_place.hpp"

#include "materials/solids.hpp"

#include <algorithm>
#include <limits>

namespace evenfall::joints {

namespace {

constexpr double usual_spacing_share = 0.6;

struct Heights {
    double from_m;
    double to_m;
};

Heights heights_of(const preset::Pocket& pocket) {
    constexpr double far = std::numeric_limits<double>::infinity();
    return {pocket.z_from_m.value_or(-far), pocket.z_to_m.value_or(far)};
}

bool holds_axis(const preset::Pocket& pocket, const Pin& pin) {
    return pocket.x_from_m <= pin.x_m && pin.x_m <= pocket.x_to_m &&
           pocket.y_m - 0.5 * pocket.width_m <= pin.y_m && pin.y_m <= pocket.y_m + 0.5 * pocket.width_m;
}

}  // namespace

HingePlace hinge_place(const preset::Document& document, const shape::Body& body, int joint) {
    const preset::Joint& j = document.joints[static_cast<std::size_t>(joint)];
    HingePlace place;
    place.hinge = j.hinge.value_or(preset::Hinge{});
    place.pin = {j.at_m + place.hinge.pin_aft_m, place.hinge.pin_off_m};
    place.pocket_aft = place.hinge.eyes_on == preset::EyesOn::fore;

    const auto pocket_at = [&](double z_m) -> std::optional<int> {
        for (std::size_t k = 0; k < document.pockets.size(); ++k) {
            const Heights h = heights_of(document.pockets[k]);
            if (holds_axis(document.pockets[k], place.pin) && h.from_m <= z_m && z_m <= h.to_m) return static_cast<int>(k);
        }
        return std::nullopt;
    };
    if (place.hinge.lower_z_m || place.hinge.upper_z_m) {
        for (const auto& z_m : {place.hinge.lower_z_m, place.hinge.upper_z_m}) {
            if (z_m) place.eyes.push_back({*z_m, pocket_at(*z_m)});
        }
    } else {
        for (std::size_t k = 0; k < document.pockets.size(); ++k) {
            const Heights h = heights_of(document.pockets[k]);
            if (!holds_axis(document.pockets[k], place.pin) || !(h.to_m - h.from_m < 1.0)) continue;
            place.eyes.push_back({0.5 * (h.from_m + h.to_m), static_cast<int>(k)});
        }
    }
    if (place.eyes.empty()) {
        const shape::Station s = body.lines->at(j.at_m);
        for (const double side : {-1.0, 1.0}) {
            const double z_m = s.centre_z_m + side * usual_spacing_share * s.half_height_m;
            place.eyes.push_back({z_m, pocket_at(z_m)});
        }
    }
    std::sort(place.eyes.begin(), place.eyes.end(), [](const EyePlace& a, const EyePlace& b) { return a.z_m < b.z_m; });
    place.eye_spacing_m = place.eyes.back().z_m - place.eyes.front().z_m;
    return place;
}

double coat_on_faces_m(const preset::Document& document, const shape::Body& body) {
    double thickness_m = 0.0;
    for (const preset::Coat& coat : document.coats) {
        if (coat.kind != preset::CoatKind::film || !coat.on_joint_faces) continue;
        if (coat.thickness_m) {
            thickness_m += *coat.thickness_m;
            continue;
        }
        const materials::Solid* solid = materials::find_solid(coat.material);
        double area_m2 = 0.0;
        for (const shape::Segment& segment : body.segments) {
            if (coat.on_skin) area_m2 += segment.skin_m2;
            for (const shape::Face& face : segment.faces) area_m2 += face.area_m2;
        }
        if (solid != nullptr && area_m2 > 0.0) thickness_m += coat.mass_kg.value_or(0.0) / (solid->density_kg_m3.value * area_m2);
    }
    return thickness_m;
}

}  // namespace evenfall::joints
