#include "water/swim/belief.hpp"

#include "base/root.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace evenfall::swim {

namespace {

constexpr double one_change = 0.08; ///< what a change of design adds to the model's error; own guess

double share_below(const Draws& draws, const Belief& belief, double ln_beats) {
    double share = 0.0;
    for (std::size_t i = 0; i < draws.size(); ++i) {
        if (!(belief.weight[i] > 0.0)) continue;
        const double middle = std::log(draws[i].beats_per_m) + belief.error_mean[i];
        share += belief.weight[i] * 0.5 *
                 std::erfc((middle - ln_beats) / (belief.error_sigma * std::numbers::sqrt2));
    }
    return share;
}

} // namespace

Belief belief_of(const Draws& draws, const ModelError& error) {
    Belief b;
    const auto beats =
        std::count_if(draws.begin(), draws.end(), [](const Draw& d) { return d.beats_per_m > 0.0; });
    for (const Draw& d : draws) {
        b.weight.push_back(d.beats_per_m > 0.0 ? 1.0 / static_cast<double>(beats) : 0.0);
        b.error_mean.push_back(error.mean);
    }
    b.error_sigma = error.sigma;
    return b;
}

Belief learnt(const Belief& before, const Draws& draws, double counted_per_m, double sigma_ln) {
    Belief b = before;
    const double own = before.error_sigma * before.error_sigma;
    const double both = own + sigma_ln * sigma_ln;
    b.error_sigma = std::sqrt(own * sigma_ln * sigma_ln / both);
    // Relative to the likeliest draw, so that a count far from all leaves weights to share.
    std::vector<double> ln_weight(draws.size());
    double most = -std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < draws.size(); ++i) {
        if (!(before.weight[i] > 0.0)) continue;
        const double off = std::log(counted_per_m) - std::log(draws[i].beats_per_m) - before.error_mean[i];
        ln_weight[i] = std::log(before.weight[i]) - 0.5 * off * off / both;
        most = std::max(most, ln_weight[i]);
        b.error_mean[i] += off * own / both;
    }
    double sum = 0.0;
    for (std::size_t i = 0; i < draws.size(); ++i) {
        if (before.weight[i] > 0.0) b.weight[i] = std::exp(ln_weight[i] - most);
        sum += b.weight[i];
    }
    for (double& weight : b.weight)
        weight /= sum > 0.0 ? sum : 1.0;
    return b;
}

std::optional<Beats> beats_per_m(const Draws& draws, const Belief& belief) {
    double least = std::numeric_limits<double>::infinity(), most = -least;
    for (std::size_t i = 0; i < draws.size(); ++i) {
        if (!(belief.weight[i] > 0.0)) continue;
        const double middle = std::log(draws[i].beats_per_m) + belief.error_mean[i];
        least = std::min(least, middle);
        most = std::max(most, middle);
    }
    if (!(least <= most)) return std::nullopt;
    const double room = 8.0 * belief.error_sigma;
    const auto below = [&](double share) {
        return std::exp(root_between([&](double x) { return share_below(draws, belief, x) - share; },
                                     least - room, most + room, {1e-12, 0.0}));
    };
    return Beats{below(0.1), below(0.5), below(0.9)};
}

ModelError error_of(const Belief& belief) {
    ModelError e;
    double squares = 0.0;
    for (std::size_t i = 0; i < belief.weight.size(); ++i)
        e.mean += belief.weight[i] * belief.error_mean[i];
    for (std::size_t i = 0; i < belief.weight.size(); ++i) {
        const double off = belief.error_mean[i] - e.mean;
        squares += belief.weight[i] * off * off;
    }
    e.sigma = std::sqrt(belief.error_sigma * belief.error_sigma + squares);
    return e;
}

ModelError after_a_change(const ModelError& error) {
    return {error.mean, std::hypot(error.sigma, one_change)};
}

} // namespace evenfall::swim
