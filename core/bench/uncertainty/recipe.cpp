#include "bench/uncertainty/standing.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace evenfall {

// Expectation-maximisation (Dempster, Laird and Rubin 1977) for how far the lures of a recipe lie apart. Each
// input's own part has variance own·g; g starts at 1 and has a scaled inverse-χ² prior of four degrees of
// freedom about 1, so that a log of one or two lures moves it little. Expectation: the posterior mean and
// variance of each lure's own part, with g as it is. Maximisation: g = (4 + Σ (mean² + variance)/own)/(4 +
// lures).
Outcome<document::Document> for_next_lure(const document::Document& document) {
    constexpr double weight_of_start = 4.0;
    constexpr int rounds = 12;
    Outcome<bench::Standing> standing = bench::stand(document);
    if (!standing) return standing.problems();
    bench::Standing& s = *standing;
    const bench::Prior start = s.prior;
    bench::Prior prior = start;
    std::set<int> lures;
    for (const document::Reading& r : document.log) {
        if (!r.struck) lures.insert(document::lure_of(r));
    }
    bench::Update now = std::move(s.update);
    for (int round = 0; round < rounds && lures.size() > 1; ++round) {
        Eigen::VectorXd sum = Eigen::VectorXd::Constant(s.u.size(), weight_of_start);
        for (const int lure : lures) {
            const Eigen::VectorXd mean = now.posterior.own_mean(lure);
            const Eigen::VectorXd variance = now.posterior.own_variance(lure);
            for (Eigen::Index i = 0; i < sum.size(); ++i) {
                if (start.own(i) > 0.0)
                    sum(i) += (mean(i) * mean(i) + std::max(variance(i), 0.0)) / start.own(i);
            }
        }
        const double count = weight_of_start + static_cast<double>(lures.size());
        prior.own = start.own.cwiseProduct(sum / count);
        now = bench::update(*s.model, *s.observer, prior, {}, &now);
    }
    const Eigen::VectorXd spread = (now.posterior.shared_variance().cwiseMax(0.0) + prior.own).cwiseSqrt();
    return bench::with_corrections(*s.model, now.posterior.shared_mean(), spread);
}

} // namespace evenfall
