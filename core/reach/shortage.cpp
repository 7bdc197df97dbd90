#include "reach/shortage.hpp"

#include "answers/built.hpp"
#include "bench/lead/box_qp.hpp"
#include "bench/lead/problem.hpp"
#include "water/fall/level_fall.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <array>
#include <limits>

namespace evenfall::reach {

namespace {

using Pair = std::array<double, 2>;

/// What each hole adds to weight and moment, along a straight line from empty to full.
struct Straight {
    Pair empty;
    lead::LeadVariable fill;
};

std::vector<Straight> straight_holes(const lead::LeadProblem& task, const Pair& base) {
    std::vector<Straight> out;
    for (const lead::Candidate& c : task.candidates) {
        const auto with = [&](double column_m) {
            ledger::Sum sum = task.base;
            sum += lead::contribution(*task.inputs, c, column_m, true);
            const Pair r = lead::residual(task.aim, sum);
            return Pair{r[0] - base[0], r[1] - base[1]};
        };
        Straight hole{with(0.0), {}};
        const Pair full = with(c.upper_m);
        hole.fill.upper = 1.0;
        hole.fill.row = {full[0] - hole.empty[0], full[1] - hole.empty[1]};
        out.push_back(hole);
    }
    return out;
}

/// The least over the sets of holes that the plan tries.
double outside_by(const lead::LeadProblem& task) {
    const Pair base = lead::residual(task.aim, task.base);
    const std::vector<Straight> holes = straight_holes(task, base);
    double least = std::max(std::abs(base[0]), std::abs(base[1])); // without any
    std::vector<lead::LeadVariable> columns;
    for (const std::vector<std::size_t>& set : lead::hole_sets(task)) {
        Pair target{-base[0], -base[1]};
        columns.clear();
        for (const std::size_t i : set) {
            target[0] -= holes[i].empty[0];
            target[1] -= holes[i].empty[1];
            columns.push_back(holes[i].fill);
        }
        least = std::min(least, lead::outside_by(columns, target));
    }
    return least;
}

/// How far G of the planned lure is above B, as mass times lengths of the moment scale.
double rolls_by(const lead::LeadProblem& task) {
    const auto filling = lead::solve(task);
    if (!filling) return 1e-6; // the straight lines were a little too hopeful
    const ledger::Sum sum = lead::total(task, *filling);
    const double bg_m = water::hang(sum).bg_m;
    return -bg_m * sum.mass.kg / lead::moment_scale_m;
}

} // namespace

document::Document cleared(document::Document document) {
    for (document::Hole& hole : document.holes) {
        if (hole.use != document::HoleUse::ballast && hole.use != document::HoleUse::drilled) continue;
        if (hole.use == document::HoleUse::ballast) hole.depth_m = 0.0;
        if (!hole.fill) continue;
        hole.fill->length_m.reset();
        hole.fill->mass_kg = 0.0;
    }
    return document;
}

Shortage::Shortage(const document::Document& document, const LeadPlan& plan, const Goal& goal)
    : goal_(goal), rolls_(!plan.after.pitch_rad), unsure_(plan.met) {
    const auto lines = shape::drawn_lines(document.shape);
    const auto water = waters_of(document);
    if (!lines || !water) return;
    const double level_kg = aim_kg(document, **lines, water->fishing);
    if (goal.targets.by == document::TargetBy::fall && level_kg > 0.0)
        aim_share_ = plan.asked_in_water_kg / level_kg;
}

double Shortage::aim_kg(const document::Document& document, const shape::Lines& lines,
                        const materials::WaterProperties& water) const {
    const document::Targets& targets = document.targets;
    if (targets.by == document::TargetBy::in_water) return targets.in_water_kg;
    return aim_share_ * fall::LevelFall(lines).in_water_kg(targets.fall_m_s, water);
}

double Shortage::of(const document::Document& changed) const {
    constexpr double cannot = std::numeric_limits<double>::infinity();
    const document::Document document = cleared(changed);
    const auto lure = build(document);
    if (!lure) return cannot;
    const auto inputs = ledger::ledger_inputs(document, lure->body);
    const auto water = waters_of(document);
    if (!inputs || !water) return cannot;
    lead::LeadProblem task = lead::problem_of(lure->ledger, *inputs, water->fishing);
    task.aim.in_water_kg = aim_kg(document, *lure->body.lines, water->fishing);
    const double outside = outside_by(task);
    if (outside > 0.0) return outside;
    if (rolls_) return std::max(outside, rolls_by(task));
    if (!unsure_) return outside;
    const auto plan = lead::met_plan(document, task.aim.in_water_kg);
    if (!plan) return 100.0; // of a hundred
    const auto figures = figures_of(plan->document);
    return figures ? 100.0 * (*goal_.chance - figures->chance) : cannot;
}

std::optional<document::Document> Shortage::met(const document::Document& changed) const {
    document::Document document = cleared(changed);
    const auto lines = shape::drawn_lines(document.shape);
    const auto water = waters_of(document);
    if (!lines || !water) return std::nullopt;
    auto plan = lead::met_plan(document, aim_kg(document, **lines, water->fishing));
    if (!plan) return std::nullopt;
    return std::move(plan->document);
}

} // namespace evenfall::reach
