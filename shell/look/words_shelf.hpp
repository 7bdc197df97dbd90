#pragma once

// Text of the shelf's bin, of everything in one file, and of two lures side by side.

namespace evenfall::shell::look::words {

inline constexpr const char* bin = "Bin";
inline constexpr const char* bin_hide = "Close the bin";
inline constexpr const char* bin_take_back = "Put back on the shelf";
inline constexpr const char* bin_empty = "Empty the bin";
inline constexpr const char* bin_empty_no = "Leave them";
inline constexpr const char* bin_empty_yes = "Remove for good";
inline constexpr const char* bin_note =
    "When this device runs out of room, what has been here longest goes by itself.";

// counts, as "1 lure" and "12 lures"
inline constexpr const char* lure_one = " lure";
inline constexpr const char* lure_many = " lures";
inline constexpr const char* in_bin = " in the bin";
inline constexpr const char* piece_one = " part in the drawer";
inline constexpr const char* piece_many = " parts in the drawer";
inline constexpr const char* change_one = " change is in no such file yet.";
inline constexpr const char* change_many = " changes are in no such file yet.";

inline constexpr const char* everything_group = "Everything in one file";
inline constexpr const char* everything_save = "Save everything";
inline constexpr const char* everything_unread = "; not in it, because it cannot be read: ";
inline constexpr const char* everything_file = "evenfall-everything"; // and the date
inline constexpr const char* storage_kept = "Saved on this device: the browser does not clear it by itself.";
inline constexpr const char* storage_at_risk =
    "The browser may clear what is saved here. Save everything to a file now and then.";
inline constexpr const char* everything_reminder =
    "Much work is in no file yet. Save everything to one: it is on the shelf.";

inline constexpr const char* offer_head = "From the file";
inline constexpr const char* offer_holds = "It holds ";
inline constexpr const char* offer_merge = "Merge";
inline constexpr const char* offer_replace = "Replace";
inline constexpr const char* offer_leave = "Leave it";
inline constexpr const char* offer_merge_about = "Merge adds ";
inline constexpr const char* offer_merge_here = "; here already: ";
inline constexpr const char* offer_merge_rest = ". Nothing that is here is changed.";
inline constexpr const char* offer_replace_about = "Replace puts ";
inline constexpr const char* offer_replace_here = " on the shelf; into the bin go ";
inline constexpr const char* offer_replace_rest =
    ". Drawer and settings become the file's. The lure on the bench stays.";
inline constexpr const char* offer_taken = "Taken from the file: ";
inline constexpr const char* offer_no_room = "This device has no room for it. Nothing was changed.";

inline constexpr const char* everything_too_large =
    "The file is too large: 8 MB, and 1000 lures on the shelf and in the bin each, at most.";
inline constexpr const char* everything_damaged = "The file cannot be read as everything of a bench.";
inline constexpr const char* everything_other_version =
    "The file was written by another version of this bench.";
inline constexpr const char* everything_lure = "Lure ";
inline constexpr const char* everything_bin_lure = "Lure in the bin ";
inline constexpr const char* everything_colon = ": ";
inline constexpr const char* everything_lure_damaged = "its entry in the file is damaged.";
inline constexpr const char* everything_settings = "The settings in the file are not known here.";

inline constexpr const char* compare = "Compare with another lure";
inline constexpr const char* compare_below = "Side by side: figures, drawings, lead.";
inline constexpr const char* compare_title = "Side by side";
inline constexpr const char* compare_here = "Filled: ";
inline constexpr const char* compare_other = "Line: ";
inline constexpr const char* compare_col_here = "This";
inline constexpr const char* compare_col_other = "Other";
inline constexpr const char* compare_col_difference = "Difference";
inline constexpr const char* compare_lead = "Lead per hole";
inline constexpr const char* compare_difference_note = "Difference: the other lure less this one.";
inline constexpr const char* compare_none = "–";
inline constexpr const char* compare_cannot = "That lure cannot be worked out.";

} // namespace evenfall::shell::look::words
