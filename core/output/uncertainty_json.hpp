#pragma once

#include "bench/uncertainty/uncertainty.hpp"

#include <optional>
#include <string>

namespace evenfall::output {

/// The whole uncertainty answer, the change to make now and the draws where there are any, with units in the
/// keys.
[[nodiscard]] std::string uncertainty_json(const document::Document& document, const Uncertainty& uncertainty,
                                           const std::optional<DoNow>& now, const std::optional<Draws>& draws,
                                           const units::UnitSet& units = units::metric);

} // namespace evenfall::output
