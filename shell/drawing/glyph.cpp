#include "drawing/glyph.hpp"

#include <algorithm>
#include <cctype>
#include <cmath>
#include <string>

namespace evenfall::shell::drawing {

Glyph glyph_of(const document::Part& part, double belly_z_m, double length_m) {
    std::string name = part.name;
    std::transform(name.begin(), name.end(), name.begin(),
                   [](unsigned char c) { return static_cast<char>(std::tolower(c)); });
    const auto says = [&name](const char* word) { return name.find(word) != std::string::npos; };
    const bool rigged = part.stage == Stage::rigged;

    if (says("through wire")) return Glyph::through_wire;
    if (says("hanger")) return Glyph::wire_eye;
    if (says("hook") || says("treble")) return Glyph::hook;
    if (rigged && says("tail")) return Glyph::soft_tail;
    if (says("pin")) return Glyph::pin;
    if (says("eye")) return part.stage != Stage::hardware ? Glyph::glass_eye : Glyph::wire_eye;
    if (says("ring") || says("swivel")) return rigged ? Glyph::ring : Glyph::wire_eye;
    if (says("wire") || says("link") || says("line tie")) return Glyph::wire_eye;
    if (rigged && part.at_m.x > 0.95 * length_m) return Glyph::soft_tail;
    if (rigged && part.at_m.z < belly_z_m) return Glyph::hook;
    return Glyph::bead;
}

HookHanger hook_hanger(const document::Document& document, const shape::Lines& lines,
                       const document::Part& hook) {
    constexpr double near_m = 0.012;
    const double length = lines.length_m();
    const auto belly_at = [&](double x_m) {
        const auto station = lines.at(std::clamp(x_m, 0.0, length));
        return station.centre_z_m - station.half_height_m;
    };
    for (const document::Hanger& hanger : document.hangers) {
        if (hanger.on == document::HangerOn::belly && std::abs(hanger.x_m - hook.at_m.x) < 0.5 * near_m)
            return {hanger.x_m, belly_at(hanger.x_m) - hanger.eye_inside_m};
    }
    if (hook.at_m.x > tail_share * length) return {length + 0.0025, lines.at(length).centre_z_m};
    const document::Part* hanger = nullptr;
    for (const auto& part : document.parts) {
        const double way = std::abs(part.at_m.x - hook.at_m.x);
        const double belly = belly_at(part.at_m.x);
        const bool low = part.at_m.z < 0.6 * belly && part.stage == Stage::hardware;
        if (!low || way > near_m || glyph_of(part, belly, length) != Glyph::wire_eye) continue;
        if (hanger == nullptr || way < std::abs(hanger->at_m.x - hook.at_m.x)) hanger = &part;
    }
    const double x = hanger != nullptr ? hanger->at_m.x : hook.at_m.x;
    return {x, belly_at(x)};
}

double hook_drop_m(const document::Part& hook, const HookHanger& from) {
    return std::max(0.010, 2.0 * (from.z_m - hook.at_m.z));
}

double tail_end_m(const document::Part& part, double length_m) {
    return std::max(length_m + 0.010, length_m + 2.2 * (part.at_m.x - length_m));
}

} // namespace evenfall::shell::drawing
