#pragma once

// Text of the card that a new lure begins with.

#include <array>
#include <string_view>

namespace evenfall::shell::look::words {

inline constexpr const char* card_head = "New lure";
inline constexpr const char* card_below =
    "A few choices make a lure that can be built, its lead planned. Everything can be changed after.";
inline constexpr const char* card_units = "Lengths in";
inline constexpr const char* card_form = "Body";
inline constexpr std::array<std::string_view, 4> card_forms{"full", "slender", "deep", "round"};
inline constexpr const char* card_length = "Length of the wood";
inline constexpr const char* card_height = "Height";
inline constexpr const char* card_thickness = "Thickness";
inline constexpr const char* card_usual = "usual";
inline constexpr const char* card_segments = "Segments";
inline constexpr const char* card_wood = "Wood";
inline constexpr const char* card_hooks = "Hooks";
inline constexpr std::array<std::string_view, 3> card_hook_counts{"none", "one", "two"};
inline constexpr const char* card_tail = "Soft tail";
inline constexpr std::array<std::string_view, 2> card_tails{"none", "in a slot"};
inline constexpr const char* card_fall = "In the water it";
inline constexpr std::array<std::string_view, 6> card_falls{"floats",       "suspends",   "sinks slowly",
                                                            "sinks medium", "sinks fast", "as I say"};
inline constexpr const char* card_speed = "Rate of fall";
inline constexpr const char* card_make = "Make this lure";
inline constexpr const char* card_bare = "A bare body instead";
inline constexpr const char* card_bare_below =
    "no joints, no hardware: for a sketch or a carved lure to trace";
inline constexpr const char* card_made = "Made, lead and all. Go through the steps and change what you like.";

} // namespace evenfall::shell::look::words
