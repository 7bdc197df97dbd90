#include "bench/compare.hpp"

#include "bench/lead/lead_plan.hpp"
#include "bench/other_material.hpp"

#include "materials/solids.hpp"
#include "materials/woods.hpp"

#include <algorithm>

namespace evenfall::compare {
namespace {

bool plan_may_fill(const document::Hole& hole) {
    return hole.use != document::HoleUse::fixed;
}

/// The lure with nothing in the holes that the plan may fill.
document::Document emptied(document::Document document) {
    for (auto& hole : document.holes) {
        if (plan_may_fill(hole)) hole.fill.reset();
    }
    return document;
}

void plan_into(Option& option, document::Document document, const Kept& kept) {
    for (document::Hole& hole : document.holes) {
        if (hole.use == document::HoleUse::leaded) hole.use = document::HoleUse::drilled;
    }
    if (const auto bare = evaluate(emptied(document), &kept); bare.ok())
        option.bare_in_water_kg = bare->answers.in_water.kg;
    const auto plan = plan_lead(document, &kept);
    if (!plan.ok()) {
        option.why = plan.problems().front().sentence;
        return;
    }
    option.met = plan->met;
    if (!plan->met && !plan->shortfalls.empty()) option.why = plan->shortfalls.front().sentence;
    option.fill_kg = 0.0;
    for (const HolePlan& hole : plan->holes) {
        *option.fill_kg += hole.mass_kg;
        option.deepest_m = std::max(option.deepest_m, hole.depth_m);
    }
}

} // namespace

Outcome<std::vector<Option>> woods(const document::Document& document) {
    const auto own = evaluate(document);
    if (!own) return own.problems();
    std::vector<Option> options;
    for (const auto& wood : materials::woods()) {
        Option option;
        option.id = wood.id;
        option.name = wood.name;
        option.density_kg_m3 = materials::wood_density_kg_m3(wood, document.wood.moisture_percent);
        if (wood.side_hardness_n) option.hardness_n = wood.side_hardness_n->value;
        option.spread = materials::specific_gravity(wood).spread;
        plan_into(option, bench::in_wood(document, wood.id), own->kept);
        options.push_back(std::move(option));
    }
    return options;
}

Outcome<std::vector<Option>> metals(const document::Document& document) {
    const auto own = evaluate(document);
    if (!own) return own.problems();
    std::vector<Option> options;
    for (const auto& solid : materials::solids()) {
        if (!solid.serves(materials::Use::ballast)) continue;
        Option option;
        option.id = solid.id;
        option.name = solid.name;
        option.density_kg_m3 = solid.density_kg_m3.value;
        plan_into(option, bench::with_metal(document, solid.id), own->kept);
        options.push_back(std::move(option));
    }
    return options;
}

} // namespace evenfall::compare
