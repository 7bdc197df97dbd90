#pragma once

#include "workshop/coat_schedule.hpp"
#include "workshop/resin_mix.hpp"
#include "workshop/stock.hpp"

#include <string>

namespace evenfall::output {

// As indented JSON with units in the keys. The keys are the program's `--json` contract.

[[nodiscard]] std::string resin_json(const document::Document& document,
                                     const std::vector<resin::CoatGrams>& coats, int coat,
                                     const resin::Mix& mix, const units::UnitSet& units = units::metric);
[[nodiscard]] std::string stock_json(const document::Document& document, const stock::StockList& list);

} // namespace evenfall::output
