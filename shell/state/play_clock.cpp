#include "state/play_clock.hpp"

#include <algorithm>

namespace evenfall::shell::state {

double PlayClock::at_s(double end_s) const {
    return at_end_ ? end_s : std::clamp(at_s_, 0.0, end_s);
}

void PlayClock::start(double now_s, double end_s) {
    if (at_end_ || at_s_ >= end_s) at_s_ = 0.0;
    at_end_ = false;
    playing_ = end_s > 0.0;
    last_s_ = now_s;
}

void PlayClock::slide_to(double at_s) {
    playing_ = false;
    at_end_ = false;
    at_s_ = std::max(0.0, at_s);
}

void PlayClock::advance(double now_s, double end_s) {
    if (!playing_) return;
    at_s_ += std::clamp(now_s - last_s_, 0.0, longest_step_s);
    last_s_ = now_s;
    if (at_s_ < end_s) return;
    at_end_ = true;
    playing_ = false;
}

} // namespace evenfall::shell::state
