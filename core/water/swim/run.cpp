#include "water/swim/run.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::swim {

namespace {

constexpr double bent_share = 0.7;
constexpr double tail_turn_rad = 5.0 * units::degree_rad;
constexpr std::size_t samples_a_length = 40;
constexpr std::size_t most_lengths = 40;
constexpr std::size_t first_look = 12; ///< lengths
constexpr std::size_t look_every = 4;  ///< lengths
constexpr double same = 0.02;          ///< beats that differ by less are alike
constexpr double same_as_known = 0.05; ///< the same of beats as known from another start, over their width
constexpr double still_rad = 0.02 * units::degree_rad;

bool alike(double a, double b, double within) {
    return std::abs(a - b) <= within * std::max(std::abs(a), std::abs(b));
}

} // namespace

State start_state(const Chain& chain, Start start) {
    State state{};
    const std::size_t n = chain.segments.size();
    if (start == Start::tail_turn) {
        state[n] = tail_turn_rad;
        return state;
    }
    for (std::size_t i = 1; i < n; ++i) {
        const Joint& joint = chain.joints[i - 1];
        const bool to_port = start == Start::in_turn && i % 2 == 0;
        state[1 + i] = state[i] + bent_share * (to_port ? -joint.stop_rad[0] : joint.stop_rad[1]);
    }
    return state;
}

Run::Run(const Chain& chain, const Motion& motion, Start start, const Cycle* known)
    : chain_(&chain), motion_(&motion), known_(known), state_(start_state(chain, start)) {
    every_s_ = chain.length_m / (static_cast<double>(samples_a_length) * motion.speed_m_s());
    steps_a_sample_ = static_cast<int>(std::ceil(every_s_ / motion.step_s()));
    steps_to_sample_ = steps_a_sample_;
    step_s_ = every_s_ / steps_a_sample_;
    samples_.reserve(most_lengths * samples_a_length);
}

int Run::work(int steps) {
    int taken = 0;
    while (!done_ && taken < steps) {
        const int now = std::min(steps - taken, steps_to_sample_);
        for (int k = 0; k < now; ++k)
            motion_->advance(state_, step_s_);
        taken += now;
        steps_to_sample_ -= now;
        if (steps_to_sample_ > 0) continue;
        steps_to_sample_ = steps_a_sample_;
        Sample s;
        s.y_m = state_[0];
        std::copy_n(state_.begin() + 1, motion_->segments(), s.heading_rad.begin());
        samples_.push_back(s);
        if (samples_.size() % samples_a_length == 0) judge(samples_.size() / samples_a_length);
    }
    return taken;
}

void Run::judge(std::size_t lengths) {
    if (known_ != nullptr && is_known()) {
        cycle_ = *known_;
        done_ = true;
        return;
    }
    if (lengths < first_look || lengths % look_every != 0) return;
    judged_from_ = samples_.size() / 2;
    cycle_ = cycle_of(*chain_, judged(), every_s_);
    done_ = lengths >= most_lengths;
    if (done_) return;
    if (cycle_.way != Way::swims) {
        done_ = cycle_.tail_rad < still_rad;
        return;
    }
    const std::span<const Sample> all = judged();
    const auto half = all.size() / 2;
    const Cycle early = cycle_of(*chain_, all.subspan(0, half), every_s_);
    const Cycle late = cycle_of(*chain_, all.subspan(half), every_s_);
    const bool is_long = static_cast<double>(all.size()) * every_s_ >= 3.0 * cycle_.period_s;
    done_ = is_long && cycle_.spread < same && alike(early.tail_rad, late.tail_rad, same) &&
            alike(early.head_rad, late.head_rad, same);
}

bool Run::is_known() const {
    const auto beat = static_cast<std::size_t>(std::lround(known_->period_s / every_s_));
    if (samples_.size() < 2 * beat) return false;
    const std::size_t tail = chain_->segments.size() - 1;
    const double most = same_as_known * known_->tail_rad;
    double low = 0.0, high = 0.0;
    for (std::size_t k = samples_.size() - beat; k < samples_.size(); ++k) {
        for (std::size_t i = 0; i <= tail; ++i) {
            if (std::abs(samples_[k].heading_rad[i] - samples_[k - beat].heading_rad[i]) > most) return false;
        }
        low = std::min(low, samples_[k].heading_rad[tail]);
        high = std::max(high, samples_[k].heading_rad[tail]);
    }
    return alike(0.5 * (high - low), known_->tail_rad, same_as_known);
}

std::span<const Sample> Run::judged() const {
    return std::span(samples_).subspan(judged_from_);
}

} // namespace evenfall::swim
