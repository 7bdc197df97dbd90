#include "body/pin_span.hpp"

#include <algorithm>

namespace evenfall::joints {

namespace {

constexpr double pin_end_m = 2e-3;

} // namespace

PinSpan pin_span(const Pin& pin, const shape::Body& body) {
    const shape::Station s = body.lines->at(pin.x_m);
    if (pin.y_m == 0.0) return {std::max(0.0, 2.0 * (s.half_height_m - pin_end_m)), s.centre_z_m};
    const shape::SkinHeights skin = shape::skin_heights(*body.lines, pin.x_m, pin.y_m);
    const double length_m = skin.back_z_m - skin.belly_z_m - 2.0 * pin_end_m;
    if (!(length_m > 0.0)) return {0.0, s.centre_z_m};
    return {length_m, 0.5 * (skin.back_z_m + skin.belly_z_m)};
}

PinHold pin_hold(const document::Document& document, const Pin& pin, const HeightRange& heights) {
    PinHold hold{heights.to_m - heights.from_m, 0.0};
    for (const document::Pocket& pocket : document.pockets) {
        const HeightRange h = heights_of(pocket);
        const double crossed_m = std::min(h.to_m, heights.to_m) - std::max(h.from_m, heights.from_m);
        if (crossed_m <= 0.0 || !holds_axis(pocket, pin)) continue;
        hold.in_wood_m -= crossed_m;
        hold.span_m = std::max(hold.span_m, crossed_m);
    }
    hold.in_wood_m = std::max(0.0, hold.in_wood_m);
    return hold;
}

} // namespace evenfall::joints
