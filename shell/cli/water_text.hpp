#pragma once

#include "cli/words.hpp"
#include "output.hpp"

#include <string>

namespace evenfall::cli {

// What a lure does in the water, for reading. Each ends with a blank line, or is empty where it does not
// apply.

[[nodiscard]] std::string floating_text(const output::InWater& water,
                                        const Numbers& in); ///< rests, righting arms, what keeps it upright
[[nodiscard]] std::string hinges_text(const document::Document& document, const output::InWater& water,
                                      const Numbers& in);
[[nodiscard]] std::string sweep_text(const output::InWater& water,
                                     const Numbers& in); ///< warmer and salter water
[[nodiscard]] std::string falls_text(const output::InWater& water, const Answers& answers,
                                     const Numbers& in); ///< every steady fall
[[nodiscard]] std::string track_text(const output::InWater& water, const Answers& answers,
                                     const Numbers& in); ///< the way down from rest
[[nodiscard]] std::string water_warnings_text(const output::InWater& water, const Numbers& in);

} // namespace evenfall::cli
