#pragma once

#include "widgets/ui.hpp"

#include <span>

namespace evenfall::shell::widgets {

/// One answer of the strip, always visible.
struct Answer {
    std::string id{};
    std::string title{};                   ///< "In water"
    std::string number{};                  ///< "+1.42"
    std::string unit{};                    ///< "g"
    std::string below{};                   ///< "± 0.31"
    bool off_target = false;               ///< draws a mark beside the figure
    help::Topic topic = help::Topic::none; ///< explains it
};
/// Draws the answers in `columns` columns inside `rect`. Returns the id of the one that was tapped, or "".
std::string answer_strip(Ui& ui, const Rect& rect, std::span<const Answer> answers, int columns);

/// One tab of the step bar; recorded as `id`.
struct StepTab {
    std::string_view id;
    std::string_view label;
};
/// Returns the tapped step where it was not the selected one.
std::optional<int> step_bar(Ui& ui, const Rect& rect, std::span<const StepTab> tabs, int on);

/// A card: filled and rounded, with a hairline edge.
void card(Ui& ui, const Rect& rect, ImU32 ground);

/// A sentence over the lower edge of `over` for some seconds (a refusal, "Link copied"). A tap removes it.
class Toast {
public:
    void show(std::string sentence, bool refusal, double now_s);
    [[nodiscard]] const std::string& text() const { return text_; }
    void draw(Ui& ui, const Rect& over, double now_s);
    /// Seconds until it disappears; nullopt where none is shown.
    [[nodiscard]] std::optional<double> goes_in(double now_s) const;

private:
    std::string text_;
    bool refusal_ = false;
    double until_s_ = 0.0;
};

/// Common part of all sheets: dims the screen and opens a window over it. Draw widgets between begin and end.
/// `out` goes from 0 to 1 and is advanced here. True when the dimmed screen outside the sheet was tapped, or
/// Escape pressed.
bool begin_sheet(Ui& ui, std::string_view id, const Rect& screen, const Rect& place, bool from_below,
                 float& out);
void end_sheet(Ui& ui);

} // namespace evenfall::shell::widgets
