#pragma once

// The posterior of linear readings, and the fit of a whole log by Gauss-Newton.
// Solved in the space of the readings: n readings cost n³, however many inputs and lures there are.

#include "bench/uncertainty/observation.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <optional>
#include <vector>

namespace evenfall::bench {

/// Prior covariance by input: `shared` between any two lures of the recipe, `shared + own` for one lure.
/// Their sum is 1 unless the variance between lures was estimated anew (next_lure.cpp).
struct Prior {
    Eigen::VectorXd shared;
    Eigen::VectorXd own;

    [[nodiscard]] static Prior of(const Model& model);
};

/// Readings that are linear in their lure's inputs: read = slope·u + error.
struct LinearReadings {
    std::vector<int> lure;
    Eigen::MatrixXd slope; ///< reading by input
    Eigen::VectorXd read;
    Eigen::VectorXd sigma;
};

/// The exact posterior of linear readings with Gaussian errors (the Kalman update in one block; any textbook
/// on least squares).
class LinearPosterior {
public:
    LinearPosterior(const Prior& prior, LinearReadings readings);

    /// Only mean() may be called until complete() is, which costs as much again.
    struct MeansOnly {};
    LinearPosterior(const Prior& prior, LinearReadings readings, MeansOnly);
    void complete();

    [[nodiscard]] Eigen::VectorXd mean(int lure) const;
    [[nodiscard]] Eigen::MatrixXd covariance(int lure) const;
    /// Of the part of the inputs that is one lure's own.
    [[nodiscard]] Eigen::VectorXd own_mean(int lure) const;
    [[nodiscard]] Eigen::VectorXd own_variance(int lure) const;
    /// Of the part that all lures share.
    [[nodiscard]] Eigen::VectorXd shared_mean() const;
    [[nodiscard]] Eigen::VectorXd shared_variance() const;
    /// Each reading minus its prediction from all others, and the standard deviation of that.
    [[nodiscard]] Eigen::VectorXd leave_one_out_residual() const;
    [[nodiscard]] Eigen::VectorXd leave_one_out_sigma() const;
    /// Of all readings from their expectation before any of them.
    [[nodiscard]] double chi_square() const { return readings_.read.dot(weight_); }

private:
    [[nodiscard]] Eigen::MatrixXd cross(int lure) const; ///< covariance of readings with the lure's inputs
    /// Reduction of each input's variance by the readings, from the covariance of readings with inputs.
    [[nodiscard]] Eigen::VectorXd explained(const Eigen::MatrixXd& cross) const;

    Prior prior_;
    LinearReadings readings_;
    Eigen::VectorXd scale_; ///< one over each reading's sigma
    Eigen::LDLT<Eigen::MatrixXd> factors_;
    Eigen::MatrixXd inverse_; ///< of the readings' covariance
    Eigen::VectorXd weight_;  ///< inverse times read
};

/// A reading linearised at the inputs where it was last observed.
struct ReadingLine {
    Observation observation;
    double read = 0.0; ///< right-hand side of read = slope·u + error
};

/// The fit of a log: the posterior of every lure's inputs.
struct LogFit {
    std::vector<std::size_t> used; ///< indices into the log, ascending, of the readings that are in the fit
    std::vector<Observation> observed; ///< at the posterior mean; in a long log where they were last searched
    LinearPosterior posterior;
    std::vector<std::optional<ReadingLine>> lines; ///< by index into the log; absent where not in the fit
    int passes = 0;
    int failed_searches = 0; ///< for a fall or a waterline
};
/// The number of passes is bounded: a log of contradictory readings may end before it has converged.
/// `left_out` are indices not to be used, besides those excluded in the log; `before` is a fit of the same
/// log with fewer left out, from which a long log's searches are taken.
[[nodiscard]] LogFit fit_log(const Model& model, Observer& observer, const Prior& prior,
                             const std::vector<std::size_t>& left_out = {}, const LogFit* before = nullptr);

} // namespace evenfall::bench
