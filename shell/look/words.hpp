#pragma once

// All text on the page, by place. Sentences of refusal come from the core.

namespace evenfall::shell::look::words {

inline constexpr const char* product = "Evenfall";

// strip
inline constexpr const char* finished = "Finished";
inline constexpr const char* in_water = "In water";
inline constexpr const char* fall = "Fall";
inline constexpr const char* hang = "Hang";
inline constexpr const char* righting = "Righting";
inline constexpr const char* asked = "asked";
inline constexpr const char* b_above_g = "B above G";
inline constexpr const char* g_above_b = "G above B";
inline constexpr const char* will_roll = "rolls over";
inline constexpr const char* no_fall[] = {"floats", "suspends",
                                          "sinks"}; ///< by Behaviour; the last where there is no steady fall
inline constexpr const char* rises_at = "rises at";
inline constexpr const char* sinks_at = "sinks at";
inline constexpr const char* at_rest = "at rest";
inline constexpr const char* no_hang = "none";

inline constexpr const char* segment = "segment";
inline constexpr const char* segments = "segments";
inline constexpr const char* name_of_lure = "Name of the lure";
inline constexpr const char* rename = "Name";

// bench shelf
inline constexpr const char* shelf = "Bench shelf";
inline constexpr const char* shelf_help = "Help";
inline constexpr const char* shelf_help_below =
    "Look for a word, or tap any figure with dots below its name.";
inline constexpr const char* shelf_first = "First steps";
inline constexpr const char* shelf_about = "About";
inline constexpr const char* shelf_version = "Evenfall "; // and its number
inline constexpr const char* shelf_kept = "Saved on this device";
inline constexpr const char* kept_unreadable = "Cannot be read";
inline constexpr const char* shelf_lures = "Lures to open";
inline constexpr const char* shelf_new = "New lure";
inline constexpr const char* shelf_copy = "Copy this lure";
inline constexpr const char* shelf_copy_below = "The copy opens; this one stays as it is.";
inline constexpr const char* name_of_copy = ", copy";
inline constexpr const char* shelf_hand_on = "Share";
inline constexpr const char* shelf_share = "Send as a link";
inline constexpr const char* shelf_share_without_log = "Send as a link without the bench log";
inline constexpr const char* too_long_a_link = "Too much for a link: send it as a file.";
inline constexpr const char* shelf_save = "Save as a file";
inline constexpr const char* shelf_load = "Open a file";
inline constexpr const char* shelf_bench = "This bench";
inline constexpr const char* language = "Language";
inline constexpr const char* english = "English";
inline constexpr const char* theme = "Screen";
inline constexpr const char* theme_light = "Bright";
inline constexpr const char* theme_dark = "Dim";
inline constexpr const char* text_size = "Text";
inline constexpr const char* text_usual = "Usual";
inline constexpr const char* text_large = "Large";
inline constexpr const char* hand = "Panel beside the drawing";
inline constexpr const char* hand_left = "Left";
inline constexpr const char* hand_right = "Right";
inline constexpr const char* shelf_install = "Install on this device";
inline constexpr const char* shelf_install_below = "Opens like any other program, also without a network.";
inline constexpr const char* unit_length = "Lengths";
inline constexpr const char* unit_mass = "Masses";
inline constexpr const char* unit_fall = "Rate of fall";
inline constexpr const char* unit_temperature = "Temperatures";
inline constexpr const char* opened = "Opened: ";
inline constexpr const char* not_restored = "The work saved on this device could not be read. ";
inline constexpr const char* undone = "Undone: ";
inline constexpr const char* redone = "Redone: ";

// steps
inline constexpr const char* step_shape = "Shape";
inline constexpr const char* step_joints = "Joints";
inline constexpr const char* step_hardware = "Hardware";
inline constexpr const char* step_hardware_short = "Parts";
inline constexpr const char* step_lead = "Lead";
inline constexpr const char* step_finish = "Finish";
inline constexpr const char* step_water = "Water";
inline constexpr const char* step_log = "Bench log";
inline constexpr const char* step_log_short = "Log";
inline constexpr const char* step_sheet = "Sheet";

// keypad
inline constexpr const char* keypad_set = "Set";
inline constexpr const char* keypad_cancel = "Cancel";
inline constexpr const char* keypad_clear = "Clear";
inline constexpr const char* keypad_no_number = "This is not a number yet.";
inline constexpr const char* keypad_space = "space";
inline constexpr const char* keypad_outside = "It has to lie within";
inline constexpr const char* to = "to";
inline constexpr const char* from = "from";

// controls
inline constexpr const char* on = "on";
inline constexpr const char* off = "off";
inline constexpr const char* none = "none";

} // namespace evenfall::shell::look::words
