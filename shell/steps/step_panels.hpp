#pragma once

// One function per step; each draws its panel at the cursor and collects the changes asked for.

#include "steps/desk.hpp"

namespace evenfall::shell::steps {

void shape_panel(PanelContext& context);
void joints_panel(PanelContext& context);
void hardware_panel(PanelContext& context);
void lead_panel(PanelContext& context);
void finish_panel(PanelContext& context);
void water_panel(PanelContext& context);
void log_panel(PanelContext& context);
void sheet_panel(PanelContext& context);

// Parts of panels in files of their own.
void curve_rows(PanelContext& context);         ///< Shape: the points of one curve
void section_point_rows(PanelContext& context); ///< Shape: the points of a drawn section
void picture_rows(PanelContext& context);       ///< Shape: the picture behind the drawing
void by_hand_rows(PanelContext& context);       ///< Shape: one size for a weight, a mass or a length
void board_rows(PanelContext& context);
void measured_rows(PanelContext& context);
void hanger_rows(PanelContext& context); ///< Hardware: hangers and line tie
void pocket_rows(PanelContext& context); ///< Hardware: pockets and slots
void tail_rows(PanelContext& context);  ///< Hardware: the soft tail with a drawn shape, its mould and plastic
void swing_rows(PanelContext& context); ///< Joints: the bent chain, and how far each joint swings
void joint_hinge_rows(PanelContext& context, int index); ///< Joints: one hinge, its wire, walls and strength
void glue_rows(PanelContext& context);                   ///< Joints: glue round the eyes and for the caps
void weighed_board_rows(PanelContext& context); ///< Shape: a measured board compared with its species
void resin_rows(PanelContext& context);         ///< Finish: the two-part mix for n lures
void wood_table_rows(PanelContext& context);    ///< Shape: the same lure in every wood of the table
void metal_table_rows(PanelContext& context);   ///< Lead: the same plan in every metal
void stock_rows(PanelContext& context);         ///< Lead: each fill as a length of rod
void drawer_rows(PanelContext& context);        ///< Hardware: the builder's own parts
void stock_from_drawer(PanelContext& context,
                       int hole); ///< Lead: a rod from the drawer; draws nothing where there is none
void wire_from_drawer(PanelContext& context, int joint); ///< Joints: a wire from the drawer
void plan_rows(PanelContext& context);                   ///< Lead: the button, before and after
void ways_rows(PanelContext& context);                   ///< Lead: changes that do what lead alone cannot
void reach_map_rows(PanelContext& context);              ///< Lead: what lead reaches, as a picture
void family_rows(PanelContext& context);                 ///< Lead: floater, suspender, slow and fast sinker
void hole_rows(PanelContext& context, int index);        ///< Lead: everything about one hole
void ledger_rows(PanelContext& context);                 ///< Water: every line of the ledger
void fall_rows(PanelContext& context);   ///< Water: from rest to a depth, and all steady falls
void float_rows(PanelContext& context);  ///< Water: how it floats, its righting arm, submerged
void season_rows(PanelContext& context); ///< Water: by temperature and salinity
void swim_rows(PanelContext& context);   ///< Water: how it swims
/// Joints and Hardware: what the last change did to the swim, where the swim before it is known.
void swim_change_rows(PanelContext& context);
/// False where neither the holes nor a trim hole reach what is asked.
[[nodiscard]] bool lead_can_be_put_right(PanelContext& context);
void now_rows(PanelContext& context);     ///< Bench log: what to do now, what the tub should read
void reading_rows(PanelContext& context); ///< Bench log: readings, and a new one
/// Bench log: over what beats were counted, "over 3 m".
[[nodiscard]] std::string beats_counted_text(const PanelContext& context, const document::Reading& reading);
/// Bench log: beats that were foretold; absent: a dash.
void foretold_row(PanelContext& context, std::optional<double> per_m, std::string_view below);
/// Bench log: works out what is foretold of the shown lure while its count is typed, and writes it into it: a
/// count is held against the design that was counted, whatever becomes of the recipe.
void foretell_count(PanelContext& context, document::Reading& reading);
/// One touch for a reading that was left out as a slip: it stands; and back.
void stands_button(PanelContext& context, int index, const Uncertainty* uncertainty);
void uncertainty_rows(PanelContext& context); ///< Bench log: standard deviations, what to read next, draws
void hinge_rows(PanelContext& context);       ///< Water: loads on the joints

} // namespace evenfall::shell::steps
