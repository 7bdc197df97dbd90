#include "materials/board.hpp"

#include "base/limits.hpp"
#include "base/root.hpp"
#include "materials/moisture.hpp"

#include <cmath>

namespace evenfall::materials {

namespace {

constexpr double usual_sigmas = 2.0;

std::optional<double> explaining_moisture(const Wood& wood, double density_kg_m3) {
    // Density always rises with moisture: the water adds more mass than swelling adds volume.
    constexpr double dry = 0.0;
    constexpr double wet = 30.0;
    const auto over = [&](double percent) { return wood_density_kg_m3(wood, percent) - density_kg_m3; };
    if (over(dry) > 0.0 || over(wet) < 0.0) return std::nullopt;
    return root_between(over, dry, wet, {1e-6});
}

} // namespace

Outcome<BoardAnswer> weigh_board(const Board& b, const Wood& wood, double to_percent) {
    using units::Unit;
    Problems problems;
    units::check_limit({"/length_mm", "The board's length", b.length_m, 0.005, 5.0, Unit::mm}, problems);
    units::check_limit({"/width_mm", "The board's width", b.width_m, 0.005, 5.0, Unit::mm}, problems);
    units::check_limit({"/height_mm", "The board's height", b.height_m, 0.005, 5.0, Unit::mm}, problems);
    units::check_limit({"/mass_g", "The board's mass", b.mass_kg, 0.0001, 50.0, Unit::gram, 1}, problems);
    if (!problems.empty()) return problems;
    BoardAnswer a;
    a.density_kg_m3 = b.mass_kg / (b.length_m * b.width_m * b.height_m);
    const Outcome<double> other = density_at_moisture(a.density_kg_m3, b.moisture_percent, to_percent);
    if (!other.ok()) return other.problems();
    a.at_other_kg_m3 = *other;
    a.usual_kg_m3 = wood_density_kg_m3(wood, b.moisture_percent);
    a.spread = specific_gravity(wood).spread;
    a.sigmas = (a.density_kg_m3 / a.usual_kg_m3 - 1.0) / a.spread;
    if (std::abs(a.sigmas) > usual_sigmas)
        a.says = a.sigmas > 0.0 ? BoardComparison::heavier : BoardComparison::lighter;
    a.would_explain_percent = explaining_moisture(wood, a.density_kg_m3);
    return a;
}

} // namespace evenfall::materials
