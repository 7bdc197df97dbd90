#include "answers/answers.hpp"
#include "answers/built.hpp"

#include "base/sentence.hpp"
#include "body/board.hpp"
#include "body/hole_checks.hpp"
#include "document/check.hpp"
#include "document/fields.hpp"
#include "ledger/build.hpp"
#include "ledger/fold.hpp"
#include "ledger/hung_on.hpp"
#include "materials/solids.hpp"
#include "water/afloat/float_answers.hpp"
#include "water/fall/descent.hpp"
#include "water/fall/level_fall.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

namespace evenfall {

namespace {

struct Inputs {
    const document::Document& document;
    const shape::Body& body;
    const ledger::Ledger& ledger;
};

/// The main steady fall, or rise, of a piece in its water. The full band is computed only for the finished
/// lure in the fishing water; earlier stages and the tub use the band of the end effect, which is most of it.
std::optional<Fall> fall_of(const fall::FallingLure& descent, const fall::LevelFall& level,
                            MassInWater in_water, const materials::WaterProperties& water, bool with_band) {
    if (with_band) {
        const auto f = descent.main_fall(fall::FallingLure::ModelBands::bands);
        if (!f) return std::nullopt;
        const auto& [low, high] = f->vertical_band_m_s;
        const bool rises = f->vertical_m_s < 0.0;
        return Fall{f->vertical_m_s, rises ? high : low, rises ? low : high,
                    f->pitch_rad,    f->forward_m_s,     f->in_drag_laws};
    }
    const auto f = descent.main_fall();
    const auto speeds = level.speeds(std::abs(in_water.kg), water);
    if (!f || !speeds) return std::nullopt;
    return Fall{f->vertical_m_s, f->vertical_m_s * speeds->slow_m_s / speeds->usual_m_s,
                f->vertical_m_s * speeds->fast_m_s / speeds->usual_m_s, f->pitch_rad, f->forward_m_s};
}

/// Whether how a piece moves under water has to be worked out: not where its lift alone tells that it rises
/// many times faster than what hangs still.
bool may_fall(const fall::LevelFall& level, MassInWater in_water, const materials::WaterProperties& water) {
    return in_water.kg > 0.0 || level.speed_m_s(-in_water.kg, water).value_or(0.0) < 10.0 * still_m_s;
}

std::optional<double> vertical_of(const std::optional<Fall>& way) {
    return way ? std::optional(way->speed_m_s) : std::nullopt;
}

/// Falls and behaviour of one stage in both waters; hull and parts are computed once. Returns the way under
/// water of the finished lure.
std::optional<Fall> set_falls(const Inputs& in, const Kept& kept, const fall::LevelFall& level,
                              const Waters& water, StageAnswer& stage) {
    const bool is_finished = stage.stage == Stage::rigged;
    const bool same_water = water.fishing.density_kg_m3 == water.tub.density_kg_m3 &&
                            water.fishing.viscosity_pa_s == water.tub.viscosity_pa_s;
    const bool in_fishing = is_finished || may_fall(level, stage.in_water, water.fishing);
    const bool in_tub = !same_water && may_fall(level, stage.in_tub, water.tub);
    std::optional<Fall> way, tub_way;
    if (in_fishing || in_tub) {
        const fall::FallingLure descent(kept.hull, in.body, in.ledger, in.document, water.fishing,
                                        stage.stage);
        if (in_fishing) way = fall_of(descent, level, stage.in_water, water.fishing, is_finished);
        if (in_tub) tub_way = fall_of(descent.in(water.tub), level, stage.in_tub, water.tub, false);
    }
    if (same_water) tub_way = way;
    stage.behaviour = behaviour_of(vertical_of(way), stage.in_water);
    stage.tub_behaviour = behaviour_of(vertical_of(tub_way), stage.in_tub);
    if (stage.behaviour == Behaviour::falls) stage.fall = way;
    if (stage.tub_behaviour == Behaviour::falls) stage.tub_fall = tub_way;
    return is_finished ? way : std::nullopt;
}

StageAnswer stage_answer(Stage which, const ledger::Sum& sum, Mass sigma, const Waters& water) {
    StageAnswer stage;
    stage.stage = which;
    stage.mass = sum.mass;
    stage.mass_sigma = sigma;
    stage.displaced_m3 = sum.displaced_m3;
    stage.g_m = sum.g_m();
    stage.b_m = sum.b_m();
    stage.in_water = sum.in_water(water.fishing.density_kg_m3);
    stage.in_tub = sum.in_water(water.tub.density_kg_m3);
    return stage;
}

std::vector<CoatAnswer> coats_of(const document::Document& document, const ledger::Ledger& ledger,
                                 double water_kg_m3) {
    std::vector<CoatAnswer> out;
    for (int i = 0; i < static_cast<int>(document.coats.size()); ++i) {
        const ledger::Sum sum = ledger::sum_of(ledger, ledger::Kind::coat, i);
        const MassInWater in_water = sum.in_water(water_kg_m3);
        out.push_back(
            {i, sum.mass, sum.displaced_m3, in_water, sum.mass.kg > 0.0 ? in_water.kg / sum.mass.kg : 0.0});
    }
    return out;
}

/// What makes the speed of its way under water less sure than usual.
void append_drag_warnings(const fall::HydroBody& hull, const Answers& answers, Problems& out) {
    if (!hull.ends.is_measured) {
        out.push_back({ProblemCode::drag_unknown, "/shape", "",
                       "So short and pointed, or higher than long: no measured drag of such a body is known "
                       "here, and the range of its speed is wide."});
    }
    if (answers.under_water && !answers.under_water->in_drag_laws &&
        answers.behaviour != Behaviour::suspends) {
        const bool slow = std::abs(answers.under_water->speed_m_s) < 0.5;
        out.push_back(
            {ProblemCode::drag_unknown, "", "",
             std::string("It moves so ") + (slow ? "slowly" : "fast") +
                 " for its size that its drag is less well known: the range of its speed is wide."});
    }
}

Problems warnings_of(const Inputs& in, const fall::HydroBody& hull, const Answers& answers) {
    Problems out;
    if (answers.bg_m <= 0.0) {
        out.push_back(
            {ProblemCode::capsizes, "", "G below B",
             "G lies " + length_text(-answers.bg_m) + " above B: under water the finished lure rolls over."});
    }
    if (answers.behaviour == Behaviour::floats) {
        auto rolls = afloat::roll_over_warning(in.body, in.ledger, in.document, answers.water_density_kg_m3);
        if (rolls) out.push_back(std::move(*rolls));
    }
    append_drag_warnings(hull, answers, out);
    for (std::size_t i = 0; in.document.tail && i < in.document.parts.size(); ++i) {
        const document::Part& part = in.document.parts[i];
        if (!materials::is_soft(part.material) || part.at_m.x < in.document.tail->x_m) continue;
        out.push_back(
            {ProblemCode::overlap, "/parts/" + std::to_string(i), "one tail",
             "Part " + std::to_string(i + 1) +
                 " is a soft tail behind the wood as well: with the drawn one it is weighed twice."});
    }
    return out;
}

std::string segment_name(const document::Document& document, std::size_t s) {
    return s < document.segment_names.size() ? document.segment_names[s] : "Segment " + std::to_string(s + 1);
}

Answers answers_of(const ledger::LedgerInputs& inputs, const ledger::Ledger& ledger, const Kept& kept,
                   const Waters& water) {
    const document::Document& document = *inputs.document;
    const shape::Body& body = *inputs.body;
    const ledger::StageSums stage_sums = ledger::stage_sums(ledger, body.segments.size());
    const auto sigmas = ledger::sigmas(ledger, water.fishing.density_kg_m3);
    const fall::LevelFall level(*kept.hull);
    const water::Hang hang = water::hang(stage_sums.total);

    const Inputs in{document, body, ledger};

    Answers a;
    a.water_density_kg_m3 = water.fishing.density_kg_m3;
    a.mass = stage_sums.total.mass;
    a.displaced_m3 = stage_sums.total.displaced_m3;
    a.in_water = stage_sums.total.in_water(water.fishing.density_kg_m3);
    a.mass_sigma = sigmas.back().mass;
    a.in_water_sigma = sigmas.back().in_water;
    a.g_m = stage_sums.total.g_m();
    a.b_m = stage_sums.total.b_m();
    a.bg_m = hang.bg_m;
    a.pitch_rad = hang.pitch_rad;
    a.roll_rad = hang.roll_rad;

    for (std::size_t s = 0; s < a.stages.size(); ++s) {
        a.stages[s] = stage_answer(static_cast<Stage>(s), stage_sums.through[s], sigmas[s].mass, water);
        a.under_water = set_falls(in, kept, level, water, a.stages[s]);
    }
    a.fall = a.stages.back().fall;
    a.behaviour = a.stages.back().behaviour;

    for (std::size_t s = 0; s < body.segments.size(); ++s) {
        const ledger::Sum& sum = stage_sums.segments[s];
        a.segments.push_back({segment_name(document, s), body.segments[s].volume_m3, sum.displaced_m3,
                              sum.mass, sum.in_water(water.fishing.density_kg_m3), sum.g_m(), sum.b_m()});
    }
    a.coats = coats_of(document, ledger, water.fishing.density_kg_m3);
    a.warnings = warnings_of(in, *kept.hull, a);
    for (Problem& p : holes::built_in_warnings(document, body, inputs.bores))
        a.warnings.push_back(std::move(p));
    if (document.board) {
        const Problems short_board = shape::board_warnings(*document.board, *body.lines);
        a.warnings.insert(a.warnings.end(), short_board.begin(), short_board.end());
    }
    return a;
}

} // namespace

Behaviour behaviour_of(const std::optional<double>& vertical_m_s, MassInWater in_water) {
    constexpr MassInWater still_weight{fall::still_kg};
    if (vertical_m_s ? std::abs(*vertical_m_s) <= still_m_s
                     : in_water <= still_weight && in_water >= -1.0 * still_weight)
        return Behaviour::suspends;
    return vertical_m_s.value_or(in_water.kg) > 0.0 ? Behaviour::falls : Behaviour::floats;
}

bool fall_on_target(const document::Targets& targets, const std::optional<double>& speed_m_s) {
    return speed_m_s && std::abs(*speed_m_s / targets.fall_m_s - 1.0) <= targets.fall_band;
}

bool pitch_on_target(const document::Targets& targets, const std::optional<double>& pitch_rad) {
    return pitch_rad && std::abs(*pitch_rad - targets.pitch_rad) <= targets.pitch_band_rad;
}

Outcome<Waters> waters_of(const document::Document& document) {
    const auto fishing =
        materials::water_properties(document.water.temperature_c, document.water.salinity_g_kg, "/water");
    if (!fishing) return fishing.problems();
    const auto tub =
        materials::water_properties(document.tub.temperature_c, document.tub.salinity_g_kg, "/tub");
    if (!tub) return tub.problems();
    return Waters{*fishing, *tub};
}

namespace {

/// What a document is made into, each step from the one before. The inputs point at document and body.
struct WorkedThrough {
    shape::Geometry geometry;
    std::unique_ptr<shape::Body> body;
    ledger::LedgerInputs inputs;
    ledger::Ledger ledger;
};

Outcome<WorkedThrough> worked_through(const document::Document& document,
                                      const shape::Geometry* before = nullptr) {
    Problems unfit = document::check(document);
    if (!unfit.empty()) return unfit;
    Outcome<shape::Geometry> geometry = shape::geometry_of(document, before);
    if (!geometry) return geometry.problems();
    auto body = std::make_unique<shape::Body>(geometry->wood->body);
    body->joints = document.joints; // the same cuts, and hinges that may have changed
    auto inputs = ledger::ledger_inputs(document, *body);
    if (!inputs) return inputs.problems();
    Problems refused = holes::check(document, *body, inputs->bores);
    if (!refused.empty()) return refused;
    auto ledger = ledger::build(*inputs, geometry->pockets->pieces);
    if (!ledger) return ledger.problems();
    return WorkedThrough{std::move(geometry).value(), std::move(body), std::move(inputs).value(),
                         std::move(ledger).value()};
}

// Forty holes in forty pockets are 1600 overlaps; more than a screenful of problems helps nobody.
Problems first_of(const Problems& all) {
    const std::size_t count = std::min(all.size(), document::max_problems);
    return {all.begin(), all.begin() + static_cast<std::ptrdiff_t>(count)};
}

} // namespace

Outcome<Built> build(const document::Document& document) {
    auto work = worked_through(document);
    if (!work) return first_of(work.problems());
    return Built{std::move(*work->body), std::move(work->ledger)};
}

Outcome<Evaluation> evaluate(const document::Document& document, const Kept* before) {
    auto work = worked_through(document, before != nullptr ? &before->geometry : nullptr);
    if (!work) return first_of(work.problems());
    const auto water = waters_of(document);
    if (!water) return water.problems();
    Kept kept{std::move(work->geometry), nullptr};
    if (before != nullptr && before->geometry.wood == kept.geometry.wood)
        kept.hull = before->hull;
    else
        kept.hull = std::make_shared<const fall::HydroBody>(fall::hull(kept.geometry.wood->body));
    Answers answers = answers_of(work->inputs, work->ledger, kept, *water);
    return Evaluation{std::move(*work->body), std::move(work->ledger), std::move(answers), std::move(kept)};
}

std::vector<StageAnswer> stages_with_all(const document::Document& document, const Evaluation& evaluation) {
    const auto water = waters_of(document);
    if (!water || !ledger::has_rigging(evaluation.ledger)) return {};
    const shape::Body& body = evaluation.body;
    const ledger::Ledger ledger =
        ledger::with_hung_on(evaluation.ledger, document::all_hung_on(), evaluation.answers.g_m);
    const ledger::StageSums sums = ledger::stage_sums(ledger, body.segments.size());
    const auto sigmas = ledger::sigmas(ledger, water->fishing.density_kg_m3);
    const fall::LevelFall level(*evaluation.kept.hull);
    std::vector<StageAnswer> out;
    for (const Stage which : document::test_stages) {
        const auto s = static_cast<std::size_t>(which);
        out.push_back(stage_answer(which, sums.through[s], sigmas[s].mass, *water));
        set_falls({document, body, ledger}, evaluation.kept, level, *water, out.back());
    }
    return out;
}

} // namespace evenfall
