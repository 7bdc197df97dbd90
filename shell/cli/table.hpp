#pragma once

#include "output.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace evenfall::cli {

/// A table in plain text: the first row is the head, set off by a rule. Columns are as wide as their widest
/// cell.
class Table {
public:
    enum class Side { left, right };

    explicit Table(std::vector<Side> columns) : columns_(std::move(columns)) {}

    /// Missing cells stay empty; there are never more cells than columns.
    void row(std::vector<std::string> cells) { rows_.push_back(std::move(cells)); }

    /// With its cells in the reader's language.
    [[nodiscard]] std::string text(const output::Numbers& in) const;

private:
    std::vector<Side> columns_;
    std::vector<std::vector<std::string>> rows_;
};

/// Whether this line comes of a table, and is therefore in the reader's language already.
[[nodiscard]] bool is_table_row(const std::string& line);

/// Columns that a UTF-8 text takes on a terminal; every code point counts one.
[[nodiscard]] std::size_t shown_width(const std::string& text);

/// `text` with blanks behind it up to `width` columns.
[[nodiscard]] std::string padded(const std::string& text, std::size_t width);

} // namespace evenfall::cli
