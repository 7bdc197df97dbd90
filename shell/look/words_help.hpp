#pragma once

// Names of the figures that went into an answer, as the help tells them. The help's own texts are in
// shell/help.

namespace evenfall::shell::look::words {

inline constexpr const char* went_wood = "Wood that is left";
inline constexpr const char* went_lead = "Fill of the holes";
inline constexpr const char* went_hardware = "Hinges, hangers and parts";
inline constexpr const char* went_tail = "Soft tail";
inline constexpr const char* went_coats = "Coats";
inline constexpr const char* went_sigma = "Standard deviation";
inline constexpr const char* went_mass = "Mass";
inline constexpr const char* went_volume = "Water pushed aside";
inline constexpr const char* went_volume_of_board = "Length, width and height multiplied";
inline constexpr const char* went_water = "Density of the water";
inline constexpr const char* went_temperature = "Temperature of the water";
inline constexpr const char* went_in_water = "Weight in water";
inline constexpr const char* went_angle = "Angle while falling";
inline constexpr const char* went_model_slow = "Slow end of the model";
inline constexpr const char* went_model_fast = "Fast end of the model";
inline constexpr const char* went_g_aft = "G from the nose";
inline constexpr const char* went_b_aft = "B from the nose";
inline constexpr const char* went_g_side = "G off the middle";
inline constexpr const char* went_b_side = "B off the middle";
inline constexpr const char* went_g_up = "G above the datum line";
inline constexpr const char* went_b_up = "B above the datum line";
inline constexpr const char* went_bg = "B above G";
inline constexpr const char* went_fall_band = "Band on the fall";
inline constexpr const char* went_hang_band = "Band on the hang";
inline constexpr const char* went_fall_chance = "Chance of the fall alone";
inline constexpr const char* went_hang_chance = "Chance of the hang alone";
inline constexpr const char* went_in_water_sigma = "Weight in water, ±";
inline constexpr const char* went_hang_sigma = "Hang, ±";
inline constexpr const char* went_species = "Density by the table";
inline constexpr const char* went_moisture = "Moisture";
inline constexpr const char* went_bare = "Wood on wood, bare";
inline constexpr const char* went_coated = "Wood on wood, coated";
inline constexpr const char* went_twist = "Until the twist meets its pocket";
inline constexpr const char* went_linked = "Until the eyes meet each other";
inline constexpr const char* went_gap = "Gap";
inline constexpr const char* went_reliefs = "Reliefs, fore and aft";
inline constexpr const char* went_wire = "Wire";
inline constexpr const char* went_eye = "Inside of the eye";
inline constexpr const char* went_pin = "Pin";
inline constexpr const char* went_turns = "Turns of the twist";
inline constexpr const char* went_twist_width = "Width of the twist";
inline constexpr const char* went_eye_opens = "Eye opens at, N";
inline constexpr const char* went_pull_out = "Twist pulls out at, N";
inline constexpr const char* went_pin_shears = "Pin shears at, N";
inline constexpr const char* went_pin_bends = "Pin bends at, N";
inline constexpr const char* went_wood_crushes = "Wood under the pin crushes at, N";
inline constexpr const char* went_wall_shears = "Wood before the pin shears at, N";
inline constexpr const char* went_line = "Line, N";
inline constexpr const char* went_on_lure = "On one lure";
inline constexpr const char* went_lures = "Lures";
inline constexpr const char* went_loss = "Left in cup and brush";
inline constexpr const char* went_label_time = "On the label, minutes";
inline constexpr const char* went_label_recoat = "On the label, hours";
inline constexpr const char* went_label_temperature = "Temperature of the label";
inline constexpr const char* went_room = "Temperature of the room";
inline constexpr const char* went_ratio = "Resin to hardener";
inline constexpr const char* went_lures_by_time = "Lures a cup, by its time";
inline constexpr const char* went_lures_by_batch = "Lures a cup, by the label's batch";
inline constexpr const char* went_density = "Density";
inline constexpr const char* went_tub_temperature = "Temperature of the tub";
inline constexpr const char* went_speed = "Steady speed";
inline constexpr const char* went_play = "Play in each eye";
inline constexpr const char* went_spacing = "Between the eyes";
inline constexpr const char* went_readings = "Readings used";
inline constexpr const char* went_before = "Before any reading, ±";
inline constexpr const char* went_80_low = "80 % band, low end";
inline constexpr const char* went_80_high = "80 % band, high end";
inline constexpr const char* went_95_low = "95 % band, low end";
inline constexpr const char* went_95_high = "95 % band, high end";
inline constexpr const char* went_read = "Read";
inline constexpr const char* went_reading_sigma = "Accuracy of the reading, ±";
inline constexpr const char* went_drawn = "Lures drawn";
inline constexpr const char* went_assumptions = "Sets of assumptions tried";
inline constexpr const char* went_beating = "Of them it beats in";
inline constexpr const char* went_counts = "Counts in the Bench log";
inline constexpr const char* went_per_way = "Beats over a metre";
inline constexpr const char* went_asked_fall = "Fall asked for";
inline constexpr const char* went_asked_weight = "Weight in water asked for";
inline constexpr const char* went_asked_hang = "Hang asked for";
inline constexpr const char* went_shrink = "Shrinks by";
inline constexpr const char* went_cast = "One tail, cold";
inline constexpr const char* went_fitting_time = "Seconds to fit a joint";
inline constexpr const char* went_eyes = "Eyes on one lure";

} // namespace evenfall::shell::look::words
