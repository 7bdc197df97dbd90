#pragma once

// A reading of the bench as a measurement on the ledger's lines.

#include "bench/uncertainty/model.hpp"
#include "water/afloat/hull.hpp"

#include <functional>
#include <map>
#include <optional>
#include <string>

namespace evenfall::bench {

// Standard deviations where a reading names none (common practice, no source).
inline constexpr double scale_sigma_kg = 0.00005;     ///< kitchen scale with two decimals, several readings
inline constexpr double held_under_sigma_kg = 0.0001; ///< the cup's water moves
inline constexpr double hung_sigma_kg = 0.00005;
inline constexpr double block_side_sigma_m = 0.0002; ///< each side, with a caliper
inline constexpr double block_scatter = 0.01;        ///< of the wood within one block
inline constexpr double stopwatch_sigma_s = 0.15;    ///< start and stop by hand
inline constexpr double fall_scatter = 0.02;         ///< from fall to fall, of the time
inline constexpr double clip_sigma_kg = 0.0001;      ///< the step by which one still sees it rise or sink
inline constexpr double showing_sigma_m = 0.001;
inline constexpr double angle_sigma_rad = 2.0 * units::degree_rad;

/// Air of a workshop [kg/m³]: the conventional value for weighings (OIML R 111, 1.2 kg/m³). A scale in air
/// shows less than the mass by the air that the piece pushes aside, and was set with weights of 8000 kg/m³.
inline constexpr double air_kg_m3 = 1.2;
inline constexpr double scale_weights_kg_m3 = 8000.0;

/// The standard deviation of a reading's main number in its own unit (kg, s, m, rad): given, or the usual
/// one.
[[nodiscard]] double own_sigma(const document::Reading& reading);

/// The main number of a reading, holder taken off: kg, s, m, rad; kg/m³ for a block.
[[nodiscard]] double main_number(const document::Reading& reading);

/// Of a clip's mass, what it weighs in water: less than nothing for one that floats, 1 where none is named.
/// Never within a hundredth of nothing: a clip as dense as water tells of a lure to that.
[[nodiscard]] double clip_share(const document::Reading& reading, double water_kg_m3);

/// One reading as the update takes it: read = value(u) + error. What the tub, a clip and a waterline say is
/// turned into in-water mass first, on which they bear nearly linearly and which exists for a lure that
/// floats as well as for one that sinks.
struct Observation {
    double read = 0.0;
    double value = 0.0;
    Eigen::VectorXd slope;
    double sigma = 0.0;
};

/// Reads bench readings against one model. Keeps what it has worked out of falls and floating.
class Observer {
public:
    explicit Observer(const Model& model) : model_(model) {}

    /// At the inputs u of the reading's own lure. Absent where the reading says nothing (a speed that no
    /// weight gives).
    [[nodiscard]] std::optional<Observation> observe(const document::Reading& reading,
                                                     const Eigen::VectorXd& u);

    [[nodiscard]] materials::WaterProperties tub(const document::Reading& reading) const;
    [[nodiscard]] FallModel& falls(Stage stage, const materials::WaterProperties& water);

    /// In-water mass [kg] at which the lure's highest wood shows so much, upright; absent where none does.
    [[nodiscard]] std::optional<double> in_water_for_showing(Stage stage, const ledger::Sum& sum,
                                                             double water_kg_m3, double showing_m);

private:
    struct Key {
        Stage stage;
        double density, viscosity;
        bool operator<(const Key& o) const;
    };
    const Model& model_;
    [[nodiscard]] const afloat::Hull& hull(Stage stage);

    std::map<Key, FallModel> falls_;
    std::map<Stage, afloat::Hull> hulls_;
};

/// In-water mass with which a fall from rest takes this long; drag and offsets as they are.
[[nodiscard]] std::optional<double> in_water_for_time(FallModel& falls, const ledger::Sum& sum, double drag,
                                                      double depth_m, double time_s);

} // namespace evenfall::bench
