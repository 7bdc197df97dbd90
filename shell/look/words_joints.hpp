#pragma once

// Text of the Joints step beyond place and shape of the cuts: swing, hinge, walls, strength.

namespace evenfall::shell::look::words {

inline constexpr const char* swing_group = "Swing";
inline constexpr const char* swing_straight = "straight";
inline constexpr const char* swing_to_port = "tail to port";
inline constexpr const char* swing_to_starboard = "tail to starboard";
inline constexpr const char* swing_row = "swings";
inline constexpr const char* swing_bare = "bare";
inline constexpr const char* swing_coated = "with its coats";
inline constexpr const char* swing_wire = "wire stops it at";
inline constexpr const char* swing_eyes = "linked eyes meet at";
inline constexpr const char* wrap_row = "All joints together";
inline constexpr const char* turn_row = "Tightest even turn";
inline constexpr const char* turn_row_below = "radius that every joint can follow";
inline constexpr const char* port_starboard = "to port / to starboard";

inline constexpr const char* hinge_drawn = "Hinge drawn";
inline constexpr const char* hinge_drawn_below = "off: a pin in the middle of the gap is taken";
inline constexpr const char* hinge_kind_field = "Hung on";
inline constexpr const char* hinge_pinned = "a pin";
inline constexpr const char* hinge_linked = "linked eyes";
inline constexpr const char* hinge_eyes = "Eyes on";
inline constexpr const char* hinge_eyes_fore = "fore half";
inline constexpr const char* hinge_eyes_aft = "aft half";
inline constexpr const char* eyes_lean = "Fore eye leans";
inline constexpr const char* eyes_lean_below = "out of the level; the aft one stands square to it";
inline constexpr const char* slop_fore_aft = "Play fore-aft";
inline constexpr const char* slop_up_down = "Play up-down";
inline constexpr const char* slop_sideways = "Play sideways";
inline constexpr const char* slop_below = "from stop to stop, necks in line";
inline constexpr const char* pin_place = "Pin behind the gap";
inline constexpr const char* pin_place_below = "its axis, from the gap's middle; before it negative";
inline constexpr const char* pin_off = "Pin off the middle";
inline constexpr const char* pin_off_below = "to starboard positive";
inline constexpr const char* pin_size = "Pin";
inline constexpr const char* wire_size = "Wire of the eyes";
inline constexpr const char* eye_size = "Eye inside";
inline constexpr const char* upper_eye = "Upper eye at";
inline constexpr const char* lower_eye = "Lower eye at";
inline constexpr const char* eye_height_below = "its height over the datum line; with one of both, one eye";
inline constexpr const char* eye_absent = "in the pocket";
inline constexpr const char* twist_turns = "Turns of the twist";
inline constexpr const char* glued_depth = "Glued in";
inline constexpr const char* hinge_weighs = "Weighs itself";
inline constexpr const char* hinge_weighs_below =
    "eyes and pin by their wire; off: they are counted as parts under Hardware";
inline constexpr const char* hinge_mass = "Weighed together";
inline constexpr const char* hinge_mass_absent = "by their wire";
inline constexpr const char* hinge_parts_note =
    "Parts near this joint may be its eyes and pin, typed in by hand.";
inline constexpr const char* hinge_takes_over = "Let the hinge weigh itself instead";
inline constexpr const char* wire_temper = "Wire is";
inline constexpr const char* temper_spring = "spring hard";
inline constexpr const char* temper_soft = "soft (usual)";

inline constexpr const char* wire_group = "Wire and bits";
inline constexpr const char* cut_row = "Cut for each eye";
inline constexpr const char* cut_row_below = "and a hand's width to hold it by";
inline constexpr const char* bend_row = "Bend it round";
inline constexpr const char* bend_row_below = "a rod this thick: it springs back";
inline constexpr const char* overbend_row = "Over-bend a right angle by";
inline constexpr const char* overbend_below =
    "spring hard wire opens again, soft hardly; yield by common practice, no source: try a scrap";
inline constexpr const char* rocks_row = "One eye alone rocks by up to";
inline constexpr const char* rocks_below =
    "out of the level, before it binds; pocket and wood may stop it sooner";
inline constexpr const char* bit_row = "Bit for the twist";
inline constexpr const char* pin_bit_row = "Bit for the pin";
inline constexpr const char* no_bit = "none fits";
inline constexpr const char* play_row = "Play in each eye";
inline constexpr const char* play_sag = "sags by up to";

inline constexpr const char* strength_group = "Strength";
inline constexpr const char* strength_row = "Gives way at about";
inline constexpr const char* strength_times = "times the line";
inline constexpr const char* newton = "N";
inline constexpr const char* line_field = "Line, breaking load";
inline constexpr const char* line_absent = "20 lb";
inline constexpr const char* pound_force_below = "pounds";
inline constexpr const char* strength_note = "An estimate from wire tables and the shear of this wood: pull "
                                             "one hinge of your own until it gives before "
                                             "you trust a lure to it.";

inline constexpr const char* walls_group = "Wood left";
inline constexpr const char* wall_pin_face = "before the pin";
inline constexpr const char* wall_pin_skin = "beside the pin";
inline constexpr const char* wall_pin_hole = "pin to hole";
inline constexpr const char* wall_pocket_skin = "beside the pocket";
inline constexpr const char* wall_pocket_hole = "pocket to hole";

inline constexpr const char* wire_title = "Wire";

} // namespace evenfall::shell::look::words
