#pragma once

#include "output/sheet/model.hpp"
#include "output/sheet/typeface.hpp"

#include <string>

namespace evenfall::sheet {

/// Pages one below another in one drawing, in millimetres.
[[nodiscard]] std::string svg(const Layout& layout, const Faces& faces);

/// One file with every page as an inline drawing and the paper's own page box, so that printing needs no
/// setting but 100 %.
[[nodiscard]] std::string html(const Layout& layout, const Faces& faces);

/// PDF 1.7 (ISO 32000-1:2008, from memory; qpdf and poppler judge the outcome in the tests). Absent
/// libraries: the ones that write PDF and build for the page weigh more than all the rest of it, and lines,
/// words and one pair of faces are all that is asked of the format.
[[nodiscard]] std::string pdf(const Layout& layout, const Faces& faces);

/// The pages of that file without its frame: for a page that has the faces and the rules of the file's style
/// already. No style stands in an element, so that the strictest policy of a page allows it.
[[nodiscard]] std::string html_leaves(const Layout& layout);

/// The drawing of one page as SVG elements, without a frame of its own.
[[nodiscard]] std::string svg_items(const Page& page);
[[nodiscard]] std::string svg_style(const Faces& faces);

/// Text for XML, and millimetres to the micrometre without a locale: 12.5 → "12.5", −0.0001 → "0".
[[nodiscard]] std::string xml(std::string_view words);
[[nodiscard]] std::string mm_number(double mm);

} // namespace evenfall::sheet
