#include "bench/uncertainty/uncertainty.hpp"

#include "bench/uncertainty/posterior.hpp"
#include "ledger/hung_on.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall {

using bench::estimate;
using bench::Finished;
using bench::Linearised;
using bench::Posterior;

namespace {

std::vector<InputEstimate> input_estimates(const Posterior& p) {
    const Eigen::VectorXd spread = p.spread();
    std::vector<InputEstimate> all;
    for (Eigen::Index i = 0; i < p.model->count(); ++i) {
        const bench::Input& input = p.model->input(i);
        const double factor = bench::factor_of(input, p.mean(i));
        const double by = input.cause == document::Cause::drag ? 1.0 : factor;
        all.push_back({input.cause, input.group, p.model->name_of(input), factor,
                       input.relative * spread(i) / by, input.relative});
    }
    return all;
}

StagePrediction prediction_at(const Posterior& p, const bench::Model& model, bench::Observer& observer,
                              Stage stage) {
    const materials::WaterProperties& tub = model.water().tub;
    const bench::Balance& balance = observer.balance(stage, -1, p.mean, tub.density_kg_m3);
    StagePrediction out;
    out.stage = stage;
    out.mass_kg = estimate(p, balance.mass_kg);
    out.displaced_kg = estimate(p, tub.density_kg_m3 * balance.displaced_m3);
    out.in_tub_kg = estimate(p, balance.in_water_kg);
    if (balance.in_water_kg.value > 0.0) {
        if (const auto fall = model.fall(observer.falls(stage, tub), balance, p.mean))
            out.tub_fall_m_s = estimate(p, fall->speed_m_s);
    }
    return out;
}

/// See Uncertainty::evaluation. Corrections multiply ledger lines and drag: what could be evaluated still
/// can.
Outcome<Evaluation> evaluation_with_log(const Posterior& p, const Uncertainty& u) {
    if (!p.has_readings) return p.model->evaluation();
    Outcome<Evaluation> evaluation = evaluate(bench::with_corrections(p), &p.model->evaluation().kept);
    if (!evaluation) return evaluation;
    Answers& answers = evaluation->answers;
    answers.mass_sigma.kg = u.mass_kg.sigma;
    answers.in_water_sigma.kg = u.in_water_kg.sigma;
    if (answers.fall && u.fall_m_s) {
        // The posterior's speed; evaluate() has another in the fifth digit, as the drag of hooks and tail
        // grows with their corrected mass there.
        answers.fall->speed_m_s = u.fall_m_s->value;
        answers.fall->slow_m_s = std::max(0.0, u.fall_m_s->value - u.fall_m_s->sigma);
        answers.fall->fast_m_s = u.fall_m_s->value + u.fall_m_s->sigma;
        answers.under_water = answers.fall;
    }
    return evaluation;
}

} // namespace

Outcome<Uncertainty> uncertainty(const document::Document& document, const Kept* before) {
    Outcome<Posterior> posterior = bench::posterior_of(document, before);
    if (!posterior) return posterior.problems();
    Posterior& p = *posterior;
    const Finished f = bench::finished(p);
    Uncertainty out;
    out.lure = p.lure;
    out.stage = p.stage;
    out.has_readings = p.has_readings;
    out.inputs = input_estimates(p);
    out.mass_kg = estimate(p, f.balance.mass_kg);
    out.in_water_kg = estimate(p, f.balance.in_water_kg);
    out.bg_m = estimate(p, f.balance.below_m);
    out.pitch_rad = f.hang ? estimate(p, *f.hang) : Estimate{std::nan(""), std::nan(""), std::nan("")};
    const auto sigma = [&](const Linearised& figure) { return estimate(p, figure).sigma; };
    out.g_sigma_m = {sigma(f.balance.g_m[0]), sigma(f.balance.g_m[1]), sigma(f.balance.g_m[2])};
    out.b_sigma_m = {sigma(f.balance.b_m[0]), sigma(f.balance.b_m[1]), sigma(f.balance.b_m[2])};
    if (f.fall) out.fall_m_s = estimate(p, *f.fall);
    out.fall_50_80_95_m_s = bench::fall_intervals(p, f);
    out.under_water = bench::under_water(p, f);
    for (int i = 0; i < stage_count; ++i)
        out.stages[static_cast<std::size_t>(i)] =
            prediction_at(p, *p.model, *p.observer, static_cast<Stage>(i));
    if (ledger::has_rigging(p.model->ledger())) {
        for (const Stage stage : document::test_stages)
            out.stages_with_all.push_back(
                prediction_at(p, p.model->with_all(), p.observer->with_all(), stage));
    }
    out.chances_now = bench::chances(f.forecast, f.target);
    out.chances_corrected = bench::chances_after_correction(f.forecast, f.target);
    out.target_in_water_kg = f.target.target_kg;
    out.weight_band_kg = 0.5 * (f.target.high_kg - f.target.low_kg);
    out.readings = bench::reading_fits(p);
    out.agreement = bench::agreement(p);
    out.next = bench::next_readings(p, f, out.chances_corrected.both);
    out.trim = bench::trim_hole(p, f);
    Outcome<Evaluation> evaluation = evaluation_with_log(p, out);
    if (!evaluation) return evaluation.problems();
    out.evaluation = std::move(evaluation).value();
    return out;
}

} // namespace evenfall
