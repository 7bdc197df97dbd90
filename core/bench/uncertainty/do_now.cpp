#include "base/number_text.hpp"
#include "base/sentence.hpp"
#include "bench/uncertainty/change.hpp"
#include "bench/uncertainty/standing.hpp"
#include "ledger/build.hpp"
#include "materials/solids.hpp"
#include "water/fall/descent.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall {

using bench::Standing;
using units::number_text;
using units::Unit;

namespace {

std::string grams(double kg) {
    return number_text(kg, Unit::gram, 2) + " g";
}
std::string mm(double m) {
    return number_text(m, Unit::mm, 1) + " mm";
}

std::string material_name(const std::string& id) {
    const materials::Solid* solid = materials::find_solid(id);
    return solid != nullptr ? std::string(solid->name) : id;
}

/// The in-water mass that is asked of this lure: by weight, or by what gives the fall.
double asked_kg(bench::FallModel& falls, const document::Document& document, const ledger::Sum& sum,
                double fallback_kg) {
    if (document.targets.by == document::TargetBy::in_water) return document.targets.in_water_kg;
    return falls.in_water_for(sum, fall::drag_correction(document), document.targets.fall_m_s)
        .value_or(fallback_kg);
}

/// The lead plan where holes are drilled already: they may go deeper, not shallower. Those the plan would
/// leave shallower keep their depth, and a void; then it is planned again.
Outcome<LeadPlan> plan_drilled(const document::Document& document) {
    document::Document asked = document;
    Outcome<LeadPlan> plan = plan_lead(asked);
    for (std::size_t round = 0; plan && round < document.holes.size(); ++round) {
        bool kept = false;
        for (std::size_t i = 0; i < asked.holes.size(); ++i) {
            document::Hole& hole = asked.holes[i];
            if (hole.use != document::HoleUse::ballast ||
                !(plan->document.holes[i].depth_m < document.holes[i].depth_m - 1e-6))
                continue;
            hole = document.holes[i];
            hole.use = document::HoleUse::drilled;
            kept = true;
        }
        if (!kept) break;
        plan = plan_lead(asked);
    }
    return plan;
}

HoleChange change_of(const document::Document& before, const document::Document& after, std::size_t index,
                     const shape::Body& body) {
    const document::Hole& old = before.holes[index];
    const document::Hole& now = after.holes[index];
    const holes::Bore old_bore = holes::place(old, body);
    const holes::Contents was = holes::contents(old, old_bore);
    const holes::Contents is = holes::contents(now, holes::place(now, body));
    HoleChange c;
    c.hole = static_cast<int>(index);
    c.material = now.fill ? now.fill->material : (old.fill ? old.fill->material : document::Fill{}.material);
    c.diameter_m = now.diameter_m;
    const double had = old.depth_m > 0.0 ? was.fill_kg : 0.0;
    const double has = now.depth_m > 0.0 ? is.fill_kg : 0.0;
    c.change_kg = has - had;
    const double had_column = old.depth_m > 0.0 ? was.fill_column_m : 0.0;
    const double has_column = now.depth_m > 0.0 ? is.fill_column_m : 0.0;
    c.column_m = std::abs(has_column - had_column);
    if (c.change_kg < 0.0)
        c.depth_m = now.depth_m - has_column;
    else if (std::abs(now.depth_m - old.depth_m) > 1e-6)
        c.depth_m = now.depth_m;
    return c;
}

void describe_leaded(DoNow& out, const document::Document& before) {
    bool lead = false;
    for (const HoleChange& c : out.changes) {
        const auto index = static_cast<std::size_t>(c.hole);
        const bool known = index < before.holes.size();
        const document::Hole& hole = out.document.holes[index];
        const std::string name = hole_text(index, hole.name);
        const std::string close =
            hole.cap ? " and close it with " + mm(hole.cap->length_m) + " of cap" : std::string();
        const std::string open = hole.cap ? ": open the cap, lay " : ": lay ";
        if (c.change_kg < 0.0) {
            out.steps.push_back(name + ": drill out " + grams(-c.change_kg) + ", bit " +
                                number_text(c.diameter_m, Unit::mm, 2) + " mm, until it stands " +
                                mm(c.depth_m) + " deep from the skin (" + mm(c.column_m) +
                                " of fill). Weigh the chips' worth off the piece, dry the hole" +
                                (hole.cap ? close + " over the void." : "; it stays open."));
        } else if (!known || before.holes[index].depth_m <= 0.0) {
            out.steps.push_back(name + ", new: bit " + number_text(c.diameter_m, Unit::mm, 2) + " mm, " +
                                mm(c.depth_m) + " deep at " + mm(hole.x_m) + " from the nose; put in " +
                                grams(c.change_kg) + " of " + material_name(c.material) + close + ".");
        } else {
            out.steps.push_back(name + open + grams(c.change_kg) + " of " + material_name(c.material) +
                                " on what is there (" + mm(c.column_m) + ")" + close + ".");
        }
        lead = lead || c.material.rfind("lead", 0) == 0;
    }
    if (lead && !out.changes.empty()) {
        out.steps.push_back("Lead chips: hold the piece in a clamp, drill slowly with a wet cloth under it, "
                            "no dust, wash your hands; keep "
                            "chips from children and food.");
    }
}

void describe_plan(DoNow& out, const LeadPlan& plan) {
    for (const HolePlan& h : plan.holes) {
        const auto index = static_cast<std::size_t>(h.hole);
        const std::string name = hole_text(index, plan.document.holes[index].name);
        if (h.mass_kg <= 0.0) {
            out.steps.push_back(
                name + (h.depth_m > 0.0 ? ": leave it empty and cap it." : ": leave the wood whole."));
            continue;
        }
        out.steps.push_back(
            name + ": bit " + number_text(plan.document.holes[index].diameter_m, Unit::mm, 2) + " mm, " +
            mm(h.depth_m) + " deep, " + grams(h.mass_kg) + " of " + material_name(h.material) + ".");
    }
}

void describe_tub(DoNow& out, const Surroundings& water) {
    if (out.tub_in_water_kg > 0.0) {
        std::string text =
            "In the tub now, hung below the scale, it should read " + grams(out.tub_in_water_kg);
        if (out.tub_half_metre_s) {
            text += ", and from rest it should go down half a metre in " +
                    number_text(*out.tub_half_metre_s, Unit::one, 1) + " s";
        }
        out.steps.push_back(text + ".");
        return;
    }
    const materials::Solid* lead = materials::find_solid("lead");
    const double clip =
        lead != nullptr ? -out.tub_in_water_kg / (1.0 - water.tub.density_kg_m3 / lead->density_kg_m3.value)
                        : 0.0;
    out.steps.push_back("In the tub now it should still float: it should just hang with " + grams(clip) +
                        " of lead clipped on (" + grams(-out.tub_in_water_kg) + " short of sinking).");
}

void finish(DoNow& out, const document::Document& document, const shape::Body& body,
            const document::Document& before, Answers after) {
    out.document = document;
    out.after = std::move(after);
    for (std::size_t i = 0; i < document.holes.size(); ++i) {
        document::Document had = before;
        if (i >= had.holes.size()) {
            document::Hole none = document.holes[i];
            none.depth_m = 0.0;
            none.fill.reset();
            had.holes.resize(i, none);
            had.holes.push_back(none);
        }
        const HoleChange c = change_of(had, document, i, body);
        if (std::abs(c.change_kg) < 5e-7) continue;
        out.changes.push_back(c);
        out.change_kg += c.change_kg;
    }
}

/// What scale and tub say of the changed lure at the stage.
void read_tub(DoNow& out, const Evaluation& evaluation, const Surroundings& water) {
    const StageAnswer& there = out.after.stages[static_cast<std::size_t>(out.stage)];
    out.tub_in_water_kg = there.in_tub_kg;
    if (!there.tub_fall || !(there.in_tub_kg > 0.0)) return;
    out.tub_fall_m_s = there.tub_fall->speed_m_s;
    const fall::Descent descent(evaluation.body, evaluation.ledger, out.document, water.tub, out.stage);
    const double heavy = descent.motion().heave_mass_kg();
    const double gathering =
        heavy * *out.tub_fall_m_s * *out.tub_fall_m_s / (units::standard_gravity_m_s2 * there.in_tub_kg);
    out.tub_half_metre_s = time_from_rest_s(0.5, *out.tub_fall_m_s, gathering);
}

Outcome<DoNow> plan_anew(const document::Document& taught, Stage stage, const Surroundings& water) {
    DoNow out;
    out.stage = Stage::leaded;
    const Outcome<LeadPlan> plan = stage >= Stage::drilled ? plan_drilled(taught) : plan_lead(taught);
    if (!plan) return plan.problems();
    const Outcome<Evaluation> after = evaluate(plan->document);
    if (!after) return after.problems();
    finish(out, plan->document, after->body, taught, plan->after);
    out.met = plan->met;
    out.nothing_to_do = plan->met && out.changes.empty();
    out.shortfalls = plan->shortfalls;
    describe_plan(out, *plan);
    read_tub(out, *after, water);
    describe_tub(out, water);
    return out;
}

} // namespace

Outcome<DoNow> do_now(const document::Document& document, std::optional<Stage> at) {
    Outcome<Standing> standing = bench::stand(document);
    if (!standing) return standing.problems();
    Standing& s = *standing;
    const Stage stage = at.value_or(s.stage);
    const Surroundings water = s.model->water();
    const document::Document taught =
        bench::with_corrections(*s.model, s.u, s.covariance.diagonal().cwiseMax(0.0).cwiseSqrt());
    if (stage < Stage::leaded) return plan_anew(taught, stage, water);

    DoNow out;
    out.stage = stage;
    const bench::Finished f = bench::finished(s);
    const double band = 0.5 * (f.asked.high_kg - f.asked.low_kg);
    const double pitch_off = f.hang ? std::abs(f.hang->value - f.asked.pitch_rad) : 10.0;
    const double third = f.asked.pitch_band_rad / 3.0;
    document::Document changed = taught;
    if (std::abs(f.forecast.mean(0) - f.asked.aim_kg) <= band / 3.0 && pitch_off <= third) {
        out.nothing_to_do = true;
        out.met = true;
        out.steps.push_back("Leave the lead as it is: " + grams(f.forecast.mean(0)) +
                            " in water is expected of the finished lure, " + grams(f.asked.aim_kg) +
                            " is asked.");
    } else {
        bench::FallModel falls = s.model->fall_model(Stage::dressed, water.fishing);
        bench::ChangeAim aim{water.fishing.density_kg_m3, f.asked.aim_kg, f.asked.pitch_rad, third};
        document::Document base = taught;
        bench::Change change;
        std::vector<bench::HoleRange> ranges;
        // Twice: with the holes there are, then with a trim hole besides.
        for (int round = 0; round < 2; ++round) {
            const auto body = s.model->evaluation().body;
            const auto inputs = ledger::prepare(base, body);
            if (!inputs) return inputs.problems();
            ranges = bench::hole_ranges(*inputs);
            // The asked weight moves a little with where lead lies.
            for (int pass = 0; pass < 4; ++pass) {
                change = bench::solve_change(*inputs, ranges, f.trim.sum, aim);
                const double asked = asked_kg(falls, base, change.sum, aim.in_water_kg);
                if (std::abs(asked - aim.in_water_kg) < 1e-8) break;
                aim.in_water_kg = asked;
            }
            changed = base;
            for (const auto& [which, kg] : change.by) {
                changed.holes[ranges[which].hole] = bench::changed_hole(*inputs, ranges[which], kg);
            }
            if (round == 1) {
                // A trim hole that nothing goes into is none.
                const auto is_trim = [&](const auto& c) {
                    return ranges[c.first].hole + 1 == changed.holes.size();
                };
                if (std::none_of(change.by.begin(), change.by.end(), is_trim)) changed.holes.pop_back();
                break;
            }
            if (change.weight_met && change.pitch_met) break;
            // It must take lead where it stands: a short column at least.
            document::Hole trim;
            trim.name = "trim";
            const auto place = bench::trim_place(*inputs, f.trim.sum.b_m().x, trim.diameter_m, 0.006);
            if (!place) break;
            trim.x_m = *place;
            base.holes.push_back(trim);
        }
        out.met = change.weight_met && change.pitch_met;
        if (!change.weight_met) {
            out.shortfalls.push_back(
                {ProblemCode::cannot_be_met, "/holes", "",
                 "Neither the lead in the holes nor a trim hole brings the finished lure to " +
                     grams(aim.in_water_kg) + " in water: it would come to " +
                     grams(change.sum.in_water_kg(aim.water_kg_m3)) + "."});
        }
        if (!change.pitch_met) {
            const water::Hang hang = water::hang(change.sum);
            out.shortfalls.push_back(
                {ProblemCode::cannot_be_met, "/targets/pitch_deg", "",
                 (change.weight_met ? "With the weight right it hangs at " : "It then hangs at ") +
                     (hang.pitch_rad ? degrees_text(*hang.pitch_rad) : std::string("no angle at all")) +
                     "; " + degrees_text(aim.pitch_rad) + " is asked."});
        }
    }
    const Outcome<Evaluation> after = evaluate(changed);
    if (!after) return after.problems();
    finish(out, changed, after->body, taught, after->answers);
    if (!out.nothing_to_do) describe_leaded(out, taught);
    read_tub(out, *after, water);
    describe_tub(out, water);
    return out;
}

Outcome<std::optional<Estimate>> finished_fall_for_tub(const document::Document& document, Stage stage,
                                                       double tub_m_s) {
    if (!(tub_m_s >= 0.005 && tub_m_s <= 5.0)) {
        return Problem{ProblemCode::out_of_range, "/tub_fall", "5 to 5000 mm/s",
                       "A fall in the tub is from 5 to 5000 mm/s."};
    }
    const Outcome<Standing> before = bench::stand(document);
    if (!before) return before.problems();
    // A long way down: the start from rest then counts for little.
    constexpr double depth_m = 5.0;
    const bench::FallModel falls = before->model->fall_model(stage, before->model->water().tub);
    const ledger::Sum sum = before->model->sum(stage, -1, before->u);
    bench::FallModel trial = falls;
    const auto kg = trial.in_water_for(sum, before->model->drag(before->u), tub_m_s);
    if (!kg) return std::optional<Estimate>{};
    document::Document seen = document;
    document::Reading r;
    r.kind = document::ReadingKind::tub_fall;
    r.stage = stage;
    r.lure = before->lure;
    r.depth_m = depth_m;
    r.time_s = time_from_rest_s(depth_m, tub_m_s, falls.gathering_m(sum, *kg, tub_m_s));
    r.time_sigma_s = bench::fall_scatter * *r.time_s;
    seen.log.push_back(r);
    if (seen.log.size() > document::max_readings) {
        // The log is full: what tells least makes way. A reading struck out tells nothing, another fall much
        // the same.
        const auto first = [&](const auto& is) {
            return std::find_if(seen.log.begin(), seen.log.end() - 1, is);
        };
        auto least = first([](const document::Reading& old) { return old.struck; });
        if (least->struck == false)
            least =
                first([](const document::Reading& old) { return old.kind == document::ReadingKind::tub_fall; });
        seen.log.erase(least == seen.log.end() - 1 ? seen.log.begin() : least);
    }
    Outcome<Standing> after = bench::stand(seen);
    if (!after) return after.problems();
    // Readings that no lure has together leave the search swinging: what it ended at does not show the fall
    // that its line promised.
    const auto& line = after->update.lines.back();
    const auto found = after->observer->observe(after->model->document().log.back(), after->u);
    constexpr double much_sigma = 0.1;
    if (!line || !found ||
        !(std::abs(line->read - line->seen.slope.dot(after->u) - (found->read - found->value)) <
          much_sigma * found->sigma)) {
        return Problem{ProblemCode::cannot_be_met, "/tub_fall", "",
                       "Such a fall at this stage is so far from what the log says that no lure does both. "
                       "Look over the readings and the stage."};
    }
    const bench::Finished lure = bench::finished(*after);
    return lure.fall ? std::optional(bench::estimate(*after, *lure.fall)) : std::nullopt;
}

} // namespace evenfall
