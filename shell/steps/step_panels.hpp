#pragma once

// One function per step; each draws its panel at the cursor and collects the changes asked for.

#include "steps/desk.hpp"

namespace evenfall::shell::steps {

void shape_panel(Desk& desk);
void joints_panel(Desk& desk);
void hardware_panel(Desk& desk);
void lead_panel(Desk& desk);
void finish_panel(Desk& desk);
void water_panel(Desk& desk);
void log_panel(Desk& desk);
void sheet_panel(Desk& desk);

// Parts of panels in files of their own.
void curve_rows(Desk& desk);         ///< Shape: the points of one curve
void section_point_rows(Desk& desk); ///< Shape: the points of a drawn section
void picture_rows(Desk& desk);       ///< Shape: the picture behind the drawing
void blank_rows(Desk& desk);
void measured_rows(Desk& desk);
void pocket_rows(Desk& desk); ///< Hardware: pockets and slots
void tail_rows(Desk& desk);   ///< Hardware: the soft tail with a drawn shape, its mould and plastic
void swing_rows(Desk& desk);  ///< Joints: the bent chain, and how far each joint swings
void joint_hinge_rows(Desk& desk, int index); ///< Joints: one hinge, its wire, walls and strength
void glue_rows(Desk& desk);                   ///< Joints: glue round the eyes and for the caps
void block_check_rows(Desk& desk);            ///< Shape: a measured block compared with its species
void resin_rows(Desk& desk);                  ///< Finish: the two-part mix for n lures
void wood_table_rows(Desk& desk);             ///< Shape: the same lure in every wood of the table
void metal_table_rows(Desk& desk);            ///< Lead: the same plan in every metal
void stock_rows(Desk& desk);                  ///< Lead: each fill as a length of rod
void drawer_rows(Desk& desk);                 ///< Hardware: the builder's own parts
void stock_from_drawer(Desk& desk,
                       int hole); ///< Lead: a rod from the drawer; draws nothing where there is none
void wire_from_drawer(Desk& desk, int joint); ///< Joints: a wire from the drawer
void plan_rows(Desk& desk);                   ///< Lead: the button, before and after
void hole_rows(Desk& desk, int index);        ///< Lead: everything about one hole
void ledger_rows(Desk& desk);                 ///< Water: every line of the ledger
void fall_rows(Desk& desk);                   ///< Water: from rest to a depth, and all steady falls
void float_rows(Desk& desk);                  ///< Water: how it floats, its righting arm, submerged
void season_rows(Desk& desk);                 ///< Water: by temperature and salinity
void now_rows(Desk& desk);                    ///< Bench log: what to do now, what the tub should read
void reading_rows(Desk& desk);                ///< Bench log: readings, and a new one
void uncertainty_rows(Desk& desk);            ///< Bench log: standard deviations, what to read next, draws
void hinge_rows(Desk& desk);                  ///< Water: loads on the joints

} // namespace evenfall::shell::steps
