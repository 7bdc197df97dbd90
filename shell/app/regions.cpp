#include "app/app.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell {

using look::gutter;
using widgets::Rect;

Regions regions(float width, float height, const Insets& safe, bool left_handed) {
    Regions where;
    const Rect usable{safe.left, safe.top, width - safe.left - safe.right, height - safe.top - safe.bottom};
    where.screen = {0.0f, 0.0f, width, height};
    where.low = usable.h < 500.0f && usable.w > usable.h;
    where.phone = !where.low && usable.w < 640.0f;
    where.tiny = where.phone && usable.h < 450.0f;
    where.two_lines = usable.w < 900.0f && !where.low;
    // A tablet lying flat has its panel beside the drawing also where its text is large.
    where.stacked = where.two_lines && (usable.w < 720.0f || usable.w < 1.2f * usable.h);

    const float phone_strip_h = where.tiny ? 110.0f : usable.h < 700.0f ? 176.0f : 188.0f;
    const float strip_h = where.phone ? phone_strip_h : where.low ? 58.0f : where.two_lines ? 136.0f : 88.0f;
    const float bar_h = where.low || where.tiny ? 46.0f : where.phone ? 60.0f : 72.0f;
    where.strip = {usable.x, usable.y, usable.w, strip_h};
    where.bar = {usable.x, usable.bottom() - bar_h, usable.w, bar_h};

    const float edge = where.phone || where.low ? 8.0f : gutter;
    const Rect middle{usable.x + edge, where.strip.bottom() + edge, usable.w - 2.0f * edge,
                      where.bar.y - where.strip.bottom() - 2.0f * edge};
    if (where.stacked) {
        const float share = where.phone ? 0.36f * usable.h : 0.44f * usable.h;
        // A few rows of the panel come before a large drawing.
        const float left_by_panel =
            std::max(middle.h - edge - 216.0f,
                     std::clamp(middle.h - edge - 130.0f, 0.3f * middle.h, 0.45f * middle.h));
        const float sheet_h = std::round(std::min({share, middle.h * 0.6f, left_by_panel}));
        where.sheet = {middle.x, middle.y, middle.w, sheet_h};
        where.panel = {middle.x, middle.y + sheet_h + edge, middle.w, middle.h - sheet_h - edge};
        const float keypad_w = std::min(usable.w, 480.0f);
        const float keypad_h = std::min(568.0f, usable.h - 24.0f);
        where.keypad = {usable.x + (usable.w - keypad_w) / 2.0f, usable.bottom() - keypad_h, keypad_w,
                        keypad_h};
    } else {
        const float low_w = std::clamp(0.46f * usable.w, std::min(240.0f, middle.w - edge - 60.0f), 360.0f);
        const float panel_w = usable.w >= 1200.0f ? 400.0f : where.low ? low_w : 360.0f;
        where.panel = {middle.right() - panel_w, middle.y, panel_w, middle.h};
        where.sheet = {middle.x, middle.y, middle.w - panel_w - edge, middle.h};
        // A low window gives the keypad the height of the strip and the bar as well, and room to lie flat.
        const float keypad_w = where.low ? std::min(520.0f, middle.w) : panel_w;
        const float keypad_h = std::clamp(where.panel.h, std::min(560.0f, usable.h - 16.0f), 660.0f);
        const float top = std::min(where.panel.y, usable.bottom() - keypad_h - 8.0f);
        where.keypad = {middle.right() - keypad_w, top, keypad_w, keypad_h};
        if (left_handed) {
            where.panel.x = middle.x;
            where.keypad.x = middle.x;
            where.sheet.x = middle.x + panel_w + edge;
        }
    }
    return where;
}

} // namespace evenfall::shell
