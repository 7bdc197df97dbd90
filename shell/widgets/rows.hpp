#pragma once

#include "widgets/ui.hpp"

#include <span>

namespace evenfall::shell::widgets {

/// A row that can be tapped: title and second line on the left, two lines of each at most, figure with unit
/// on the right, chevron where it opens something.
struct ListRow {
    std::string_view title{};
    std::string_view below{};
    std::string_view number{};
    std::string_view unit{};
    bool chosen = false;      ///< tinted, with a bar at its left edge
    bool has_chevron = false; ///< chevron
    bool enabled = true;
    bool struck = false; ///< strikes through the figure: the entry is excluded
};
bool list_row(Ui& ui, std::string_view id, const ListRow& row);

/// The same for sentences: title and second line are as high as they need.
bool sentence_row(Ui& ui, std::string_view id, std::string_view title, std::string_view below, bool chosen);

/// The heading of a section of a panel: a tap opens or closes it. While it is closed, `said` stands at its
/// right, where there is room for all of it: what the section holds, in a few words.
bool section_row(Ui& ui, std::string_view id, std::string_view title, std::string_view said, bool open);

/// A row that only displays: label on the left, figure on the right. With a topic a tap on it explains the
/// figure (help_area); true in the frame of that tap, for what went into the figure (went_in).
bool figure_row(Ui& ui, std::string_view label, std::string_view number, std::string_view unit,
                std::string_view below = {}, help::Topic topic = help::Topic::none);

/// One column of a table: its range (share of the width, 0 to 1) and alignment.
struct TableColumn {
    float from = 0.0f;
    float to = 1.0f;
    Align align = Align::left;
};
struct Cell {
    std::string_view text{};
    std::string_view unit{}; ///< in regular weight beside the text
    bool strong = false;
};
/// With a topic a tap on it explains the table's figures; true in the frame of that tap.
bool table_head(Ui& ui, std::span<const TableColumn> columns, std::span<const std::string_view> titles,
                help::Topic topic = help::Topic::none);
/// 44 px or more; can be tapped where `id` is not empty, tinted when chosen. True when tapped. Without an id
/// and with a topic a tap explains its first figure.
bool table_row(Ui& ui, std::string_view id, std::span<const TableColumn> columns, std::span<const Cell> cells,
               bool chosen = false, help::Topic topic = help::Topic::none);
/// The last line of a table, separated by a heavier rule.
void table_total(Ui& ui, std::span<const TableColumn> columns, std::span<const Cell> cells);

} // namespace evenfall::shell::widgets
