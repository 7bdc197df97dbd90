#pragma once

// Public interface of the fall: a lure in water → its steady falls, its track from rest, and the weight in
// water for a given speed.

#include "base/outcome.hpp"
#include "ledger/line.hpp"
#include "water/fall/motion.hpp"
#include "water/fall/stability.hpp"

#include <array>
#include <complex>
#include <memory>
#include <optional>
#include <span>
#include <utility>
#include <vector>

namespace evenfall::fall {

/// A piece that weighs less than this in water, either way, has no steady way there that could be told.
inline constexpr double still_kg = 1e-6;

/// Attitude of a steady fall (or rise), by its pitch and the way it glides.
enum class FallAttitude {
    level,      ///< pitch within 5° of level
    nose_down,  ///< nose lower, to 60°: glides forward as it falls, backward as it rises
    nose_first, ///< steeper than 60°, the nose leading
    tail_down,  ///< tail lower, to 60°: glides backward as it falls, forward as it rises
    tail_first, ///< steeper than 60°, the tail leading
};

/// Range of a value by the uncertainty of the model; the usual value lies inside.
struct Band {
    double low = 0.0;
    double high = 0.0;
};

/// One steady fall (or rise).
///
/// Bands: end effect, drag of parts, Munk moment and drag along the body (motion.hpp: ModelFactors), and
/// where it is too slow or too fast for the drag laws these too, are each set to both ends of their range;
/// the shifts are combined as root of the sum of squares on each side, as independent causes. This is the
/// model's own uncertainty; that of mass and buoyancy comes on top. Still water, no line.
struct SteadyFall {
    FallAttitude manner = FallAttitude::level;
    bool stable = false;       ///< returns to it after a small disturbance
    double pitch_rad = 0.0;    ///< nose-up positive; differs from the pitch in which it hangs
    double vertical_m_s = 0.0; ///< down positive
    double forward_m_s = 0.0;  ///< over ground, towards the nose positive
    double glide_rad = 0.0;    ///< angle of its path from vertical, towards the nose positive
    double along_m_s = 0.0;    ///< in the body's axes, forward
    double across_m_s = 0.0;   ///< in the body's axes, towards the belly
    Band pitch_band_rad;
    Band vertical_band_m_s;
    Band forward_band_m_s;
    Band glide_band_rad;
    bool holds_over_band =
        true; ///< false: at some end of a range this fall does not exist; the bands leave that end out
    /// Of FallingLure::steady alone: eigenvalues [1/s] of small disturbances of (along, across, pitching,
    /// pitch), slowest decay (or fastest growth) first.
    std::array<std::complex<double>, 4> modes_1_s{};
    bool in_drag_laws =
        true; ///< false: too slow or too fast for the drag laws (drag.hpp), which widens its bands
    double reynolds =
        0.0; ///< on the mean height, with the speed across; the drag laws are valid from 500 to 50 000
};

/// "nose-down glide" and the like.
[[nodiscard]] const char* fall_attitude_text(const SteadyFall& fall);

struct SteadyFalls {
    std::vector<SteadyFall> falls;        ///< from nose-first to tail-first; empty where it suspends
    std::optional<double> hang_pitch_rad; ///< at rest under water; absent where G is not below B
    std::optional<std::size_t> main;      ///< the stable one nearest to the hang pitch (or to level)
};

struct TrackRequest {
    std::optional<double> start_pitch_rad; ///< from rest; absent = the hang pitch, or level without one
    double depth_m = 2.0;                  ///< distance to fall (or rise), 0.001 to 100
    double time_limit_s = 60.0;            ///< 0.01 to 3600
    double sample_s = 1.0 / 30.0;          ///< between points, at least time_limit_s/20 000
    double tolerance = 1e-7; ///< relative, of the solver, 1e-12 to 1e-3; the absolute one is a hundredth of
                             ///< it in m, rad and their rates
};

struct TrackPoint {
    double time_s = 0.0;
    double depth_m = 0.0;   ///< of B below its start; negative when rising
    double forward_m = 0.0; ///< of B, towards the nose
    MotionState state;
    double lost_j = 0.0; ///< energy dissipated into the water
};

/// The motion from rest in still water.
struct Track {
    std::vector<TrackPoint>
        points; ///< from rest, at even times, then the moment of arrival (or the time limit)
    std::optional<double> reached_s; ///< when it reached the depth; absent where it did not
    double forward_m = 0.0;          ///< glide distance up to the end
    double vertical_m_s = 0.0;       ///< at the end
    /// Share of the time that would be saved if the main steady fall began at once; absent where there is
    /// none, and where the motion from rest was faster.
    std::optional<double> start_up_share;
};

/// Correction of all drag from the document's readings: ModelFactors::drag.
[[nodiscard]] double drag_correction(const document::Document& document);

/// The ledger up to a stage, as the equations of motion need it.
[[nodiscard]] MassProperties mass_properties_of(const ledger::Ledger& ledger, Stage stage);

/// A lure in one water. Cheap to copy: copies share the hull. Keeps no other reference to its inputs.
class FallingLure {
public:
    FallingLure(const shape::Body& body, const ledger::Ledger& ledger, const document::Document& document,
                const materials::WaterProperties& water, Stage stage = Stage::rigged);
    /// The same with a hull computed before (hull.hpp): it is the same at every stage.
    FallingLure(std::shared_ptr<const HydroBody> hull, const shape::Body& body, const ledger::Ledger& ledger,
                const document::Document& document, const materials::WaterProperties& water,
                Stage stage = Stage::rigged);
    FallingLure(std::shared_ptr<const HydroBody> hull, const MassProperties& weights,
                std::vector<DragItem> items, const materials::WaterProperties& water,
                const ModelFactors& closure = {});
    FallingLure(HydroBody hull, const MassProperties& weights, std::vector<DragItem> items,
                const materials::WaterProperties& water, const ModelFactors& closure = {})
        : FallingLure(std::make_shared<const HydroBody>(std::move(hull)), weights, std::move(items), water,
                      closure) {}

    /// All steady falls with a pitch within 89.99° of level: a scan in steps of 1°, each change of sign of
    /// the moment refined to 1e-10 rad. Upside-down falls are not searched: roll would end them. None where
    /// the weight in water is within a milligram of zero.
    [[nodiscard]] SteadyFalls steady() const;

    /// Only the main steady fall of steady(); a few microseconds where it is near the hang pitch. With
    /// ModelBands::none its bands stay zero.
    enum class ModelBands { none, bands };
    [[nodiscard]] std::optional<SteadyFall> main_fall(ModelBands doubts = ModelBands::none) const;

    /// Motion from rest until the depth is reached or the time is over. A floating lure is held under and
    /// released: it rises, and depth counts upward. Fifth-order Runge-Kutta with step control (Dormand and
    /// Prince 1980).
    ///
    ///   fails   a number of the request outside its range, NaN included; problems at "/depth_m" and the like
    [[nodiscard]] Outcome<Track> track(const TrackRequest& request = {}) const;

    /// The weight in water [kg] with which the main steady fall has this vertical speed (negative: rises);
    /// shape, displaced volume and offset from B to G are kept. With several solutions, the one of a fall
    /// near its hang pitch; else the one nearest to `near_kg`, as a ratio, and without that, to a level fall.
    /// Absent where there is none: speed 0 or not finite, or skipped where the attitude jumps, or a mass
    /// outside ±1 kg per litre.
    [[nodiscard]] std::optional<double> in_water_for(double vertical_m_s,
                                                     std::optional<double> near_kg = std::nullopt) const;
    /// The one of a fall near its hang pitch, whether that is the main one or not: a third of the work.
    [[nodiscard]] std::optional<double> in_water_near_hang(double vertical_m_s) const;
    /// Whether the main steady fall has this vertical speed with this weight in water.
    [[nodiscard]] bool falls_with(double in_water_kg, double vertical_m_s) const;

    [[nodiscard]] FallingLure
    with_in_water(double in_water_kg) const; ///< same shape, volume and offset of G from B
    [[nodiscard]] FallingLure in(const materials::WaterProperties& water) const; ///< same lure, other water
    /// The same hull and parts with other weights, and this factor on all drag: for thousands of draws.
    void set(const MassProperties& weights, double drag);
    [[nodiscard]] double drag() const { return closure_.drag; }

    [[nodiscard]] double in_water_kg() const;
    [[nodiscard]] std::optional<double> hang_pitch_rad() const;
    [[nodiscard]] SteadySums sums() const { return steady_sums(*hull_, weights_, items_, water_, closure_); }
    [[nodiscard]] Motion motion() const { return {*hull_, weights_, items_, water_, closure_}; }
    [[nodiscard]] const MassProperties& weights() const { return weights_; }
    [[nodiscard]] const HydroBody& hull() const { return *hull_; }
    [[nodiscard]] const std::vector<DragItem>& items() const { return items_; }

private:
    [[nodiscard]] double reynolds(double speed_m_s) const;
    [[nodiscard]] DisturbanceRates disturbances(const SteadySums& sums, const SteadyFall& fall) const;
    void compute_bands(std::span<SteadyFall> falls) const;

    std::shared_ptr<const HydroBody> hull_;
    MassProperties weights_;
    std::vector<DragItem> items_;
    materials::WaterProperties water_;
    ModelFactors closure_;
};

} // namespace evenfall::fall
