#pragma once

// The posterior of one document's lure: what uncertainty(), do_now() and the draws start from.

#include "bench/uncertainty/chance.hpp"
#include "bench/uncertainty/log_fit.hpp"
#include "bench/uncertainty/slips.hpp"
#include "ledger/build.hpp"

#include <memory>

namespace evenfall::bench {

/// The inputs of the latest lure in the log, given all readings. Owns its model.
struct Posterior {
    std::unique_ptr<Model> model;
    std::unique_ptr<Observer> observer;
    Prior prior;
    LogFit fit;
    std::vector<std::size_t> left_out; ///< readings that slipped (slips.hpp), by index into the log
    int lure = 0;                      ///< the latest with a reading
    Stage stage = Stage::carved;       ///< the latest stage of which that lure has a reading
    bool has_readings = false;
    Eigen::VectorXd mean;       ///< of the inputs of that lure
    Eigen::MatrixXd covariance; ///< of the same

    [[nodiscard]] Eigen::VectorXd spread() const; ///< standard deviation of each input
};
[[nodiscard]] Outcome<Posterior> posterior_of(const document::Document& document,
                                              const Kept* before = nullptr);

/// A figure with its standard deviation now and before any reading.
[[nodiscard]] Estimate estimate(const Posterior& posterior, const Linearised& figure);

/// The finished lure in the fishing water.
struct Finished {
    Balance balance;
    std::optional<Linearised> hang;
    std::optional<Linearised> fall;
    Eigen::MatrixXd slopes; ///< of the four figures (chance.hpp) by input
    Forecast forecast;
    TargetBand target;
};
using FigureCovariance = Eigen::Matrix<double, figure::count, figure::count>;

[[nodiscard]] Finished finished(Posterior& posterior);
[[nodiscard]] FigureCovariance covariance_of_figures(const Posterior& posterior, const Finished& finished);

/// The central 50, 80 and 95 % intervals of the finished lure's fall.
[[nodiscard]] std::array<Interval, 3> fall_intervals(Posterior& posterior, const Finished& finished);

/// Chances and range of its way under water. A rise is taken to need the lift that the same fall needs in
/// weight.
[[nodiscard]] UnderWater under_water(Posterior& posterior, const Finished& finished);

/// The document with these inputs as corrections and without its log. `spread` is the standard deviation of
/// each input.
[[nodiscard]] document::Document with_corrections(const Model& model, const Eigen::VectorXd& u,
                                                  const Eigen::VectorXd& spread);
/// The same for the posterior.
[[nodiscard]] document::Document with_corrections(const Posterior& posterior);

/// Readings one might take next, best first. `chance_now`: of both right after a correction, without them.
[[nodiscard]] std::vector<NextReading> next_readings(Posterior& posterior, const Finished& finished,
                                                     double chance_now);

/// How each reading agrees with the others, with explanations for those that do not.
[[nodiscard]] Agreement agreement(const Posterior& p);
[[nodiscard]] std::vector<ReadingFit> reading_fits(Posterior& posterior);

/// Where on the belly's middle line a hole of this width and depth has wood all round, nearest to `x_m` in
/// steps of 3 mm; absent where there is no such place within 36 mm, or where there are holes enough.
[[nodiscard]] std::optional<double> trim_place(const ledger::LedgerInputs& inputs, double x_m,
                                               double diameter_m, double depth_m);

/// How much lead may still have to move, and whether there is wood for it.
[[nodiscard]] TrimHole trim_hole(const Posterior& posterior, const Finished& finished);

} // namespace evenfall::bench
