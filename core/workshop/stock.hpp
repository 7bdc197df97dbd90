#pragma once

#include "answers/answers.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall::stock {

/// How ballast is bought.
enum class Form { rod, shot, sheet }; // wire is thin rod

struct Stock {
    Form form = Form::rod;
    double size_m = 0.006; ///< diameter of rod, wire or shot, thickness of sheet; 0.1 to 50 mm
    std::string material;  ///< id in materials/solids; empty = what each hole is filled with
};

/// One hole's planned fill in this stock.
struct HoleStock {
    int hole = 0;          ///< index into document.holes
    double fill_kg = 0.0;  ///< as the ledger has it
    double length_m = 0.0; ///< rod and wire: to cut
    int count = 0;         ///< shot: the whole number nearest to the fill
    double over_kg = 0.0;  ///< shot: what that number weighs more than the fill; negative: too little
    double area_m2 = 0.0;  ///< sheet
    std::optional<bool>
        enters; ///< rod and shot: is it no thicker than the hole? absent for sheet, which is rolled
};

struct StockList {
    std::vector<HoleStock> holes; ///< those with a fill, in document order
    double fill_kg = 0.0;
    double length_m = 0.0;
    int count = 0;
    double over_kg = 0.0;
    double area_m2 = 0.0;
};

/// Lengths, counts and areas by mass over density: rod m/(ρ·π/4·d²), shot m/(ρ·π/6·d³), sheet m/(ρ·t). The
/// amounts are those of the ledger's fill lines. Refuses by name: "/size_mm", "/material".
[[nodiscard]] Outcome<StockList> list(const document::Document& document, const Evaluation& evaluation,
                                      const Stock& stock);

/// Diameter of numbered lead shot, American numbers 1 to 12: (17 − number)/100 in (common practice, from
/// memory; other countries number otherwise: measure a few). NaN for others.
[[nodiscard]] double shot_m(double number);

} // namespace evenfall::stock
