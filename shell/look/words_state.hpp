#pragma once

// Text that the session writes: entries of the history, names of new items, sentences about saved work.

namespace evenfall::shell::look::words {

inline constexpr const char* history_open = "Open ";
inline constexpr const char* history_open_shared = "Open shared ";
inline constexpr const char* history_planned = "Lead as planned";
inline constexpr const char* history_place_of_hole = "Place of hole ";

// labels of what was dragged
inline constexpr const char* move_section_handle = "Move the section's handle";
inline constexpr const char* move_point = "Move point ";
inline constexpr const char* move_point_of = " of the ";
inline constexpr const char* move_joint = "Move joint ";
inline constexpr const char* move_hole = "Move hole ";
inline constexpr const char* move_pocket = "Move pocket ";
inline constexpr const char* move_hanger = "Move hanger ";
inline constexpr const char* move_part = "Move part ";
inline constexpr const char* move_tail = "Move the tail";
inline constexpr const char* move_named = "Move ";
inline constexpr const char* move_thing = "Move";
inline constexpr const char* line_back = "back line";
inline constexpr const char* line_belly = "belly line";
inline constexpr const char* line_width = "width line";
inline constexpr const char* line_corners = "section's corners";
inline constexpr const char* line_section = "section";

inline constexpr const char* new_lure = "New lure";
inline constexpr const char* still_missing = "Still missing: ";
inline constexpr const char* missing_lead = "lead";
inline constexpr const char* missing_hooks = "hooks";
inline constexpr const char* missing_coats = "coats";
inline constexpr const char* new_body = "Body";
inline constexpr const char* new_segment = "Segment ";
inline constexpr const char* hung_part_is_gone = "a part that hung on is there no longer";
inline constexpr const char* was_segment = "of the segment as it was then: ";
inline constexpr const char* new_hook = "Hook";
inline constexpr const char* new_eye = "Eye";
inline constexpr const char* new_line_tie = "Line tie";
inline constexpr const char* new_pocket = "Slot";
inline constexpr const char* new_sealer = "Sealer";
inline constexpr const char* new_paint = "Paint";
inline constexpr const char* new_clear_coat = "Clear coat";

inline constexpr const char* saved_too_large = "The saved work is too large to be one lure.";
inline constexpr const char* saved_damaged = "The saved work is damaged and cannot be read.";
inline constexpr const char* saved_by_another_version =
    "The saved work was written by another version of this bench.";
inline constexpr const char* saved_empty = "The saved work holds no lure.";

} // namespace evenfall::shell::look::words
