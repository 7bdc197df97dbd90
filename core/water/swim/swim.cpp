#include "water/swim/swim.hpp"

#include "water/swim/run.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::swim {

namespace {

constexpr std::size_t poses = 36;
constexpr int steps_to_prepare = 200; ///< what the matrices of a draw cost, in time steps
/// Of the tail's swing, nine in ten within half and double (own runs in three dimensions).
constexpr double swing_sigma_ln = 0.54;

/// The last whole beat, made to close: what drift is left over it is taken out.
Wave wave_of(const Chain& chain, const Run& run, double speed_m_s) {
    Wave wave;
    wave.x_m.push_back(chain.tie_x_m);
    for (std::size_t i = 0; i + 1 < chain.segments.size(); ++i)
        wave.x_m.push_back(wave.x_m.back() + chain.segments[i].length_m);
    const std::span<const Sample> samples = run.judged();
    const Cycle& cycle = run.cycle();
    const auto at = [&](double time_s) {
        const double place = std::clamp(time_s / run.every_s(), 0.0, static_cast<double>(samples.size() - 1));
        const auto k = std::min(static_cast<std::size_t>(place), samples.size() - 2);
        const double part = place - static_cast<double>(k);
        Wave::Pose p;
        p.y_m = samples[k].y_m + part * (samples[k + 1].y_m - samples[k].y_m);
        for (std::size_t i = 0; i < most_segments; ++i)
            p.heading_rad[i] = samples[k].heading_rad[i] +
                               part * (samples[k + 1].heading_rad[i] - samples[k].heading_rad[i]);
        return p;
    };
    if (cycle.way != Way::swims) {
        wave.poses.push_back(at(run.every_s() * static_cast<double>(samples.size())));
        return wave;
    }
    wave.beats_per_m = 1.0 / (cycle.period_s * speed_m_s);
    const Wave::Pose first = at(cycle.beat_from_s), last = at(cycle.beat_from_s + cycle.period_s);
    for (std::size_t k = 0; k < poses; ++k) {
        const double share = static_cast<double>(k) / poses;
        Wave::Pose p = at(cycle.beat_from_s + share * cycle.period_s);
        p.y_m -= first.y_m + share * (last.y_m - first.y_m);
        for (std::size_t i = 0; i < most_segments; ++i)
            p.heading_rad[i] -= share * (last.heading_rad[i] - first.heading_rad[i]);
        wave.poses.push_back(p);
    }
    return wave;
}

/// Of the three starts of one draw.
Way way_of(const std::vector<Cycle>& cycles) {
    const auto any = [&](Way way) {
        return std::any_of(cycles.begin(), cycles.end(), [&](const Cycle& c) { return c.way == way; });
    };
    if (any(Way::swims)) {
        const bool all =
            std::all_of(cycles.begin(), cycles.end(), [](const Cycle& c) { return c.way == Way::swims; });
        return all ? Way::swims : Way::swims_once_jerked;
    }
    return any(Way::irregular) ? Way::irregular : any(Way::leans) ? Way::leans : Way::straight;
}

bool beats(Way way) {
    return way == Way::swims || way == Way::swims_once_jerked;
}

/// The way of most draws: first whether it beats at all.
Way way_of(const Draws& draws) {
    const auto count = [&](Way way) {
        return std::count_if(draws.begin(), draws.end(), [&](const Draw& d) { return d.way == way; });
    };
    const auto swims = count(Way::swims), jerked = count(Way::swims_once_jerked);
    if (2 * (swims + jerked) >= static_cast<std::ptrdiff_t>(draws.size()))
        return swims >= jerked ? Way::swims : Way::swims_once_jerked;
    Way most = Way::leans;
    for (const Way way : {Way::straight, Way::irregular}) {
        if (count(way) > count(most)) most = way;
    }
    return most;
}

} // namespace

struct SwimRun::State {
    Chain chain;
    Tow tow;
    int of = 0;
    Draws draws;
    // The draw at work, and what its starts have come to.
    std::optional<Motion> motion;
    std::optional<Run> run;
    std::vector<Cycle> cycles;
    // What is shown: of the first draw, or of the first one that beats.
    std::optional<Cycle> shown;
    std::optional<Wave> wave;

    void finish_run();
    void finish_draw();
};

void SwimRun::State::finish_run() {
    const Cycle& cycle = run->cycle();
    const bool was_beating = shown && shown->way == Way::swims;
    if (!shown || (!was_beating && cycle.way == Way::swims)) {
        shown = cycle;
        wave = wave_of(chain, *run, tow.speed_m_s);
    }
    cycles.push_back(cycle);
    run.reset();
    if (cycles.size() == starts) finish_draw();
}

void SwimRun::State::finish_draw() {
    Draw draw;
    draw.way = way_of(cycles);
    const auto swims =
        std::find_if(cycles.begin(), cycles.end(), [](const Cycle& c) { return c.way == Way::swims; });
    if (swims != cycles.end()) {
        draw.beats_per_m = 1.0 / (swims->period_s * tow.speed_m_s);
        draw.tail_swing_m = swims->tail_m;
    }
    draws.push_back(draw);
    cycles.clear();
    motion.reset();
}

SwimRun::SwimRun(Chain chain, const Tow& tow, int draws) : state_(std::make_unique<State>()) {
    state_->chain = std::move(chain);
    state_->tow = tow;
    state_->of = draws;
    state_->cycles.reserve(starts);
}
SwimRun::~SwimRun() = default;
SwimRun::SwimRun(SwimRun&&) noexcept = default;
SwimRun& SwimRun::operator=(SwimRun&&) noexcept = default;

void SwimRun::work(int steps) {
    State& s = *state_;
    while (steps > 0 && !done()) {
        if (!s.motion) {
            s.motion.emplace(s.chain, closures_of(draws_done(), s.chain.soft_tail), s.tow);
            steps -= steps_to_prepare;
        }
        if (!s.run) {
            const auto known = std::find_if(s.cycles.begin(), s.cycles.end(),
                                            [](const Cycle& c) { return c.way == Way::swims; });
            s.run.emplace(s.chain, *s.motion, static_cast<Start>(s.cycles.size()),
                          known != s.cycles.end() ? &*known : nullptr);
        }
        steps -= s.run->work(std::max(steps, 1));
        if (s.run->done()) s.finish_run();
    }
}

bool SwimRun::done() const {
    return draws_done() >= state_->of;
}

int SwimRun::draws_done() const {
    return static_cast<int>(state_->draws.size());
}

SwimAnswer SwimRun::answer() const {
    SwimAnswer a;
    if (state_->draws.empty()) return a;
    a.draws = state_->draws;
    a.of = draws_done();
    a.swims = static_cast<int>(
        std::count_if(a.draws.begin(), a.draws.end(), [](const Draw& d) { return beats(d.way); }));
    a.way = way_of(a.draws);
    const std::size_t joints = state_->chain.joints.size();
    if (joints == 1 && beats(a.way)) a.way = Way::glides;
    const double widest = widest_swing_rad(state_->chain);
    if (a.way != Way::glides) a.beats_per_m = beats_per_m(a.draws, model_sigma_ln(widest));
    if (widest > usual_swing_rad)
        a.caution = "Joints open wider than in any case that this was compared with: the band is wider.";
    Draws swings = a.draws;
    for (Draw& d : swings)
        d.beats_per_m = d.tail_swing_m;
    a.tail_swing_m = beats_per_m(swings, swing_sigma_ln);
    const Cycle& shown = *state_->shown;
    for (std::size_t i = 0; i < joints; ++i) {
        a.joints.push_back({shown.joint_rad[i], shown.at_stop[i]});
        if (shown.way == Way::swims) a.lag_rad.push_back(shown.lag_rad[i + 1]);
    }
    a.wave = state_->wave;
    return a;
}

SwimAnswer swim(const Chain& chain, const Tow& tow, int draws) {
    SwimRun run(chain, tow, draws);
    while (!run.done())
        run.work(100000);
    return run.answer();
}

} // namespace evenfall::swim
