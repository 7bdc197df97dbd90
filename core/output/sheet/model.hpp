#pragma once

// The build sheet as a list of vector items on pages, independent of the file format. Lengths are millimetres
// on paper, from the upper left corner of a page, y down; this folder uses millimetres instead of metres.

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

namespace evenfall::sheet {

struct Point {
    double x_mm = 0.0;
    double y_mm = 0.0;
};

struct Rect {
    double left_mm = 0.0;
    double top_mm = 0.0;
    double width_mm = 0.0;
    double height_mm = 0.0;

    [[nodiscard]] double right_mm() const { return left_mm + width_mm; }
    [[nodiscard]] double bottom_mm() const { return top_mm + height_mm; }
};

struct Colour {
    std::uint8_t red = 0;
    std::uint8_t green = 0;
    std::uint8_t blue = 0;
};

// Colours that stay distinct on a grey-scale printer.
inline constexpr Colour ink{0x22, 0x30, 0x2e};
inline constexpr Colour soft_ink{0x5c, 0x66, 0x63};
inline constexpr Colour rule_grey{0xb4, 0xb0, 0xa6};
inline constexpr Colour mark{0xa4, 0x47, 0x1f};
inline constexpr Colour tint{0xf1, 0xed, 0xe3};

struct Stroke {
    double width_mm = 0.18;
    Colour colour = ink;
    double dash_mm = 0.0; ///< 0 = solid; else length of dashes and gaps
};

struct Polyline {
    std::vector<Point> points;
    bool closed = false;
};

struct Path {
    std::vector<Polyline> lines;
    std::optional<Stroke> stroke = Stroke{};
    std::optional<Colour> fill;
    std::optional<Rect> clip; ///< only what is inside is drawn
};

enum class Weight { regular, semibold };
enum class Anchor { start, middle, end };

struct Text {
    Point at; ///< on the baseline
    std::string words;
    double size_mm = 3.1;
    Weight weight = Weight::regular;
    Anchor anchor = Anchor::start;
    Colour colour = ink;
};

using Item = std::variant<Path, Text>;

/// The text of a page in reading order, for screen readers: tables on paper are tables here.
struct SpokenText {
    enum class Kind : std::uint8_t { heading, paragraph, head, row };
    Kind kind = Kind::paragraph;
    std::vector<std::string> cells;
};

struct Page {
    std::string title;
    std::vector<Item> items;
    std::vector<SpokenText> said;
};

struct Layout {
    std::string title;
    std::string language = "en"; ///< ISO 639
    double width_mm = 210.0;
    double height_mm = 297.0;
    double margin_mm = 12.0;
    std::vector<Page> pages;
};

} // namespace evenfall::sheet
