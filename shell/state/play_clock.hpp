#pragma once

// The clock of an animated drawing: start, pause, slide. Pure; the caller passes the time.

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

} // namespace evenfall::shell::state
