#pragma once

#include "base/outcome.hpp"

#include <cstdint>
#include <map>
#include <string_view>
#include <vector>

namespace evenfall::sheet {

/// What setting a line and embedding need of an OpenType face with CFF outlines: glyphs, their widths and the
/// outlines' table. Read with every offset checked, so that a damaged file is refused and never read past its
/// end.
class Typeface {
public:
    [[nodiscard]] static Outcome<Typeface> read(std::string_view file);

    /// Glyph of a character; 0 (the empty box) where the face has none.
    [[nodiscard]] std::uint16_t glyph(char32_t character) const;
    /// Advance over the size of the type.
    [[nodiscard]] double advance(std::uint16_t glyph) const;
    /// Width of UTF-8 words set at this size, without kerning: the page, the PDF and the SVG then break lines
    /// alike.
    [[nodiscard]] double width_mm(std::string_view words, double size_mm) const;

    [[nodiscard]] std::string_view file() const { return file_; }
    [[nodiscard]] std::string_view outlines() const { return outlines_; } ///< the 'CFF ' table
    [[nodiscard]] double ascent() const { return ascent_; }
    [[nodiscard]] double descent() const { return descent_; } ///< below zero

private:
    std::string_view file_;
    std::string_view outlines_;
    std::map<char32_t, std::uint16_t> glyphs_;
    std::vector<double> advances_;
    double ascent_ = 0.0;
    double descent_ = 0.0;
};

struct Faces {
    Typeface regular;
    Typeface semibold;
};

/// UTF-8 → characters; a broken byte becomes U+FFFD, control characters a blank.
[[nodiscard]] std::vector<char32_t> characters(std::string_view words);

} // namespace evenfall::sheet
