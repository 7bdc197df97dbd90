#include "base/sentence.hpp"
#include "bench/lead/misses.hpp"
#include "bench/uncertainty/change.hpp"
#include "bench/uncertainty/do_now_text.hpp"
#include "bench/uncertainty/posterior.hpp"
#include "document/work_done.hpp"
#include "ledger/build.hpp"
#include "ledger/hung_on.hpp"
#include "water/fall/descent.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall {

using bench::Posterior;

namespace {

/// The lead plan where the holes with a depth are in the wood and may go deeper. Holes that the plan wants
/// shallower keep their depth, with a void, and it is planned again.
Outcome<LeadPlan> plan_deeper(document::Document document, const Kept& before) {
    constexpr double hair_m = 1e-9; // what a depth loses where it is written
    const std::vector<document::Hole> cut = document.holes;
    Outcome<LeadPlan> plan = plan_lead(document, &before);
    for (std::size_t round = 0; plan && round < cut.size(); ++round) {
        bool kept = false;
        for (std::size_t i = 0; i < cut.size(); ++i) {
            document::Hole& hole = document.holes[i];
            if (hole.use != document::HoleUse::ballast ||
                !(plan->document.holes[i].depth_m < cut[i].depth_m - hair_m))
                continue;
            hole = cut[i];
            hole.use = document::HoleUse::drilled;
            kept = true;
        }
        if (!kept) break;
        plan = plan_lead(document, &before);
    }
    return plan;
}

/// The lead plan for the piece as it lies there: other fills in the holes that are drilled; where those will
/// not do, some of them deeper.
Outcome<LeadPlan> plan_as_it_lies(const document::Document& document, Stage stage, const Kept& before) {
    document::Document lying = document::as_it_lies(document, stage);
    Outcome<LeadPlan> plan = plan_lead(lying, &before);
    bool any_drilled = false;
    for (document::Hole& hole : lying.holes) {
        if (hole.use != document::HoleUse::drilled || hole.depth_m <= 0.0) continue;
        hole.use = document::HoleUse::ballast;
        any_drilled = true;
    }
    if (plan && !plan->met && any_drilled) {
        Outcome<LeadPlan> deeper = plan_deeper(std::move(lying), before);
        if (deeper) plan = std::move(deeper);
    }
    for (std::size_t i = 0; plan && i < document.holes.size(); ++i)
        plan->document.holes[i].use = document.holes[i].use;
    return plan;
}

HoleChange hole_change(const document::Hole& before, const document::Hole& after, std::size_t index,
                       const shape::Body& body, bool lead_is_in) {
    const auto contents_of = [&](const document::Hole& hole) {
        return hole.depth_m > 0.0 ? holes::contents(hole, holes::place(hole, body)) : holes::HoleContents{};
    };
    const holes::HoleContents was = contents_of(before);
    const holes::HoleContents is = contents_of(after);
    HoleChange c;
    c.hole = static_cast<int>(index);
    const auto& fill = after.fill ? after.fill : before.fill;
    c.material = fill.value_or(document::Fill{}).material;
    c.diameter_m = after.diameter_m;
    c.change_kg = is.fill_kg - was.fill_kg;
    c.column_m = std::abs(is.fill_column_m - was.fill_column_m);
    c.depth_m = after.depth_m;
    if (lead_is_in && c.change_kg < 0.0) c.depth_m -= is.fill_column_m;
    return c;
}

HoleStep step_of(const HoleChange& c, const document::Document& before) {
    const auto index = static_cast<std::size_t>(c.hole);
    HoleStep step;
    step.hole = c.hole;
    step.material = c.material;
    step.diameter_m = c.diameter_m;
    step.fill_kg = std::abs(c.change_kg);
    step.column_m = c.column_m;
    step.is_new = c.is_new;
    const bool was_wood = step.is_new || before.holes[index].depth_m <= 0.0;
    step.work = was_wood ? HoleWork::fill : c.change_kg < 0.0 ? HoleWork::take_out : HoleWork::add;
    step.drills = step.work != HoleWork::add;
    step.depth_m = c.depth_m;
    return step;
}

/// Takes the changed document with its answers, and lists what is different in its holes.
void set_document(DoNow& out, const document::Document& before, const document::Document& after,
                  const Evaluation& evaluation) {
    constexpr double least_kg = 5e-7;
    out.document = after;
    out.after = evaluation.answers;
    for (std::size_t i = 0; i < after.holes.size(); ++i) {
        document::Hole old = after.holes[i];
        if (i < before.holes.size()) {
            old = before.holes[i];
        } else {
            old.depth_m = 0.0;
            old.fill.reset();
        }
        HoleChange c = hole_change(old, after.holes[i], i, evaluation.body, out.lead_is_in);
        if (std::abs(c.change_kg) < least_kg) continue;
        c.is_new = i >= before.holes.size();
        out.changes.push_back(c);
        out.change_kg += c.change_kg;
    }
}

/// What the tub should show of the changed lure at a stage, with what this ledger has.
TubTest tub_test(const DoNow& now, Stage stage, const shape::Body& body, const ledger::Ledger& ledger,
                 const materials::WaterProperties& tub) {
    const ledger::Sum sum =
        ledger::sum_if(ledger, [&](const ledger::Line& line) { return line.stage <= stage; });
    TubTest test;
    test.stage = stage;
    test.in_water_kg = sum.in_water(tub.density_kg_m3).kg;
    test.behaviour = behaviour_of(std::nullopt, {test.in_water_kg});
    if (!(test.in_water_kg > 0.0)) return test;
    const fall::FallingLure descent(body, ledger, now.document, tub, stage);
    const auto fall = descent.main_fall();
    if (fall) test.behaviour = behaviour_of(fall->vertical_m_s, {test.in_water_kg});
    if (!fall || test.behaviour != Behaviour::falls) return test;
    const double speed = fall->vertical_m_s;
    const double acceleration_length =
        descent.motion().heave_mass_kg() * speed * speed / (units::standard_gravity_m_s2 * test.in_water_kg);
    test.fall_m_s = speed;
    test.half_metre_s = time_from_rest_s(0.5, speed, acceleration_length);
    return test;
}

void set_tub_readings(DoNow& out, const Evaluation& evaluation, const materials::WaterProperties& tub) {
    const ledger::Ledger& ledger = evaluation.ledger;
    out.tub = tub_test(out, out.stage, evaluation.body, ledger, tub);
    if (out.stage == Stage::rigged || !ledger::has_rigging(ledger)) return;
    out.with_all = tub_test(out, std::max(out.stage, Stage::sealed), evaluation.body,
                            ledger::with_hung_on(ledger, document::all_hung_on(), out.after.g_m), tub);
}

/// Before the lead is in.
Outcome<DoNow> plan_anew(Posterior& p, const document::Document& document, Stage stage) {
    const materials::WaterProperties& tub = p.model->water().tub;
    DoNow out;
    out.stage = Stage::leaded;
    const Outcome<LeadPlan> plan = plan_as_it_lies(document, stage, p.model->evaluation().kept);
    if (!plan) return plan.problems();
    const Outcome<Evaluation> after = evaluate(plan->document, &p.model->evaluation().kept);
    if (!after) return after.problems();
    set_document(out, document, plan->document, *after);
    out.met = plan->met;
    const bench::Finished f = bench::finished(p);
    out.chances = out.met ? bench::chances_after_correction(f.forecast, f.target)
                          : bench::chances_after_change(f.forecast, f.target,
                                                        out.after.in_water.kg - plan->asked_in_water_kg,
                                                        bench::arm_of(out.after.g_m, out.after.b_m));
    out.nothing_to_do = plan->met && out.changes.empty();
    out.shortfalls = plan->shortfalls;
    for (const HolePlan& planned : plan->holes) {
        const auto index = static_cast<std::size_t>(planned.hole);
        const document::Hole& hole = document.holes[index];
        HoleStep step = hole_step(plan->document, index, after->body);
        const bool stands = hole.depth_m > 0.0 && (stage >= Stage::drilled || document::is_cut(hole));
        step.drills = step.depth_m > (stands ? hole.depth_m + 1e-6 : 0.0);
        out.holes.push_back(std::move(step));
    }
    set_tub_readings(out, *after, tub);
    bench::describe_tub(out, tub);
    return out;
}

/// A change of lead, and the document with it.
struct LeadChange {
    bench::Change change;
    bench::ChangeAim aim; ///< with the in-water mass that meets the target where the lead now is
    document::Document document;
    std::vector<std::size_t> holes; ///< changed

    [[nodiscard]] bool is_met() const { return change.weight_met && change.pitch_met; }
    [[nodiscard]] double weight_off_kg() const {
        return change.sum.in_water(aim.water_kg_m3).kg - aim.in_water_kg;
    }
    [[nodiscard]] std::optional<double> hang_rad() const { return water::hang(change.sum).pitch_rad; }
    /// How far from what is asked, by the bands.
    [[nodiscard]] double squares() const { return lead::squares_of(aim.misses.at(change.sum), aim.first); }
};

/// Changes of lead with the lure's own posterior.
struct LeadChanger {
    const Posterior& posterior;
    const bench::Finished& finished;
    bench::FallModel falls; ///< of the finished lure in the fishing water

    /// The in-water mass that meets the target with lead as in `sum`.
    double target_kg(const document::Document& document, const ledger::Sum& sum, double fallback_kg) {
        if (document.targets.by == document::TargetBy::in_water) return document.targets.in_water_kg;
        return falls.in_water_for(sum, fall::drag_correction(document), document.targets.fall_m_s)
            .value_or(fallback_kg);
    }

    /// The best change in the document's own holes.
    Outcome<LeadChange> change_in(const document::Document& document, const bench::ChangeAim& aim) {
        const auto inputs = ledger::ledger_inputs(document, posterior.model->evaluation().body);
        if (!inputs) return inputs.problems();
        const std::vector<bench::HoleRange> ranges = bench::hole_ranges(*inputs);
        LeadChange out{{}, aim, document, {}};
        // The target's weight depends a little on where the lead is.
        for (int pass = 0; pass < 4; ++pass) {
            out.change = bench::solve_change(*inputs, ranges, finished.balance.sum, out.aim);
            const double target = target_kg(document, out.change.sum, out.aim.in_water_kg);
            if (std::abs(target - out.aim.in_water_kg) < 1e-8) break;
            out.aim.in_water_kg = target;
        }
        for (const auto& [which, kg] : out.change.by) {
            out.holes.push_back(ranges[which].hole);
            out.document.holes[ranges[which].hole] = bench::changed_hole(*inputs, ranges[which], kg);
        }
        return out;
    }

    /// The document with a trim hole near B, not yet drilled; absent where there is no wood for one.
    std::optional<document::Document> with_trim_hole(document::Document document) {
        constexpr double least_depth_m = 0.006; // a short column of lead at least
        const auto inputs = ledger::ledger_inputs(document, posterior.model->evaluation().body);
        if (!inputs) return std::nullopt;
        document::Hole trim;
        trim.name = "trim";
        const double b_m = finished.balance.sum.b_m().x;
        const auto place = bench::trim_place(*inputs, b_m, trim.diameter_m, least_depth_m);
        if (!place) return std::nullopt;
        trim.x_m = *place;
        document.holes.push_back(trim);
        return document;
    }

    /// Whether the next advice would take lead out of this hole again. Drilling takes buoyancy, so that a
    /// lure whose targets cannot be met may come nearer to them with the hole empty, once it is there.
    [[nodiscard]] bool takes_out_again(const LeadChange& done, std::size_t hole) const {
        const auto inputs = ledger::ledger_inputs(done.document, posterior.model->evaluation().body);
        if (!inputs) return false;
        const std::vector<bench::HoleRange> ranges = bench::hole_ranges(*inputs);
        const bench::Change next = bench::solve_change(*inputs, ranges, done.change.sum, done.aim);
        return std::any_of(next.by.begin(), next.by.end(), [&](const auto& change) {
            return ranges[change.first].hole == hole && change.second < 0.0;
        });
    }

    /// With the holes there are; where that is not enough, with a trim hole as well.
    Outcome<LeadChange> change(const document::Document& document, const bench::ChangeAim& aim) {
        Outcome<LeadChange> own = change_in(document, aim);
        if (!own || own->is_met()) return own;
        const auto trimmed = with_trim_hole(document);
        if (!trimmed) return own;
        Outcome<LeadChange> with_trim = change_in(*trimmed, own->aim);
        if (!with_trim || (!with_trim->is_met() && !(with_trim->squares() < own->squares()))) return own;
        // No trim hole that nothing goes into.
        const auto& changed = with_trim->holes;
        if (std::find(changed.begin(), changed.end(), document.holes.size()) == changed.end())
            with_trim->document.holes.pop_back();
        if (!with_trim->is_met() && takes_out_again(*with_trim, document.holes.size())) return own;
        return with_trim;
    }
};

Problems shortfalls_of(const LeadChange& lead, const bench::TargetBand& target) {
    Problems all;
    const auto bands = [](double off) { return lead::bands_text(off) + "."; };
    if (!lead.change.weight_met) {
        const double off_kg = lead.weight_off_kg();
        all.push_back({ProblemCode::cannot_be_met, "/holes", "",
                       "Neither the lead in the holes nor a trim hole brings the finished lure to " +
                           mass_text(lead.aim.in_water_kg) + " in water and to its hang: it would come to " +
                           mass_text(lead.aim.in_water_kg + off_kg) +
                           bands(2.0 * off_kg / (target.high_kg - target.low_kg))});
    }
    if (!lead.change.pitch_met) {
        const auto hang_rad = lead.hang_rad();
        all.push_back({ProblemCode::cannot_be_met, "/targets/pitch_deg", "",
                       (lead.change.weight_met ? "With the weight right it hangs at " : "It then hangs at ") +
                           (hang_rad ? angle_text(*hang_rad) : Sentence("no angle at all")) + "; " +
                           angle_text(lead.aim.pitch_rad) + " is asked" +
                           (hang_rad ? bands((*hang_rad - lead.aim.pitch_rad) / target.pitch_band_rad)
                                     : Sentence("."))});
    }
    return all;
}

/// With the lead in.
Outcome<DoNow> change_lead(Posterior& p, const document::Document& document, Stage stage) {
    const Waters& water = p.model->water();
    const bench::Finished f = bench::finished(p);
    const double third_of_band_kg = (f.target.high_kg - f.target.low_kg) / 6.0;
    const double third_of_band_rad = f.target.pitch_band_rad / 3.0;
    const bool weight_right =
        std::abs(f.forecast.mean(bench::figure::mass) - f.target.target_kg) <= third_of_band_kg;
    const bool pitch_right = f.hang && std::abs(f.hang->value - f.target.pitch_rad) <= third_of_band_rad;
    DoNow out;
    out.stage = stage;
    out.lead_is_in = true;
    out.nothing_to_do = weight_right && pitch_right;
    out.chances = bench::chances_after_correction(f.forecast, f.target);
    document::Document changed = document;
    if (out.nothing_to_do) {
        out.met = true;
        out.steps.push_back("Leave the lead as it is: " + mass_text(f.forecast.mean(bench::figure::mass)) +
                            " in water is expected of the finished lure, " + mass_text(f.target.target_kg) +
                            " is asked.");
    } else {
        LeadChanger changer{p, f, p.model->fall_model(Stage::rigged, water.fishing)};
        const bench::ChangeAim aim{water.fishing.density_kg_m3,
                                   f.target.target_kg,
                                   f.target.pitch_rad,
                                   third_of_band_rad,
                                   lead::Misses::law({document.targets, *p.model->evaluation().body.lines,
                                                      changer.falls, fall::drag_correction(document)}),
                                   lead::first_of(document.targets.matters_more)};
        Outcome<LeadChange> lead = changer.change(document, aim);
        if (!lead) return lead.problems();
        out.met = lead->is_met();
        if (!out.met) {
            out.chances =
                bench::chances_after_change(f.forecast, f.target, lead->weight_off_kg(),
                                            bench::arm_of(lead->change.sum.g_m(), lead->change.sum.b_m()));
            out.shortfalls = shortfalls_of(*lead, f.target);
        }
        changed = std::move(lead->document);
    }
    const Outcome<Evaluation> after = evaluate(changed, &p.model->evaluation().kept);
    if (!after) return after.problems();
    set_document(out, document, changed, *after);
    if (!out.nothing_to_do) {
        for (const HoleChange& change : out.changes)
            out.holes.push_back(step_of(change, document));
        bench::describe_changes(out);
    }
    set_tub_readings(out, *after, water.tub);
    bench::describe_tub(out, water.tub);
    return out;
}

} // namespace

Outcome<DoNow> do_now(const document::Document& document, std::optional<Stage> at) {
    Outcome<Posterior> posterior = bench::posterior_of(document);
    if (!posterior) return posterior.problems();
    const Stage stage = at.value_or(std::max(posterior->stage, document::stage_of_holes(document)));
    const document::Document corrected = bench::with_corrections(*posterior);
    if (stage < Stage::leaded) return plan_anew(*posterior, corrected, stage);
    return change_lead(*posterior, corrected, stage);
}

document::Document with_advice(document::Document document, const DoNow& now, std::optional<int> hole) {
    std::vector<document::Hole> holes = document.holes;
    for (std::size_t i = 0; i < now.document.holes.size(); ++i) {
        if (hole && *hole != static_cast<int>(i)) continue;
        document::Hole advised = now.document.holes[i];
        const bool is_new = i >= holes.size();
        if (is_new && i > holes.size()) break; // a new hole has no place before the one ahead of it is there
        advised.use = is_new ? document::HoleUse::ballast : holes[i].use;
        const bool changed = std::any_of(now.changes.begin(), now.changes.end(),
                                         [&](const HoleChange& c) { return c.hole == static_cast<int>(i); });
        if (now.lead_is_in && changed) advised.use = document::HoleUse::leaded;
        if (is_new)
            holes.push_back(std::move(advised));
        else
            holes[i] = std::move(advised);
    }
    document::change_holes(document, holes);
    return document;
}

} // namespace evenfall
