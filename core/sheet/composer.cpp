#include "sheet/composer.hpp"

#include "units/trade.hpp"

#include <algorithm>

namespace evenfall::sheet {

namespace {

constexpr double foot_height_mm = 27.0;
constexpr double gap_above_foot_mm = 3.0;
constexpr double first_line_mm = 12.5;  ///< from the upper margin to where the work begins
constexpr double line_spacing = 1.32;
constexpr double table_size_mm = 2.9;
constexpr double cell_pad_mm = 1.2;

}  // namespace

Composer::Composer(Layout layout, const Faces& faces, std::string subject, std::string foot)
    : layout_(std::move(layout)), faces_(faces), subject_(std::move(subject)), foot_(std::move(foot)) {}

double Composer::room_mm() const {
    return layout_.height_mm - layout_.margin_mm - foot_height_mm - gap_above_foot_mm - y_mm_;
}

double Composer::whole_room_mm() const {
    return layout_.height_mm - 2.0 * layout_.margin_mm - foot_height_mm - gap_above_foot_mm - first_line_mm;
}

double Composer::text_width_mm(const std::string& words, double size_mm, Weight weight) const {
    return (weight == Weight::semibold ? faces_.semibold : faces_.regular).width_mm(words, size_mm);
}

void Composer::line(Point from, Point to, Stroke stroke) { add(Path{{{{from, to}, false}}, stroke, {}, {}}); }

void Composer::box(const Rect& r, Stroke stroke) {
    add(Path{{{{{r.left_mm, r.top_mm}, {r.right_mm(), r.top_mm}, {r.right_mm(), r.bottom_mm()}, {r.left_mm, r.bottom_mm()}}, true}},
             stroke, {}, {}});
}

void Composer::text(Point at, std::string words, double size_mm, Weight weight, Anchor anchor, Colour colour) {
    if (!words.empty()) add(Text{at, std::move(words), size_mm, weight, anchor, colour});
}

void Composer::new_page(const std::string& title) {
    layout_.pages.push_back({title, {}, {}});
    frame();
    y_mm_ = layout_.margin_mm + first_line_mm;
}

void Composer::frame() {
    const double top = layout_.margin_mm;
    const double right = left_mm() + width_mm();
    text({left_mm(), top + 5.0}, layout_.pages.back().title, 5.2, Weight::semibold);
    text({right, top + 5.0}, lines_of(subject_, 0.5 * width_mm(), 3.1, Weight::regular).front(), 3.1, Weight::regular, Anchor::end, soft_ink);
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
        text({left + 0.5 * length, y + 3.0}, words, 2.5, Weight::regular, Anchor::middle, soft_ink);
    };
    bar(top + 5.5, 100.0, 10, "100 mm exactly");
    bar(top + 14.5, four_inches, 4, "4 in exactly");
    double y = top + 21.5;
    for (const std::string& words :
         lines_of("Lay a rule on both bars. If either is off, print again at 100 % (actual size) with fitting to the page turned off, and "
                  "carve nothing from this page.",
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
        page.items.emplace_back(Path{{{{{left - 3.0, top}, {left - 3.0, top + foot_height_mm}}, false}}, Stroke{0.18, rule_grey, 0.0}, {}, {}});
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
        put({left, top + foot_height_mm - 1.0}, "Drawings 1 : 1, lengths in mm unless said", 2.6, Weight::regular, Anchor::start);
        put({right, top + foot_height_mm - 1.0}, std::to_string(k + 1) + " / " + std::to_string(layout_.pages.size()), 3.6, Weight::semibold,
            Anchor::end);
    }
    return std::move(layout_);
}

double Composer::block(double height_mm) {
    if (height_mm > room_mm()) new_page(layout_.pages.back().title);
    const double top = y_mm_;
    y_mm_ += height_mm;
    return top;
}

void Composer::heading(const std::string& words, double with_mm) {
    // A heading does not stay alone at the foot of a page.
    if (room_mm() < 7.5 + with_mm) new_page(layout_.pages.back().title);
    const double top = block(7.5);
    text({left_mm(), top + 4.5}, words, 3.9, Weight::semibold);
    say(Said::Kind::heading, {words});
}

void Composer::paragraph(const std::string& words, double size_mm, Colour colour) {
    for (const std::string& one : lines_of(words, width_mm(), size_mm, Weight::regular)) {
        const double top = block(size_mm * line_spacing);
        text({left_mm(), top + size_mm}, one, size_mm, Weight::regular, Anchor::start, colour);
    }
    say(words);
    space(1.2);
}

void Composer::caution(const std::string& words) {
    constexpr double size = 2.9;
    const std::vector<std::string> lines = lines_of(words, width_mm() - 6.0, size, Weight::regular);
    const double height = static_cast<double>(lines.size()) * size * line_spacing + 2.0;
    const double top = block(height + 2.0);
    say(words);
    line({left_mm() + 0.6, top + 0.6}, {left_mm() + 0.6, top + height - 0.2}, {1.0, mark, 0.0});
    double y = top + size + 0.8;
    for (const std::string& one : lines) {
        text({left_mm() + 4.0, y}, one, size);
        y += size * line_spacing;
    }
}

std::vector<std::string> Composer::lines_of(const std::string& words, double width_mm, double size_mm, Weight weight) const {
    std::vector<std::string> out(1);
    std::size_t at = 0;
    const auto fits = [&](const std::string& line) { return text_width_mm(line, size_mm, weight) <= width_mm; };
    while (at < words.size()) {
        std::size_t end = words.find(' ', at);
        if (end == std::string::npos) end = words.size();
        std::string word = words.substr(at, end - at);
        at = end + 1;
        std::string& line = out.back();
        if (const std::string longer = line.empty() ? word : line + ' ' + word; fits(longer)) {
            line = longer;
            continue;
        }
        if (!line.empty()) out.emplace_back();
        // A word longer than the line, such as a share text, is cut where the line ends, between whole characters.
        while (!fits(word)) {
            double low = 1.0, high = static_cast<double>(word.size());
            while (high - low > 1.0) {
                const auto half = static_cast<std::size_t>(0.5 * (low + high));
                (fits(word.substr(0, half)) ? low : high) = static_cast<double>(half);
            }
            auto cut = static_cast<std::size_t>(low);
            while (cut < word.size() && (static_cast<unsigned char>(word[cut]) & 0xC0u) == 0x80u) ++cut;
            if (cut >= word.size()) break;
            out.back() = word.substr(0, cut);
            out.emplace_back();
            word.erase(0, cut);
        }
        out.back() = word;
    }
    return out;
}

void Composer::table(const std::vector<Column>& columns, const std::vector<Row>& rows, double tall_mm) {
    double shares = 0.0;
    for (const Column& column : columns) shares += column.share;
    std::vector<double> edges{left_mm()};
    for (const Column& column : columns) edges.push_back(edges.back() + width_mm() * column.share / shares);

    const auto set = [&](const std::vector<std::string>& cells, Weight weight, double least_mm, bool is_head) {
        std::vector<std::vector<std::string>> lines;
        std::size_t most = 1;
        for (std::size_t k = 0; k < columns.size(); ++k) {
            const std::string cell = k < cells.size() ? cells[k] : std::string();
            lines.push_back(lines_of(cell, edges[k + 1] - edges[k] - 2.0 * cell_pad_mm, table_size_mm, weight));
            most = std::max(most, lines.back().size());
        }
        const double step = table_size_mm * line_spacing;
        const double height = std::max(least_mm, static_cast<double>(most) * step + 1.8);
        const double top = block(height);
        say(is_head ? Said::Kind::head : Said::Kind::row, cells);
        if (is_head) {
            add(Path{{{{{left_mm(), top}, {edges.back(), top}, {edges.back(), top + height}, {left_mm(), top + height}}, true}}, {}, tint, {}});
        }
        for (std::size_t k = 0; k < columns.size(); ++k) {
            const Anchor anchor = columns[k].anchor;
            const double x = anchor == Anchor::end      ? edges[k + 1] - cell_pad_mm
                             : anchor == Anchor::middle ? 0.5 * (edges[k] + edges[k + 1])
                                                        : edges[k] + cell_pad_mm;
            double y = top + table_size_mm + 0.9;
            for (const std::string& one : lines[k]) {
                text({x, y}, one, table_size_mm, weight, anchor);
                y += step;
            }
        }
        line({left_mm(), top + height}, {edges.back(), top + height}, {is_head ? 0.25 : 0.12, is_head ? ink : rule_grey, 0.0});
    };
    std::vector<std::string> titles;
    for (const Column& column : columns) titles.push_back(column.title);
    if (room_mm() < 24.0) new_page(layout_.pages.back().title);
    set(titles, Weight::semibold, 0.0, true);
    for (const Row& row : rows) {
        if (room_mm() < std::max(tall_mm, 14.0)) {
            new_page(layout_.pages.back().title);
            set(titles, Weight::semibold, 0.0, true);
        }
        set(row.cells, row.strong ? Weight::semibold : Weight::regular, tall_mm, false);
    }
    space(3.0);
}

}  // namespace evenfall::sheet
