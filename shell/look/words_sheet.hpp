#pragma once

// Text of the Sheet step: the printed build sheet.

namespace evenfall::shell::look::words {

inline constexpr const char* sheet_head = "Build sheet";
inline constexpr const char* sheet_below =
    "Paper for the bench, true to size: what you see is what is printed.";
inline constexpr const char* sheet_paper = "Paper";
inline constexpr const char* sheet_a4 = "A4";
inline constexpr const char* sheet_letter = "Letter";
inline constexpr const char* sheet_lures = "Lures in the batch";
inline constexpr const char* sheet_with_group = "Made together with";
inline constexpr const char* sheet_with_note =
    "With lures of another recipe the sheet becomes the batch's: fills, parts, wire and coats of all in one "
    "list, and the waits side by side.";
inline constexpr const char* sheet_print = "Print";
inline constexpr const char* sheet_save_group = "Save as a file";
inline constexpr const char* sheet_pdf = "PDF";
inline constexpr const char* sheet_svg = "SVG";
inline constexpr const char* sheet_html = "HTML";
inline constexpr const char* sheet_scale_note =
    "Print at 100 %, with fitting to the page turned off. Then lay a rule on the two bars at the foot of "
    "every page: only a page whose bars "
    "are right is fit to carve from.";

} // namespace evenfall::shell::look::words
