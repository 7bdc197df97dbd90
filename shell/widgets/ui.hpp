#pragma once

// State that every widget receives: colours, type, units and the record of the frame. One per application,
// made by app.cpp.

#include "look/fonts.hpp"
#include "look/theme.hpp"
#include "platform/gesture.hpp"
#include "platform/host.hpp"
#include "widgets/glide.hpp"
#include "widgets/items.hpp"
#include "widgets/quantity.hpp"

#include "imgui.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>

namespace evenfall::shell::widgets {

class Keypad;
class Picker;

struct Rect {
    float x = 0.0f;
    float y = 0.0f;
    float w = 0.0f;
    float h = 0.0f;
    [[nodiscard]] float right() const { return x + w; }
    [[nodiscard]] float bottom() const { return y + h; }
    [[nodiscard]] bool holds(ImVec2 p) const {
        return p.x >= x && p.x < right() && p.y >= y && p.y < bottom();
    }
    [[nodiscard]] Rect inset(float by) const { return {x + by, y + by, w - 2.0f * by, h - 2.0f * by}; }
};

struct Ui {
    const look::Palette* ink = nullptr;
    look::Type type;
    Units units;          ///< as chosen; widgets read it, the shelf changes it
    bool phone = false;   ///< narrow and upright
    bool calm = false;    ///< the device asks for less motion: nothing glides or slides
    bool covered = false; ///< a sheet covers what is being drawn now: touches are ignored
    Items items;
    Keypad* keypad = nullptr;
    Picker* picker = nullptr;
    platform::Host* host = nullptr;
    std::map<std::string, std::string, std::less<>> answered; ///< answers for text_field, by id
    double now_s = 0.0;                                       ///< time of this frame, from any origin
    Glide glide;
    std::optional<platform::Pinch> pinch; ///< two-finger gesture in this frame; its user resets it
    int frames_wanted = 0;                ///< set > 0 by a widget that needs more frames (a glide, a slide)

    [[nodiscard]] const look::Palette& inks() const { return *ink; }
};

/// Input to an area in this frame. `focused`: keyboard focus, to be shown by a ring.
struct Touch {
    bool pressed = false; ///< finger or button is down on it
    bool tapped = false;  ///< released on it, or chosen by keyboard: act
    bool focused = false;
};

/// Base of all widgets: an area that can be tapped, recorded under `id`, in keyboard order. Does not move the
/// layout cursor.
Touch touch_area(Ui& ui, std::string_view id, const Rect& rect, bool enabled = true);

/// Draws the keyboard focus ring just outside `rect`.
void focus_ring(const Ui& ui, const Rect& rect, float rounding);

// --- text ------------------------------------------------------------------------------------------------

enum class Align { left, middle, right };

[[nodiscard]] float text_width(ImFont* font, std::string_view text);
/// Draws one line into `rect`, vertically centred; cut with an ellipsis where it is too wide. Returns the
/// drawn width.
float text_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view text,
              Align align = Align::left);
/// Draws one line with its baseline at y; returns the drawn width.
float text_at(ImFont* font, float x, float baseline_y, ImU32 colour, std::string_view text);
/// A figure with its unit in regular weight beside it, on one baseline, inside `rect`.
float figure_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view number,
                std::string_view unit, Align align = Align::right);

/// The text with line breaks at spaces, so that no line is wider than `width`. ImGui's own wrapping also
/// breaks after points and commas, and so inside numbers.
[[nodiscard]] std::string broken_at_spaces(ImFont* font, std::string_view text, float width);

// --- layout ----------------------------------------------------------------------------------------------

/// Reserves the next `height` px of the full width at the cursor, moves the cursor below, and returns the
/// rectangle.
Rect take_row(float height);
/// Moves the cursor down.
void gap(float height = look::grid);
/// A hairline over the full width, 1 px high.
void rule(Ui& ui);

} // namespace evenfall::shell::widgets
