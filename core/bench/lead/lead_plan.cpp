#include "bench/lead/lead_plan.hpp"

#include "answers/answers.hpp"
#include "base/sentence.hpp"
#include "base/trade.hpp"
#include "bench/lead/solve.hpp"
#include "water/fall/descent.hpp"
#include "water/fall/level_fall.hpp"
#include "water/hang.hpp"

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

bool is_full(const lead::Filling& filling, std::size_t i, double upper_m) {
    return filling.used[i] && filling.column_m[i] >= upper_m - 1e-6;
}

/// True where all holes are full.
bool all_full(const lead::LeadProblem& task, const lead::Filling& filling) {
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        const double upper_m = task.candidates[i].upper_m;
        if (upper_m > 0.0 && !is_full(filling, i, upper_m)) return false;
    }
    return true;
}

/// "Hole 1 is full at 18.0 mm, its depth limit; hole 2 …"
Sentence stops(const lead::LeadProblem& task, const lead::Filling& filling) {
    Sentence text;
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        const double upper_m = task.candidates[i].upper_m;
        if (upper_m > 0.0 && !is_full(filling, i, upper_m)) continue;
        text += (text.empty() ? " " : "; ") + stop_text(*task.inputs->document, task.candidates[i]);
    }
    return text.empty() ? text : text + ".";
}

Problem weight_shortfall(const lead::LeadProblem& task, const lead::Filling& filling) {
    const double reached = lead::total(task, filling).in_water(task.aim.water_kg_m3).kg;
    const double off = task.aim.in_water_kg - reached;
    Sentence sentence;
    if (task.candidates.empty()) {
        const auto& holes = task.inputs->document->holes;
        const bool leaded = std::any_of(holes.begin(), holes.end(), [](const document::Hole& hole) {
            return hole.use == document::HoleUse::leaded;
        });
        sentence = leaded
                       ? "The lead is in its holes, and the plan leaves it there: the bench log says what to "
                         "change."
                       : "No hole may be filled: add a ballast hole, or set one free for the plan.";
    } else {
        const bool empty = std::find(filling.used.begin(), filling.used.end(), true) == filling.used.end();
        if (off < 0.0 && empty)
            sentence = "Without any lead the finished lure weighs ";
        else if (off > 0.0 && all_full(task, filling))
            sentence = "Full holes bring the finished lure to ";
        else
            sentence = "The plan brings the finished lure no nearer than to ";
        sentence += mass_text(reached) + " in water; " + mass_text(task.aim.in_water_kg) + " is asked: ";
        sentence +=
            off > 0.0 ? mass_text(off) + " short." + stops(task, filling) : mass_text(-off) + " too heavy.";
    }
    return {ProblemCode::cannot_be_met,
            task.inputs->document->targets.by == document::TargetBy::fall ? "/targets/fall_mm_s"
                                                                          : "/targets/in_water_g",
            mass_text(reached), std::move(sentence)};
}

/// The weight in water is as planned, but the lure does not fall at the speed asked for.
Problem fall_shortfall(const document::Document& document, double in_water_kg, double speed_m_s) {
    Sentence sentence = "With " + mass_text(in_water_kg) + " in water the finished lure ";
    sentence += speed_m_s > 0.0 ? "falls at " + speed_text(speed_m_s) : Sentence("has no steady fall");
    sentence +=
        "; " + speed_text(document.targets.fall_m_s) + " is asked, and no weight is found that brings it.";
    return {ProblemCode::cannot_be_met, "/targets/fall_mm_s",
            speed_m_s > 0.0 ? speed_text(speed_m_s) : Sentence(), std::move(sentence)};
}

Problem pitch_shortfall(const lead::LeadProblem& task, const lead::Filling& filling, double reached_rad) {
    const double off = task.aim.pitch_rad - reached_rad;
    const Sentence sentence =
        "At that weight the holes can bring the hang to " + angle_text(reached_rad) + "; " +
        angle_text(task.aim.pitch_rad) + " is asked: " + angle_text(std::fabs(off)) +
        " short. Lead would have to sit farther " + (off > 0.0 ? "aft." : "forward.") + stops(task, filling);
    return {ProblemCode::cannot_be_met, "/targets/pitch_deg", angle_text(reached_rad), sentence};
}

Problem capsize_shortfall(const water::Hang& hang) {
    return {ProblemCode::capsizes, "/targets", "G below B",
            "With this lead G lies " + length_text(-hang.bg_m) +
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
                              filling.used[i] ? filling.column_m[i] : 0.0, hole.depth_m});
    }
    return plan;
}

} // namespace

Outcome<LeadPlan> plan_lead(const document::Document& document) {
    Outcome<Evaluation> before = evaluate(document);
    if (!before) return before.problems();
    Outcome<ledger::LedgerInputs> inputs = ledger::ledger_inputs(document, before->body);
    if (!inputs) return inputs.problems();
    const Outcome<Waters> water = waters_of(document);
    if (!water) return water.problems();

    lead::LeadProblem task;
    task.inputs = &*inputs;
    task.candidates = lead::candidates(*inputs);
    const auto is_candidate = [&](const ledger::Line& line) {
        const bool of_hole = line.kind == ledger::Kind::hole_wood || line.kind == ledger::Kind::hole_water ||
                             line.kind == ledger::Kind::fill || line.kind == ledger::Kind::cap;
        return of_hole &&
               std::any_of(task.candidates.begin(), task.candidates.end(),
                           [&](const lead::Candidate& c) { return static_cast<int>(c.hole) == line.item; });
    };
    for (const ledger::Line& line : before->ledger) {
        if (!is_candidate(line)) task.base += line;
    }
    const document::Targets& targets = document.targets;
    const bool by_fall = targets.by == document::TargetBy::fall;
    const fall::LevelFall level(*before->body.lines);
    task.aim = {water->fishing.density_kg_m3,
                by_fall ? level.in_water_kg(targets.fall_m_s, water->fishing) : targets.in_water_kg,
                targets.pitch_rad};

    // A speed of fall needs a weight in water that depends slightly on where the lead is: the first guess is
    // the level fall without parts, then the fall of the planned lure corrects it.
    LeadPlan result;
    lead::Filling filling;
    std::optional<Evaluation> planned;
    double speed_m_s = 0.0; // 0 where it has no steady fall
    for (int pass = 0; pass < fall_passes; ++pass) {
        filling = lead::solve(task);
        result = planned_document(document, task, filling);
        Outcome<Evaluation> after = evaluate(result.document);
        if (!after) return after.problems();
        planned = std::move(after).value();
        if (!by_fall) break;
        const fall::FallingLure descent(planned->body, planned->ledger, result.document, water->fishing);
        const std::optional<double> needed = descent.in_water_for(targets.fall_m_s);
        // Very slow falls have no answer in Answers (such a lure suspends), but may be targets all the same.
        if (planned->answers.fall)
            speed_m_s = planned->answers.fall->speed_m_s;
        else if (const auto slow = descent.main_fall())
            speed_m_s = slow->vertical_m_s;
        else
            speed_m_s = 0.0;
        if (!needed) break;
        const double off = *needed - task.aim.in_water_kg;
        task.aim.in_water_kg = *needed;
        if (std::fabs(off) < std::min(settled_in_water_kg, settled_share * std::fabs(*needed))) break;
    }

    const water::Hang hang = water::hang(lead::total(task, filling));
    const bool weight_met = std::fabs(planned->answers.in_water.kg - task.aim.in_water_kg) < met_in_water_kg;
    const bool fall_met =
        !by_fall || (speed_m_s > 0.0 && std::fabs(speed_m_s / targets.fall_m_s - 1.0) < met_fall);
    if (!weight_met)
        result.shortfalls.push_back(weight_shortfall(task, filling));
    else if (!fall_met)
        result.shortfalls.push_back(fall_shortfall(document, planned->answers.in_water.kg, speed_m_s));
    if (!hang.pitch_rad)
        result.shortfalls.push_back(capsize_shortfall(hang));
    else if (weight_met && std::fabs(*hang.pitch_rad - task.aim.pitch_rad) >= met_pitch_rad) {
        result.shortfalls.push_back(pitch_shortfall(task, filling, *hang.pitch_rad));
    }
    result.met = result.shortfalls.empty();
    result.before = std::move(before->answers);
    result.after = std::move(planned->answers);
    return result;
}

} // namespace evenfall
