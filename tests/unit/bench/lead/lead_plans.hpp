#pragma once

#include "base/trade.hpp"
#include "bench/lead/lead_plan.hpp"
#include "support/small_lures.hpp"
#include "support/worked.hpp"

#include <initializer_list>
#include <vector>

namespace evenfall::support {

inline LeadPlan planned(const document::Document& document) {
    auto outcome = plan_lead(document);
    for (const Problem& p : outcome.ok() ? outcome->shortfalls : outcome.problems())
        UNSCOPED_INFO(p.path << ": " << p.sentence.text(evenfall::units::metric));
    REQUIRE(outcome.ok());
    return std::move(outcome).value();
}

inline Answers answers(const document::Document& document) {
    return worked(document).answers;
}

inline double lead_kg(const LeadPlan& plan) {
    double sum = 0.0;
    for (const HolePlan& h : plan.holes)
        sum += h.mass_kg;
    return sum;
}

/// A single keeled piece with drill-pointed holes: even an almost empty hole costs half a gram.
inline document::Document pointed() {
    document::Document d = block();
    d.holes = {belly_hole(25, 8, 20), belly_hole(45, 8, 20), belly_hole(75, 8, 20), belly_hole(95, 8, 20)};
    for (document::Hole& h : d.holes)
        h.end = document::HoleEnd::point_118;
    document::Part keel;
    keel.material = "stainless";
    keel.mass_kg = units::kg_from_g(20);
    keel.at_m = {units::m_from_mm(60), 0.0, units::m_from_mm(-14)};
    d.parts = {keel};
    d.targets.by = document::TargetBy::in_water;
    return d;
}

inline document::Document with_holes(document::Document d, std::initializer_list<std::size_t> which) {
    std::vector<document::Hole> holes;
    for (const std::size_t i : which)
        holes.push_back(d.holes[i]);
    d.holes = holes;
    return d;
}

} // namespace evenfall::support
