#pragma once

#include "output/numbers.hpp"
#include "output/sheet/model.hpp"
#include "output/sheet/typeface.hpp"

#include <string>
#include <vector>

namespace evenfall::sheet {

using output::Numbers;

/// Fills pages from top to bottom: headings, paragraphs, tables and drawings that are kept together. Every
/// page has the title block and the check bars; nothing is printed outside the margins.
class Composer {
public:
    /// Subject, foot, and all words below are English and are printed in the reader's language, but for what
    /// text() and lines_of() are given.
    Composer(Layout layout, const Faces& faces, std::string subject, std::string foot, Numbers numbers = {});

    [[nodiscard]] const Numbers& numbers() const { return numbers_; }
    [[nodiscard]] std::string said(std::string_view english) const { return numbers_.speech.said(english); }
    [[nodiscard]] double left_mm() const { return layout_.margin_mm; }
    [[nodiscard]] double width_mm() const { return layout_.width_mm - 2.0 * layout_.margin_mm; }
    [[nodiscard]] double room_mm() const;       ///< left on this page
    [[nodiscard]] double whole_room_mm() const; ///< on an empty page
    [[nodiscard]] double text_width_mm(const std::string& words, double size_mm,
                                       Weight weight = Weight::regular) const;

    /// Breaks words, as they are, into lines of at most this width, between words where possible.
    [[nodiscard]] std::vector<std::string> lines_of(const std::string& words, double width_mm, double size_mm,
                                                    Weight weight) const;

    void new_page(const std::string& title);
    static constexpr double heading_mm = 7.5; ///< height of a one-line heading
    /// `with_mm`: height of what follows and must stay on the same page.
    void heading(const std::string& words, double with_mm = 14.5);
    void paragraph(const std::string& words, double size_mm = 3.1, Colour colour = ink);
    /// A safety note, set off by a mark at its side.
    void caution(const std::string& words);
    void space(double mm) { y_mm_ += mm; }

    /// Reserves this height across the page, on the next page where this one has too little; returns its
    /// upper edge.
    [[nodiscard]] double block(double height_mm);

    /// Text for screen readers of what a drawing shows.
    void say(const std::string& words) { say(SpokenText::Kind::paragraph, {words}); }
    void say(SpokenText::Kind kind, const std::vector<std::string>& cells) { say_again(kind, said(cells)); }

    void add(Item item) { layout_.pages.back().items.push_back(std::move(item)); }
    void line(Point from, Point to, Stroke stroke = {});
    void box(const Rect& rect, Stroke stroke = {});
    /// As it is: for names, numbers, and what has been translated.
    void text(Point at, std::string words, double size_mm = 3.1, Weight weight = Weight::regular,
              Anchor anchor = Anchor::start, Colour colour = ink);

    struct TableColumn {
        std::string title;
        double share = 1.0; ///< of the width, relative to the other columns
        Anchor anchor = Anchor::start;
    };
    struct Row {
        std::vector<std::string> cells; ///< a cell wider than its column is broken into several lines
        bool strong = false;
    };
    /// Repeats its header on every page. `tall_mm` is the least row height, to leave room for writing.
    void table(const std::vector<TableColumn>& columns, const std::vector<Row>& rows, double tall_mm = 0.0);

    /// Numbers the pages and returns the layout.
    [[nodiscard]] Layout finish();

private:
    [[nodiscard]] std::vector<std::string> said(std::vector<std::string> cells) const;
    /// Cells that are in the reader's language already.
    void say_again(SpokenText::Kind kind, std::vector<std::string> cells) {
        layout_.pages.back().said.push_back({kind, std::move(cells)});
    }
    void begin_page(std::string title); ///< in the reader's language
    void frame();
    void bars();

    Layout layout_;
    const Faces& faces_;
    std::string subject_;
    std::string foot_;
    Numbers numbers_;
    double y_mm_ = 0.0;
};

} // namespace evenfall::sheet
