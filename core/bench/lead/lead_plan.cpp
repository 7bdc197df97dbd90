#include "bench/lead/lead_plan.hpp"

#include "answers/answers.hpp"
#include "base/number_text.hpp"
#include "base/sentence.hpp"
#include "base/trade.hpp"
#include "bench/lead/misses.hpp"
#include "bench/lead/problem.hpp"
#include "water/fall/drag_items.hpp"
#include "water/fall/hull.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall {

namespace {

// Tolerances of a plan: 0.01 g and 0.05°.
constexpr double met_in_water_kg = 1e-5;
constexpr double met_fall = 1e-3; // relative to the speed asked for
constexpr double settled_in_water_kg = 1e-8;
constexpr double settled_share = 1e-4; // relative to what is asked, where that is small
constexpr int fall_passes = 8;
constexpr double met_pitch_rad = 0.05 * units::degree_rad;

Sentence stop_text(const document::Document& document, const lead::Candidate& c) {
    const document::Hole& hole = document.holes[c.hole];
    Sentence text = hole_text(c.hole, hole.name);
    if (c.upper_m > 0.0)
        text += " is full at " + length_text(c.upper_m + c.fill_free_m);
    else
        text += " has no room down to " + length_text(c.depth_is_fixed ? hole.depth_m : c.limit.depth_m);
    if (c.depth_is_fixed) return text + ", the depth it is drilled to";
    switch (c.limit.stop) {
    case holes::DepthStop::bit:
        return text + ", its depth limit";
    case holes::DepthStop::far_wall:
        return text + ", where the far wall must stay";
    case holes::DepthStop::side_wall:
        return text + ", where the side wall must stay";
    case holes::DepthStop::built_in:
        return text + ", where the wall to " + c.limit.built_in + " must stay";
    case holes::DepthStop::hole:
        return text + ", where the wall to another hole must stay";
    }
    return text;
}

HoleLimit limit_of(const lead::Candidate& c, const lead::Filling& filling, std::size_t i) {
    if (!filling.used[i]) return HoleLimit::empty;
    if (filling.column_m[i] >= c.upper_m - 1e-6) return HoleLimit::full;
    return filling.column_m[i] <= lead::least_fill_length_m + 1e-6 ? HoleLimit::least : HoleLimit::none;
}

/// "hole 1, hole 2 take none" and the like.
Sentence holes_that(const lead::LeadProblem& task, const std::vector<HolePlan>& holes, HoleLimit limit,
                    const char* one, const char* several) {
    Sentence text;
    int count = 0;
    for (std::size_t i = 0; i < holes.size(); ++i) {
        const auto index = static_cast<std::size_t>(holes[i].hole);
        if (holes[i].limit != limit || !(task.candidates[i].upper_m > 0.0)) continue;
        text += (count > 0 ? ", " : "") + hole_text(index, task.inputs->document->holes[index].name);
        ++count;
    }
    return count > 0 ? text + (count > 1 ? several : one) : text;
}

/// "Hole 1 is full at 18.0 mm, its depth limit; hole 2 …; hole 5 takes none."
Sentence stops(const lead::LeadProblem& task, const std::vector<HolePlan>& holes) {
    Sentence text;
    const auto add = [&](const Sentence& part) {
        if (!part.empty()) text += (text.empty() ? " " : "; ") + part;
    };
    for (std::size_t i = 0; i < holes.size(); ++i) {
        if (holes[i].limit == HoleLimit::full || !(task.candidates[i].upper_m > 0.0))
            add(stop_text(*task.inputs->document, task.candidates[i]));
    }
    add(holes_that(task, holes, HoleLimit::least, " takes as little as is worth a hole",
                   " take as little as is worth a hole"));
    add(holes_that(task, holes, HoleLimit::empty, " takes none", " take none"));
    return text.empty() ? text : text + ".";
}

const char* target_path(const document::Targets& targets) {
    return targets.by == document::TargetBy::fall ? "/targets/fall_mm_s" : "/targets/in_water_g";
}

Problem no_hole_problem(const document::Document& document, double reached_kg) {
    const bool leaded =
        std::any_of(document.holes.begin(), document.holes.end(),
                    [](const document::Hole& hole) { return hole.use == document::HoleUse::leaded; });
    return {ProblemCode::cannot_be_met, target_path(document.targets), mass_text(reached_kg),
            leaded ? "The lead is in its holes, and the plan leaves it there: the bench log says what to "
                     "change."
                   : "No hole may be filled: add a ballast hole, or set one free for the plan."};
}

Problem weight_shortfall(const document::Document& document, const LeadPlan& plan, bool empty) {
    const double reached_kg = plan.after.in_water.kg;
    const double off_kg = plan.weight->by;
    Sentence sentence = empty ? "Without any lead the finished lure weighs " : "The finished lure comes to ";
    sentence += mass_text(reached_kg) + " in water; " + mass_text(reached_kg - off_kg) +
                " is asked: " + mass_text(std::fabs(off_kg)) + (off_kg < 0.0 ? " short" : " too heavy") +
                lead::bands_text(plan.weight->bands) + ".";
    return {ProblemCode::cannot_be_met, target_path(document.targets), mass_text(reached_kg),
            std::move(sentence)};
}

Problem fall_shortfall(const document::Document& document, const LeadPlan& plan, bool empty) {
    const double asked_m_s = document.targets.fall_m_s;
    const double in_water_kg = plan.after.in_water.kg;
    Sentence sentence = (empty ? "Without any lead, with " : "With ") + mass_text(in_water_kg) +
                        " in water, the finished lure ";
    if (!plan.fall) {
        sentence += in_water_kg < 0.0 ? "floats" : "has no steady fall";
        sentence += "; " + speed_text(asked_m_s) + " is asked.";
        return {ProblemCode::cannot_be_met, "/targets/fall_mm_s", Sentence(), std::move(sentence)};
    }
    const double off_m_s = plan.fall->by;
    sentence += "falls at " + speed_text(asked_m_s + off_m_s) + "; " + speed_text(asked_m_s) +
                " is asked: too " + std::string(off_m_s < 0.0 ? "slow" : "fast") +
                lead::bands_text(plan.fall->bands) + ".";
    return {ProblemCode::cannot_be_met, "/targets/fall_mm_s", speed_text(asked_m_s + off_m_s),
            std::move(sentence)};
}

Problem pitch_shortfall(const document::Document& document, const LeadPlan& plan) {
    const double asked_rad = document.targets.pitch_rad;
    const double off_rad = plan.hang->by;
    const Sentence sentence = "It hangs at " + angle_text(asked_rad + off_rad) + "; " +
                              angle_text(asked_rad) + " is asked: " + angle_text(std::fabs(off_rad)) +
                              " too far nose-" + (off_rad < 0.0 ? "down" : "up") +
                              lead::bands_text(plan.hang->bands) + ". Lead would have to sit farther " +
                              (off_rad < 0.0 ? "aft." : "forward.");
    return {ProblemCode::cannot_be_met, "/targets/pitch_deg", angle_text(asked_rad + off_rad), sentence};
}

Problem capsize_shortfall(double bg_m) {
    return {ProblemCode::capsizes, "/targets", "G below B",
            "With this lead G lies " + length_text(-bg_m) +
                " above B: the lure would roll over. Put lead lower, or take weight off its back."};
}

/// The document with the filling in its holes, and the list of holes.
LeadPlan planned_document(const document::Document& document, const lead::LeadProblem& task,
                          const lead::Filling& filling) {
    LeadPlan plan;
    plan.document = document;
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        const lead::Candidate& c = task.candidates[i];
        document::Hole& hole = plan.document.holes[c.hole];
        hole = lead::with_fill(*task.inputs, c, filling.column_m[i], filling.used[i]);
        plan.holes.push_back({static_cast<int>(c.hole), c.material, hole.fill->mass_kg.value_or(0.0),
                              filling.used[i] ? filling.column_m[i] : 0.0, hole.depth_m,
                              limit_of(c, filling, i)});
    }
    return plan;
}

lead::Filling nearest_of(lead::LeadProblem& task, const Evaluation& before,
                         const materials::WaterProperties& water) {
    const document::Document& document = *task.inputs->document;
    const bench::FallModel falls(before.kept.hull, fall::mass_properties_of(before.ledger, Stage::rigged),
                                 fall::drag_items(*before.body.lines, document, before.ledger), water);
    task.misses =
        lead::Misses::law({document.targets, *before.body.lines, falls, fall::drag_correction(document)});
    task.first = lead::first_of(document.targets.matters_more);
    return lead::nearest_filling(task);
}

/// Both misses of the plan, and in words where they are more than nothing.
void tell_misses(LeadPlan& plan, const document::Document& document, const lead::LeadProblem& task,
                 const std::optional<double>& speed_m_s) {
    const document::Targets& targets = document.targets;
    const Answers& after = plan.after;
    const bool by_fall = targets.by == document::TargetBy::fall;
    const double off_kg = after.in_water.kg - plan.asked_in_water_kg;
    bool met = std::fabs(off_kg) < met_in_water_kg;
    if (!by_fall) {
        const double displaced_kg = after.water_density_kg_m3 * after.displaced_m3;
        plan.weight = {off_kg, off_kg / lead::weight_band_kg(targets, displaced_kg)};
    } else if (speed_m_s && *speed_m_s > 0.0) {
        const double share = *speed_m_s / targets.fall_m_s - 1.0;
        plan.fall = {*speed_m_s - targets.fall_m_s, share / targets.fall_band};
        met = met && std::fabs(share) < met_fall;
    } else {
        met = false;
    }
    const bool empty = std::all_of(plan.holes.begin(), plan.holes.end(),
                                   [](const HolePlan& hole) { return hole.limit == HoleLimit::empty; });
    if (!met)
        plan.shortfalls.push_back(by_fall ? fall_shortfall(document, plan, empty)
                                          : weight_shortfall(document, plan, empty));
    if (after.pitch_rad) {
        const double off_rad = *after.pitch_rad - targets.pitch_rad;
        plan.hang = {off_rad, off_rad / targets.pitch_band_rad};
        if (std::fabs(off_rad) >= met_pitch_rad) plan.shortfalls.push_back(pitch_shortfall(document, plan));
    } else {
        plan.shortfalls.push_back(capsize_shortfall(after.bg_m));
    }
    plan.met = plan.shortfalls.empty();
    if (plan.met) return;
    plan.shortfalls.front().sentence += stops(task, plan.holes);
    if (plan.holes.empty())
        plan.shortfalls.insert(plan.shortfalls.begin(), no_hole_problem(document, after.in_water.kg));
}

/// The plan with this filling; `before` is still missing.
Outcome<LeadPlan> plan_of(const lead::LeadProblem& task, const lead::Filling& filling,
                          const materials::WaterProperties& water, const Kept* kept) {
    const document::Document& document = *task.inputs->document;
    LeadPlan plan = planned_document(document, task, filling);
    Outcome<Evaluation> after = evaluate(plan.document, kept);
    if (!after) return after.problems();
    plan.after = std::move(after->answers);
    plan.asked_in_water_kg = task.aim.in_water_kg;
    std::optional<double> speed_m_s;
    if (document.targets.by == document::TargetBy::fall) {
        const fall::FallingLure descent(after->kept.hull, after->body, after->ledger, plan.document, water);
        plan.asked_in_water_kg =
            descent.in_water_for(document.targets.fall_m_s).value_or(plan.asked_in_water_kg);
        // Very slow falls have no answer in Answers (such a lure suspends), but may be targets all the same.
        if (plan.after.fall)
            speed_m_s = plan.after.fall->speed_m_s;
        else if (const auto slow = descent.main_fall())
            speed_m_s = slow->vertical_m_s;
    }
    tell_misses(plan, document, task, speed_m_s);
    return plan;
}

/// With a guess of the weight in water only a plan that is met is looked for: else what comes back says that
/// it is not met, and no more.
Outcome<LeadPlan> planned(const document::Document& document, const std::optional<double>& guess_kg,
                          const Kept* known = nullptr) {
    Outcome<Evaluation> before = evaluate(document, known);
    if (!before) return before.problems();
    Outcome<ledger::LedgerInputs> inputs = ledger::ledger_inputs(document, before->body);
    if (!inputs) return inputs.problems();
    const Outcome<Waters> water = waters_of(document);
    if (!water) return water.problems();

    lead::LeadProblem task = lead::problem_of(before->ledger, *inputs, water->fishing);
    if (guess_kg) task.aim.in_water_kg = *guess_kg;

    // A speed of fall needs a weight in water that depends slightly on where the lead is: the first guess is
    // the level fall without parts, then the fall of the planned lure corrects it.
    std::optional<LeadPlan> nearest;
    LeadPlan plan;
    for (int pass = 0; pass < fall_passes; ++pass) {
        const auto met = lead::solve(task);
        if (!met && guess_kg) return LeadPlan{};
        if (!met && nearest) break;
        Outcome<LeadPlan> next = plan_of(task, met ? *met : nearest_of(task, *before, water->fishing),
                                         water->fishing, &before->kept);
        if (!next) return next;
        plan = std::move(next).value();
        if (!met) nearest = plan;
        const double off = plan.asked_in_water_kg - task.aim.in_water_kg;
        task.aim.in_water_kg = plan.asked_in_water_kg;
        if (std::fabs(off) <= std::min(settled_in_water_kg, settled_share * std::fabs(task.aim.in_water_kg)))
            break;
    }
    if (!plan.met && !nearest && !guess_kg) {
        Outcome<LeadPlan> next =
            plan_of(task, nearest_of(task, *before, water->fishing), water->fishing, &before->kept);
        if (!next) return next;
        nearest = std::move(next).value();
    }
    if (!plan.met && nearest) plan = std::move(*nearest);
    plan.before = std::move(before->answers);
    return plan;
}

} // namespace

Outcome<LeadPlan> plan_lead(const document::Document& document, const Kept* known) {
    return planned(document, std::nullopt, known);
}

std::optional<LeadPlan> lead::met_plan(const document::Document& document, double guess_kg) {
    auto plan = planned(document, guess_kg);
    if (!plan || !plan->met) return std::nullopt;
    return std::move(plan).value();
}

} // namespace evenfall
