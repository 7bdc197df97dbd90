#include "reach/goal.hpp"

#include "base/limits.hpp"
#include "bench/uncertainty/posterior.hpp"

namespace evenfall::reach {

Problems off_range(const Goal& goal, const Answers& answers) {
    using units::Unit;
    Problems out;
    const document::Targets& t = goal.targets;
    const double displaced_kg = answers.water_density_kg_m3 * answers.displaced_m3;
    if (t.by == document::TargetBy::fall)
        units::check_limit(
            {"/targets/fall_mm_s", "The fall", t.fall_m_s, still_m_s, greatest_fall_m_s, Unit::mm_per_s, 0},
            out);
    else
        units::check_limit({"/targets/in_water_g", "The weight in water", t.in_water_kg, -displaced_kg,
                            displaced_kg, Unit::gram, 1},
                           out);
    units::check_limit({"/targets/pitch_deg", "The hang", t.pitch_rad, -steepest_hang_rad, steepest_hang_rad,
                        Unit::degree, 0},
                       out);
    if (goal.chance)
        units::check_limit({"/chance", "The chance", *goal.chance, 0.0, greatest_chance, Unit::percent, 0},
                           out);
    return out;
}

Outcome<Figures> figures_of(const document::Document& document) {
    auto posterior = bench::posterior_of(document);
    if (!posterior) return posterior.problems();
    const Answers& a = posterior->model->evaluation().answers;
    Figures out{a.mass.kg, a.in_water.kg, {}, a.pitch_rad, a.bg_m, 0.0};
    if (a.under_water) out.fall_m_s = a.under_water->speed_m_s;
    const bench::Finished finished = bench::finished(*posterior);
    out.chance = bench::chances(finished.forecast, finished.target).both;
    return out;
}

} // namespace evenfall::reach
