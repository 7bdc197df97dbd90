#include "bench/uncertainty/log_fit.hpp"

#include <algorithm>
#include <map>
#include <utility>

namespace evenfall::bench {

Prior Prior::of(const Model& model) {
    Prior p;
    p.shared.resize(model.count());
    for (Eigen::Index i = 0; i < model.count(); ++i)
        p.shared(i) = shared_fraction(model.input(i));
    p.own = Eigen::VectorXd::Ones(model.count()) - p.shared;
    return p;
}

LinearPosterior::LinearPosterior(const Prior& prior, LinearReadings readings)
    : LinearPosterior(prior, std::move(readings), MeansOnly{}) {
    complete();
}

LinearPosterior::LinearPosterior(const Prior& prior, LinearReadings readings, MeansOnly)
    : prior_(prior), readings_(std::move(readings)) {
    const Eigen::Index n = readings_.read.size();
    if (n == 0) return;
    // Scaled by each reading's sigma: grams and radians become comparable and the smallest eigenvalue is 1.
    scale_ = readings_.sigma.cwiseInverse();
    const Eigen::MatrixXd slope = (scale_.asDiagonal() * readings_.slope).transpose();
    const Eigen::MatrixXd other_lure = prior_.shared.asDiagonal() * slope;
    const Eigen::MatrixXd same_lure = (prior_.shared + prior_.own).asDiagonal() * slope;
    Eigen::MatrixXd covariance(n, n);
    for (Eigen::Index a = 0; a < n; ++a) {
        for (Eigen::Index b = 0; b <= a; ++b) {
            const bool same =
                readings_.lure[static_cast<std::size_t>(a)] == readings_.lure[static_cast<std::size_t>(b)];
            covariance(a, b) = (same ? same_lure : other_lure).col(a).dot(slope.col(b));
        }
        covariance(a, a) += 1.0;
    }
    factors_.compute(covariance); // reads the lower half only
    weight_ = scale_.cwiseProduct(factors_.solve(scale_.cwiseProduct(readings_.read)));
}

void LinearPosterior::complete() {
    const Eigen::Index n = readings_.read.size();
    if (n == 0) return;
    Eigen::MatrixXd inverse(n, n);
    for (Eigen::Index k = 0; k < n; ++k)
        inverse.col(k) = factors_.solve(Eigen::VectorXd::Unit(n, k));
    inverse_ = scale_.asDiagonal() * inverse * scale_.asDiagonal();
}

Eigen::MatrixXd LinearPosterior::cross(int lure) const {
    Eigen::MatrixXd c = readings_.slope;
    for (Eigen::Index a = 0; a < c.rows(); ++a) {
        const bool same = readings_.lure[static_cast<std::size_t>(a)] == lure;
        c.row(a) = c.row(a).cwiseProduct((same ? prior_.shared + prior_.own : prior_.shared).transpose());
    }
    return c;
}

Eigen::VectorXd LinearPosterior::mean(int lure) const {
    if (readings_.read.size() == 0) return Eigen::VectorXd::Zero(prior_.shared.size());
    return cross(lure).transpose().lazyProduct(weight_);
}

Eigen::MatrixXd LinearPosterior::covariance(int lure) const {
    Eigen::MatrixXd p = (prior_.shared + prior_.own).asDiagonal();
    if (readings_.read.size() == 0) return p;
    const Eigen::MatrixXd c = cross(lure);
    const Eigen::MatrixXd weighted = inverse_.lazyProduct(c);
    p -= c.transpose().lazyProduct(weighted);
    return 0.5 * (p + p.transpose());
}

Eigen::VectorXd LinearPosterior::own_mean(int lure) const {
    Eigen::VectorXd m = Eigen::VectorXd::Zero(prior_.own.size());
    for (Eigen::Index a = 0; a < readings_.read.size(); ++a) {
        if (readings_.lure[static_cast<std::size_t>(a)] != lure) continue;
        m += weight_(a) * readings_.slope.row(a).transpose().cwiseProduct(prior_.own);
    }
    return m;
}

Eigen::VectorXd LinearPosterior::explained(const Eigen::MatrixXd& c) const {
    const Eigen::MatrixXd weighted = inverse_.lazyProduct(c);
    return c.cwiseProduct(weighted).colwise().sum().transpose();
}

Eigen::VectorXd LinearPosterior::own_variance(int lure) const {
    Eigen::MatrixXd c = readings_.slope;
    for (Eigen::Index a = 0; a < c.rows(); ++a) {
        if (readings_.lure[static_cast<std::size_t>(a)] != lure) c.row(a).setZero();
        c.row(a) = c.row(a).cwiseProduct(prior_.own.transpose());
    }
    if (c.rows() == 0) return prior_.own;
    return prior_.own - explained(c);
}

Eigen::VectorXd LinearPosterior::shared_mean() const {
    if (readings_.read.size() == 0) return Eigen::VectorXd::Zero(prior_.shared.size());
    return prior_.shared.cwiseProduct(readings_.slope.transpose().lazyProduct(weight_));
}

Eigen::VectorXd LinearPosterior::shared_variance() const {
    if (readings_.read.size() == 0) return prior_.shared;
    const Eigen::MatrixXd c = readings_.slope * prior_.shared.asDiagonal();
    return prior_.shared - explained(c);
}

Eigen::VectorXd LinearPosterior::leave_one_out_sigma() const {
    return inverse_.diagonal().cwiseInverse().cwiseSqrt();
}

Eigen::VectorXd LinearPosterior::leave_one_out_residual() const {
    return weight_.cwiseQuotient(inverse_.diagonal());
}

namespace {

/// How often a log is gone through at most, and how often its searches are repeated at most. The readings of
/// a lure or two converge long before; a full log of contradictory readings still ends within the time that
/// somebody waits.
struct Passes {
    int all, searched;
};
Passes passes_for(std::size_t readings, int searches) {
    constexpr int most = 40;
    constexpr int readings_times_passes = 2000;
    constexpr int most_searches = 1000;
    const int by_readings = readings_times_passes / static_cast<int>(std::max<std::size_t>(readings, 1));
    const int by_searches = most_searches / std::max(searches, 1);
    return {std::clamp(by_readings, 10, most), std::clamp(by_searches, 3, most)};
}

/// Within that, readings are straight in the inputs: the lines of those that take a search will do.
constexpr double straight_u = 1e-4;

class LogFitter {
public:
    LogFitter(const Model& model, Observer& observer, const Prior& prior,
              const std::vector<std::size_t>& left_out, const LogFit* before)
        : model_(model), observer_(observer), prior_(prior), log_(model.document().log), before_(before) {
        int searches = 0;
        for (std::size_t i = 0; i < log_.size(); ++i) {
            if (log_[i].excluded || document::is_of_swim(log_[i].kind) ||
                std::find(left_out.begin(), left_out.end(), i) != left_out.end())
                continue;
            asked_.push_back(i);
            searches += method_of(log_[i].kind).searches;
            const int lure = document::lure_of(log_[i]);
            mean_.try_emplace(lure, before != nullptr ? before->posterior.mean(lure)
                                                      : Eigen::VectorXd::Zero(model.count()));
        }
        passes_ = passes_for(asked_.size(), searches);
        // One reading less changes the others little: in a long log the searches of `before` are kept.
        constexpr int few_passes = 10;
        keep_searches_ = before != nullptr && passes_.searched <= few_passes;
        lines_.resize(log_.size());
        if (before == nullptr) return;
        lines_ = before->lines;
        failed_searches_ = before->failed_searches;
    }

    LogFit run() {
        constexpr double converged_u = 1e-8;
        LinearPosterior posterior(prior_, {});
        int pass = 0;
        for (double step = 1.0; pass < passes_.all && !(step < converged_u); ++pass) {
            // A fit that was made before has its readings linearised where this one begins.
            for (const std::size_t i : asked_) {
                if (pass > 0 || before_ == nullptr) linearise(i, pass, step > straight_u);
            }
            posterior = LinearPosterior(prior_, stacked(), LinearPosterior::MeansOnly{});
            step = move_means(posterior);
        }
        posterior.complete();
        LogFit fit{{}, {}, std::move(posterior), std::move(lines_), pass, failed_searches_};
        for (const std::size_t i : asked_) {
            if (!fit.lines[i]) continue;
            fit.used.push_back(i);
            fit.observed.push_back(fit.lines[i]->observation);
        }
        return fit;
    }

private:
    /// A failed search takes as long as dozens that succeed: it is repeated, but not for ever.
    [[nodiscard]] bool is_given_up(std::size_t i, int pass) const {
        constexpr int most_failed = 40;
        if (failed_searches_ < most_failed) return false;
        return pass > 0 ? !lines_[i].has_value() : before_ != nullptr && !before_->lines[i].has_value();
    }

    /// Observes reading i at the present means, unless that is a search that is not to be repeated.
    void linearise(std::size_t i, int pass, bool search) {
        const bool searched = method_of(log_[i].kind).searches > 0;
        if (searched && (!search || keep_searches_ || pass >= passes_.searched || is_given_up(i, pass)))
            return;
        const Eigen::VectorXd& u = mean_.at(document::lure_of(log_[i]));
        auto observation = observer_.observe(log_[i], u);
        lines_[i].reset();
        if (!observation && searched) ++failed_searches_;
        if (!observation) return;
        const double read = observation->read - observation->predicted + observation->slope.dot(u);
        lines_[i] = ReadingLine{std::move(*observation), read};
    }

    [[nodiscard]] LinearReadings stacked() const {
        const auto n =
            std::count_if(asked_.begin(), asked_.end(), [&](std::size_t i) { return lines_[i].has_value(); });
        LinearReadings linear;
        linear.slope.resize(n, model_.count());
        linear.read.resize(n);
        linear.sigma.resize(n);
        Eigen::Index row = 0;
        for (const std::size_t i : asked_) {
            if (!lines_[i]) continue;
            linear.lure.push_back(document::lure_of(log_[i]));
            linear.slope.row(row) = lines_[i]->observation.slope.transpose();
            linear.read(row) = lines_[i]->read;
            linear.sigma(row++) = lines_[i]->observation.sigma;
        }
        return linear;
    }

    /// Moves the means a share of the way to the posterior's; the largest whole step of any input. Readings
    /// that contradict each other pull to and fro: where a step goes back much of the last one, the share is
    /// halved. The last steps are whole.
    double move_means(const LinearPosterior& posterior) {
        double largest = 0.0;
        double along_last = 0.0;
        double last_squared = 0.0;
        std::map<int, Eigen::VectorXd> steps;
        for (const auto& [lure, u] : mean_) {
            const Eigen::VectorXd& step = steps[lure] = posterior.mean(lure) - u;
            largest = std::max(largest, step.cwiseAbs().maxCoeff());
            if (last_steps_.empty()) continue;
            along_last += step.dot(last_steps_[lure]);
            last_squared += last_steps_[lure].squaredNorm();
        }
        constexpr double least_share = 0.1;
        if (along_last < -0.25 * last_squared) share_ = std::max(least_share, 0.5 * share_);
        const double share = largest > straight_u ? share_ : 1.0;
        for (auto& [lure, u] : mean_)
            u += share * steps[lure];
        last_steps_ = std::move(steps);
        return largest;
    }

    const Model& model_;
    Observer& observer_;
    const Prior& prior_;
    const std::vector<document::Reading>& log_;
    const LogFit* before_;
    std::vector<std::size_t> asked_;      ///< readings to use, by index into the log
    std::map<int, Eigen::VectorXd> mean_; ///< of the inputs, by lure, so far
    std::map<int, Eigen::VectorXd> last_steps_;
    double share_ = 1.0; ///< of each step to the posterior's means
    std::vector<std::optional<ReadingLine>> lines_;
    Passes passes_{};
    bool keep_searches_ = false;
    int failed_searches_ = 0;
};

} // namespace

LogFit fit_log(const Model& model, Observer& observer, const Prior& prior,
               const std::vector<std::size_t>& left_out, const LogFit* before) {
    return LogFitter(model, observer, prior, left_out, before).run();
}

} // namespace evenfall::bench
