#pragma once

#include "bench/uncertainty/uncertainty.hpp"

#include <optional>
#include <string>

namespace evenfall::output {

/// Everything of a uncertainty, the change to make now and the draws where there are any, in trade units.
[[nodiscard]] std::string uncertainty_json(const document::Document& document, const Uncertainty& uncertainty,
                                      const std::optional<DoNow>& now, const std::optional<Draws>& draws);

} // namespace evenfall::output
