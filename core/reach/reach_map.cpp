#include "reach/reach_map.hpp"

#include "bench/lead/lead_plan.hpp"
#include "bench/lead/problem.hpp"
#include "bench/uncertainty/fall_model.hpp"
#include "document/work_done.hpp"
#include "reach/region.hpp"
#include "water/fall/drag_items.hpp"
#include "water/fall/hull.hpp"
#include "water/hang.hpp"

#include <algorithm>

namespace evenfall::reach {

namespace {

constexpr int even_steps = 24;   ///< between the least weight and the greatest, besides the corners
constexpr double same_kg = 1e-7; ///< corners nearer than this are one

/// The weights at which the border is worked out, ascending.
std::vector<double> weights_of(const Region& region) {
    std::vector<double> out = region.corners_kg();
    if (const auto all = region.weights()) {
        for (int k = 1; k < even_steps; ++k)
            out.push_back(all->least_kg + k * (all->most_kg - all->least_kg) / even_steps);
    }
    std::sort(out.begin(), out.end());
    out.erase(std::unique(out.begin(), out.end(), [](double a, double b) { return b - a < same_kg; }),
              out.end());
    return out;
}

/// Falls of border points.
class Falls {
public:
    Falls(const document::Document& document, const Evaluation& lure, const materials::WaterProperties& water)
        : falls_(lure.kept.hull, fall::mass_properties_of(lure.ledger, Stage::rigged),
                 fall::drag_items(*lure.body.lines, document, lure.ledger), water),
          drag_(fall::drag_correction(document)) {}

    [[nodiscard]] MapPoint point(const ledger::Sum& sum) {
        const double kg = sum.in_water(falls_.water().density_kg_m3).kg;
        return {kg, kg > 0.0 ? falls_.speed_m_s(sum, drag_) : std::nullopt,
                water::hang(sum).pitch_rad.value_or(0.0)};
    }

private:
    bench::FallModel falls_;
    double drag_;
};

} // namespace

Outcome<ReachMap> reach_map(const document::Document& given, const Goal& goal) {
    document::Document document = document::as_it_lies(given);
    document.targets = goal.targets;
    const auto plan = plan_lead(document);
    if (!plan) return plan.problems();
    const auto lure = evaluate(document);
    if (!lure) return lure.problems();
    const auto inputs = ledger::ledger_inputs(document, lure->body);
    if (!inputs) return inputs.problems();
    const auto water = waters_of(document);
    if (!water) return water.problems();

    ReachMap map;
    map.inside = plan->met;
    map.nearest = {plan->after.in_water.kg, {}, plan->after.pitch_rad.value_or(0.0)};
    if (plan->after.under_water && plan->after.in_water.kg > 0.0)
        map.nearest.fall_m_s = plan->after.under_water->speed_m_s;
    const bool by_fall = goal.targets.by == document::TargetBy::fall;
    map.asked = {plan->asked_in_water_kg, by_fall ? std::optional(goal.targets.fall_m_s) : std::nullopt,
                 goal.targets.pitch_rad};
    const Region region(lead::problem_of(lure->ledger, *inputs, water->fishing));
    Falls falls(document, *lure, water->fishing);
    std::vector<MapPoint> back;
    for (const double kg : weights_of(region)) {
        const auto up = region.border(kg, Region::Side::nose_up);
        const auto down = region.border(kg, Region::Side::nose_down);
        if (!up || !down) continue;
        map.border.push_back(falls.point(*up));
        back.push_back(falls.point(*down));
    }
    map.border.insert(map.border.end(), back.rbegin(), back.rend());
    return map;
}

} // namespace evenfall::reach
