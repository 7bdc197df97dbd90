#pragma once

#include "widgets/ui.hpp"

namespace evenfall::shell::widgets {

enum class ButtonKind {
    main,   ///< the one thing to do in this panel: solid ink
    plain,  ///< outlined
    quiet,  ///< text only
    danger, ///< outlined in the mark's ink: takes something away
};

/// Full width at the cursor, 48 px high, a grid step below what stands above. True when tapped.
bool button(Ui& ui, std::string_view id, std::string_view label, ButtonKind kind = ButtonKind::plain,
            bool enabled = true);
/// The same at a place of its own; the cursor stays.
bool button_at(Ui& ui, std::string_view id, const Rect& rect, std::string_view label, ButtonKind kind,
               bool enabled = true);
/// Two to four buttons side by side at the cursor, equal widths; index of the one tapped, or −1.
struct ButtonSpec {
    std::string_view id{};
    std::string_view label{};
    ButtonKind kind = ButtonKind::plain;
    bool enabled = true;
};
int button_row(Ui& ui, std::initializer_list<ButtonSpec> buttons);

/// Drawn signs, so that no icon face is needed.
enum class Sign {
    shelf,
    undo,
    redo,
    close,
    plus,
    minus,
    chevron,
    backspace,
    share,
    sun,
    moon,
    trash,
    up,
    down,
    check
};
void draw_sign(ImDrawList& list, Sign sign, ImVec2 middle, float size, ImU32 colour, float pen = 1.75f);
/// A square button with a drawn sign; `spoken` is its name for the keyboard user's status line.
bool sign_button_at(Ui& ui, std::string_view id, const Rect& rect, Sign sign, bool enabled = true);

} // namespace evenfall::shell::widgets
