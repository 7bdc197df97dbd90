#pragma once

// Text of the parts drawer.

namespace evenfall::shell::look::words {

inline constexpr const char* drawer_head = "Parts drawer";
inline constexpr const char* drawer_below = "Your own weighed parts, saved on this device beside the lures. "
                                            "What is put on a lure copies its figures.";
inline constexpr const char* drawer_empty =
    "Nothing in it yet. Weigh ten of a kind together and divide: one hook alone is too light for a kitchen "
    "scale. Then open a part above and put it in here.";
inline constexpr const char* drawer_put_in = "To drawer";
inline constexpr const char* drawer_put_on = "Put on the lure";
inline constexpr const char* drawer_put_on_label = "From the drawer: ";
inline constexpr const char* drawer_throw_out = "Remove";
inline constexpr const char* drawer_new_part = "Add a part";
inline constexpr const char* drawer_new_wire = "Add wire";
inline constexpr const char* drawer_new_stock = "Add rod";
inline constexpr const char* drawer_save = "Save as a file";
inline constexpr const char* drawer_load = "Load a file";
inline constexpr const char* drawer_file = "evenfall-drawer.json";
inline constexpr const char* drawer_taken_in = "Put into the drawer: ";
inline constexpr const char* drawer_full = "The drawer holds 200 parts and is full.";
inline constexpr const char* drawer_nameless =
    "Give the part a name first: the drawer finds its parts by name.";
inline constexpr const char* drawer_same_name = "There is a part of this name in the drawer already.";
inline constexpr const char* drawer_wire = "Wire";
inline constexpr const char* drawer_stock = "Rod";
inline constexpr const char* drawer_part = "Part";
inline constexpr const char* drawer_diameter = "Diameter";
inline constexpr const char* drawer_stock_pick = "Rod from the drawer";
inline constexpr const char* drawer_wire_pick = "Wire from the drawer";
inline constexpr const char* drawer_none_chosen = "none";
inline constexpr const char* drawer_temper = "Temper";

inline constexpr const char* drawer_lacks = "is missing; it is ";
inline constexpr const char* drawer_no_number = "must be a number, ";
inline constexpr const char* drawer_off_limits = "must be ";
inline constexpr const char* drawer_no_text = "must be a text";
inline constexpr const char* drawer_unknown = "is not known here";
inline constexpr const char* drawer_no_thing = "must be one part with its fields";
inline constexpr const char* drawer_no_material = "is not in the table of materials";
inline constexpr const char* drawer_too_large = "The file is too large for a drawer: 200 parts at most.";
inline constexpr const char* drawer_damaged = "The file holds no parts drawer that can be read.";
inline constexpr const char* drawer_other_version =
    "The drawer was written by another version of this bench.";

} // namespace evenfall::shell::look::words
