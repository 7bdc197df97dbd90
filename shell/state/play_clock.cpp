#include "state/play_clock.hpp"

#include <algorithm>
#include <cmath>

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

void BeatClock::start(double now_s) {
    playing_ = true;
    last_s_ = now_s;
}

void BeatClock::advance(double now_s, double beats_per_s) {
    if (!playing_) return;
    const double step_s = std::clamp(now_s - last_s_, 0.0, PlayClock::longest_step_s);
    last_s_ = now_s;
    at_ = std::fmod(at_ + beats_per_s * step_s, 1.0);
}

} // namespace evenfall::shell::state
