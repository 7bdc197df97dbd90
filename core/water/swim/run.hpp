#pragma once

// One run of a chain from one start, until its way is plain.

#include "water/swim/cycle.hpp"
#include "water/swim/motion.hpp"

#include <vector>

namespace evenfall::swim {

enum class Start {
    in_turn,   ///< joints bent to either side in turn, to 70 % of their swing
    tail_turn, ///< straight but for the last segment, turned by 5°
    one_way,   ///< all joints bent to one side, to 70 % of their swing
};
inline constexpr int starts = 3;

[[nodiscard]] State start_state(const Chain& chain, Start start);

/// 40 lengths of the lure, judged by their last half; fewer where the last half of those so far has three
/// beats that are as even and as wide as each other to 2 %, or where nothing moves any more.
class Run {
public:
    /// Both must outlive it. `known`: how another start swims; a run whose last beat repeats the one
    /// before, as long and as wide as known, is taken to go on so.
    Run(const Chain& chain, const Motion& motion, Start start, const Cycle* known = nullptr);

    /// Goes on by this many time steps at most; returns those it took.
    int work(int steps);
    [[nodiscard]] bool done() const { return done_; }
    /// When done.
    [[nodiscard]] const Cycle& cycle() const { return cycle_; }
    /// The samples that the cycle is of, and the time from one to the next.
    [[nodiscard]] std::span<const Sample> judged() const;
    [[nodiscard]] double every_s() const { return every_s_; }

private:
    void judge(std::size_t lengths);
    [[nodiscard]] bool is_known() const;

    const Chain* chain_;
    const Motion* motion_;
    const Cycle* known_;
    State state_;
    double every_s_, step_s_;
    int steps_a_sample_, steps_to_sample_;
    std::vector<Sample> samples_;
    std::size_t judged_from_ = 0;
    bool done_ = false;
    Cycle cycle_;
};

} // namespace evenfall::swim
