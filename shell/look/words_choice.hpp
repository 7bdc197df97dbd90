#pragma once

// Text about mixing, buying and choosing: resin, stock, woods and metals.

#include <array>
#include <string_view>

namespace evenfall::shell::look::words {

inline constexpr const char* resin_group = "Resin to mix";
inline constexpr const char* resin_below = "For the first film of epoxy. Take ratio and times from your own "
                                           "label; what stands here is common practice.";
inline constexpr const char* resin_lures = "Lures coated at once";
inline constexpr const char* resin_loss = "Left in cup and brush";
inline constexpr const char* resin_loss_below = "of all that is mixed; common practice, no source";
inline constexpr const char* resin_by = "The label's ratio is by";
inline constexpr const char* resin_by_weight = "weight";
inline constexpr const char* resin_by_volume = "volume";
inline constexpr const char* resin_parts = "Parts of resin";
inline constexpr const char* hardener_parts = "Parts of hardener";
inline constexpr const char* resin_parts_absent = "see the label";
inline constexpr const char* resin_density = "Density of the resin";
inline constexpr const char* hardener_density = "Density of the hardener";
inline constexpr const char* resin_working = "Working time, min";
inline constexpr const char* resin_working_below = "by the label, at ";
inline constexpr const char* resin_working_up_to = " and up to ";
inline constexpr const char* resin_warmth = "Temperature of the mix";
inline constexpr const char* resin_per_lure = "Minutes for one lure";
inline constexpr const char* resin_all = "Mix in all";
inline constexpr const char* resin_a = "Resin";
inline constexpr const char* resin_b = "Hardener";
inline constexpr const char* resin_lasts = "It can be worked for";
inline constexpr const char* resin_lasts_below = "rate rule, 55 kJ/mol: ten degrees halve it";
inline constexpr const char* resin_minutes = "min";
inline constexpr const char* resin_recoat = "Next coat after";
inline constexpr const char* resin_recoat_below =
    "hours at that temperature, from the label's window; later only after sanding";
inline constexpr const char* resin_hours = "h";
inline constexpr const char* resin_from_label = "Recoat from, h";
inline constexpr const char* resin_to_label = "Recoat until, h";
inline constexpr const char* resin_mixes = "Mixes";
inline constexpr const char* resin_lures_each = " lures each";
inline constexpr const char* resin_note =
    "A larger batch keeps its own heat and thickens sooner; a full cup can smoke. Mix little, pour it out "
    "flat. Cold resin may stand in warm water before it is mixed, never over a flame. Let it cure a day "
    "before the tub.";

inline constexpr const char* metals_group = "The same lure in other metals";
inline constexpr const char* metals_below =
    "All holes filled with one material, planned anew for the same fall and hang.";
inline constexpr const char* woods_group = "The same lure in other woods";
inline constexpr const char* woods_below =
    "By the table's densities at this moisture, the lead planned anew. The ± is what two boards of one "
    "species differ by. Janka: force that presses a steel ball half into the side, at 12 % moisture; the "
    "Wood Handbook, partly from reprints and from memory.";
inline constexpr const char* col_metal = "Metal";
inline constexpr const char* col_wood = "Wood";
inline constexpr const char* col_hard = "Janka N";
inline constexpr const char* no_figure = "–";
inline constexpr const char* col_deepest = "deepest";
inline constexpr const char* col_ballast = "lead";
inline constexpr const char* not_met = "not reachable";
inline constexpr const char* bare_floats = "floats bare";

inline constexpr const char* stock_group = "To cut or count";
inline constexpr std::array<std::string_view, 3> stock_forms{"rod, wire", "shot", "sheet"};
inline constexpr const char* stock_diameter = "Diameter";
inline constexpr const char* stock_thickness = "Thickness";
inline constexpr const char* stock_as_filled = "As each hole is filled";
inline constexpr const char* stock_off = "off the fill by ";
inline constexpr const char* stock_area_unit = "cm\xC2\xB2";
inline constexpr const char* stock_too_thick = "too thick";

} // namespace evenfall::shell::look::words
