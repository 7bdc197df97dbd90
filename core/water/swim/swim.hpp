#pragma once

// How a lure will swim behind a steady line: whether, how many beats a metre of travel, the shape of the
// wave, and what a change does to it. Seen from above, level; no roll, pitch, bending tail, swinging hooks or
// pauses. The equations stand in motion.hpp; what is not known of them is drawn by chance (closures.hpp).

#include "water/swim/chain.hpp"

#include <array>
#include <memory>
#include <optional>
#include <vector>

namespace evenfall::swim {

/// What becomes of it.
enum class Way {
    swims,             ///< beats evenly, from whatever start
    swims_once_jerked, ///< beats once its joints were bent; left alone it leans or runs straight
    leans,             ///< stays bent to one side
    straight,          ///< runs without a beat
    irregular,         ///< to and fro without an even beat
    glides,            ///< two segments that go wide from side to side: glides, not beats
};

/// One in ten, the middle and nine in ten of what may be, per metre of travel.
struct Beats {
    double low = 0.0;
    double mid = 0.0;
    double high = 0.0;
};

/// The model's own error: ln of the beats in water over those worked out, normal.
struct ModelError {
    double mean = 0.0;
    double sigma = 0.16; ///< from a few runs in water in three dimensions (own)
};

struct JointSwing {
    double swing_rad = 0.0; ///< half of what it swings through
    bool at_stop = false;   ///< reaches its stop on both sides
};

/// One beat, at even times. The lure's point (x, y) as drawn, on segment i, lies at
/// place of x_m[i] + (x − x_m[i])·(cos, sin)(heading) + y·(−sin, cos)(heading); the place of x_m[0] is
/// (x_m[0], y_m), that of the next follows along the segment.
struct Wave {
    struct Pose {
        double y_m = 0.0;                                ///< of the line tie
        std::array<double, most_segments> heading_rad{}; ///< of each segment, its tail to starboard positive
    };
    std::vector<double> x_m; ///< of the line tie and then of each hinge, from the nose
    std::vector<Pose> poses; ///< the last one is a step before the first again
    double beats_per_m = 0.0;
};

/// What came of one set of assumptions.
struct Draw {
    Way way = Way::straight;
    double beats_per_m = 0.0;  ///< 0 where it does not beat
    double tail_swing_m = 0.0; ///< half of the tail's way from side to side
};
/// In the order of the assumptions, which are the same for every lure.
using Draws = std::vector<Draw>;

struct SwimAnswer {
    Way way = Way::straight;           ///< of most draws
    int swims = 0;                     ///< draws in which it beats, if only once jerked
    int of = 0;                        ///< draws
    std::optional<Beats> beats_per_m;  ///< where it beats in any draw
    std::optional<Beats> tail_swing_m; ///< half way from side to side: may be half or double
    // Of the usual assumptions, or of the first ones in which it beats:
    std::vector<JointSwing> joints;
    std::vector<double> lag_rad; ///< of each segment behind the one before; empty without a beat
    std::optional<Wave> wave;    ///< without a beat its last place alone, still
    Draws draws;
};

/// How many sets of assumptions are tried.
inline constexpr int all_draws = 24;

/// Works out an answer a bit at a time. The same numbers whatever the bits.
class SwimRun {
public:
    /// The joint's own friction [N m] comes on top of that of its pin: paint, binding.
    explicit SwimRun(Chain chain, double joint_friction_n_m = 1e-5, int draws = all_draws);
    ~SwimRun();
    SwimRun(SwimRun&&) noexcept;
    SwimRun& operator=(SwimRun&&) noexcept;

    /// Goes on by this many time steps at most, each 2 to 5 µs.
    void work(int steps);
    [[nodiscard]] bool done() const;
    [[nodiscard]] int draws_done() const;
    /// Of the draws that are done; empty before the first.
    [[nodiscard]] SwimAnswer answer() const;

private:
    struct State;
    std::unique_ptr<State> state_;
};

/// All of it.
[[nodiscard]] SwimAnswer swim(const Chain& chain, double joint_friction_n_m = 1e-5, int draws = all_draws);

} // namespace evenfall::swim
