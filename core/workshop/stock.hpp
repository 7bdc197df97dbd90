#pragma once

#include "answers/answers.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall::stock {

/// Form in which ballast is bought.
enum class Form { rod, shot, sheet }; // wire is thin rod

struct Stock {
    Form form = Form::rod;
    double size_m = 0.006; ///< diameter of rod, wire or shot, thickness of sheet; 0.1 to 50 mm
    std::string material;  ///< id in materials/solids; empty = each hole's own material
};

/// One hole's fill made of this stock.
struct HoleStock {
    int hole = 0;          ///< index into document.holes
    double fill_kg = 0.0;  ///< from the ledger
    double length_m = 0.0; ///< rod and wire: length to cut
    int count = 0;         ///< shot: the nearest whole number
    double over_kg = 0.0;  ///< shot: mass of that number less the fill; negative: too little
    double area_m2 = 0.0;  ///< sheet
    std::optional<bool>
        enters; ///< rod and shot: true where it fits the hole; absent for sheet, which is rolled
};

struct StockList {
    std::vector<HoleStock> holes; ///< holes with a fill, in document order
    double fill_kg = 0.0;
    double length_m = 0.0;
    int count = 0;
    double over_kg = 0.0;
    double area_m2 = 0.0;
};

/// Lengths, counts and areas from mass and density: rod m/(ρ·π/4·d²), shot m/(ρ·π/6·d³), sheet m/(ρ·t).
/// Masses are those of the ledger's fill lines. Refuses by name: "/size_mm", "/material".
[[nodiscard]] Outcome<StockList> list(const document::Document& document, const Evaluation& evaluation,
                                      const Stock& stock);

/// Diameter of numbered lead shot, American numbers 1 to 12: (17 − number)/100 in (common practice, from
/// memory; other countries use other numbers: measure a few). NaN for others.
[[nodiscard]] double shot_m(double number);

} // namespace evenfall::stock
