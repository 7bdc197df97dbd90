#pragma once

// Text on how a lure swims: the Swim view of the Water step, the line in Joints and Hardware, and the
// program.

#include <array>

namespace evenfall::shell::look::words {

inline constexpr const char* view_swim = "Swim";

// verdict
/// In the order of swim::Way.
inline constexpr std::array<const char*, 6> ways{"It swims",
                                                 "It swims once jerked",
                                                 "It leans to one side",
                                                 "It runs straight, without a beat",
                                                 "It goes to and fro without an even beat",
                                                 "Two links: it glides wide, no beat"};
inline constexpr const char* share_beats_in = "It beats in ";
inline constexpr const char* share_of = " of ";
inline constexpr const char* share_assumptions = " assumptions about wood, water and wake.";
inline constexpr const char* share_so_far = " tried so far.";
inline constexpr const char* share_all = "All of them are tried.";
inline constexpr const char* swim_begins = "Being worked out";
inline constexpr const char* share_begins =
    "By many assumptions about wood, water and wake, one after the other.";
inline constexpr const char* swim_no_answer = "No answer for this lure";
inline constexpr const char* swim_no_answer_why = "It lies outside what this was tried on.";

// beats
inline constexpr const char* beats_a_metre = "Beats a metre";
inline constexpr const char* beats_in_ten_feet = "Beats in ten feet";
inline constexpr const char* beats_note =
    "One beat: the tail there and back. Eight in ten such lures, if the "
    "assumptions hold, lie in the filled part.";
inline constexpr const char* beats_counted = " Your count has narrowed it.";
inline constexpr const char* beats_learnt = " Counts of earlier lures of this recipe have narrowed it.";
inline constexpr const char* to_word = "to";
inline constexpr const char* no_beats = "No beats to count.";

// retrieves
inline constexpr const char* retrieves_group = "Beats a second at three retrieves";
inline constexpr const char* retrieve_turns = "Turns";
inline constexpr std::array<const char*, 3> retrieve_names{"Slow", "Usual", "Fast"};
inline constexpr const char* retrieve_speed = "Pulled at";
inline constexpr const char* retrieve_handle = "Handle, turns a second";
inline constexpr const char* turns_a_second = "turns a second";
inline constexpr const char* retrieve_line = "Line a turn";
inline constexpr const char* retrieve_line_below = "what the reel takes in with one turn of its handle";
inline constexpr const char* a_second = "a second";
inline constexpr const char* beats_a_second = "beats a second";
inline constexpr const char* at_speed = " at ";

// joints
inline constexpr const char* wave_group = "Joints in the wave";
inline constexpr const char* at_stop = "reaches its stop";
inline constexpr const char* within_stop = "stays within its stop";
inline constexpr const char* of_a_beat_behind = " % of a beat behind the piece ahead";

// the drawing
inline constexpr const char* shape_not_size = "shape, not size";
inline constexpr const char* true_tempo = "true tempo";
inline constexpr const char* slow_tempo = "at a quarter of its tempo";
inline constexpr const char* slow_motion = "Slow motion";
inline constexpr const char* stays_so = "stays like this";

// what stands beside every answer; the sentences are the core's (output::swim_left_out)
inline constexpr const char* beside_group = "What this leaves out";
// what a change did, in the Joints and Hardware steps
inline constexpr const char* change_title = "What the last change did to the swim";
inline constexpr const char* change_none_yet = "nothing changed yet";
inline constexpr const char* change_working = "being worked out";
inline constexpr const char* change_beats = "Beats: ";
inline constexpr const char* change_swing = "Swing: ";
inline constexpr const char* change_more = "more";
inline constexpr const char* change_fewer = "fewer";
inline constexpr const char* change_wider = "wider";
inline constexpr const char* change_narrower = "narrower";
inline constexpr const char* change_times = " times";
inline constexpr const char* change_not_told = "no change that can be told";

} // namespace evenfall::shell::look::words
