#pragma once

// Text on the drawing.

namespace evenfall::shell::look::words {

inline constexpr const char* from_the_side = "from the side";
inline constexpr const char* from_above = "from above";
inline constexpr const char* section = "section";
inline constexpr const char* under_water = "under water";
inline constexpr const char* small_above = "Above";
inline constexpr const char* small_section = "Section";
inline constexpr const char* small_hang = "Hang";
inline constexpr const char* letter_g = "G";
inline constexpr const char* letter_b = "B";
inline constexpr const char* in_the_gap = "in the gap of a joint";
inline constexpr const char* legend_fill = "fill";
inline constexpr const char* legend_cap = "cap";
inline constexpr const char* legend_void = "void";
inline constexpr const char* legend_plugged = "plugged";
inline constexpr const char* scale = "scale";
inline constexpr const char* same_scale = "same scale";
inline constexpr const char* times = "\xC3\x97";
inline constexpr const char* level = "level";
inline constexpr const char* nose_up = "nose-up";
inline constexpr const char* nose_down = "nose-down";
inline constexpr const char* rolls_over = "Rolls over: G is not below B";
inline constexpr const char* floats_up = "floats up: lighter than its water";
inline constexpr const char* stays_still = "suspends";
inline constexpr const char* leans_port = "leans to port";
inline constexpr const char* leans_starboard = "leans to starboard";
inline constexpr const char* fit = "Fit";
inline constexpr const char* board = "board";
inline constexpr const char* board_short = "board too small";
inline constexpr const char* add_point_label = "Add a point to a line";
inline constexpr const char* cannot_be_here = "Not here.";
inline constexpr const char* put_back = "Put back to the last place that works.";
inline constexpr const char* nothing_to_draw = "This lure cannot be drawn yet.";

} // namespace evenfall::shell::look::words
