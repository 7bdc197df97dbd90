#include "body/hinge_place.hpp"

#include "body/pocket_surface.hpp"
#include "document/coat_traits.hpp"
#include "materials/solids.hpp"

#include <algorithm>
#include <limits>

namespace evenfall::joints {

namespace {

constexpr double usual_spacing_share = 0.6;

} // namespace

HeightRange heights_of(const document::Pocket& pocket) {
    constexpr double far = std::numeric_limits<double>::infinity();
    return {pocket.z_from_m.value_or(-far), pocket.z_to_m.value_or(far)};
}

bool holds_axis(const document::Pocket& pocket, const Pin& pin) {
    return pocket.x_from_m <= pin.x_m && pin.x_m <= pocket.x_to_m &&
           pocket.y_m - 0.5 * pocket.width_m <= pin.y_m && pin.y_m <= pocket.y_m + 0.5 * pocket.width_m;
}

HingePlace hinge_place(const document::Document& document, const shape::Body& body, int joint) {
    const document::Joint& j = document.joints[static_cast<std::size_t>(joint)];
    HingePlace place;
    place.hinge = j.hinge.value_or(document::Hinge{});
    place.pin = {j.at_m + place.hinge.pin_aft_m, place.hinge.pin_off_m};
    place.pocket_aft = place.hinge.eyes_on == document::EyesOn::fore;

    const auto pocket_at = [&](double z_m) -> std::optional<int> {
        for (std::size_t k = 0; k < document.pockets.size(); ++k) {
            const HeightRange h = heights_of(document.pockets[k]);
            if (holds_axis(document.pockets[k], place.pin) && h.from_m <= z_m && z_m <= h.to_m)
                return static_cast<int>(k);
        }
        return std::nullopt;
    };
    if (place.hinge.lower_z_m || place.hinge.upper_z_m) {
        for (const auto& z_m : {place.hinge.lower_z_m, place.hinge.upper_z_m}) {
            if (z_m) place.eyes.push_back({*z_m, pocket_at(*z_m)});
        }
    } else {
        for (std::size_t k = 0; k < document.pockets.size(); ++k) {
            const HeightRange h = heights_of(document.pockets[k]);
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
    std::sort(place.eyes.begin(), place.eyes.end(),
              [](const EyePlace& a, const EyePlace& b) { return a.z_m < b.z_m; });
    place.eye_spacing_m = place.eyes.back().z_m - place.eyes.front().z_m;
    return place;
}

namespace {

/// Area covered by a coat; pockets count with their own walls. The mouths of pockets, about a hundredth of
/// the skin, are not subtracted.
double covered_m2(const document::Document& document, const shape::Body& body, const document::Coat& coat) {
    double area_m2 = 0.0;
    for (std::size_t s = 0; s < body.segments.size(); ++s) {
        const shape::Segment& segment = body.segments[s];
        if (coat.on_skin) area_m2 += segment.skin_m2;
        if (coat.on_joint_faces) {
            for (const shape::Face& face : segment.faces)
                area_m2 += face.area_m2;
        }
        if (!coat.on_pockets) continue;
        for (const document::Pocket& p : document.pockets) {
            area_m2 += shape::pocket_surface(body, static_cast<int>(s), shape::box_of(p)).wall.area_m2;
        }
    }
    return area_m2;
}

} // namespace

FilmThickness films_of(const document::Document& document, const shape::Body& body) {
    FilmThickness films;
    for (const document::Coat& coat : document.coats) {
        if (!traits_of(coat.kind).takes_room || (!coat.on_joint_faces && !coat.on_pockets)) continue;
        double thickness_m = coat.thickness_m.value_or(0.0);
        if (const materials::Solid* solid = materials::find_solid(coat.material);
            coat.mass_kg && solid != nullptr) {
            const double area_m2 = covered_m2(document, body, coat);
            thickness_m = area_m2 > 0.0 ? *coat.mass_kg / (solid->density_kg_m3.value * area_m2) : 0.0;
        }
        if (coat.on_joint_faces) films.on_faces_m += thickness_m;
        if (coat.on_pockets) films.in_pockets_m += thickness_m;
    }
    return films;
}

} // namespace evenfall::joints
