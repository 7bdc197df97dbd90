#include "bench/uncertainty/update.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace evenfall::bench {

Prior Prior::of(const Model& model) {
    Prior p;
    p.shared.resize(model.count());
    for (Eigen::Index i = 0; i < model.count(); ++i)
        p.shared(i) = shared_of(model.inputs()[static_cast<std::size_t>(i)]);
    p.own = Eigen::VectorXd::Ones(model.count()) - p.shared;
    return p;
}

Posterior::Posterior(const Prior& prior, LinearReadings readings)
    : Posterior(prior, std::move(readings), MeansOnly{}) {
    complete();
}

Posterior::Posterior(const Prior& prior, LinearReadings readings, MeansOnly)
    : prior_(prior), readings_(std::move(readings)) {
    const Eigen::Index n = readings_.read.size();
    if (n == 0) return;
    // Scaled by each reading's sigma, so that grams and radians stand side by side and the least eigenvalue
    // is 1.
    scale_ = readings_.sigma.cwiseInverse();
    const Eigen::MatrixXd slope = (scale_.asDiagonal() * readings_.slope).transpose();
    const Eigen::MatrixXd of_others = prior_.shared.asDiagonal() * slope;
    const Eigen::MatrixXd of_same = (prior_.shared + prior_.own).asDiagonal() * slope;
    Eigen::MatrixXd covariance(n, n);
    for (Eigen::Index a = 0; a < n; ++a) {
        for (Eigen::Index b = 0; b <= a; ++b) {
            const bool same =
                readings_.lure[static_cast<std::size_t>(a)] == readings_.lure[static_cast<std::size_t>(b)];
            covariance(a, b) = (same ? of_same : of_others).col(a).dot(slope.col(b));
        }
        covariance(a, a) += 1.0;
    }
    factors_.compute(covariance); // looks at the lower half only
    weight_ = scale_.cwiseProduct(factors_.solve(scale_.cwiseProduct(readings_.read)));
}

void Posterior::complete() {
    const Eigen::Index n = readings_.read.size();
    if (n == 0) return;
    // Column by column: what Eigen has for large products would be a good part of the page.
    Eigen::MatrixXd inverse(n, n);
    for (Eigen::Index k = 0; k < n; ++k)
        inverse.col(k) = factors_.solve(Eigen::VectorXd::Unit(n, k));
    inverse_ = scale_.asDiagonal() * inverse * scale_.asDiagonal();
}

Eigen::MatrixXd Posterior::cross(int lure) const {
    Eigen::MatrixXd c = readings_.slope;
    for (Eigen::Index a = 0; a < c.rows(); ++a) {
        const bool same = readings_.lure[static_cast<std::size_t>(a)] == lure;
        c.row(a) = c.row(a).cwiseProduct((same ? prior_.shared + prior_.own : prior_.shared).transpose());
    }
    return c;
}

Eigen::VectorXd Posterior::mean(int lure) const {
    if (readings_.read.size() == 0) return Eigen::VectorXd::Zero(prior_.shared.size());
    return cross(lure).transpose().lazyProduct(weight_);
}

Eigen::MatrixXd Posterior::covariance(int lure) const {
    Eigen::MatrixXd p = (prior_.shared + prior_.own).asDiagonal();
    if (readings_.read.size() == 0) return p;
    const Eigen::MatrixXd c = cross(lure);
    const Eigen::MatrixXd weighted = inverse_.lazyProduct(c);
    p -= c.transpose().lazyProduct(weighted);
    return 0.5 * (p + p.transpose());
}

Eigen::VectorXd Posterior::own_mean(int lure) const {
    Eigen::VectorXd m = Eigen::VectorXd::Zero(prior_.own.size());
    for (Eigen::Index a = 0; a < readings_.read.size(); ++a) {
        if (readings_.lure[static_cast<std::size_t>(a)] != lure) continue;
        m += weight_(a) * readings_.slope.row(a).transpose().cwiseProduct(prior_.own);
    }
    return m;
}

Eigen::VectorXd Posterior::explained(const Eigen::MatrixXd& c) const {
    const Eigen::MatrixXd weighted = inverse_.lazyProduct(c);
    return c.cwiseProduct(weighted).colwise().sum().transpose();
}

Eigen::VectorXd Posterior::own_variance(int lure) const {
    Eigen::MatrixXd c = readings_.slope;
    for (Eigen::Index a = 0; a < c.rows(); ++a) {
        if (readings_.lure[static_cast<std::size_t>(a)] != lure) c.row(a).setZero();
        c.row(a) = c.row(a).cwiseProduct(prior_.own.transpose());
    }
    if (c.rows() == 0) return prior_.own;
    return prior_.own - explained(c);
}

Eigen::VectorXd Posterior::shared_mean() const {
    if (readings_.read.size() == 0) return Eigen::VectorXd::Zero(prior_.shared.size());
    return prior_.shared.cwiseProduct(readings_.slope.transpose().lazyProduct(weight_));
}

Eigen::VectorXd Posterior::shared_variance() const {
    if (readings_.read.size() == 0) return prior_.shared;
    const Eigen::MatrixXd c = readings_.slope * prior_.shared.asDiagonal();
    return prior_.shared - explained(c);
}

Eigen::VectorXd Posterior::left_out_sigma() const {
    return inverse_.diagonal().cwiseInverse().cwiseSqrt();
}

Eigen::VectorXd Posterior::left_out_off() const {
    return weight_.cwiseQuotient(inverse_.diagonal());
}

namespace {

/// The work of a reading that takes a search of its own, a timed fall's as 1; a weighing takes a hundredth of
/// it, which is 0 here.
int searches_for(const document::Reading& r) {
    if (r.kind == document::ReadingKind::tub_fall) return 1;
    return r.kind == document::ReadingKind::floats_showing ? 6 : 0;
}

/// How often a log is gone through at most, and how often what must be searched for is searched anew. The
/// readings of a lure or two settle long before; a log as long as it may be, and at odds with itself, still
/// ends within the time that somebody waits.
struct Passes {
    int all, searched;
};
Passes passes_for(std::size_t readings, int searches) {
    constexpr int most = 40;
    constexpr int readings_times_passes = 2000;
    constexpr int most_searches = 1200;
    const int by_readings = readings_times_passes / static_cast<int>(std::max<std::size_t>(readings, 1));
    const int by_searches = most_searches / std::max(searches, 1);
    return {std::clamp(by_readings, 10, most), std::clamp(by_searches, 3, most)};
}

} // namespace

Update update(const Model& model, Observer& observer, const Prior& prior,
              const std::vector<std::size_t>& left_out, const Update* before) {
    constexpr double settled_u = 1e-10;
    const auto& log = model.document().log;
    std::vector<std::size_t> asked;
    int searches = 0;
    std::map<int, Eigen::VectorXd> at; // most likely inputs so far, by lure
    for (std::size_t i = 0; i < log.size(); ++i) {
        if (log[i].struck || std::find(left_out.begin(), left_out.end(), i) != left_out.end()) continue;
        asked.push_back(i);
        searches += searches_for(log[i]);
        at.try_emplace(document::lure_of(log[i]), Eigen::VectorXd::Zero(model.count()));
    }
    const Passes passes = passes_for(asked.size(), searches);
    // One reading less moves the others little: what takes long to search for stays as it was found.
    constexpr int few_passes = 10;
    const bool as_found = before != nullptr && passes.searched < few_passes;
    Update result{{},
                  {},
                  Posterior(prior, {}),
                  as_found ? before->lines : std::vector<std::optional<ReadingLine>>(log.size()),
                  0,
                  before != nullptr ? before->in_vain : 0};
    auto& lines = result.lines;
    // A search that finds nothing takes as long as dozens that do: what found nothing is searched again, but
    // not for ever.
    constexpr int most_in_vain = 40;
    const auto given_up = [&](std::size_t i, int pass) {
        if (result.in_vain < most_in_vain) return false;
        return pass > 0 ? !lines[i].has_value() : before != nullptr && !before->lines[i].has_value();
    };
    for (int pass = 0; pass < passes.all; ++pass) {
        for (const std::size_t i : asked) {
            const bool searched = searches_for(log[i]) > 0;
            if (searched && (as_found || pass >= passes.searched || given_up(i, pass))) continue;
            const Eigen::VectorXd& u = at.at(document::lure_of(log[i]));
            auto seen = observer.observe(log[i], u);
            lines[i].reset();
            if (!seen && searched) ++result.in_vain;
            if (!seen) continue;
            const double read = seen->read - seen->value + seen->slope.dot(u);
            lines[i] = ReadingLine{std::move(*seen), read};
        }
        const auto n =
            std::count_if(asked.begin(), asked.end(), [&](std::size_t i) { return lines[i].has_value(); });
        LinearReadings linear;
        linear.slope.resize(n, model.count());
        linear.read.resize(n);
        linear.sigma.resize(n);
        Eigen::Index row = 0;
        for (const std::size_t i : asked) {
            if (!lines[i]) continue;
            linear.lure.push_back(document::lure_of(log[i]));
            linear.slope.row(row) = lines[i]->seen.slope.transpose();
            linear.read(row) = lines[i]->read;
            linear.sigma(row++) = lines[i]->seen.sigma;
        }
        result.posterior = Posterior(prior, std::move(linear), Posterior::MeansOnly{});
        result.passes = pass + 1;
        double moved = 0.0;
        for (auto& [lure, u] : at) {
            const Eigen::VectorXd next = result.posterior.mean(lure);
            moved = std::max(moved, (next - u).cwiseAbs().maxCoeff());
            // Far into the walk full steps only swing to and fro: halve them.
            u = pass < passes.all / 2 ? next : Eigen::VectorXd(0.5 * (u + next));
        }
        if (moved < settled_u) break;
    }
    result.posterior.complete();
    for (const std::size_t i : asked) {
        if (!lines[i]) continue;
        result.used.push_back(i);
        result.observed.push_back(lines[i]->seen);
    }
    return result;
}

} // namespace evenfall::bench
