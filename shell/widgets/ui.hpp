#pragma once

// State that every widget receives: colours, type, units and the record of the frame. One per application,
// made by app.cpp.

#include "help/help.hpp"
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
#include <vector>

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
    std::optional<help::Asked> asked; ///< a figure that was tapped for what it is; the application shows it
    std::vector<help::Topic> offered; ///< in this frame: of several figures of one topic each has its own id
    int frames_wanted = 0;            ///< set > 0 by a widget that needs more frames (a glide, a slide)

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

/// A figure that explains itself: whatever shows it is touched on `rect`, recorded as "help.<id>", the second
/// one of a topic in a frame as "help.<id>.2". A tap sets ui.asked, with the figure where it has a label.
/// Nothing for Topic::none.
Touch help_area(Ui& ui, help::Topic topic, const Rect& rect, std::string_view label = {},
                std::string value = {});
/// After a tap: a figure that went into the one that was tapped.
void went_in(Ui& ui, std::string_view label, std::string value);

/// Draws the keyboard focus ring just outside `rect`.
void focus_ring(const Ui& ui, const Rect& rect, float rounding);

// --- text ------------------------------------------------------------------------------------------------
// Texts are English and are drawn and measured in the reader's language (look/said.hpp).

enum class Align { left, middle, right };

[[nodiscard]] float text_width(ImFont* font, std::string_view text);
/// Draws one line into `rect`, vertically centred; cut with an ellipsis where it is too wide. Returns the
/// drawn width.
float text_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view text,
              Align align = Align::left);
/// The same with a dotted line below the words where a tap explains them.
float help_text_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view text,
                   help::Topic topic, Align align = Align::left);
/// That line, `width` px long with its top at y.
void help_dots(const Ui& ui, float x, float y, float width);
/// Draws one line with its baseline at y; returns the drawn width.
float text_at(ImFont* font, float x, float baseline_y, ImU32 colour, std::string_view text);
/// A text broken at spaces into lines no wider than `width`. More than `most` of them: the last one holds the
/// rest, to be cut where it is drawn.
[[nodiscard]] std::vector<std::string> lines_of(ImFont* font, std::string_view text, float width,
                                                std::size_t most = 100);
/// Draws lines one below the other, `line_h` px apart, the first in the rectangle at (x, y). Where a tap
/// explains them, dots stand below the last.
void lines_at(Ui& ui, float x, float y, float width, float line_h, ImFont* font, ImU32 colour,
              const std::vector<std::string>& lines, help::Topic topic = help::Topic::none);
/// Width of what figure_in draws.
[[nodiscard]] float figure_width(const Ui& ui, ImFont* font, std::string_view number, std::string_view unit);
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
