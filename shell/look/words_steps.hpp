#pragma once

#include "evenfall.hpp"

// Text of the step panels: headings, names of fields, and sentences on the effect of a number.

namespace evenfall::shell::look::words {

// shared
inline constexpr const char* name = "Name";
inline constexpr const char* material = "Material";
inline constexpr const char* mass = "Mass";
inline constexpr const char* stage = "Stage";
inline constexpr const char* remove = "Remove";
inline constexpr const char* duplicate = "Duplicate";
inline constexpr const char* together = "Together";
inline constexpr const char* spread = "Amount \xC2\xB1";
inline constexpr const char* place_x = "From the nose";
inline constexpr const char* place_y = "Off the middle";
inline constexpr const char* place_y_below = "to starboard positive";
inline constexpr const char* place_z = "Height";
inline constexpr const char* place_z_below = "above the datum line; below it negative";
inline constexpr const char* dash = "\xE2\x80\x94";
inline constexpr const char* plus_minus = "\xC2\xB1";
inline constexpr const char* separator = " \xC2\xB7 ";
inline constexpr const char* in_the_water = "in water";

// shape
inline constexpr const char* shape_head = "Shape";
inline constexpr const char* shape_below = "The body as sawn and carved, before it is cut into segments.";
inline constexpr const char* note_field = "Note";
inline constexpr const char* wood_group = "Wood";
inline constexpr const char* species = "Wood";
inline constexpr const char* moisture = "Moisture";
inline constexpr const char* moisture_below = "of the oven-dry mass; shop-dry wood holds 6 to 12 %";
inline constexpr const char* own_density = "Own density";
inline constexpr const char* own_density_below = "weigh and measure the board: nothing tells more";
inline constexpr const char* from_table = "from the table";
inline constexpr const char* density_spread = "Density \xC2\xB1";
inline constexpr const char* density_spread_below =
    "one standard deviation; boards of one wood differ by about 10 %";
inline constexpr const char* usual = "usual";
inline constexpr const char* density_now = "Density now";
inline constexpr const char* carving = "How closely it is carved";
inline constexpr const char* carving_careful = "Careful";
inline constexpr const char* carving_usual = "Usual";
inline constexpr const char* carving_rough = "Rough";
inline constexpr const char* size_group = "Size";
inline constexpr const char* length_field = "Length";
inline constexpr const char* length_below = "scales the whole lure; bits, gaps and parts stay";
inline constexpr const char* height_field = "Height";
inline constexpr const char* height_below = "back to belly; a taller body rights itself more strongly";
inline constexpr const char* width_field = "Thickness";
inline constexpr const char* width_below = "side to side; a thinner body falls faster";
inline constexpr const char* section_group = "Section";
inline constexpr const char* section_round = "Rounded";
inline constexpr const char* section_chamfer = "Chamfered";
inline constexpr const char* section_free = "Drawn";
inline constexpr const char* section_round_note =
    "Exponent 2 is an ellipse; more is squarer and holds more wood.";
inline constexpr const char* section_chamfer_note =
    "The cut is a share of half the width and half the height: 0 is a box, 1 a diamond.";
inline constexpr const char* section_free_note =
    "One half-section for the whole length. Drag its points in the section view; tap its line to add one.";
inline constexpr const char* section_point_out = "Share of half the width";
inline constexpr const char* section_point_up = "Share of half the height";
inline constexpr const char* section_changed = "Section";
inline constexpr const char* curves_group = "Curves";
inline constexpr const char* curve_back = "Back";
inline constexpr const char* curve_belly = "Belly";
inline constexpr const char* curve_width = "Width";
inline constexpr const char* curve_corners = "Corners";
inline constexpr const char* curve_note_height = "Height over the datum line at each station.";
inline constexpr const char* curve_note_width = "Half the thickness at each station, seen from above.";
inline constexpr const char* curve_note_corners = "One point is the same all along.";
inline constexpr const char* point_value_height = "Height";
inline constexpr const char* point_value_width = "Half thickness";
inline constexpr const char* section_exponent = "Exponent";
inline constexpr const char* section_cut = "Corner cut";
inline constexpr const char* add_point = "Add a point";
inline constexpr const char* nudge_fore = "Fore";
inline constexpr const char* nudge_aft = "Aft";
inline constexpr const char* nudge_down = "Down";
inline constexpr const char* nudge_up = "Up";
inline constexpr const char* nudge_in = "In";
inline constexpr const char* nudge_out = "Out";
inline constexpr const char* snap = "Round figures";
inline constexpr const char* snap_below =
    "Dragged points go to half millimetres or 1/32 in, to the datum line and to their neighbours' level.";
inline constexpr const char* mirror = "Back and belly together";
inline constexpr const char* mirror_below = "Moving one line moves the other the opposite way.";
inline constexpr const char* board_group = "Board";
inline constexpr const char* board_show = "Sawn from a board";
inline constexpr const char* board_show_below = "Draws the board and the saw line round the body.";
inline constexpr const char* board_length = "Board length";
inline constexpr const char* board_height = "Board height";
inline constexpr const char* board_thickness = "Board thickness";
inline constexpr const char* board_saw = "Left for the saw";
inline constexpr const char* board_saw_below =
    "Kerf and clean-up between the drawn line and the cut, all round.";
inline constexpr const char* measured_group = "Caliper readings";
inline constexpr const char* measured_note =
    "What the carved body measures at a station replaces the drawn thickness there; between stations the "
    "difference fades smoothly.";
inline constexpr const char* measured_add = "Add a reading at the section";
inline constexpr const char* measured_remove = "Remove this reading";
inline constexpr const char* measured_width = "Width read";
inline constexpr const char* measured_height = "Height read";
inline constexpr const char* measured_absent = "as drawn";
inline constexpr const char* measured_kind = "caliper reading";
inline constexpr const char* remove_point = "Remove this point";
// cautions; their sentences are the core's (cautions)
inline constexpr const char* cautions_group = "Before you begin";
inline constexpr const char* saws_title = "Saws, blades, dust";
inline constexpr const char* burrs_title = "Joint saws and burrs";
inline constexpr const char* drilling_title = "Drilling";
inline constexpr const char* lead_title = "Lead";
inline constexpr const char* hooks_title = "Hooks";
inline constexpr const char* ca_title = "CA glue";
inline constexpr const char* ca_on_soda_title = "CA glue on baking soda";
inline constexpr const char* epoxy_title = "Epoxy";
inline constexpr const char* sanding_title = "Sanding";
inline constexpr const char* spray_title = "Spray and clear coats";
inline constexpr const char* plastisol_title = "Hot soft plastic";
inline constexpr const char* silicone_title = "Silicone";

// provenance of a number in the tables
inline constexpr const char* figure_read = "read in its source";
inline constexpr const char* figure_second_hand = "second-hand";
inline constexpr const char* figure_computed = "computed";
inline constexpr const char* figure_memory = "from memory, not re-read";
inline constexpr const char* figure_practice = "common practice, no source";

// joints
inline constexpr const char* joints_head = "Joints";
inline constexpr const char* joints_below =
    "Hinge cuts from nose to tail. Gap and relief let the chain swing; both cost wood, and so buoyancy.";
inline constexpr const char* joint_kind = "joint";
inline constexpr const char* joint_title = "Joint";
inline constexpr const char* no_joints = "One piece: no joints yet.";
inline constexpr const char* joint_at = "From the nose";
inline constexpr const char* joint_at_below = "middle of the gap";
inline constexpr const char* joint_gap = "Gap";
inline constexpr const char* joint_gap_below = "between the faces at the middle plane, before any coat";
inline constexpr const char* relief_fore = "Relief, fore face";
inline constexpr const char* relief_aft = "Relief, aft face";
inline constexpr const char* relief_below = "how far each face falls back from the middle plane";
inline constexpr const char* add_joint = "Add a joint";
inline constexpr const char* copy_joint = "One more like this, behind it";
inline constexpr const char* same_for_all = "Same for all joints";
inline constexpr const char* spread_joints = "Segments of one length";
inline constexpr const char* remove_joint = "Remove this joint";
inline constexpr const char* segments_group = "Segments";
inline constexpr const char* segment_title = "Segment";

// hardware
inline constexpr const char* hardware_head = "Hardware";
inline constexpr const char* hardware_below =
    "Whatever is weighed and put on. Stainless low in the body does part of the lead's work.";
inline constexpr const char* part_kind = "part";
inline constexpr const char* fitted_group = "Fitted in the wood";
inline constexpr const char* painted_group = "Put on after paint, before the clear coat";
inline constexpr const char* rigged_group = "Rigged when finished";
inline constexpr const char* no_parts = "Nothing here yet.";
inline constexpr const char* stage_fitted = "Fitted";
inline constexpr const char* stage_painted_part = "After paint";
inline constexpr const char* stage_rigged_short = "Rigged";
inline constexpr const char* part_mass_below = "weigh several at once and divide";
inline constexpr const char* mass_sigma = "Mass \xC2\xB1";
inline constexpr const char* mass_sigma_absent = "3 % of it";
inline constexpr const char* hook_size = "A usual hook, from memory";
inline constexpr const char* hook_of_size = "Hook, size ";
inline constexpr const char* part_reach = "Reach of a hook";
inline constexpr const char* part_reach_below = "from its hanger's eye to the far side of the bend";
inline constexpr const char* part_reach_absent = "no hook";
inline constexpr const char* embedded = "In the wood";
inline constexpr const char* embedded_below = "share of its volume sitting in wood that was there";
inline constexpr const char* belongs_to = "Segment";
inline constexpr const char* nearest = "the nearest";
inline constexpr const char* hangers_group = "Hangers and line tie";
inline constexpr const char* no_hangers = "None: the line, a hook or a ring hangs on one.";
inline constexpr const char* add_hanger = "Add a hanger";
inline constexpr const char* hanger_kind = "hanger";
inline constexpr const char* new_hanger = "Hanger";
inline constexpr const char* hanger_twisted = "twisted";
inline constexpr const char* hanger_screw = "screw eye";
inline constexpr const char* hanger_straight = "wire through";
inline constexpr const char* hanger_on = "Sits on";
inline constexpr const char* on_nose = "nose";
inline constexpr const char* on_tail = "tail";
inline constexpr const char* on_belly = "belly";
inline constexpr const char* on_back = "back";
inline constexpr const char* hanger_wire = "Wire";
inline constexpr const char* hanger_eye = "Eye inside";
inline constexpr const char* hanger_depth = "Depth of its hole";
inline constexpr const char* hanger_mass = "Weighed";
inline constexpr const char* hanger_mass_absent = "by its wire";
inline constexpr const char* add_fitting = "Add a part in the wood";
inline constexpr const char* add_dressing = "Add a rigged part";
inline constexpr const char* new_part = "Part";
inline constexpr const char* pockets_group = "Pockets and slots";
inline constexpr const char* pocket_kind = "pocket";
inline constexpr const char* new_pocket = "Pocket";
inline constexpr const char* no_pockets = "None cut.";
inline constexpr const char* pocket_from = "Begins";
inline constexpr const char* pocket_to = "Ends";
inline constexpr const char* pocket_width = "Width";
inline constexpr const char* pocket_low = "Lower end";
inline constexpr const char* pocket_high = "Upper end";
inline constexpr const char* through_belly = "through the belly";
inline constexpr const char* through_back = "through the back";
inline constexpr const char* floods = "Floods";
inline constexpr const char* floods_below = "water comes in: the pocket lifts nothing";
inline constexpr const char* add_pocket = "Add a pocket";

// lead
inline constexpr const char* lead_head = "Lead";
inline constexpr const char* lead_to_fall = "Finished lure to fall";
inline constexpr const char* lead_to_weigh = "Finished lure to weigh";
inline constexpr const char* lead_to_hang = "hang";
inline constexpr const char* hole_kind = "hole";
inline constexpr const char* targets_group = "What is asked";
inline constexpr const char* by_fall = "Rate of fall";
inline constexpr const char* by_in_water = "Weight in water";
inline constexpr const char* target_fall = "Fall";
inline constexpr const char* target_fall_below = "steady, level, in the fishing water, fully rigged";
inline constexpr const char* target_in_water = "In water";
inline constexpr const char* target_in_water_below =
    "mass less displaced water; negative floats, zero suspends";
inline constexpr const char* target_pitch = "Hang";
inline constexpr const char* target_pitch_below = "nose-up positive, nose-down negative";
inline constexpr const char* fall_band = "Band on the fall";
inline constexpr const char* pitch_band = "Band on the hang";
inline constexpr const char* matters_more = "Where the holes cannot meet both";
inline constexpr const char* matters_both = "Both alike";
inline constexpr const char* matters_fall = "The fall first";
inline constexpr const char* matters_weight = "The weight first";
inline constexpr const char* matters_hang = "The hang first";
inline constexpr const char* plan_lead = "Plan the lead";
inline constexpr const char* plan_met = "The plan meets what is asked";
inline constexpr const char* plan_met_below = "Weight is kept forward and low where there is a choice.";
inline constexpr const char* plan_short = "The nearest that the holes allow";
inline constexpr const char* plan_keep = "Keep";
inline constexpr const char* plan_drop = "Undo";
inline constexpr const char* before = "before";
inline constexpr const char* after = "after";
inline constexpr const char* row_finished = "Finished";
inline constexpr const char* row_in_water = "In water";
inline constexpr const char* row_fall = "Fall";
inline constexpr const char* row_hang = "Hang";
inline constexpr const char* row_righting = "B above G";
inline constexpr const char* holes_group = "Holes";
inline constexpr const char* no_holes = "No holes yet: add one, and let the plan fill it.";
inline constexpr const char* col_hole = "hole";
inline constexpr const char* col_bit = "bit";
inline constexpr const char* col_depth = "depth";
inline constexpr const char* col_fill = "fill";
inline constexpr const char* add_hole = "Add a hole";
inline constexpr const char* remove_hole = "Remove";
inline constexpr const char* hole_use = "The plan may choose";
inline constexpr const char* use_ballast = "depth, fill";
inline constexpr const char* use_drilled = "fill only";
inline constexpr const char* use_leaded = "lead is in";
inline constexpr const char* use_fixed = "nothing";
inline constexpr const char* hole_from = "Bored from";
inline constexpr const char* from_belly = "belly";
inline constexpr const char* from_back = "back";
inline constexpr const char* hole_diameter = "Bit";
inline constexpr const char* hole_diameter_below = "common practice: 1/4 in";
inline constexpr const char* hole_depth = "Depth";
inline constexpr const char* hole_depth_below = "from the skin; 0 leaves the wood whole";
inline constexpr const char* hole_end = "End of the hole";
inline constexpr const char* end_flat = "flat";
inline constexpr const char* end_point = "118\xC2\xB0 point";
inline constexpr const char* fill_field = "Fill";
inline constexpr const char* fill_none = "no fill";
inline constexpr const char* plug_hole = "Drilled by mistake: plug it";
inline constexpr const char* plug_note =
    "Plugged: a hardwood dowel as wide as the hole and as long as it is deep, glued in "
    "and cut flush. The plan leaves it alone.";
inline constexpr const char* fill_none_below = "an empty or plugged hole";
inline constexpr const char* fill_by = "Fill given by";
inline constexpr const char* fill_by_mass = "mass";
inline constexpr const char* fill_by_length = "length of stock";
inline constexpr const char* fill_mass = "Fill";
inline constexpr const char* fill_mass_below = "lies at the deep end";
inline constexpr const char* fill_length = "Length of stock";
inline constexpr const char* fill_rod = "Rod diameter";
inline constexpr const char* fill_rod_absent = "fills the hole";
inline constexpr const char* cap_field = "Cap";
inline constexpr const char* cap_none = "open: floods";
inline constexpr const char* cap_length = "Cap thickness";
inline constexpr const char* max_depth = "Depth stop";
inline constexpr const char* max_depth_below = "where the stop on the bit is set";
inline constexpr const char* wall = "Wall left";
inline constexpr const char* wall_below = "wood left to skin, joint face and next hole";
inline constexpr const char* tub_title = "In the tub now";
inline constexpr const char* tub_sealed = "Sealed and not yet painted";
inline constexpr const char* tub_sealed_it = ", ";
inline constexpr const char* tub_falls = "it should fall";
/// By Behaviour, followed by a mass.
inline constexpr const char* tub_rests[] = {"it should float, lifting", "it should suspend, to within",
                                            "it should sink, with no steady way of falling, and weigh"};
inline constexpr const char* tub_weighs = "and weigh";
inline constexpr const char* tub_in_tub = "in the tub.";
inline constexpr const char* tub_coats = "Coats to come:";
inline constexpr const char* tub_dress = "Hooks, tail and all else rigged:";
inline constexpr const char* tub_felt = "felt in the fishing water";

// finish
inline constexpr const char* finish_head = "Finish";
inline constexpr const char* finish_below =
    "Coats in the order of work. A film weighs little in water; what soaks in weighs all of it.";
inline constexpr const char* coat_kind = "coat";
inline constexpr const char* new_coat = "Coat";
inline constexpr const char* no_coats = "Bare wood: no coats yet.";
inline constexpr const char* coat_soaks = "soaks in";
inline constexpr const char* coat_film = "film";
inline constexpr const char* coat_works = "Kind of coat";
inline constexpr const char* coat_by = "Amount given by";
inline constexpr const char* by_thickness = "thickness";
inline constexpr const char* by_mass = "mass";
inline constexpr const char* coat_thickness = "Thickness";
inline constexpr const char* coat_thickness_below(bool inches) {
    return inches ? "cured; a brushed epoxy coat is about 8 to 16 mil (common practice, no source)"
                  : "cured; a brushed epoxy coat is about 0.2 to 0.4 mm (common practice, no source)";
}
inline constexpr const char* coat_mass = "Stays on the lure";
inline constexpr const char* coat_mass_below = "all segments together: weigh before and after";
inline constexpr const char* coat_spread_below = "one standard deviation of the amount";
inline constexpr const char* coat_spread_absent = "20 %";
inline constexpr const char* on_skin = "On the skin";
inline constexpr const char* on_faces = "On the joint faces";
inline constexpr const char* on_faces_below = "also narrows the gap";
inline constexpr const char* on_pockets = "In the pockets";
inline constexpr const char* on_pockets_below = "brushed in with the rest; off: plugged while it goes on";
inline constexpr const char* coat_note = "Colour and paint";
inline constexpr const char* felt_in_water = "Felt in the water";
inline constexpr const char* of_its_mass = "of its mass";
inline constexpr const char* film_grows = "the film makes the lure ";
inline constexpr const char* film_grows_unit = " cm³ larger, and that much water carries the rest";
inline constexpr const char* soak_grows_nothing =
    "what soaks in makes the lure no larger, so nothing carries it";
inline constexpr const char* coats_insight =
    "A film weighs little in water: m grams of a clear coat of density ρ are felt as m·(1 − ρw/ρ), about an "
    "eighth for epoxy in "
    "fresh water. A sealer that soaks in is felt in full. So a gram of sealer moves the fall as much as "
    "eight grams of clear coat.";
inline constexpr const char* stage_sealed_short = "Sealer";
inline constexpr const char* stage_painted_short = "Paint";
inline constexpr const char* stage_clear_short = "Clear coat";
inline constexpr const char* add_sealer = "Sealer";
inline constexpr const char* add_paint = "Paint";
inline constexpr const char* add_clear = "Clear coat";
inline constexpr const char* add_coat_group = "Add a coat";
inline constexpr const char* earlier = "Earlier";
inline constexpr const char* later = "Later";

// water
inline constexpr const char* water_head = "Water";
inline constexpr const char* water_below =
    "Denser water carries more: salt makes it denser, and so does cold, down to 4 °C.";
inline constexpr const char* fishing_group = "Where it is fished";
inline constexpr const char* tub_group = "Where it is tested";
inline constexpr const char* temperature = "Temperature";
inline constexpr const char* air_group = "Air caught";
inline constexpr const char* air_caught = "Air under water";
inline constexpr const char* air_none = "none";
inline constexpr const char* air_below =
    "in pockets and under hooks; a cubic centimetre lifts a gram. Better shake it out before you read: dip "
    "and tap the "
    "lure under water, open and close its joints, and put a drop of dish soap into the tub";
inline constexpr const char* salinity = "Salt";
inline constexpr const char* salinity_below = "absolute: grams in a kilogram; sea about 35, fresh 0";
inline constexpr const char* water_density = "Water weighs";
inline constexpr const char* tub_as_fishing = "Tub the same as the fishing water";
inline constexpr const char* stages_group = "Stage by stage";
inline constexpr const char* stages_note =
    "Mass with its standard deviation; in water and fall are for the tub.";
inline constexpr const char* with_rigging = "  with "; ///< hooks and tail
inline constexpr const char* col_stage = "stage";
inline constexpr const char* col_mass = "scale";
inline constexpr const char* col_in_tub = "in tub";
inline constexpr const char* segments_table_group = "Segment by segment";
inline constexpr const char* col_segment = "segment";
inline constexpr const char* col_in_water = "in water";
inline constexpr const char* centres_group = "Centres";
inline constexpr const char* centre_g = "G, of gravity";
inline constexpr const char* centre_b = "B, of buoyancy";
inline constexpr const char* centre_below = "from the nose / off the middle / above the datum line";
inline constexpr const char* bg_row = "B above G";
inline constexpr const char* bg_row_below = "must be positive, or it rolls over";
inline constexpr const char* pitch_row = "Hang";
inline constexpr const char* roll_row = "Lean";
inline constexpr const char* roll_row_below = "to starboard positive";
inline constexpr const char* no_answer = "rolls over";
inline constexpr const char* floats_short = "floats";
inline constexpr const char* hangs_short = "suspends";
inline constexpr const char* ledger_group = "Ledger";
inline constexpr const char* ledger_note =
    "Everything that has mass or pushes water aside, in the order of the bench.";
inline constexpr const char* ledger_show = "Show every line";
inline constexpr const char* ledger_hide = "Hide the lines";
inline constexpr const char* col_segment_mass = "mass";
inline constexpr const char* displaces = "displaces";
inline constexpr const char* displaces_nothing = "displaces nothing more";

inline constexpr const char* line_wood = "Wood of";
inline constexpr const char* line_hole_wood = "Bored out of hole";
inline constexpr const char* line_hole_water = "Flooded hole";
inline constexpr const char* line_pocket_wood = "Cut out of";
inline constexpr const char* line_pocket_water = "Flooded";
inline constexpr const char* line_air = "Air caught";
inline constexpr const char* line_bore_wood = "Made room for";
inline constexpr const char* line_fill = "Fill of hole";
inline constexpr const char* line_cap = "Cap of hole";
inline constexpr const char* line_tail = "Soft tail";
inline constexpr const char* line_tenon = "Tenon of the tail";

// labels of the history
inline constexpr const char* coat_works_label = "Kind";
inline constexpr const char* curve_changed = "Curve:";
inline constexpr const char* of = "of";
inline constexpr const char* add = "Add";
inline constexpr const char* take_away = "Remove";
inline constexpr const char* use_word = "Use";
inline constexpr const char* side_word = "Side";
inline constexpr const char* order_word = "Order";
inline constexpr const char* surfaces_word = "Surfaces";

} // namespace evenfall::shell::look::words
