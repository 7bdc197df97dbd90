#pragma once

// The text of a row: its title and a second line below it, each on as many lines as it needs.

#include "widgets/ui.hpp"

#include <string>
#include <vector>

namespace evenfall::shell::widgets {

/// One line of a text that has been said (look/said.hpp), inside `rect`; cut with an ellipsis where it is too
/// wide. Returns the drawn width.
float put_in(Ui& ui, const Rect& rect, ImFont* font, ImU32 colour, std::string_view said, Align align);

class RowText {
public:
    /// Broken at spaces to `width`, into at most `most` lines each.
    RowText(const Ui& ui, std::string_view title, std::string_view below, float width, std::size_t most = 100)
        : width_(width), title_(lines_of(ui.type.body, title, width, most)) {
        if (!below.empty()) below_ = lines_of(ui.type.small, below, width, most);
    }

    [[nodiscard]] float height() const {
        return title_h * static_cast<float>(title_.size()) + below_h * static_cast<float>(below_.size());
    }

    /// With its upper left corner at (x, y). Where a tap explains the row, dots stand below its title.
    void draw(Ui& ui, float x, float y, ImU32 colour, help::Topic topic = help::Topic::none) const {
        lines_at(ui, x, y, width_, title_h, ui.type.body, colour, title_, topic);
        lines_at(ui, x, y + title_h * static_cast<float>(title_.size()), width_, below_h, ui.type.small,
                 ui.inks().ink_soft, below_);
    }
    /// At the left of a row, at half its height.
    void draw_in(Ui& ui, const Rect& row, ImU32 colour, help::Topic topic = help::Topic::none) const {
        draw(ui, row.x, row.y + (row.h - height()) / 2.0f, colour, topic);
    }

private:
    static constexpr float title_h = 22.0f;
    static constexpr float below_h = 20.0f;
    float width_;
    std::vector<std::string> title_;
    std::vector<std::string> below_;
};

} // namespace evenfall::shell::widgets
