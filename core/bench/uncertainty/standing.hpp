#pragma once

// The lure on the bench as the log leaves it: what uncertainty(), do_now() and the draws all start from.

#include "bench/uncertainty/chance.hpp"
#include "bench/uncertainty/update.hpp"
#include "ledger/build.hpp"

#include <memory>

namespace evenfall::bench {

/// Model, posterior and finished lure of one document. Holds its own model.
struct Standing {
    std::unique_ptr<Model> model;
    std::unique_ptr<Observer> observer;
    Prior prior;
    Update update;
    int lure = 0;
    Stage stage = Stage::carved;
    bool has_readings = false;
    Eigen::VectorXd u;
    Eigen::MatrixXd covariance;
};
[[nodiscard]] Outcome<Standing> stand(const document::Document& document);

/// A figure with its spread, as the readings leave it and as it was before any.
[[nodiscard]] Estimate estimate(const Standing& standing, const Graded& figure);

/// The finished lure in the fishing water.
struct Finished {
    Trim trim;
    std::optional<Graded> hang;
    std::optional<Graded> fall;
    /// Slopes of what the chances are taken from: weight as the fall feels it (the weight itself where a
    /// weight is asked, or nothing sinks), logarithm of the weight that drag asks for at a speed, hang; and
    /// of the weight in water.
    Eigen::MatrixXd slopes;
    Forecast forecast;
    Asked asked;
};
[[nodiscard]] Finished finished(Standing& standing);
/// Of the four figures in Finished::slopes, as the readings leave them.
[[nodiscard]] Eigen::Matrix4d covariance_of_figures(const Standing& standing, const Finished& finished);

/// The middle 50, 80 and 95 % of the finished lure's fall.
[[nodiscard]] std::array<Interval, 3> fall_intervals(Standing& standing, const Finished& finished);

/// The document with these inputs as corrections and without its log; `spread` is the standard deviation of
/// each u that is left.
[[nodiscard]] document::Document with_corrections(const Model& model, const Eigen::VectorXd& u,
                                                const Eigen::VectorXd& spread);

/// Readings one might take from here, best first.
[[nodiscard]] std::vector<NextReading> next_readings(Standing& standing, const Finished& finished,
                                                     const std::array<StageBelief, stage_count>& stages);

/// How each reading sits, with explanations for those that do not fit.
[[nodiscard]] std::vector<ReadingVerdict> verdicts(Standing& standing);

/// Where on the belly's middle line a hole of this width and depth has its wood and its walls, nearest to
/// `x_m` by steps of 3 mm; absent where none within 36 mm does, or where there are holes enough.
[[nodiscard]] std::optional<double> trim_place(const ledger::LedgerInputs& inputs, double x_m,
                                               double diameter_m, double depth_m);

/// How much lead may still have to move, and whether there is wood for it.
[[nodiscard]] TrimHole trim_hole(const Standing& standing, const Finished& finished);

} // namespace evenfall::bench
