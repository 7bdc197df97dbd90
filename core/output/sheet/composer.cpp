#include "output/sheet/composer.hpp"

#include "base/trade.hpp"

#include <algorithm>

namespace evenfall::sheet {

namespace {

constexpr double foot_height_mm = 27.0;
constexpr double gap_above_foot_mm = 3.0;
constexpr double first_line_mm = 12.5; ///< from the upper margin to the start of the content
constexpr double line_spacing = 1.32;
constexpr double table_size_mm = 2.9;
constexpr double cell_pad_mm = 1.2;
constexpr double head_room_mm = 24.0; ///< a table's header is never alone at the foot of a page

} // namespace

Composer::Composer(Layout layout, const Faces& faces, std::string subject, std::string foot, Numbers numbers)
    : layout_(std::move(layout)), faces_(faces), numbers_(numbers) {
    subject_ = said(subject);
    foot_ = said(foot);
}

std::vector<std::string> Composer::said(std::vector<std::string> cells) const {
    for (std::string& cell : cells)
        cell = said(cell);
    return cells;
}

double Composer::room_mm() const {
    return layout_.height_mm - layout_.margin_mm - foot_height_mm - gap_above_foot_mm - y_mm_;
}

double Composer::whole_room_mm() const {
    return layout_.height_mm - 2.0 * layout_.margin_mm - foot_height_mm - gap_above_foot_mm - first_line_mm;
}

double Composer::text_width_mm(const std::string& words, double size_mm, Weight weight) const {
    return (weight == Weight::semibold ? faces_.semibold : faces_.regular).width_mm(words, size_mm);
}

void Composer::line(Point from, Point to, Stroke stroke) {
    add(Path{{{{from, to}, false}}, stroke, {}, {}});
}

void Composer::box(const Rect& r, Stroke stroke) {
    add(Path{{{{{r.left_mm, r.top_mm},
                {r.right_mm(), r.top_mm},
                {r.right_mm(), r.bottom_mm()},
                {r.left_mm, r.bottom_mm()}},
               true}},
             stroke,
             {},
             {}});
}

void Composer::text(Point at, std::string words, double size_mm, Weight weight, Anchor anchor,
                    Colour colour) {
    if (!words.empty()) add(Text{at, std::move(words), size_mm, weight, anchor, colour});
}

void Composer::new_page(const std::string& title) {
    begin_page(said(title));
}

void Composer::begin_page(std::string title) {
    layout_.pages.push_back({std::move(title), {}, {}});
    frame();
    y_mm_ = layout_.margin_mm + first_line_mm;
}

void Composer::frame() {
    const double top = layout_.margin_mm;
    const double right = left_mm() + width_mm();
    text({left_mm(), top + 5.0}, layout_.pages.back().title, 5.2, Weight::semibold);
    text({right, top + 5.0}, lines_of(subject_, 0.5 * width_mm(), 3.1, Weight::regular).front(), 3.1,
         Weight::regular, Anchor::end, soft_ink);
    line({left_mm(), top + 7.5}, {right, top + 7.5}, {0.35, ink, 0.0});
    bars();
}

void Composer::bars() {
    const double top = layout_.height_mm - layout_.margin_mm - foot_height_mm;
    const double left = left_mm();
    const double four_inches = 4.0 * units::mm_from_m(units::inch_m);
    line({left, top}, {left + width_mm(), top}, {0.35, ink, 0.0});
    const auto bar = [&](double y, double length, int parts, const char* words) {
        const double each = length / parts;
        line({left, y}, {left + length, y}, {0.25, ink, 0.0});
        for (int k = 0; k <= parts; ++k) {
            const double tick = k == 0 || k == parts ? 2.6 : 1.5;
            line({left + each * k, y}, {left + each * k, y - tick}, {0.25, ink, 0.0});
        }
        text({left + 0.5 * length, y + 3.0}, said(words), 2.5, Weight::regular, Anchor::middle, soft_ink);
    };
    const bool inches = numbers_.units.inches();
    if (!inches) bar(top + 5.5, 100.0, 10, "100 mm exactly");
    bar(top + (inches ? 9.0 : 14.5), four_inches, 4, "4 in exactly");
    double y = top + 21.5;
    const std::string lay =
        inches ? "Lay a rule on the bar. If it is off" : "Lay a rule on both bars. If either is off";
    for (const std::string& words :
         lines_of(said(lay + ", print again at 100 % (actual size) with fitting to the page "
                             "turned off, and carve nothing from this page."),
                  108.0, 2.5, Weight::regular)) {
        text({left, y}, words, 2.5);
        y += 3.3;
    }
}

Layout Composer::finish() {
    const double top = layout_.height_mm - layout_.margin_mm - foot_height_mm;
    const double left = left_mm() + 114.0;
    const double right = left_mm() + width_mm();
    for (std::size_t k = 0; k < layout_.pages.size(); ++k) {
        Page& page = layout_.pages[k];
        const auto put = [&](Point at, std::string words, double size, Weight weight, Anchor anchor) {
            page.items.emplace_back(Text{at, std::move(words), size, weight, anchor, ink});
        };
        page.items.emplace_back(Path{{{{{left - 3.0, top}, {left - 3.0, top + foot_height_mm}}, false}},
                                     Stroke{0.18, rule_grey, 0.0},
                                     {},
                                     {}});
        double y = top + 5.0;
        for (const std::string& words : lines_of(subject_, right - left, 3.6, Weight::semibold)) {
            if (y > top + 10.0) break;
            put({left, y}, words, 3.6, Weight::semibold, Anchor::start);
            y += 4.6;
        }
        for (const std::string& words : lines_of(foot_, right - left, 2.6, Weight::regular)) {
            if (y > top + 21.0) break;
            put({left, y}, words, 2.6, Weight::regular, Anchor::start);
            y += 3.5;
        }
        put({left, top + foot_height_mm - 1.0},
            said(numbers_.units.inches() ? "Drawings 1 : 1, lengths in inches unless said"
                                         : "Drawings 1 : 1, lengths in mm unless said"),
            2.6, Weight::regular, Anchor::start);
        put({right, top + foot_height_mm - 1.0},
            std::to_string(k + 1) + " / " + std::to_string(layout_.pages.size()), 3.6, Weight::semibold,
            Anchor::end);
    }
    return std::move(layout_);
}

double Composer::block(double height_mm) {
    if (height_mm > room_mm()) begin_page(layout_.pages.back().title);
    const double top = y_mm_;
    y_mm_ += height_mm;
    return top;
}

void Composer::heading(const std::string& english, double with_mm) {
    const std::string words = said(english);
    // A heading is never alone at the foot of a page.
    constexpr double size = 3.9;
    const std::vector<std::string> lines = lines_of(words, width_mm(), size, Weight::semibold);
    const double height = heading_mm + size * line_spacing * static_cast<double>(lines.size() - 1);
    if (room_mm() < height + with_mm) begin_page(layout_.pages.back().title);
    double y = block(height) + 4.5;
    for (const std::string& one : lines) {
        text({left_mm(), y}, one, size, Weight::semibold);
        y += size * line_spacing;
    }
    say_again(SpokenText::Kind::heading, {words});
}

void Composer::paragraph(const std::string& english, double size_mm, Colour colour) {
    const std::string words = said(english);
    for (const std::string& one : lines_of(words, width_mm(), size_mm, Weight::regular)) {
        const double top = block(size_mm * line_spacing);
        text({left_mm(), top + size_mm}, one, size_mm, Weight::regular, Anchor::start, colour);
    }
    say_again(SpokenText::Kind::paragraph, {words});
    space(1.2);
}

void Composer::caution(const std::string& english) {
    const std::string words = said(english);
    constexpr double size = 2.9;
    const std::vector<std::string> lines = lines_of(words, width_mm() - 6.0, size, Weight::regular);
    const double height = static_cast<double>(lines.size()) * size * line_spacing + 2.0;
    const double top = block(height + 2.0);
    say_again(SpokenText::Kind::paragraph, {words});
    line({left_mm() + 0.6, top + 0.6}, {left_mm() + 0.6, top + height - 0.2}, {1.0, mark, 0.0});
    double y = top + size + 0.8;
    for (const std::string& one : lines) {
        text({left_mm() + 4.0, y}, one, size);
        y += size * line_spacing;
    }
}

std::vector<std::string> Composer::lines_of(const std::string& words, double width_mm, double size_mm,
                                            Weight weight) const {
    std::vector<std::string> out(1);
    std::size_t at = 0;
    const auto fits = [&](const std::string& line) {
        return text_width_mm(line, size_mm, weight) <= width_mm;
    };
    while (at < words.size()) {
        std::size_t end = words.find(' ', at);
        if (end == std::string::npos) end = words.size();
        const std::string word = words.substr(at, end - at);
        at = end + 1;
        std::string& line = out.back();
        if (const std::string longer = line.empty() ? word : line + ' ' + word; fits(longer)) {
            line = longer;
            continue;
        }
        if (!line.empty()) out.emplace_back();
        // A word longer than the line, such as a share text, is cut where the line ends, between whole
        // characters; linear in its length.
        double advances = 0.0;
        for (std::size_t k = 0, next = 0; k < word.size(); k = next) {
            next = k + 1;
            while (next < word.size() && (static_cast<unsigned char>(word[next]) & 0xC0u) == 0x80u)
                ++next;
            const std::string character = word.substr(k, next - k);
            const double advance = text_width_mm(character, 1.0, weight);
            if (!out.back().empty() && (advances + advance) * size_mm > width_mm) {
                out.emplace_back();
                advances = 0.0;
            }
            out.back() += character;
            advances += advance;
        }
    }
    return out;
}

void Composer::table(const std::vector<TableColumn>& columns, const std::vector<Row>& rows, double tall_mm) {
    double shares = 0.0;
    for (const TableColumn& column : columns)
        shares += column.share;
    std::vector<double> edges{left_mm()};
    for (const TableColumn& column : columns)
        edges.push_back(edges.back() + width_mm() * column.share / shares);

    std::vector<std::string> titles;
    for (const TableColumn& column : columns)
        titles.push_back(said(column.title));
    const auto set = [&](const auto& again, const std::vector<std::string>& cells, Weight weight,
                         double least_mm, bool is_head) -> void {
        std::vector<std::vector<std::string>> lines;
        std::size_t most = 1;
        for (std::size_t k = 0; k < columns.size(); ++k) {
            const std::string cell = k < cells.size() ? cells[k] : std::string();
            lines.push_back(
                lines_of(cell, edges[k + 1] - edges[k] - 2.0 * cell_pad_mm, table_size_mm, weight));
            most = std::max(most, lines.back().size());
        }
        const double step = table_size_mm * line_spacing;
        // A row longer than a page continues on the next.
        const auto most_here = static_cast<std::size_t>((whole_room_mm() - head_room_mm) / step);
        for (std::size_t from = 0; from < most; from += most_here) {
            const std::size_t here = std::min(most - from, most_here);
            const double height = std::max(least_mm, static_cast<double>(here) * step + 1.8);
            if (!is_head && room_mm() < std::max(height, 14.0)) {
                begin_page(layout_.pages.back().title);
                again(again, titles, Weight::semibold, 0.0, true);
            }
            const double top = block(height);
            if (from == 0) say_again(is_head ? SpokenText::Kind::head : SpokenText::Kind::row, cells);
            if (is_head) {
                add(Path{{{{{left_mm(), top},
                            {edges.back(), top},
                            {edges.back(), top + height},
                            {left_mm(), top + height}},
                           true}},
                         {},
                         tint,
                         {}});
            }
            for (std::size_t k = 0; k < columns.size(); ++k) {
                const Anchor anchor = columns[k].anchor;
                const double x = anchor == Anchor::end      ? edges[k + 1] - cell_pad_mm
                                 : anchor == Anchor::middle ? 0.5 * (edges[k] + edges[k + 1])
                                                            : edges[k] + cell_pad_mm;
                double y = top + table_size_mm + 0.9;
                for (std::size_t n = from; n < std::min(from + here, lines[k].size()); ++n) {
                    text({x, y}, lines[k][n], table_size_mm, weight, anchor);
                    y += step;
                }
            }
            line({left_mm(), top + height}, {edges.back(), top + height},
                 {is_head ? 0.25 : 0.12, is_head ? ink : rule_grey, 0.0});
        }
    };
    if (room_mm() < head_room_mm) begin_page(layout_.pages.back().title);
    set(set, titles, Weight::semibold, 0.0, true);
    for (const Row& row : rows)
        set(set, said(row.cells), row.strong ? Weight::semibold : Weight::regular, tall_mm, false);
    space(3.0);
}

} // namespace evenfall::sheet
