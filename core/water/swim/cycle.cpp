#include "water/swim/cycle.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <cmath>
#include <complex>
#include <numbers>
#include <numeric>

namespace evenfall::swim {

namespace {

constexpr double outermost = 0.005;
constexpr double least_beat_rad = 1.0 * units::degree_rad;
constexpr double least_lean_rad = 2.0 * units::degree_rad;
constexpr double hysteresis = 0.15;
constexpr double most_spread = 0.2;
constexpr double near_stop_rad = 0.5 * units::degree_rad;

struct Range {
    double low = 0.0, high = 0.0;
    [[nodiscard]] double half() const { return 0.5 * (high - low); }
    [[nodiscard]] double middle() const { return 0.5 * (high + low); }
};

/// Takes the values apart.
Range range_of(std::vector<double>& values) {
    const auto cut = static_cast<std::ptrdiff_t>(outermost * static_cast<double>(values.size()));
    std::nth_element(values.begin(), values.begin() + cut, values.end());
    const double low = values[static_cast<std::size_t>(cut)];
    std::nth_element(values.begin(), values.end() - 1 - cut, values.end());
    return {low, values[values.size() - 1 - static_cast<std::size_t>(cut)]};
}

double mean_of(const std::vector<double>& values) {
    return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

template <class Of>
std::vector<double> row_of(std::span<const Sample> samples, const Of& of) {
    std::vector<double> row;
    row.reserve(samples.size());
    for (const Sample& s : samples)
        row.push_back(of(s));
    return row;
}

/// Places, in samples, where the values rise through their middle.
std::vector<double> rises(const std::vector<double>& values, const Range& range) {
    std::vector<double> at;
    bool was_below = false;
    for (std::size_t k = 1; k < values.size(); ++k) {
        if (values[k - 1] < range.middle() - hysteresis * range.half()) was_below = true;
        if (!was_below || values[k] < range.middle()) continue;
        at.push_back(static_cast<double>(k) - (values[k] - range.middle()) / (values[k] - values[k - 1]));
        was_below = false;
    }
    return at;
}

/// Without its drift: the least squares' parabola.
void straighten(std::vector<double>& values) {
    const double half = 0.5 * static_cast<double>(values.size() - 1);
    double s2 = 0.0, s4 = 0.0, v0 = 0.0, v1 = 0.0, v2 = 0.0;
    const auto place = [&](std::size_t k) { return (static_cast<double>(k) - half) / half; };
    for (std::size_t k = 0; k < values.size(); ++k) {
        const double x = place(k), xx = x * x;
        s2 += xx;
        s4 += xx * xx;
        v0 += values[k];
        v1 += values[k] * x;
        v2 += values[k] * xx;
    }
    const auto count = static_cast<double>(values.size());
    const double bend = (v2 - v0 * s2 / count) / (s4 - s2 * s2 / count);
    const double level = (v0 - bend * s2) / count;
    for (std::size_t k = 0; k < values.size(); ++k)
        values[k] -= level + place(k) * (v1 / s2 + place(k) * bend);
}

double half_way(std::vector<double> values) {
    straighten(values);
    return range_of(values).half();
}

double tail_y_m(const Chain& chain, const Sample& s) {
    double y = s.y_m;
    for (std::size_t i = 0; i < chain.segments.size(); ++i)
        y += chain.segments[i].length_m * std::sin(s.heading_rad[i]);
    return y;
}

/// Phase of each heading at the beat's frequency, over whole beats from one rise to another.
void set_lags(Cycle& c, std::span<const Sample> samples, std::size_t segments, double from, double to,
              std::size_t beats) {
    const double turn = 2.0 * std::numbers::pi * static_cast<double>(beats) / (to - from);
    double before = 0.0;
    for (std::size_t i = 0; i < segments; ++i) {
        std::complex<double> sum;
        for (auto k = static_cast<std::size_t>(from); static_cast<double>(k) < to; ++k)
            sum += samples[k].heading_rad[i] * std::polar(1.0, -turn * (static_cast<double>(k) - from));
        const double phase = std::arg(sum);
        if (i > 0) c.lag_rad[i] = std::remainder(before - phase, 2.0 * std::numbers::pi);
        before = phase;
    }
}

bool is_bent(const Chain& chain, std::span<const Sample> samples) {
    const auto stands_off = [&](const auto& of) {
        return std::abs(mean_of(row_of(samples, of))) > least_lean_rad;
    };
    if (stands_off([](const Sample& s) { return s.heading_rad[0]; })) return true;
    for (std::size_t i = 1; i < chain.segments.size(); ++i) {
        if (stands_off([i](const Sample& s) { return s.heading_rad[i] - s.heading_rad[i - 1]; })) return true;
    }
    return false;
}

/// Its beats, if the tail's heading has even ones.
void set_beats(Cycle& c, std::span<const Sample> samples, std::size_t segments, const std::vector<double>& at,
               double every_s) {
    c.way = Way::irregular;
    if (at.size() < 3) return;
    const auto beats = at.size() - 1;
    const double mean = (at.back() - at.front()) / static_cast<double>(beats);
    double squares = 0.0;
    for (std::size_t k = 0; k < beats; ++k)
        squares += (at[k + 1] - at[k] - mean) * (at[k + 1] - at[k] - mean);
    c.spread = std::sqrt(squares / static_cast<double>(beats)) / mean;
    if (c.spread >= most_spread) return;
    c.way = Way::swims;
    c.period_s = mean * every_s;
    c.beat_from_s = at[beats - 1] * every_s;
    set_lags(c, samples, segments, at.front(), at.back(), beats);
}

} // namespace

Cycle cycle_of(const Chain& chain, std::span<const Sample> samples, double every_s) {
    const std::size_t n = chain.segments.size();
    Cycle c;
    std::vector<double> tail = row_of(samples, [n](const Sample& s) { return s.heading_rad[n - 1]; });
    std::vector<double> apart = tail;
    const Range range = range_of(apart);
    c.tail_rad = range.half();
    std::vector<double> head = row_of(samples, [](const Sample& s) { return s.heading_rad[0]; });
    c.head_rad = range_of(head).half();
    for (std::size_t i = 0; i + 1 < n; ++i) {
        std::vector<double> joint =
            row_of(samples, [i](const Sample& s) { return s.heading_rad[i + 1] - s.heading_rad[i]; });
        const Range swing = range_of(joint);
        c.joint_rad[i] = swing.half();
        c.at_stop[i] = swing.low < -chain.joints[i].stop_rad[0] + near_stop_rad &&
                       swing.high > chain.joints[i].stop_rad[1] - near_stop_rad;
    }
    c.tail_m = half_way(row_of(samples, [&](const Sample& s) { return tail_y_m(chain, s); }));
    c.nose_m = half_way(row_of(samples, [](const Sample& s) { return s.y_m; }));
    const std::vector<double> at = rises(tail, range);
    if (c.tail_rad < least_beat_rad || at.size() < 2)
        c.way = is_bent(chain, samples) ? Way::leans : Way::straight;
    else
        set_beats(c, samples, n, at, every_s);
    return c;
}

} // namespace evenfall::swim
