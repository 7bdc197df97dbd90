#include "cli/table.hpp"

#include <algorithm>

namespace evenfall::cli {

namespace {

constexpr std::size_t gap = 3; ///< between columns

}

bool is_table_row(const std::string& line) {
    const std::size_t first = line.find_first_not_of(' ');
    return first != std::string::npos &&
           (line.find(std::string(gap, ' '), first) != std::string::npos || line.starts_with("─"));
}

std::size_t shown_width(const std::string& text) {
    return static_cast<std::size_t>(std::count_if(
        text.begin(), text.end(), [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; }));
}

std::string padded(const std::string& text, std::size_t width) {
    const std::size_t shown = shown_width(text);
    return shown < width ? text + std::string(width - shown, ' ') : text;
}

std::string Table::text(const output::Numbers& in) const {
    std::vector<std::vector<std::string>> rows = rows_;
    for (auto& row : rows) {
        for (std::string& cell : row)
            cell = in.speech.said(cell);
    }
    std::vector<std::size_t> widths(columns_.size(), 0);
    for (const auto& row : rows) {
        for (std::size_t i = 0; i < row.size(); ++i)
            widths[i] = std::max(widths[i], shown_width(row[i]));
    }
    std::string out;
    for (std::size_t r = 0; r < rows.size(); ++r) {
        std::string line;
        for (std::size_t i = 0; i < columns_.size(); ++i) {
            const std::string cell = i < rows[r].size() ? rows[r][i] : std::string();
            if (i > 0) line.append(gap, ' ');
            if (columns_[i] == Side::right)
                line.append(widths[i] - shown_width(cell), ' ').append(cell);
            else
                line += padded(cell, widths[i]);
        }
        line.erase(line.find_last_not_of(' ') + 1);
        out.append(line).append("\n");
        if (r > 0) continue;
        std::size_t total = 0;
        for (const std::size_t width : widths)
            total += width;
        total += gap * (widths.empty() ? 0 : widths.size() - 1);
        for (std::size_t i = 0; i < total; ++i)
            out += "─";
        out += '\n';
    }
    return out;
}

} // namespace evenfall::cli
