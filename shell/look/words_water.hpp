#pragma once

// Text of the Water step: fall, flotation and seasons. The waters themselves, the stages and the ledger are
// in words_steps.hpp.

namespace evenfall::shell::look::words {

// views of the panel
inline constexpr const char* view_waters = "Waters";
inline constexpr const char* view_fall = "Fall";
inline constexpr const char* view_afloat = "Afloat";
inline constexpr const char* view_season = "Season";
inline constexpr const char* view_hinges = "Hinges";
inline constexpr const char* view_ledger = "Ledger";

// the moving drawing
inline constexpr const char* play_start = "Start";
inline constexpr const char* play_pause = "Pause";
inline constexpr const char* from_rest = "falling from rest, true time, to scale";
inline constexpr const char* enlarged = "drawn larger";
inline constexpr const char* figure_time = "Time";
inline constexpr const char* figure_depth = "Depth";
inline constexpr const char* figure_speed = "Down at";
inline constexpr const char* figure_pitch = "Angle";
inline constexpr const char* second = "s";
inline constexpr const char* a_pose_every = "a pose every";
inline constexpr const char* afloat_at_rest = "afloat, at rest";
inline constexpr const char* from_behind = "from behind, at its thickest";
inline constexpr const char* lies_also = "It can also come to lie";
inline constexpr const char* either_side = "either side";
inline constexpr const char* out_of_the_water = "out of the water";
inline constexpr const char* hangs_still_here = "Suspends in this water: too slow to see it fall or rise.";
inline constexpr const char* no_track = "The fall cannot be followed in this water.";
inline constexpr const char* no_rest = "No way of lying at rest was found.";
inline constexpr const char* draft_fore = "nose draws";
inline constexpr const char* draft_aft = "tail draws";
inline constexpr const char* upright = "upright";
inline constexpr const char* on_its_side = "on its side";
inline constexpr const char* on_its_back = "on its back";
inline constexpr const char* stands_nose_up = "standing, nose up";
inline constexpr const char* stands_nose_down = "standing, nose down";
inline constexpr const char* heel_word = "heel";

// fall
inline constexpr const char* depth_group = "From rest";
inline constexpr const char* depth_field = "Down to";
inline constexpr const char* depth_below = "below where it starts";
inline constexpr const char* time_to_depth = "Takes";
inline constexpr const char* not_reached = "not reached";
inline constexpr const char* glide_distance = "Glides forward";
inline constexpr const char* glide_distance_below = "nose-ward, until then; negative: slides back";
inline constexpr const char* start_up = "Starting time";
inline constexpr const char* start_up_below = "share of that time until it falls evenly";
inline constexpr const char* rises_like_this = "Let go under water it rises";
inline constexpr const char* way_stays = "steady: comes back to it after a knock";
inline constexpr const char* way_leaves = "not steady: a knock turns it into another";
inline constexpr const char* speed_down = "Down";
inline constexpr const char* speed_up = "Up";
inline constexpr const char* fall_pitch = "Angle while falling";
inline constexpr const char* hangs_at = "hangs at";
inline constexpr const char* glide_angle = "Glide angle";
inline constexpr const char* glide_angle_below = "nose-ward positive";
inline constexpr const char* model_between = "between";
inline constexpr const char* and_word = "and";
inline constexpr const char* model_note = "The range is the model's own: ends, hooks and how the wake "
                                          "leaves the back. What the scale does not know adds to it.";
inline constexpr const char* not_over_band = "At one end of that range it would not fall in this way.";
inline constexpr const char* no_way = "It suspends: up or down less than a hand's width in ten seconds.";
inline constexpr const char* no_steady_way = "It finds no steady way of falling or rising.";
inline constexpr const char* not_known = "This could not be worked out.";

// afloat
inline constexpr const char* sinks_note = "It sinks, so nothing of it stays out of the water.";
inline constexpr const char* rest_group = "Lies";
inline constexpr const char* draft_fore_row = "Draft at the nose";
inline constexpr const char* draft_aft_row = "Draft at the tail";
inline constexpr const char* freeboard_row = "Freeboard";
inline constexpr const char* freeboard_below = "its highest wood over the water";
inline constexpr const char* back_row = "Back line showing";
inline constexpr const char* gm_row = "GM";
inline constexpr const char* gm_below = "metacentre over G; positive: stays up";
inline constexpr const char* stays_upright = "Stays upright afloat.";
inline constexpr const char* rolls_never = "; lead alone does not help";
inline constexpr const char* arm_title = "Righting arm";
inline constexpr const char* vanishes = "vanishes";
inline constexpr const char* arm_note =
    "Hatched: the water turns it back upright. Slide a finger over it to read it off.";
inline constexpr const char* under_group = "Held under water";
inline constexpr const char* righting_row = "Righting moment";
inline constexpr const char* righting_below = "for each degree of heel";
inline constexpr const char* newton_millimetre = "N·mm";

// season
inline constexpr const char* by_warmth = "Temperature";
inline constexpr const char* by_salt = "Salt";
inline constexpr const char* sweep_weight = "In water";
inline constexpr const char* sweep_fall = "Falls at";
inline constexpr const char* sweep_rises = "below zero it rises";
inline constexpr const char* still_mark = "still";
inline constexpr const char* now_mark = "here";
inline constexpr const char* still_row = "Suspends at";
inline constexpr const char* still_nowhere = "It suspends at no temperature from ";
inline constexpr const char* sweep_note = "Solid line: the lure keeps its size. Dashed line: it grows with "
                                          "temperature as wood does. Expect between. Soaking is left out.";

// hinges
inline constexpr const char* one_piece = "In one piece: no hinges.";
inline constexpr const char* hinge_note =
    "How each segment pulls at its neighbour, under water and as it falls.";
inline constexpr const char* alone_group = "Each segment let go alone";
inline constexpr const char* alone_sinks = "sinks";
inline constexpr const char* alone_floats = "floats";
inline constexpr const char* pulls_down = "Aft part pulls down with";
inline constexpr const char* pulls_up = "Aft part pulls up with";
inline constexpr const char* eyes_row = "Force on the eyes";
inline constexpr const char* sag_row = "Sags within its play";
inline constexpr const char* sag_below = "positive: the tail side lower";
inline constexpr const char* swings_row = "Swings freely from";
inline constexpr const char* swings_below = "pull through the water; experimental";
inline constexpr const char* millinewton = "mN";

} // namespace evenfall::shell::look::words
