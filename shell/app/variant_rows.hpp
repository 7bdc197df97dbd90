#pragma once

// Two lures side by side as rows of text: the six figures of the strip, and the lead in each hole. Pure.

#include "help/topic.hpp"
#include "state/variants.hpp"
#include "widgets/quantity.hpp"

#include <string>
#include <vector>

namespace evenfall::shell {

struct VariantRow {
    help::Topic topic = help::Topic::none; ///< explains it
    std::string title;
    std::string unit;
    std::string here;
    std::string other;
    std::string difference; ///< the other less the one here, in the unit; a dash where one has no figure
};

/// Finished, in water, fall, hang, righting, chance, in the strip's order and units.
[[nodiscard]] std::vector<VariantRow> figure_rows(const state::Variant& here, const state::Variant& other,
                                                  const widgets::Units& units);
/// One for each hole of the lure that has more of them; empty where neither has any.
[[nodiscard]] std::vector<VariantRow> lead_rows(const state::Variant& here, const state::Variant& other,
                                                const widgets::Units& units);

} // namespace evenfall::shell
