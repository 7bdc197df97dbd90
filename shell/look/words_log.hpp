#pragma once

// Text of the Bench log: readings, what to do now, how certain the answers are.

namespace evenfall::shell::look::words {

inline constexpr const char* log_head = "Bench log";
inline constexpr const char* log_below = "What scale and tub read tells what this piece of wood will do.";
inline constexpr const char* view_now = "Do now";
inline constexpr const char* view_readings = "Readings";
inline constexpr const char* view_uncertainty = "How sure";

// the strip
inline constexpr const char* chance = "Chance";
inline constexpr const char* chance_below = "right first fall";

// do now
inline constexpr const char* chance_row = "Right first fall and hang";
inline constexpr const char* chance_row_below = "chance, as it stands";
inline constexpr const char* put_right_row = "With the lead put right";
inline constexpr const char* put_right_below = "for what is known now";
inline constexpr const char* nearest_row = "As near as the holes allow";
inline constexpr const char* nearest_below = "what is asked is out of their reach";
inline constexpr const char* best_next_row = "After the best next reading";
inline constexpr const char* now_group = "What to do";
inline constexpr const char* nothing_to_do = "No change: the lead is right, as far as is known.";
inline constexpr const char* nothing_yet = "No change yet: take the next reading first.";
inline constexpr const char* apply_now = "Use this lead";
inline constexpr const char* apply_label = "Lead changed as the log says";
inline constexpr const char* apply_note = "Use it when it is done on the lure. Readings before it stay "
                                          "readings of the lead as it was.";
inline constexpr const char* tub_after_group = "After it, the tub should read";
inline constexpr const char* tub_weight_row = "Hung in the tub";
inline constexpr const char* tub_speed_row = "Falls at";
inline constexpr const char* tub_half_row = "From rest over 0.5 m";
inline constexpr const char* tub_half_row_inches = "From rest over 19 11/16 in";
/// By Behaviour, where there is no fall.
inline constexpr const char* tub_no_fall[] = {"It still floats at this stage.", "It suspends at this stage.",
                                              "It sinks at this stage, but finds no steady way of falling."};
inline constexpr const char* tub_seen_group = "A fall seen in the tub today";
inline constexpr const char* tub_seen_field = "It fell at";
inline constexpr const char* tub_seen_absent = "type it";
inline constexpr const char* tub_seen_below = "steady, at the stage above; not added to the log";
inline constexpr const char* finished_then = "Finished, it will fall at";
inline constexpr const char* finished_floats = "Finished, it would float.";
inline constexpr const char* now_not_known = "Not known until the lure can be built.";

// readings
inline constexpr const char* add_reading = "Add reading";
inline constexpr const char* no_readings = "No readings yet. A dry weight and one held under water, "
                                           "taken at any stage, help most.";
inline constexpr const char* which_reading = "What was read?";
inline constexpr const char* reading_word = "reading";
inline constexpr const char* put_down = "Add";
inline constexpr const char* put_down_label = "Reading added";
inline constexpr const char* not_now = "Not now";
inline constexpr const char* hung_with = "With ";
inline constexpr const char* hung_on = " on";
inline constexpr const char* hung_below = "all that it will have";
inline constexpr const char* hung_tail = "The tail on";
inline constexpr const char* hung_part = "Part ";
inline constexpr const char* hung_weight = "A test weight on";
inline constexpr const char* hung_no_weight = "none";
inline constexpr const char* hung_weight_below = "its own weight in air";
inline constexpr const char* hung_material = "Test weight of";
inline constexpr const char* stands = "It is right: use it";
inline constexpr const char* stands_no_longer = "Check it like the others again";
inline constexpr const char* how_group = "How it is taken";
inline constexpr const char* sharpens_to = "Once added, the weight in water is known to ± ";
inline constexpr const char* sharpens_from = ", now ± ";
inline constexpr const char* sharpens_dry = " (with a dry weight of the same stage)";
inline constexpr const char* sharpens_chance =
    "; with the lead then put right, the chance of a right first fall is ";
inline constexpr const char* at_stage = "At which stage";
inline constexpr const char* of_what = "Of what";
inline constexpr const char* whole_piece = "the whole lure";
inline constexpr const char* type_it = "type it";
inline constexpr const char* scale_field = "The scale reads";
inline constexpr const char* gains_field = "The scale gains";
inline constexpr const char* gains_below = "with the lure held under, nothing touching the cup";
inline constexpr const char* holder_field = "Holder alone";
inline constexpr const char* holder_below =
    "what the wire or thread reads by itself at the same depth; taken off";
inline constexpr const char* temperature_of_tub = "as the tub";
inline constexpr const char* holder_absent = "none";
inline constexpr const char* clip_field = "Clipped on, dry";
inline constexpr const char* clip_material_field = "Made of";
inline constexpr const char* reading_length = "Length";
inline constexpr const char* reading_width = "Width";
inline constexpr const char* reading_height = "Height";
inline constexpr const char* time_field = "Seconds from rest";
inline constexpr const char* depth_of_fall = "Over a depth of";
inline constexpr const char* caliper_at = "From the nose";
inline constexpr const char* caliper_or = "or this";
inline constexpr const char* caliper_below = "width or height, one a reading";
inline constexpr const char* beats_field = "Beats";
inline constexpr const char* beats_below = "the tail there and back is one";
inline constexpr const char* beats_travel = "Over a way of";
inline constexpr const char* beats_time = "or seconds";
inline constexpr const char* beats_speed = "at a speed of";
inline constexpr const char* beats_speed_below = "handle turns a second times the line of one turn";
inline constexpr const char* beats_over = "over ";
inline constexpr const char* beats_at = " at ";
inline constexpr const char* foretold_a_metre = "Foretold beats a metre";
inline constexpr const char* foretold_in_ten_feet = "Foretold beats in ten feet";
inline constexpr const char* foretold_below = "kept with the count";
inline constexpr const char* foretold_then = "when it was added";
inline constexpr const char* foretold_nothing =
    "Of this lure no beats can be foretold; the count is kept all the same. Water, Swim says why.";
inline constexpr const char* freeboard_field = "Back over the water";
inline constexpr const char* angle_field = "Hangs at";
inline constexpr const char* angle_below = "nose-up positive";
inline constexpr const char* sigma_field = "Accuracy \xC2\xB1";
inline constexpr const char* sigma_absent = "as usual";
inline constexpr const char* sigma_below = "one standard deviation of the reading";
inline constexpr const char* lure_field = "Lure from this recipe";
inline constexpr const char* log_note_field = "Note";
inline constexpr const char* excluded_word = "excluded";
inline constexpr const char* before_change_word = "of the holes as they were";
inline constexpr const char* exclude = "Exclude";
inline constexpr const char* include = "Include again";
inline constexpr const char* others_expect = "The others expect";
inline constexpr const char* off_word = "standard deviations off";
inline constexpr const char* fits = "fits";
inline constexpr const char* does_not_fit = "does not fit";
inline constexpr const char* could_be = "It would fit if";
inline constexpr const char* album = "Photos and catches";
inline constexpr const char* album_note = "Saved on this device only, with this lure.";
inline constexpr const char* next_lure = "Begin the next lure";
inline constexpr const char* next_lure_note =
    "The same recipe with what the readings taught of this board and these coats; the log begins anew. Save "
    "this lure first if you want both.";
inline constexpr const char* export_csv = "Save the log as a table";

// how sure
inline constexpr const char* finished_group = "Finished";
inline constexpr const char* sure_mass = "Weighs";
inline constexpr const char* sure_in_water = "In water";
inline constexpr const char* sure_fall = "Falls at";
inline constexpr const char* sure_pitch = "Hangs at";
inline constexpr const char* before_any = "before any reading";
inline constexpr const char* four_in_five = "80 % of such lures:";
inline constexpr const char* nothing_floats = "floating";
inline constexpr const char* next_group = "What to read next";
inline constexpr const char* next_below = "Chance of a right first fall when the lead is put right after it";
inline constexpr const char* next_out_of_reach =
    "What is asked is out of the holes' reach, whatever is read. What each reading leaves:";
inline constexpr const char* next_none = "No further reading would help before the finish.";
inline constexpr const char* doubt_title = "Weight in the tub, \xC2\xB1";
inline constexpr const char* doubt_mass_title = "Mass, \xC2\xB1";
inline constexpr const char* doubt_note =
    "One standard deviation after each stage, 1 carved to 8 rigged. Solid: now. Dashed: before any reading.";
inline constexpr const char* here_mark = "here";
inline constexpr const char* draws_group = "Simulation";
inline constexpr const char* draws_start = "Draw 10000 lures";
inline constexpr const char* draws_stop = "Stop";
inline constexpr const char* draws_of = "of 10000 drawn";
inline constexpr const char* draws_note = "Each is a whole lure with wood, lead, coats and drag drawn by "
                                          "their spreads: the same ones on every device.";
inline constexpr const char* draws_half = "Half fall between";
inline constexpr const char* draws_float = "Float";
inline constexpr const char* draws_right = "Right first fall and hang";
inline constexpr const char* inputs_group = "What is known of the parts";

} // namespace evenfall::shell::look::words
