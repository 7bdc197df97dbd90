#pragma once

// The clocks of animated drawings: one with an end that can be slid, one that goes round and round. Pure; the
// caller passes the time.

namespace evenfall::shell::state {

class PlayClock {
public:
    [[nodiscard]] bool playing() const { return playing_; }

    /// Present position, 0 to `end_s`. Initially at the end, so that the whole track is visible.
    [[nodiscard]] double at_s(double end_s) const;

    /// Continues from the present position; at the end, starts from the beginning.
    void start(double now_s, double end_s);
    void pause() { playing_ = false; }

    /// Set by a finger; pauses.
    void slide_to(double at_s);

    /// Advances by the time since start() or the last call; stops at the end. Call once per frame. After a
    /// gap of more than `longest_step_s` (page in the background) it does not jump.
    void advance(double now_s, double end_s);

    static constexpr double longest_step_s = 0.25;

private:
    bool playing_ = false;
    bool at_end_ = true;
    double at_s_ = 0.0;
    double last_s_ = 0.0;
};

/// A beat that repeats until it is paused.
class BeatClock {
public:
    [[nodiscard]] bool playing() const { return playing_; }
    /// Where in the beat it is, 0 to 1.
    [[nodiscard]] double at() const { return at_; }

    void start(double now_s);
    void pause() { playing_ = false; }

    /// Advances by the time since start() or the last call, at this tempo ≥ 0 [1/s]. Call once per frame;
    /// after a gap it does not jump.
    void advance(double now_s, double beats_per_s);

private:
    bool playing_ = false;
    double at_ = 0.0;
    double last_s_ = 0.0;
};

} // namespace evenfall::shell::state
