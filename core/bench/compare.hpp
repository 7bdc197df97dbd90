#pragma once

// The same lure in other woods and with other ballast, side by side: what each would ask of the lead plan.

#include "answers/answers.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall::compare {

struct Option {
    std::string id; ///< in materials/woods or materials/solids
    std::string name;
    double density_kg_m3 = 0.0;       ///< of the wood at the lure's moisture, or of the ballast
    std::optional<double> hardness_n; ///< woods: side hardness at 12 % moisture
    double spread = 0.0;              ///< woods: relative standard deviation of the density
    double bare_in_water_kg = 0.0;    ///< of the finished lure with nothing in its holes; below 0 it floats
    std::optional<double>
        fill_kg;            ///< that the plan puts into the holes; absent where it cannot be planned at all
    double deepest_m = 0.0; ///< of the holes then
    bool met = false;       ///< the holes meet the targets
    Sentence why;           ///< where not: the first limit that stops it, in a sentence
};

/// Every wood of the table, in its order, with the lure's own moisture, and the lead planned anew for each. A
/// density that the builder weighed, and what his readings taught, belong to his own board and are left out
/// of all. Refuses what evaluate() refuses.
[[nodiscard]] Outcome<std::vector<Option>> woods(const document::Document& document);

/// Every material that ballast may be of, in the table's order, in all holes that the plan may fill; holes
/// that are fixed keep what is in them.
[[nodiscard]] Outcome<std::vector<Option>> metals(const document::Document& document);

} // namespace evenfall::compare
