#pragma once

#include "base/outcome.hpp"
#include "materials/woods.hpp"

#include <optional>

namespace evenfall::materials {

/// A rectangular board of wood, measured and weighed.
struct Board {
    double length_m = 0.0; ///< 5 mm to 5 m each
    double width_m = 0.0;
    double height_m = 0.0;
    double mass_kg = 0.0;           ///< 0.1 g to 50 kg
    double moisture_percent = 12.0; ///< when weighed, % of oven-dry mass, 0 to 30
};

/// How a board's density compares with its species.
enum class BoardComparison {
    usual, ///< within two standard deviations of the table's density
    lighter,
    heavier, ///< a dense board, or wetter than stated, or measured too small
};

struct BoardAnswer {
    double density_kg_m3 = 0.0;  ///< at the moisture it was weighed at
    double at_other_kg_m3 = 0.0; ///< the same board at the other moisture (density_at_moisture)
    double usual_kg_m3 = 0.0;    ///< from the table, at the moisture it was weighed at
    double spread = 0.0;         ///< relative standard deviation within the species
    double sigmas = 0.0;         ///< (density/usual − 1)/spread: positive where heavier
    BoardComparison says = BoardComparison::usual;
    /// Moisture at which average wood of this species has this density [%]; absent where no moisture from 0
    /// to 30 gives it.
    std::optional<double> would_explain_percent;
};

/// Density by mass over length · width · height, compared with the species in the table. Beyond two standard
/// deviations a board counts as lighter or heavier than usual: about one piece in twenty does. Refuses by
/// name: "/length_mm", "/width_mm", "/height_mm", "/mass_g", and what density_at_moisture refuses.
[[nodiscard]] Outcome<BoardAnswer> weigh_board(const Board& board, const Wood& wood, double to_percent);

} // namespace evenfall::materials
