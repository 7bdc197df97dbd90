#pragma once

// Text of the shelf's bin.

namespace evenfall::shell::look::words {

inline constexpr const char* bin = "Bin";
inline constexpr const char* bin_hide = "Close the bin";
inline constexpr const char* bin_take_back = "Put back on the shelf";
inline constexpr const char* bin_empty = "Empty the bin";
inline constexpr const char* bin_empty_no = "Leave them";
inline constexpr const char* bin_empty_yes = "Throw away for good";
inline constexpr const char* bin_note =
    "When this device runs out of room, what has been here longest goes by itself.";

} // namespace evenfall::shell::look::words
