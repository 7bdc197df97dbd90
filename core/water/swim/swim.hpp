#pragma once

// How a lure will swim behind a steady line: whether, how many beats a metre of travel, the shape of the
// wave, and what a change does to it. Seen from above, level; no roll, pitch, bending tail, swinging hooks or
// pauses. The equations stand in motion.hpp; what is not known of them is drawn by chance (closures.hpp).

#include "water/swim/draws.hpp"

#include <array>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace evenfall::swim {

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

struct SwimAnswer {
    Way way = Way::straight;           ///< of most draws
    int swims = 0;                     ///< draws in which it beats, if only once jerked
    int of = 0;                        ///< draws
    std::optional<Beats> beats_per_m;  ///< where it beats in any draw; before any count (bench/beats.hpp)
    std::optional<Beats> tail_swing_m; ///< half way from side to side: may be half or double
    // Of the usual assumptions, or of the first ones in which it beats:
    std::vector<JointSwing> joints;
    std::vector<double> lag_rad; ///< of each segment behind the one before; empty without a beat
    std::optional<Wave> wave;    ///< without a beat its last place alone, still
    Draws draws;
    std::string caution; ///< beyond what the model was compared with; empty where there is none
};

/// How many sets of assumptions are tried.
inline constexpr int all_draws = 24;

/// Works out an answer a bit at a time. The same numbers whatever the bits.
class SwimRun {
public:
    explicit SwimRun(Chain chain, const Tow& tow = {}, int draws = all_draws);
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
[[nodiscard]] SwimAnswer swim(const Chain& chain, const Tow& tow = {}, int draws = all_draws);

} // namespace evenfall::swim
