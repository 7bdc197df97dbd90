#pragma once

#include "base/outcome.hpp"
#include "materials/woods.hpp"

#include <optional>

namespace evenfall::materials {

/// A squared block of wood, measured and weighed.
struct Block {
    double length_m = 0.0; ///< 5 mm to 5 m each
    double width_m = 0.0;
    double height_m = 0.0;
    double mass_kg = 0.0;           ///< 0.1 g to 50 kg
    double moisture_percent = 12.0; ///< as it was weighed, % of oven-dry mass, 0 to 30
};

/// How a block compares with its species.
enum class BlockSays {
    usual, ///< within two standard deviations of the table
    lighter,
    heavier, ///< a dense board, or wetter than said, or measured too small
};

struct BlockAnswer {
    double density_kg_m3 = 0.0;  ///< as it lies on the scale
    double at_other_kg_m3 = 0.0; ///< the same block at the other moisture (density_at_moisture)
    double usual_kg_m3 = 0.0;    ///< the table's, at the moisture it was weighed at
    double spread = 0.0;         ///< of the species, one relative standard deviation
    double sigmas = 0.0;         ///< (density/usual − 1)/spread: heavier positive
    BlockSays says = BlockSays::usual;
    /// Moisture at which an average piece of this wood would weigh as much [%]; absent where none from 0 to
    /// 30 does.
    std::optional<double> would_explain_percent;
};

/// Mass over the product of three sides, against the wood's own row of the table. Beyond two standard
/// deviations a block is called lighter or heavier than usual: one piece in twenty is. Refuses by name:
/// "/length_mm", "/width_mm", "/height_mm",
/// "/mass_g", and what density_at_moisture refuses.
[[nodiscard]] Outcome<BlockAnswer> weigh_block(const Block& block, const Wood& wood, double to_percent);

} // namespace evenfall::materials
