#pragma once

// What every widget is handed: inks, type, units and the recording of the frame. One per application, made by
// app.cpp.

#include "look/fonts.hpp"
#include "look/theme.hpp"
#include "platform/gesture.hpp"
#include "platform/host.hpp"
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

/// Scrolling under one finger: which area is being dragged, and how fast it glides on.
struct Glide {
    ImGuiID area = 0; ///< 0 = none
    bool dragging = false;
    float speed = 0.0f;   ///< CSS px/s
    double moved_s = 0.0; ///< when the finger last moved: one that rested before it left does not throw
    bool owned = false;   ///< a drawing handle has the finger: areas must not scroll
};

struct Ui {
    const look::Palette* ink = nullptr;
    look::Type type;
    Units units;          ///< as chosen; widgets read it, the shelf changes it
    bool phone = false;   ///< narrow, held upright
    bool covered = false; ///< a sheet lies over what is being drawn now: no touch gets through
    Items items;
    Keypad* keypad = nullptr;
    Picker* picker = nullptr;
    platform::Host* host = nullptr;
    std::map<std::string, std::string, std::less<>> answered; ///< texts that came back for text_field, by id
    double now_s = 0.0;                                       ///< clock of this frame, from any start
    Glide glide;
    std::optional<platform::Pinch> pinch; ///< two fingers in this frame; whoever uses it empties it
    int lively = 0; ///< set > 0 by a widget that needs further frames (a glide, a slide)

    [[nodiscard]] const look::Palette& inks() const { return *ink; }
};

/// What happened to an area this frame. `focused` = keyboard focus to be shown by a ring.
struct Touch {
    bool pressed = false; ///< finger or button is down on it now
    bool tapped = false;  ///< let go on it, or chosen by keyboard: act
    bool focused = false;
};

/// The ground of all widgets: an area that can be tapped, recorded under `id`, in keyboard order. Does not
/// move the layout cursor.
Touch touch_area(Ui& ui, std::string_view id, const Rect& rect, bool enabled = true);

/// Draws the ring of keyboard focus just outside `rect`.
void focus_ring(const Ui& ui, const Rect& rect, float rounding);

// --- text
// ---------------------------------------------------------------------------------------------------------

enum class Align { left, middle, right };

[[nodiscard]] float text_width(ImFont* font, std::string_view text);
/// Draws one line into `rect`, centred in height; cut with an ellipsis where it is too wide. Returns the
/// drawn width.
float text_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view text,
              Align align = Align::left);
/// Draws one line with its baseline at y; returns the drawn width.
float text_at(ImFont* font, float x, float baseline_y, ImU32 colour, std::string_view text);
/// A figure with its unit set thin beside it, on one baseline, inside `rect`: strong digits, soft unit.
float figure_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view number,
                std::string_view unit, Align align = Align::right);

/// The text with line breaks put in at spaces, so that no line is wider than `width`. ImGui's own wrapping
/// also breaks behind points and commas, and so in the middle of a figure.
[[nodiscard]] std::string broken_at_spaces(ImFont* font, std::string_view text, float width);

// --- layout
// -------------------------------------------------------------------------------------------------------

/// Takes the next `height` px of the whole width at the cursor, moves the cursor below, and returns the
/// place.
Rect take_row(float height);
/// Moves the cursor down.
void gap(float height = look::grid);
/// A hairline over the whole width, taking 1 px.
void rule(Ui& ui);

} // namespace evenfall::shell::widgets
