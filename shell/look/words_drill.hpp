#pragma once

// Words of what is to be done at the holes: table, ticks, and one hole a screen.

namespace evenfall::shell::look::words {

inline constexpr const char* col_lead = "lead";
inline constexpr const char* work_leave = "leave";
inline constexpr const char* work_empty = "empty";
inline constexpr const char* done_group = "Done so far";
inline constexpr const char* done_to_drill = "to drill";
inline constexpr const char* done_drilled = "drilled";
inline constexpr const char* done_leaded = "lead in, capped";
inline constexpr const char* done_change = "Done";
inline constexpr const char* drilled_label = "Drilled";
inline constexpr const char* leaded_label = "Lead in and capped";
inline constexpr const char* to_drill_label = "To drill";

// one hole a screen
inline constexpr const char* drill_by_steps = "Drill by steps";
inline constexpr const char* drill_hole = "Hole";
inline constexpr const char* drill_of = "of";
inline constexpr const char* belly_up = "BELLY UP";
inline constexpr const char* back_up = "BACK UP";
inline constexpr const char* belly_up_below = "Turn the segment over: this hole goes into its belly.";
inline constexpr const char* back_up_below = "This hole goes into the back. Turn the segment as drawn.";
inline constexpr const char* belly_below = "belly";
inline constexpr const char* back_below = "back";
inline constexpr const char* to_the_nose = "nose";
inline constexpr const char* tape_here = "tape";
inline constexpr const char* big_bit = "Bit";
inline constexpr const char* big_depth = "Depth";
inline constexpr const char* big_place = "From nose";
inline constexpr const char* big_lead = "Lead in";
inline constexpr const char* big_out = "Drill out";
inline constexpr const char* big_add = "Lay on";
inline constexpr const char* column_of = "long";
inline constexpr const char* cap_first = "Open the cap first.";
inline constexpr const char* cap_after = "Then close it with a cap of";
inline constexpr const char* dry_after = "Dry the hole.";
inline constexpr const char* scale_after_drilling = "Drilled, all segments on the scale should read";
inline constexpr const char* scale_after_pockets =
    "Drilled, and all pockets cut, all segments on the scale should read";
inline constexpr const char* scale_after_lead = "With its lead in and capped, all segments should read";
inline constexpr const char* scale_after_change = "After it, the scale should read";
inline constexpr const char* drill_back = "Previous";
inline constexpr const char* drill_next = "Next";
inline constexpr const char* drill_done = "Done";
inline constexpr const char* drill_all_done = "Nothing is left to do at the holes.";

} // namespace evenfall::shell::look::words
