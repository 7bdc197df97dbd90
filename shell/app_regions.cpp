#include "app.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell {

using look::gutter;
using widgets::Rect;

Regions regions(float width, float height, const Insets& safe) {
    Regions where;
    const Rect usable{safe.left, safe.top, width - safe.left - safe.right, height - safe.top - safe.bottom};
    where.screen = {0.0f, 0.0f, width, height};
    where.phone = usable.w < 640.0f;
    where.low = !where.phone && usable.h < 500.0f;
    where.stacked = usable.w < 900.0f && !where.low;

    const float strip_h = where.phone ? 188.0f : where.low ? 58.0f : 88.0f;
    const float bar_h = where.phone ? 60.0f : where.low ? 46.0f : 72.0f;
    where.strip = {usable.x, usable.y, usable.w, strip_h};
    where.bar = {usable.x, usable.bottom() - bar_h, usable.w, bar_h};

    const float edge = where.phone || where.low ? 8.0f : gutter;
    const Rect middle{usable.x + edge, where.strip.bottom() + edge, usable.w - 2.0f * edge,
                      where.bar.y - where.strip.bottom() - 2.0f * edge};
    if (where.stacked) {
        const float share = where.phone ? 0.36f * usable.h : 0.44f * usable.h;
        const float sheet_h = std::round(std::min(share, middle.h * 0.6f));
        where.sheet = {middle.x, middle.y, middle.w, sheet_h};
        where.panel = {middle.x, middle.y + sheet_h + edge, middle.w, middle.h - sheet_h - edge};
        const float keypad_w = std::min(usable.w, 480.0f);
        const float keypad_h = std::min(568.0f, usable.h - 24.0f);
        where.keypad = {usable.x + (usable.w - keypad_w) / 2.0f, usable.bottom() - keypad_h, keypad_w, keypad_h};
    } else {
        const float panel_w = usable.w >= 1200.0f ? 400.0f : where.low ? std::min(360.0f, 0.46f * usable.w) : 360.0f;
        where.panel = {middle.right() - panel_w, middle.y, panel_w, middle.h};
        where.sheet = {middle.x, middle.y, middle.w - panel_w - edge, middle.h};
        // A low window gives the keypad the height of the strip and the bar as well.
        const float keypad_h = std::clamp(where.panel.h, std::min(560.0f, usable.h - 16.0f), 660.0f);
        const float top = std::min(where.panel.y, usable.bottom() - keypad_h - 8.0f);
        where.keypad = {where.panel.x, top, panel_w, keypad_h};
    }
    return where;
}

}  // namespace evenfall::shell
