#pragma once

#include "bench/uncertainty/surety.hpp"

#include <optional>
#include <string>

namespace evenfall::report {

/// Everything of a surety, the change to make now and the draws where there are any, in trade units.
[[nodiscard]] std::string surety_json(const preset::Document& document, const Surety& surety,
                                      const std::optional<DoNow>& now, const std::optional<Draws>& draws);

} // namespace evenfall::report
