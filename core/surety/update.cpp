#include "surety/update.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <map>
#include <utility>

namespace evenfall::bench {

Prior Prior::of(const Model& model) {
    Prior p;
    p.shared.resize(model.count());
    for (Eigen::Index i = 0; i < model.count(); ++i) p.shared(i) = shared_of(model.inputs()[static_cast<std::size_t>(i)]);
    p.own = Eigen::VectorXd::Ones(model.count()) - p.shared;
    return p;
}

Posterior::Posterior(const Prior& prior, LinearReadings readings) : prior_(prior), readings_(std::move(readings)) {
    const Eigen::Index n = readings_.read.size();
    if (n == 0) return;
    // Scaled by each reading's sigma, so that grams and radians stand side by side and the least eigenvalue is 1.
    const Eigen::VectorXd scale = readings_.sigma.cwiseInverse();
    const Eigen::MatrixXd slope = scale.asDiagonal() * readings_.slope;
    Eigen::MatrixXd covariance = (slope * prior_.shared.asDiagonal()).lazyProduct(slope.transpose());
    const Eigen::MatrixXd own = (slope * prior_.own.asDiagonal()).lazyProduct(slope.transpose());
    for (Eigen::Index a = 0; a < n; ++a) {
        for (Eigen::Index b = 0; b < n; ++b) {
            if (readings_.lure[static_cast<std::size_t>(a)] == readings_.lure[static_cast<std::size_t>(b)]) covariance(a, b) += own(a, b);
        }
        covariance(a, a) += 1.0;
    }
    // Column by column: a few dozen readings at most, and what Eigen has for large products would be a good part of the page.
    const Eigen::LDLT<Eigen::MatrixXd> factors(covariance);
    Eigen::MatrixXd inverse(n, n);
    for (Eigen::Index k = 0; k < n; ++k) inverse.col(k) = factors.solve(Eigen::VectorXd::Unit(n, k));
    inverse_ = scale.asDiagonal() * inverse * scale.asDiagonal();
    weight_ = inverse_.lazyProduct(readings_.read);
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

Eigen::VectorXd Posterior::left_out_sigma() const { return inverse_.diagonal().cwiseInverse().cwiseSqrt(); }

Eigen::VectorXd Posterior::left_out_off() const { return weight_.cwiseQuotient(inverse_.diagonal()); }

Update update(const Model& model, Observer& observer, const Prior& prior, const std::vector<std::size_t>& left_out) {
    constexpr int most_passes = 40;
    constexpr double settled_u = 1e-10;
    const auto& log = model.document().log;
    std::map<int, Eigen::VectorXd> at;  // most likely inputs so far, by lure
    const auto inputs_of = [&](int lure) -> Eigen::VectorXd& {
        return at.try_emplace(lure, Eigen::VectorXd::Zero(model.count())).first->second;
    };
    Update result{{}, {}, Posterior(prior, {}), 0, true};
    for (int pass = 0; pass < most_passes; ++pass) {
        result.used.clear();
        result.observed.clear();
        for (std::size_t i = 0; i < log.size(); ++i) {
            if (log[i].struck || std::find(left_out.begin(), left_out.end(), i) != left_out.end()) continue;
            auto seen = observer.observe(log[i], inputs_of(preset::lure_of(log[i])));
            if (!seen) continue;
            result.used.push_back(i);
            result.observed.push_back(std::move(*seen));
        }
        const auto n = static_cast<Eigen::Index>(result.used.size());
        LinearReadings linear;
        linear.slope.resize(n, model.count());
        linear.read.resize(n);
        linear.sigma.resize(n);
        for (Eigen::Index a = 0; a < n; ++a) {
            const Observation& o = result.observed[static_cast<std::size_t>(a)];
            const int lure = preset::lure_of(log[result.used[static_cast<std::size_t>(a)]]);
            linear.lure.push_back(lure);
            linear.slope.row(a) = o.slope.transpose();
            linear.read(a) = o.read - o.value + o.slope.dot(inputs_of(lure));
            linear.sigma(a) = o.sigma;
        }
        result.posterior = Posterior(prior, std::move(linear));
        result.passes = pass + 1;
        double moved = 0.0;
        for (auto& [lure, u] : at) {
            const Eigen::VectorXd next = result.posterior.mean(lure);
            moved = std::max(moved, (next - u).cwiseAbs().maxCoeff());
            // Far into the walk full steps only swing to and fro: halve them.
            u = pass < most_passes / 2 ? next : Eigen::VectorXd(0.5 * (u + next));
        }
        result.settled = moved < settled_u;
        if (result.settled) break;
    }
    return result;
}

}  // namespace evenfall::bench
