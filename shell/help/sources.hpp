#pragma once

// Sources that several entries of the help name.

namespace evenfall::shell::help {

inline constexpr const char* own_bookkeeping = "Bookkeeping: a sum needs no source. Wood, metals and coats "
                                               "have theirs in the lists that they are picked "
                                               "from.";
inline constexpr const char* statics =
    "Statics of a body under water, as any text of naval architecture has it.";
inline constexpr const char* from_the_posterior = "Least squares with what is believed beforehand (Bayes), "
                                                  "as in any text on measurement. The ± of readings "
                                                  "where none is typed: common practice, no source.";
inline constexpr const char* fall_model = "Drag: Hoerner 1965, Sucker and Brauer 1975, Brown and Lawler "
                                          "2003, from memory. Water moved along: Lamb, "
                                          "Hydrodynamics, and Lewis 1929, from memory.";
inline constexpr const char* swim_model = "Elongated bodies: Lighthill 1971; drag of a slanting body: Taylor "
                                          "1952; both from memory. Several numbers "
                                          "are own estimates, and are tried over their range.";

} // namespace evenfall::shell::help
