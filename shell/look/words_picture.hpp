#pragma once

// Text about the picture behind the drawing.

#include <array>
#include <string_view>

namespace evenfall::shell::look::words {

inline constexpr const char* picture_head = "Picture behind the drawing";
inline constexpr const char* picture_below =
    "A photograph or scan of a pencil sketch or of a carved lure, taken square from the side. It stays on "
    "this device and is never in a link or file.";
inline constexpr const char* picture_choose = "Choose a picture";
inline constexpr const char* picture_other = "Another picture";
inline constexpr const char* picture_away = "Remove it";
inline constexpr const char* picture_marks =
    "Drag the marks onto the tips of nose and tail: the picture is then laid level and to scale. Pull the "
    "drawn points onto it, or let its outline be found.";
inline constexpr const char* picture_scale_by = "Scale by";
inline constexpr const char* picture_by_ends = "nose to tail";
inline constexpr const char* picture_by_rule = "two marks on a rule";
inline constexpr const char* picture_apart = "Apart on the lure";
inline constexpr const char* picture_apart_below = "between the two marks, by a rule";
inline constexpr const char* picture_strength = "Opacity";
inline constexpr const char* picture_find = "Find the outline";
inline constexpr const char* picture_finding = "Looking for the outline";
inline constexpr const char* picture_stop = "Stop";
inline constexpr const char* picture_found = "This is the outline that was found, as back and belly line. "
                                             "Keep it and pull its points right, or put it back.";
inline constexpr const char* picture_off = "At its farthest the line lies off the outline by ";
inline constexpr const char* picture_keep = "Keep it";
inline constexpr const char* picture_back = "Put it back";
inline constexpr const char* picture_outline_label = "Outline from the picture";
inline constexpr const char* picture_unfit =
    "This picture cannot be used: it must have 24 to 2048 pixels a side.";
inline constexpr const char* mark_nose = "nose";
inline constexpr const char* mark_tail = "tail";
inline constexpr const char* mark_rule = "rule";
inline constexpr const char* picture_mark = "Move a mark";
inline constexpr std::array<std::string_view, 4> picture_mark_names{"nose", "tail", "rule 1", "rule 2"};

} // namespace evenfall::shell::look::words
