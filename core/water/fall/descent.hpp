#pragma once

// The public face of the fall: a lure in its water → its steady falls, its way down from rest, and the
// in-water mass for a speed.

#include "base/outcome.hpp"
#include "ledger/line.hpp"
#include "water/fall/motion.hpp"

#include <array>
#include <complex>
#include <optional>
#include <span>
#include <vector>

namespace evenfall::fall {

/// What a carver calls a steady fall (or rise), by its pitch and the way it glides.
enum class Manner {
    level,      ///< pitch within 5° of level
    nose_down,  ///< nose lower, to 60°: glides forward as it falls, slides back as it rises
    nose_first, ///< steeper than 60°, the nose leading
    tail_down,  ///< tail lower, to 60°: slides back as it falls, glides forward as it rises
    tail_first, ///< steeper than 60°, the tail leading
};

/// What the model's doubts make of a figure: its usual value lies between.
struct Band {
    double low = 0.0;
    double high = 0.0;
};

/// One way in which the lure falls (or rises) without change.
///
/// Bands: end effect, parts' drag, Munk moment and drag along the body (motion.hpp: Closure), each to both
/// its ends, the shifts combined as root of the sum of squares on each side, as independent causes. They are
/// the model's own doubt; the doubt in mass and buoyancy comes on top. Water at rest, no line.
struct SteadyFall {
    Manner manner = Manner::level;
    bool stable = false;       ///< comes back to it after a small knock
    double pitch_rad = 0.0;    ///< nose-up positive; not the pitch in which it hangs
    double vertical_m_s = 0.0; ///< down positive
    double forward_m_s = 0.0;  ///< over ground, nose-ward positive
    double glide_rad = 0.0;    ///< lean of its path from plumb, nose-ward positive
    double along_m_s = 0.0;    ///< in the body's axes, forward
    double across_m_s = 0.0;   ///< in the body's axes, towards the belly
    Band pitch_band_rad;
    Band vertical_band_m_s;
    Band forward_band_m_s;
    Band glide_band_rad;
    bool holds_over_band = true; ///< false: at some end of a band this way of falling does not exist, and the
                                 ///< bands leave that end out
    /// Eigenvalues [1/s] of small disturbances of (along, across, pitching, pitch), slowest to die (or
    /// fastest to grow) first.
    std::array<std::complex<double>, 4> modes_1_s{};
    double reynolds = 0.0; ///< on the mean height, across; the drag laws are for 500 to 50 000
};

/// "nose-down glide" and the like.
[[nodiscard]] const char* manner_text(const SteadyFall& fall);

struct SteadyFalls {
    std::vector<SteadyFall> falls;        ///< from nose-first to tail-first; none where it hangs still
    std::optional<double> hang_pitch_rad; ///< held still under water; absent where G is not below B
    std::optional<std::size_t> main;      ///< the stable one nearest to the hang pitch (or to level)
};

struct TrackRequest {
    std::optional<double> start_pitch_rad; ///< from rest; absent = the hang pitch, level where there is none
    double depth_m = 2.0;                  ///< to go down (or up), 0.001 to 100
    double time_limit_s = 60.0;            ///< 0.01 to 3600
    double sample_s = 1.0 / 30.0;          ///< between points, at least a 20 000th of the limit
    double tolerance = 1e-7; ///< relative, of the solver, 1e-12 to 1e-3; absolute a hundredth of it in m, rad
                             ///< and their rates
};

struct TrackPoint {
    double time_s = 0.0;
    double depth_m = 0.0;   ///< of B below its start; negative when rising
    double forward_m = 0.0; ///< of B, nose-ward
    State state;
    double lost_j = 0.0; ///< energy left in the water
};

/// The way from rest in still water.
struct Track {
    std::vector<TrackPoint>
        points; ///< from rest, at even times, then the moment of arrival (or the end of time)
    std::optional<double> reached_s; ///< when the depth was reached
    double forward_m = 0.0;          ///< glide distance until then
    double vertical_m_s = 0.0;       ///< at the end
    /// Share of the time that the main steady fall from the start would have saved; absent where there is
    /// none, and where the way from rest was the faster.
    std::optional<double> start_up_share;
};

/// What the document's corrections say of drag as a whole: Closure::drag.
[[nodiscard]] double drag_correction(const document::Document& document);

/// The ledger up to a stage as the equations want it.
[[nodiscard]] Weights weights_of(const ledger::Ledger& ledger, Stage stage);

/// A lure in one water. Cheap to copy; holds no reference to what it was made from.
class Descent {
public:
    Descent(const shape::Body& body, const ledger::Ledger& ledger, const document::Document& document,
            const materials::WaterProperties& water, Stage stage = Stage::dressed);
    /// The same with a hull taken before (hull.hpp): it is one and the same at every stage.
    Descent(Hull hull, const shape::Body& body, const ledger::Ledger& ledger,
            const document::Document& document, const materials::WaterProperties& water, Stage stage);
    Descent(Hull hull, const Weights& weights, std::vector<DragItem> items, const materials::WaterProperties& water,
            const Closure& closure = {});

    /// All steady falls with a pitch within 89.99° of level: a scan of 1°, each change of sign of the moment
    /// refined to 1e-10 rad. Upside-down falls are not looked for: roll would end them. None within a
    /// milligram of hanging still.
    [[nodiscard]] SteadyFalls steady() const;

    /// The main steady fall alone, as steady() has it; a few microseconds where it is near the hang. Without
    /// doubts its bands are left at zero.
    enum class Doubts { none, bands };
    [[nodiscard]] std::optional<SteadyFall> main_fall(Doubts doubts = Doubts::none) const;

    /// From rest until the depth is reached or time is up. Works for a floating lure that is held under and
    /// let go as well: it rises, and depth counts upward. Fifth-order Runge-Kutta with step control (Dormand
    /// and Prince 1980).
    ///   fails   a number of the request outside its range, NaN included; problems at "/depth_m" and the like
    [[nodiscard]] Outcome<Track> track(const TrackRequest& request = {}) const;

    /// The in-water mass [kg] with which the main steady fall has this vertical speed (negative: rises), the
    /// shape, the displaced volume and the offset from B to G held. Of several one near a level fall's.
    /// Absent where none does: speed 0 or not finite, or a leap past it where the manner of falling changes,
    /// or a mass outside ±1 kg per litre.
    [[nodiscard]] std::optional<double> in_water_for(double vertical_m_s) const;

    [[nodiscard]] Descent
    with_in_water(double in_water_kg) const; ///< same shape, volume and offset of G from B
    [[nodiscard]] Descent in(const materials::WaterProperties& water) const; ///< same lure, other water
    /// The same hull and parts with other weights, and this factor on all drag: what uncertainty draws by the
    /// thousand.
    void set(const Weights& weights, double drag);
    [[nodiscard]] double drag() const { return closure_.drag; }

    [[nodiscard]] double in_water_kg() const;
    [[nodiscard]] std::optional<double> hang_pitch_rad() const;
    [[nodiscard]] Motion motion() const { return {hull_, weights_, items_, water_, closure_}; }
    [[nodiscard]] const Weights& weights() const { return weights_; }
    [[nodiscard]] const Hull& hull() const { return hull_; }
    [[nodiscard]] const std::vector<DragItem>& items() const { return items_; }

private:
    [[nodiscard]] double reynolds(double across_m_s) const;
    void set_doubts(std::span<SteadyFall> falls) const;

    Hull hull_;
    Weights weights_;
    std::vector<DragItem> items_;
    materials::WaterProperties water_;
    Closure closure_;
};

} // namespace evenfall::fall
