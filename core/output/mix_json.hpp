#pragma once

#include "workshop/coat_schedule.hpp"
#include "workshop/resin_mix.hpp"
#include "workshop/stock.hpp"

#include <string>

namespace evenfall::report {

// As JSON, trade units, laid out. Key names are the program's `--json` contract.

[[nodiscard]] std::string resin_json(const preset::Document& document,
                                     const std::vector<resin::CoatGrams>& coats, int coat,
                                     const resin::Mix& mix);
[[nodiscard]] std::string stock_json(const preset::Document& document, const stock::StockList& list);

} // namespace evenfall::report
