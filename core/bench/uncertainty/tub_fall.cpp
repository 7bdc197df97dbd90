#include "bench/uncertainty/posterior.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall {

using bench::Posterior;

namespace {

/// The reading of a steady fall: a long way down, where the start from rest counts for little. Absent where
/// no weight falls so fast.
std::optional<document::Reading> reading_of_fall(const Posterior& p, Stage stage, double tub_m_s,
                                                 bool with_all) {
    constexpr double depth_m = 5.0;
    const bench::Model& model = with_all ? p.model->with_all() : *p.model;
    bench::FallModel falls = model.fall_model(stage, model.water().tub);
    const ledger::Sum sum = model.sum(stage, -1, p.mean);
    const auto kg = falls.in_water_for(sum, model.drag(p.mean), tub_m_s);
    if (!kg) return std::nullopt;
    document::Reading r;
    r.kind = document::ReadingKind::tub_fall;
    r.stage = stage;
    r.lure = p.lure;
    r.stands = true; // it is asked what if, not whether
    if (with_all) r.with = document::all_hung_on();
    r.depth_m = depth_m;
    r.time_s = time_from_rest_s(depth_m, tub_m_s, falls.acceleration_length_m(sum, *kg, tub_m_s));
    r.time_sigma_s = bench::fall_scatter * *r.time_s;
    return r;
}

/// Adds a reading at the end. A full log loses the one that says least: an excluded one, else another fall,
/// else the first.
void add_reading(std::vector<document::Reading>& log, const document::Reading& reading) {
    if (log.size() >= document::max_readings) {
        auto least = std::find_if(log.begin(), log.end(), [](const auto& old) { return old.excluded; });
        if (least == log.end()) {
            least = std::find_if(log.begin(), log.end(),
                                 [&](const auto& old) { return old.kind == reading.kind; });
        }
        log.erase(least == log.end() ? log.begin() : least);
    }
    log.push_back(reading);
}

/// Whether the fit agrees with its own linearisation of the last reading. Contradictory readings leave the
/// iteration oscillating.
bool is_converged_for_last(Posterior& p) {
    constexpr double much_sigma = 0.1;
    const auto& line = p.fit.lines.back();
    const auto found = p.observer->observe(p.model->document().log.back(), p.mean);
    if (!line || !found) return false;
    const double residual_of_line = line->read - line->observation.slope.dot(p.mean);
    return std::abs(residual_of_line - (found->read - found->predicted)) < much_sigma * found->sigma;
}

} // namespace

Outcome<std::optional<Estimate>> finished_fall_for_tub(const document::Document& document, Stage stage,
                                                       double tub_m_s, bool with_all) {
    if (!(tub_m_s >= 0.005 && tub_m_s <= 5.0)) {
        const Sentence limit = range_text(0.005, 5.0, units::Quantity::speed);
        return Problem{ProblemCode::out_of_range, "/tub_fall", limit,
                       "A fall in the tub is from " + limit + "."};
    }
    const Outcome<Posterior> before = bench::posterior_of(document);
    if (!before) return before.problems();
    const auto reading = reading_of_fall(*before, stage, tub_m_s, with_all);
    if (!reading) return std::optional<Estimate>{};
    document::Document with_fall = document;
    add_reading(with_fall.log, *reading);
    Outcome<Posterior> after = bench::posterior_of(with_fall, &before->model->evaluation().kept);
    if (!after) return after.problems();
    if (!is_converged_for_last(*after)) {
        return Problem{ProblemCode::cannot_be_met, "/tub_fall", "",
                       "Such a fall at this stage is so far from what the log says that no lure does both. "
                       "Look over the readings and the stage."};
    }
    const bench::Finished lure = bench::finished(*after);
    return lure.fall ? std::optional(bench::estimate(*after, *lure.fall)) : std::nullopt;
}

} // namespace evenfall
