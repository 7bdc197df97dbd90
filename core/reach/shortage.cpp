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
    lead::LeadVariable fill; ///< by the share of its longest fill; dear where it lies high
};

std::vector<Straight> straight_holes(const lead::LeadProblem& task, const Pair& base) {
    std::vector<Straight> out;
    double lowest = std::numeric_limits<double>::infinity();
    for (const lead::Candidate& c : task.candidates)
        lowest = std::min(lowest, task.inputs->bores[c.hole].mouth_z_m);
    for (const lead::Candidate& c : task.candidates) {
        const auto with = [&](double column_m) {
            ledger::Sum sum = task.base;
            sum += lead::contribution(*task.inputs, c, column_m, true);
            const Pair r = lead::residual(task.aim, sum);
            return Pair{r[0] - base[0], r[1] - base[1]};
        };
        Straight hole{with(0.0), {}};
        const Pair full = with(c.upper_m);
        const holes::Bore& bore = task.inputs->bores[c.hole];
        const double high_m = bore.mouth_z_m - lowest + std::max(bore.inward, 0.0) * c.fill_free_m;
        const double dear = std::max(c.fill_area_m2 * c.upper_m * c.density_kg_m3, 1e-9);
        hole.fill = {1.0,
                     dear * std::max(c.upper_m, 1e-6),
                     dear * high_m,
                     {full[0] - hole.empty[0], full[1] - hole.empty[1]}};
        out.push_back(hole);
    }
    return out;
}

/// The lure with one set of its holes, in straight lines.
struct Reached {
    double outside = 0.0; ///< how far it is from the aim, the least over the sets of holes
    std::vector<std::size_t> set;
    std::vector<lead::LeadVariable> columns;
    Pair target{};
};

Reached reached(const lead::LeadProblem& task) {
    const Pair base = lead::residual(task.aim, task.base);
    const std::vector<Straight> holes = straight_holes(task, base);
    Reached best{std::max(std::abs(base[0]), std::abs(base[1])), {}, {}, {}};
    for (const std::vector<std::size_t>& set : lead::hole_sets(task)) {
        Reached now{0.0, set, {}, {-base[0], -base[1]}};
        for (const std::size_t i : set) {
            now.target[0] -= holes[i].empty[0];
            now.target[1] -= holes[i].empty[1];
            now.columns.push_back(holes[i].fill);
        }
        now.outside = lead::outside_by(now.columns, now.target);
        if (now.outside < best.outside) best = std::move(now);
        if (best.outside <= 0.0) break;
    }
    return best;
}

/// By how much the righting distance is less than it should be, as mass times lengths of the moment scale; 0
/// where it is not.
double rolls_by(const lead::LeadProblem& task, const Reached& by) {
    const std::vector<double> shares = lead::nearest(by.columns, by.target);
    ledger::Sum sum = task.base;
    for (std::size_t k = 0; k < by.set.size(); ++k) {
        const lead::Candidate& c = task.candidates[by.set[k]];
        sum += lead::contribution(*task.inputs, c, shares[k] * c.upper_m, true);
    }
    return std::max(least_bg_m - water::hang(sum).bg_m, 0.0) * sum.mass.kg / lead::moment_scale_m;
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
    : goal_(goal), unsure_(plan.met) {
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
    const Reached by = reached(task);
    if (by.outside > 0.0) return by.outside;
    const double rolls = rolls_by(task, by);
    if (rolls > 0.0 || !unsure_) return rolls > 0.0 ? rolls : by.outside;
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
