#include "body/keep_out.hpp"

#include "body/fittings.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::fittings {

namespace {

BuiltIn kind_of(const Fitting& f) {
    switch (f.kind) {
    case FittingKind::hinge_eye:
        return BuiltIn::hinge_eye;
    case FittingKind::hinge_pin:
        return BuiltIn::hinge_pin;
    case FittingKind::hanger:
        break;
    }
    return BuiltIn::hanger;
}

shape::Box box_round(const Vec3& from, const Vec3& to, double across_x, double across_y, double across_z) {
    return {std::min(from.x, to.x) - across_x, std::max(from.x, to.x) + across_x,
            std::min(from.y, to.y) - across_y, std::max(from.y, to.y) + across_y,
            std::min(from.z, to.z) - across_z, std::max(from.z, to.z) + across_z};
}

/// The hole of a wire, as a box: it runs along x or along z.
shape::Box box_of(const Fitting& f) {
    const double radius_m = 0.5 * f.hole_m;
    const bool along_x = f.into.x != 0.0;
    return box_round(f.mouth_m, f.mouth_m + f.into * f.bored_m, along_x ? 0.0 : radius_m, radius_m,
                     along_x ? radius_m : 0.0);
}

std::string named(const std::string& name, std::size_t index) {
    return name.empty() ? std::to_string(index + 1) : name;
}

} // namespace

shape::Box KeepOut::with_wall() const {
    constexpr double w = joints::thin_wall_m;
    return {box.x_from_m - w, box.x_to_m + w,   box.y_from_m - w,
            box.y_to_m + w,   box.z_from_m - w, box.z_to_m + w};
}

std::vector<KeepOut> keep_out(const document::Document& document, const shape::Body& body) {
    std::vector<KeepOut> out;
    for (std::size_t i = 0; i < document.pockets.size(); ++i)
        out.push_back({BuiltIn::pocket, static_cast<int>(i), shape::box_of(document.pockets[i])});
    for (const Fitting& f : fittings(document, body))
        out.push_back({kind_of(f), f.item, box_of(f)});
    const double usual_twist_m = document::Hinge{}.wire_m;
    for (std::size_t i = 0; i < document.parts.size(); ++i) {
        const document::Part& part = document.parts[i];
        if (part.stage != Stage::hardware || part.embedded <= 0.0) continue;
        out.push_back({BuiltIn::part, static_cast<int>(i),
                       box_round(part.at_m, part.at_m, usual_twist_m, usual_twist_m, usual_twist_m)});
    }
    return out;
}

std::string built_in_text(const document::Document& document, const KeepOut& zone) {
    const auto i = static_cast<std::size_t>(zone.item);
    switch (zone.what) {
    case BuiltIn::pocket:
        return "pocket " + named(document.pockets[i].name, i);
    case BuiltIn::hinge_eye:
        return "the wire of joint " + std::to_string(i + 1);
    case BuiltIn::hinge_pin:
        return "the pin of joint " + std::to_string(i + 1);
    case BuiltIn::hanger:
        return "hanger " + named(document.hangers[i].name, i);
    case BuiltIn::part:
        break;
    }
    return "part " + named(document.parts[i].name, i);
}

} // namespace evenfall::fittings
