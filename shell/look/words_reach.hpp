#pragma once

// Text about what lead can reach, and about what would do what it cannot.

namespace evenfall::shell::look::words {

inline constexpr const char* ways_group = "If lead is not enough";
inline constexpr const char* ways_below =
    "Changes with which lead meets what is asked, the easiest at the bench first. Each is worked out whole, "
    "its lead planned anew; none brings a warning that is not there now.";
inline constexpr const char* ways_looking = "Looking for ways";
inline constexpr const char* ways_met = "Lead alone does it.";
inline constexpr const char* ways_none = "No small change of one or two things does it.";
inline constexpr const char* ways_chance = "Chance of a right first lure";
inline constexpr const char* ways_chance_below = "a way is to have this much, least";
inline constexpr const char* ways_chance_any = "any";
inline constexpr const char* ways_lead_alone = "lead alone";
inline constexpr const char* ways_this = "this way";
inline constexpr const char* ways_beside = "Side by side";
inline constexpr const char* ways_keep = "Keep this way";

// figures in one line: "finished 82.0 g, in water +18.5 g, fall 0.8 s/ft, …"
inline constexpr const char* way_finished = "finished ";
inline constexpr const char* way_in_water = ", in water ";
inline constexpr const char* way_fall = ", fall ";
inline constexpr const char* way_hang = ", hang ";
inline constexpr const char* way_righting = ", B above G ";
inline constexpr const char* way_chance = ", chance ";
inline constexpr const char* row_chance = "Chance";

inline constexpr const char* map_group = "What lead reaches";
inline constexpr const char* map_none = "No hole may be filled: lead reaches nothing.";
inline constexpr const char* map_title = "Hang";
inline constexpr const char* map_asked = "asked";
inline constexpr const char* map_nearest = "nearest";
inline constexpr const char* map_inside = "What is asked lies inside: lead alone meets it.";
inline constexpr const char* map_outside =
    "What is asked lies outside: with these holes, lead alone comes no nearer than the point marked.";
inline constexpr const char* map_axes = "Across: weight in water; under it, the fall that goes with it, in ";
inline constexpr const char* map_hatched = ". Hatched: what today's shape and holes allow.";

// sizes by hand
inline constexpr const char* by_hand_group = "Hold these, vary that";
inline constexpr const char* by_hand_weight = "For a weight in water";
inline constexpr const char* by_hand_weight_below = "another thickness; lead, hooks and coats are held";
inline constexpr const char* by_hand_mass = "For a finished mass";
inline constexpr const char* by_hand_mass_below = "another length; hooks, wire, bits and lead anew";
inline constexpr const char* by_hand_length = "At another length";
inline constexpr const char* by_hand_length_below = "hooks, wire and bits of the shop's sizes, lead anew";

inline constexpr const char* family_group = "One body, four leads";
inline constexpr const char* family_below =
    "The same body, holes, hooks and coats as floater, suspender, slow and fast sinker, the lead of each "
    "planned for the hang that is asked. Tap one to open it.";
inline constexpr const char* family_none = "This lure's lead cannot be planned.";
inline constexpr const char* family_weight = "in water";
inline constexpr const char* family_chance = "chance";
inline constexpr const char* family_own = "Open as a lure of its own";

} // namespace evenfall::shell::look::words
