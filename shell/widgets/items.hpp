#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace evenfall::shell::widgets {

/// Where an interactive widget is on the screen in this frame, in CSS px.
struct Item {
    std::string id; ///< stable: "lead.plan", "lead.hole.0.depth", "step.lead", "keypad.ok"
    float x = 0.0f;
    float y = 0.0f;
    float w = 0.0f;
    float h = 0.0f;
    bool visible = false; ///< its centre can be touched: not scrolled away, not under a sheet
    bool closed = false;  ///< the heading of a section whose rows are not drawn
};

/// The widgets of the last complete frame. Tests read it to find where to touch; it has no effect on the
/// program.
class Items {
public:
    /// Starts a frame; the previous records stay readable until finish_frame().
    void begin_frame() {
        drawing_.clear();
        cut_drawing_.clear();
    }
    void record(Item item) { drawing_.push_back(std::move(item)); }
    /// A text that found too little room and ends in an ellipsis.
    void record_cut(std::string text) { cut_drawing_.push_back(std::move(text)); }
    /// The last recorded one is the heading of a closed section.
    void mark_closed() { drawing_.back().closed = true; }
    void finish_frame() {
        shown_.swap(drawing_);
        cut_.swap(cut_drawing_);
    }

    [[nodiscard]] const std::vector<Item>& shown() const { return shown_; }
    /// The whole texts that were cut off in the last frame, scrolled away or not.
    [[nodiscard]] const std::vector<std::string>& cut() const { return cut_; }
    /// nullptr where no such widget was drawn in the last frame.
    [[nodiscard]] const Item* find(std::string_view id) const;

private:
    std::vector<Item> drawing_;
    std::vector<Item> shown_;
    std::vector<std::string> cut_drawing_;
    std::vector<std::string> cut_;
};

} // namespace evenfall::shell::widgets
