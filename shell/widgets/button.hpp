#pragma once

#include "widgets/ui.hpp"

namespace evenfall::shell::widgets {

enum class ButtonKind {
    main,   ///< the main action of this panel: filled
    plain,  ///< outlined
    quiet,  ///< text only
    danger, ///< outlined in the mark's colour: deletes something
};

/// Full width at the cursor, 48 px high, one grid step below the previous item. True when tapped.
bool button(Ui& ui, std::string_view id, std::string_view label, ButtonKind kind = ButtonKind::plain,
            bool enabled = true);
/// The same at `rect`; the cursor does not move.
bool button_at(Ui& ui, std::string_view id, const Rect& rect, std::string_view label, ButtonKind kind,
               bool enabled = true);
/// Two to four buttons side by side at the cursor, equal widths, on more lines where their words need the
/// room; returns the index of the tapped one, or −1.
struct ButtonSpec {
    std::string_view id{};
    std::string_view label{};
    ButtonKind kind = ButtonKind::plain;
    bool enabled = true;
};
int button_row(Ui& ui, std::initializer_list<ButtonSpec> buttons);

/// Icons drawn by lines, so that no icon font is needed.
enum class Icon {
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
void draw_icon(ImDrawList& list, Icon sign, ImVec2 middle, float size, ImU32 colour, float pen = 1.75f);
/// A square button with an icon; `spoken` is its name in the status line for keyboard users.
bool icon_button_at(Ui& ui, std::string_view id, const Rect& rect, Icon sign, bool enabled = true);

} // namespace evenfall::shell::widgets
