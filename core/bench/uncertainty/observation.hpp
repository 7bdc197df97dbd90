#pragma once

// A reading of the bench as a measurement of the uncertain inputs.

#include "bench/uncertainty/freeboards.hpp"
#include "bench/uncertainty/model.hpp"
#include "water/afloat/hull.hpp"

#include <deque>
#include <map>
#include <memory>
#include <optional>

namespace evenfall::bench {

// Standard deviations where a reading gives none (common practice, no source).
inline constexpr double scale_sigma_kg = 0.00005;     ///< kitchen scale with two decimals, several readings
inline constexpr double held_under_sigma_kg = 0.0001; ///< the cup's water moves
inline constexpr double hung_sigma_kg = 0.00005;
inline constexpr double block_side_sigma_m = 0.0002; ///< each side, with a caliper
inline constexpr double board_scatter = 0.01;        ///< relative, of the wood within one board
inline constexpr double stopwatch_sigma_s = 0.15;    ///< start and stop by hand
inline constexpr double fall_scatter = 0.02;         ///< from fall to fall, relative to the time
inline constexpr double clip_sigma_kg = 0.0001;      ///< the step by which one still sees it rise or sink
inline constexpr double freeboard_sigma_m = 0.001;
/// The caliper itself, 0.05 mm, and how even a carved skin is under its two jaws.
inline constexpr double caliper_sigma_m = 0.00015;
inline constexpr double angle_sigma_rad = 1.0 * units::degree_rad; ///< on a photo; by eye twice that

/// Air of a workshop [kg/m³]: the conventional value for weighings (OIML R 111, 1.2 kg/m³). A scale in air
/// shows less than the mass by the buoyancy in air, and was calibrated with weights of 8000 kg/m³.
inline constexpr double air_kg_m3 = 1.2;
inline constexpr double scale_weights_kg_m3 = 8000.0;

/// The standard deviation of a reading's main number in its own unit (kg, s, m, rad; kg/m³ for a board): as
/// given, or the usual one.
[[nodiscard]] double own_sigma(const document::Reading& reading);

/// The main number of a reading, holder subtracted: kg, s, m, rad; kg/m³ for a board.
[[nodiscard]] double main_number(const document::Reading& reading);

/// What a clip weighs in water over its mass: negative for one that floats, 1 where no material is given. At
/// least 0.01 from zero, since a clip as dense as water says nothing.
[[nodiscard]] double clip_share(const document::Reading& reading, double water_kg_m3);

/// One reading as the fit takes it: read = predicted(u) + error. What the tub, a clip and a waterline say is
/// converted to in-water mass first: they are nearly linear in it, and it exists for a lure that floats as
/// well as for one that sinks.
struct Observation {
    double read = 0.0;
    double predicted = 0.0;
    Eigen::VectorXd slope; ///< of `predicted` in the inputs
    double sigma = 0.0;    ///< standard deviation of the error, in the unit of `read`
    bool reversed = false; ///< the number on the watch, rule or clip falls as `read` rises
};

class Observer;

/// What the prediction of a reading is made from.
struct ReadingCase {
    Observer& observer;
    const Model& model;
    const document::Reading& reading;
    const Eigen::VectorXd& u;                ///< inputs of the reading's lure
    const materials::WaterProperties& water; ///< of the tub
    const Balance& balance;                  ///< of the piece on the bench, in that water
};

/// What the bench has to know about one kind of reading. observation.cpp has one row for each kind.
struct ReadingMethod {
    document::ReadingKind kind;
    double (*own_sigma)(const document::Reading&); ///< as own_sigma() above
    /// Absent where the reading has no solution, see `unused`.
    std::optional<Observation> (*observe)(const ReadingCase&);
    int searches; ///< cost of observe(): searches for a steady fall; a weighing takes a hundredth of one
    const char* unused; ///< why observe() is absent, the end of a sentence
};
[[nodiscard]] const ReadingMethod& method_of(document::ReadingKind kind);

/// Evaluates readings against one model. Keeps the fall models and hulls it has built.
class Observer {
public:
    explicit Observer(const Model& model) : model_(model) {}
    ~Observer();

    /// The same for the lure with all that it has once it is rigged, at any stage.
    [[nodiscard]] Observer& with_all() { return of(model_.with_all()); }

    /// At the inputs u of the reading's own lure. Absent where the reading has no solution (a speed that no
    /// weight gives).
    [[nodiscard]] std::optional<Observation> observe(const document::Reading& reading,
                                                     const Eigen::VectorXd& u);

    [[nodiscard]] materials::WaterProperties tub(const document::Reading& reading) const;
    [[nodiscard]] FallModel& falls(Stage stage, const materials::WaterProperties& water);

    /// Model::balance. Readings and predictions of one stage ask for the same: it is kept until other inputs
    /// are asked for.
    [[nodiscard]] const Balance& balance(Stage stage, int segment, const Eigen::VectorXd& u,
                                         double water_kg_m3);

    /// Of the lure with its hull at a stage and this G.
    [[nodiscard]] Freeboards& freeboards(Stage stage, const Vec3& g_m, double water_kg_m3);

private:
    struct Key {
        Stage stage;
        double density, viscosity;
        bool operator<(const Key& o) const;
    };
    const Model& model_;
    [[nodiscard]] const afloat::FloatingHull& hull(Stage stage);

    [[nodiscard]] std::optional<Observation> observe_here(const document::Reading& reading,
                                                          const Eigen::VectorXd& u);
    /// Of the same lure as it was for some readings (Model::as_read).
    [[nodiscard]] Observer& of(const Model& as_read);
    struct KeptBalance {
        Stage stage;
        int segment;
        double water_kg_m3;
        Balance balance;
    };
    Eigen::VectorXd kept_at_;
    std::deque<KeptBalance> kept_;

    std::map<const Model*, std::unique_ptr<Observer>> others_;
    std::map<Key, FallModel> falls_;
    std::map<Stage, afloat::FloatingHull> hulls_;
    std::deque<Freeboards> freeboards_;
};

} // namespace evenfall::bench
