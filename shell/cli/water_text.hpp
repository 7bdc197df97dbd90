#pragma once

#include "output.hpp"

#include <string>

namespace evenfall::cli {

// What a lure does in the water, for reading. Each ends with a blank line, or is empty where it does not
// apply.

[[nodiscard]] std::string
floating_text(const output::InWater& water); ///< rests, righting arms, what keeps it upright
[[nodiscard]] std::string hinges_text(const document::Document& document, const output::InWater& water);
[[nodiscard]] std::string sweep_text(const output::InWater& water); ///< warmer and salter water
[[nodiscard]] std::string falls_text(const output::InWater& water,
                                     const Answers& answers); ///< every steady fall
[[nodiscard]] std::string track_text(const output::InWater& water,
                                     const Answers& answers); ///< the way down from rest
[[nodiscard]] std::string water_warnings_text(const output::InWater& water);

} // namespace evenfall::cli
