#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace evenfall::shell::widgets {

/// Where one interactive widget lies on the screen in this frame, in CSS px.
struct Item {
    std::string id; ///< stable: "lead.plan", "lead.hole.0.depth", "step.lead", "keypad.ok"
    float x = 0.0f;
    float y = 0.0f;
    float w = 0.0f;
    float h = 0.0f;
    bool visible = false; ///< its middle can be touched: not scrolled away, not under a sheet
};

/// The widgets of the last whole frame. Tests read it to find where to touch; nothing acts through it.
class Items {
public:
    /// Starts a frame; what was recorded before stays readable until finish_frame().
    void begin_frame() { drawing_.clear(); }
    void record(Item item) { drawing_.push_back(std::move(item)); }
    void finish_frame() { shown_.swap(drawing_); }

    [[nodiscard]] const std::vector<Item>& shown() const { return shown_; }
    /// nullptr when no such widget was drawn in the last frame.
    [[nodiscard]] const Item* find(std::string_view id) const;

private:
    std::vector<Item> drawing_;
    std::vector<Item> shown_;
};

} // namespace evenfall::shell::widgets
