#pragma once

// The linear-Gaussian step, and the Gauss-Newton walk of it over a log.
// Written in the readings' space: n readings cost n³, however many inputs and lures there are.

#include "bench/uncertainty/readings.hpp"

#include <Eigen/Cholesky>
#include <Eigen/Core>
#include <optional>
#include <vector>

namespace evenfall::bench {

/// What inputs of two lures have to do with each other before any reading: covariance `shared`, and `own` on
/// top for the same lure. For one input of one lure they add up to its variance (1 unless a spread was learnt
/// anew).
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

/// The exact posterior of linear readings with Gaussian errors (Kalman's gain in one block; any textbook on
/// least squares).
class Posterior {
public:
    Posterior(const Prior& prior, LinearReadings readings);

    /// Without what only spreads and left-out readings need: of the questions below it answers the means
    /// alone until it is completed.
    struct MeansOnly {};
    Posterior(const Prior& prior, LinearReadings readings, MeansOnly);
    void complete();

    [[nodiscard]] Eigen::VectorXd mean(int lure) const;
    [[nodiscard]] Eigen::MatrixXd covariance(int lure) const;
    /// What one lure has of its own, over the shared part.
    [[nodiscard]] Eigen::VectorXd own_mean(int lure) const;
    [[nodiscard]] Eigen::VectorXd own_variance(int lure) const;
    [[nodiscard]] Eigen::VectorXd shared_mean() const;
    [[nodiscard]] Eigen::VectorXd shared_variance() const;
    /// Each reading against all the others: read less expected, and the standard deviation of that.
    [[nodiscard]] Eigen::VectorXd left_out_off() const;
    [[nodiscard]] Eigen::VectorXd left_out_sigma() const;

private:
    [[nodiscard]] Eigen::MatrixXd cross(int lure) const; ///< covariance of readings with the lure's inputs
    /// Variance that the readings take off each input, from the covariance of readings with inputs.
    [[nodiscard]] Eigen::VectorXd explained(const Eigen::MatrixXd& cross) const;

    Prior prior_;
    LinearReadings readings_;
    Eigen::VectorXd scale_; ///< one over each reading's sigma
    Eigen::LDLT<Eigen::MatrixXd> factors_;
    Eigen::MatrixXd inverse_; ///< of the readings' covariance
    Eigen::VectorXd weight_;  ///< inverse times read
};

/// A reading as a straight line in the inputs, through where it was last looked at.
struct ReadingLine {
    Observation seen;
    double read = 0.0; ///< with the inputs there taken into it: slope·u + error
};

/// A log worked through: most likely inputs of every lure and what is left of their spread.
struct Update {
    std::vector<std::size_t> used; ///< indices into the log, in order, of the readings that say something
    std::vector<Observation>
        observed; ///< at the most likely inputs, or in a long log as they were last searched for
    Posterior posterior;
    std::vector<std::optional<ReadingLine>>
        lines; ///< by the log's index; absent where a reading says nothing or was not asked
    int passes = 0;
    int in_vain = 0; ///< searches for a fall or a waterline that found none
};
/// Bounded: a log of readings at odds with each other may end before it has settled. `left_out` are indices
/// that are not to be used, besides those struck out; `before` is the same log with fewer left out, from
/// which a long log's searches are taken.
[[nodiscard]] Update update(const Model& model, Observer& observer, const Prior& prior,
                            const std::vector<std::size_t>& left_out = {}, const Update* before = nullptr);

} // namespace evenfall::bench
