#pragma once

// The time of a drawing that moves: starts, pauses, is slid. Pure; whoever draws says what time it is.

namespace evenfall::shell::state {

class PlayClock {
public:
    [[nodiscard]] bool playing() const { return playing_; }

    /// Where the drawing stands, 0 to `end_s`. At first it stands at the end: the whole way is seen.
    [[nodiscard]] double at_s(double end_s) const;

    /// Goes on from where it stands, from the beginning when it stands at the end.
    void start(double now_s, double end_s);
    void pause() { playing_ = false; }

    /// A finger slid it there; it stands still.
    void slide_to(double at_s);

    /// Takes in the time that has passed since start() or the last call; stops at the end. Called once a
    /// frame. A frame that comes late by more than `longest_step_s` (a page put away) does not jump.
    void advance(double now_s, double end_s);

    static constexpr double longest_step_s = 0.25;

private:
    bool playing_ = false;
    bool at_end_ = true;
    double at_s_ = 0.0;
    double last_s_ = 0.0;
};

} // namespace evenfall::shell::state
