#include "bench/beats.hpp"

#include "document/log_check.hpp"
#include "document/work_done.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::bench {

namespace {

// Own estimates, of the ln of beats per metre.
constexpr double way_and_pace_sigma = 0.05;
constexpr double ends_sigma_beats = 0.5;
constexpr double changed_design_sigma = 0.08;
constexpr double changed_by = 0.02;
constexpr double from_lure_to_lure_sigma = 0.10;
/// Before any count, of a design that nothing else is known of.
constexpr double usual_sigma = 0.2;
/// Nine in ten of a normal distribution lie below its middle and this many standard deviations.
constexpr double nine_in_ten = 1.2815515655446004;

bool has_learnt(const document::Document& document) {
    return std::any_of(document.corrections.begin(), document.corrections.end(),
                       [](const auto& c) { return c.of == document::Cause::beats; });
}

} // namespace

std::optional<double> counted_per_m(const document::Reading& r) {
    const double way_m = r.travel_m.value_or(r.time_s.value_or(0.0) * r.speed_m_s.value_or(0.0));
    if (!(way_m > 0.0) || !r.beats) return std::nullopt;
    return *r.beats / way_m;
}

double count_sigma_ln(const document::Reading& r) {
    const double beats = r.beats.value_or(1.0);
    if (r.beats_sigma) return *r.beats_sigma / beats;
    return std::hypot(way_and_pace_sigma, ends_sigma_beats / beats);
}

BeatsError beats_error(const document::Document& document, std::optional<double> foretold_per_m,
                       double sigma_ln) {
    BeatsError error{0.0, sigma_ln, 0};
    for (const document::Correction& c : document.corrections) {
        if (c.of != document::Cause::beats) continue;
        error.mean += std::log(c.factor);
        error.sigma = c.spread.value_or(sigma_ln);
    }
    // One count after another: their order does not matter.
    const int lure = document::log_state(document).lure;
    for (const document::Reading& r : document.log) {
        if (!document::is_of_swim(r.kind) || r.excluded || document::lure_of(r) != lure) continue;
        const auto counted = counted_per_m(r);
        const auto foretold = r.foretold_per_m ? r.foretold_per_m : foretold_per_m;
        if (!counted || !foretold) continue;
        double sigma = count_sigma_ln(r);
        if (foretold_per_m && std::abs(std::log(*foretold / *foretold_per_m)) > changed_by)
            sigma = std::hypot(sigma, changed_design_sigma);
        const double gain = error.sigma * error.sigma / (error.sigma * error.sigma + sigma * sigma);
        error.mean += gain * (std::log(*counted / *foretold) - error.mean);
        error.sigma *= std::sqrt(1.0 - gain);
        ++error.counts;
    }
    return error;
}

KnownBeats known_beats(const document::Document& document, const swim::Beats& worked_out) {
    const double sigma = std::log(worked_out.high / worked_out.low) / (2.0 * nine_in_ten);
    const BeatsError error = beats_error(document, worked_out.mid, sigma);
    if (error.counts == 0 && !has_learnt(document)) return {worked_out};
    const auto at = [&](double sigmas) {
        return worked_out.mid * std::exp(error.mean + sigmas * error.sigma);
    };
    return {{at(-nine_in_ten), at(0.0), at(nine_in_ten)}, true, error.counts};
}

std::optional<document::Correction> beats_for_next_lure(const document::Document& document) {
    const BeatsError error = beats_error(document, std::nullopt, usual_sigma);
    if (error.counts == 0 && !has_learnt(document)) return std::nullopt;
    document::Correction c;
    c.of = document::Cause::beats;
    c.factor = std::clamp(std::exp(error.mean), document::least_factor, document::most_factor);
    c.spread = error.counts > 0 ? std::hypot(error.sigma, from_lure_to_lure_sigma) : error.sigma;
    return c;
}

} // namespace evenfall::bench
