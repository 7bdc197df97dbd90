#include "bench/beats.hpp"
#include "bench/uncertainty/posterior.hpp"
#include "document/work_done.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace evenfall {

// Expectation-maximisation (Dempster, Laird and Rubin 1977) for the variance between the lures of a recipe.
// Each input's own part has variance own·g; g starts at 1 and has a scaled inverse-χ² prior of four degrees
// of freedom about 1, so that a log of one or two lures changes it little. Expectation: posterior mean and
// variance of each lure's own part at the present g. Maximisation: g = (4 + Σ (mean² + variance)/own)/(4 +
// lures).
Outcome<document::Document> for_next_lure(const document::Document& document) {
    constexpr double prior_weight = 4.0;
    constexpr int rounds = 12;
    Outcome<bench::Posterior> posterior = bench::posterior_of(document);
    if (!posterior) return posterior.problems();
    bench::Posterior& p = *posterior;
    const bench::Prior start = p.prior;
    bench::Prior prior = start;
    std::set<int> lures;
    for (const document::Reading& r : document.log) {
        if (!r.excluded && !document::is_of_swim(r.kind)) lures.insert(document::lure_of(r));
    }
    bench::LogFit fit = std::move(p.fit);
    for (int round = 0; round < rounds && lures.size() > 1; ++round) {
        Eigen::VectorXd sum = Eigen::VectorXd::Constant(p.mean.size(), prior_weight);
        for (const int lure : lures) {
            const Eigen::VectorXd mean = fit.posterior.own_mean(lure);
            const Eigen::VectorXd variance = fit.posterior.own_variance(lure);
            for (Eigen::Index i = 0; i < sum.size(); ++i) {
                if (start.own(i) > 0.0)
                    sum(i) += (mean(i) * mean(i) + std::max(variance(i), 0.0)) / start.own(i);
            }
        }
        const double count = prior_weight + static_cast<double>(lures.size());
        prior.own = start.own.cwiseProduct(sum / count);
        fit = bench::fit_log(*p.model, *p.observer, prior, p.left_out, &fit);
    }
    const Eigen::VectorXd spread = (fit.posterior.shared_variance().cwiseMax(0.0) + prior.own).cwiseSqrt();
    document::Document next = bench::with_corrections(*p.model, fit.posterior.shared_mean(), spread);
    std::erase_if(next.corrections, [](const auto& c) { return c.of == document::Cause::beats; });
    if (const auto beats = bench::beats_for_next_lure(document)) next.corrections.push_back(*beats);
    document::begin_anew(next.holes);
    return next;
}

} // namespace evenfall
