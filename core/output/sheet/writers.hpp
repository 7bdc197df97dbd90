#pragma once

#include "output/sheet/model.hpp"
#include "output/sheet/typeface.hpp"

#include <string>

namespace evenfall::sheet {

/// All pages one below another in one drawing, in millimetres.
[[nodiscard]] std::string svg(const Layout& layout, const Faces& faces);

/// One file with every page as an inline drawing and the paper's own page box, so that it prints at 100 %
/// without settings.
[[nodiscard]] std::string html(const Layout& layout, const Faces& faces);

/// PDF 1.7 (ISO 32000-1:2008, from memory; the tests check it with qpdf and poppler). No library is used:
/// those that write PDF and build for the page are larger than the rest of it, and only lines, text and one
/// pair of typefaces are needed.
[[nodiscard]] std::string pdf(const Layout& layout, const Faces& faces);

/// The pages of that file without its frame, for a page that has typefaces and styles already. No inline
/// styles, so that the strictest content policy allows it.
[[nodiscard]] std::string html_pages(const Layout& layout);

/// The drawing of one page as SVG elements, without a frame of its own.
[[nodiscard]] std::string svg_items(const Page& page);
[[nodiscard]] std::string svg_style(const Faces& faces);

/// Escapes text for XML; writes millimetres to the micrometre without a locale: 12.5 → "12.5", −0.0001 → "0".
[[nodiscard]] std::string xml(std::string_view words);
[[nodiscard]] std::string mm_number(double mm);

} // namespace evenfall::sheet
