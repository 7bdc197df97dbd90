#pragma once

#include "base/outcome.hpp"

#include <cstdint>
#include <map>
#include <string_view>
#include <vector>

namespace evenfall::sheet {

/// What typesetting and embedding need of an OpenType face with CFF outlines: glyphs, their widths and the
/// outlines' table. Every offset is checked, so a damaged file is refused and never read past its end.
class Typeface {
public:
    [[nodiscard]] static Outcome<Typeface> read(std::string_view file);

    /// Glyph of a character; 0 (the empty box) where the face has none.
    [[nodiscard]] std::uint16_t glyph(char32_t character) const;
    /// Advance over type size.
    [[nodiscard]] double advance(std::uint16_t glyph) const;
    /// Width of UTF-8 text at this size, without kerning, so that page, PDF and SVG break lines alike.
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

/// UTF-8 → characters; an invalid byte becomes U+FFFD, control characters a space.
[[nodiscard]] std::vector<char32_t> characters(std::string_view words);

} // namespace evenfall::sheet
