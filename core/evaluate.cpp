#include "evaluation.hpp"

#include "balance/hang.hpp"
#include "base/sentence.hpp"
#include "fall/descent.hpp"
#include "fall/level_fall.hpp"
#include "holes/checks.hpp"
#include "ledger/build.hpp"
#include "ledger/fold.hpp"
#include "preset/check.hpp"

#include <cmath>

namespace evenfall {

namespace {

struct Inputs {
    const preset::Document& document;
    const shape::Body& body;
    const ledger::Ledger& ledger;
};

/// Within this much of nothing a lure is said to hang still: the slowest fall a carver would notice in a tub.
constexpr double still_band_kg = 0.00005;

/// The main steady fall of the piece after a stage. Its band is worked out for the finished lure in its own water alone; a
/// stage on the way, and the tub, take the band of the end effect, which is most of it.
std::optional<Fall> fall_of(const Inputs& in, const fall::LevelFall& level, Stage stage, double in_water_kg,
                            const water::Properties& water, bool with_band) {
    if (in_water_kg <= still_band_kg) return std::nullopt;
    const fall::Descent descent(in.body, in.ledger, in.document, water, stage);
    if (with_band) {
        const auto f = descent.main_fall(fall::Descent::Doubts::bands);
        if (!f) return std::nullopt;
        return Fall{f->vertical_m_s, f->vertical_band_m_s.low, f->vertical_band_m_s.high, f->pitch_rad, f->forward_m_s};
    }
    const auto f = descent.main_fall();
    const auto speeds = level.speeds(in_water_kg, water);
    if (!f || !speeds) return std::nullopt;
    return Fall{f->vertical_m_s, f->vertical_m_s * speeds->slow_m_s / speeds->usual_m_s,
                f->vertical_m_s * speeds->fast_m_s / speeds->usual_m_s, f->pitch_rad, f->forward_m_s};
}

Behaviour behaviour_of(double in_water_kg) {
    if (in_water_kg > still_band_kg) return Behaviour::falls;
    return in_water_kg < -still_band_kg ? Behaviour::floats : Behaviour::hangs_still;
}

Problems warnings_of(const Answers& answers) {
    Problems out;
    if (answers.bg_m <= 0.0) {
        out.push_back({ProblemCode::capsizes, "", "G below B",
                       "G lies " + millimetres_text(-answers.bg_m) + " above B: under water the finished lure rolls over."});
    }
    return out;
}

std::string segment_name(const preset::Document& document, std::size_t s) {
    return s < document.segment_names.size() ? document.segment_names[s] : "Segment " + std::to_string(s + 1);
}

Answers answers_of(const preset::Document& document, const shape::Body& body, const ledger::Ledger& ledger,
                   const Surroundings& water) {
    const ledger::Fold fold = ledger::fold(ledger, body.segments.size());
    const auto sigmas = ledger::sigmas(ledger, water.fishing.density_kg_m3);
    const fall::LevelFall level(*body.lines);
    const balance::Hang hang = balance::hang(fold.total);

    const Inputs in{document, body, ledger};

    Answers a;
    a.water_density_kg_m3 = water.fishing.density_kg_m3;
    a.mass_kg = fold.total.mass_kg;
    a.displaced_m3 = fold.total.displaced_m3;
    a.in_water_kg = fold.total.in_water_kg(water.fishing.density_kg_m3);
    a.mass_sigma_kg = sigmas.back().mass_kg;
    a.in_water_sigma_kg = sigmas.back().in_water_kg;
    a.g_m = fold.total.g_m();
    a.b_m = fold.total.b_m();
    a.bg_m = hang.bg_m;
    a.pitch_rad = hang.pitch_rad;
    a.roll_rad = hang.roll_rad;
    a.behaviour = behaviour_of(a.in_water_kg);

    const bool same_water = water.fishing.density_kg_m3 == water.tub.density_kg_m3 &&
                            water.fishing.viscosity_pa_s == water.tub.viscosity_pa_s;
    for (std::size_t s = 0; s < a.stages.size(); ++s) {
        const ledger::Sum& sum = fold.through[s];
        StageAnswer& stage = a.stages[s];
        stage.stage = static_cast<Stage>(s);
        stage.mass_kg = sum.mass_kg;
        stage.mass_sigma_kg = sigmas[s].mass_kg;
        stage.displaced_m3 = sum.displaced_m3;
        stage.g_m = sum.g_m();
        stage.b_m = sum.b_m();
        stage.in_water_kg = sum.in_water_kg(water.fishing.density_kg_m3);
        stage.in_tub_kg = sum.in_water_kg(water.tub.density_kg_m3);
        stage.fall = fall_of(in, level, stage.stage, stage.in_water_kg, water.fishing, stage.stage == Stage::dressed);
        stage.tub_fall = same_water ? stage.fall : fall_of(in, level, stage.stage, stage.in_tub_kg, water.tub, false);
    }
    a.fall = a.stages.back().fall;

    for (std::size_t s = 0; s < body.segments.size(); ++s) {
        const ledger::Sum& sum = fold.segments[s];
        a.segments.push_back({segment_name(document, s), body.segments[s].volume_m3, sum.displaced_m3, sum.mass_kg,
                              sum.in_water_kg(water.fishing.density_kg_m3), sum.g_m(), sum.b_m()});
    }
    a.warnings = warnings_of(a);
    return a;
}

}  // namespace

Outcome<Surroundings> surroundings(const preset::Document& document) {
    const auto fishing = water::water_properties(document.water.temperature_c, document.water.salinity_g_kg, "/water");
    if (!fishing) return fishing.problems();
    const auto tub = water::water_properties(document.tub.temperature_c, document.tub.salinity_g_kg, "/tub");
    if (!tub) return tub.problems();
    return Surroundings{*fishing, *tub};
}

Outcome<Evaluation> evaluate(const preset::Document& document) {
    Problems unfit = preset::check(document);
    if (!unfit.empty()) return unfit;
    auto lines = shape::drawn_lines(document.shape);
    if (!lines) return lines.problems();
    auto body = shape::cut(std::move(*lines), document.joints);
    if (!body) return body.problems();
    auto woodwork = ledger::prepare(document, *body);
    if (!woodwork) return woodwork.problems();
    Problems refused = holes::check(document, *body, woodwork->bores);
    if (!refused.empty()) return refused;
    auto ledger = ledger::build(*woodwork);
    if (!ledger) return ledger.problems();
    const auto water = surroundings(document);
    if (!water) return water.problems();

    Answers answers = answers_of(document, *body, *ledger, *water);
    return Evaluation{std::move(*body), std::move(*ledger), std::move(answers)};
}

}  // namespace evenfall
