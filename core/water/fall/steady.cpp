#include "water/fall/descent.hpp"

#include "base/root.hpp"
#include "base/trade.hpp"

#include <Eigen/Eigenvalues>
#include <algorithm>
#include <cmath>

namespace evenfall::fall {

namespace {

using units::rad_from_deg;

constexpr double widest_rad = rad_from_deg(89.99);

double balanced_between(const SteadySums& sums, double from, double to, double at_from, double at_to) {
    const auto moment = [&](double pitch) { return sums.moment_n_m(pitch); };
    return root_between(moment, from, to, at_from, at_to, {1e-11});
}

/// Every pitch at which the moment is zero, ascending. Two roots within one step of the scan show as a
/// minimum of |moment|; the parabola through it then tells where to look between them.
std::vector<double> balanced_pitches(const SteadySums& sums) {
    std::vector<double> found;
    const auto moment = [&](double pitch) { return sums.moment_n_m(pitch); };
    const auto pitch_at = [](int deg) { return std::clamp(rad_from_deg(deg), -widest_rad, widest_rad); };
    double before = 0.0, last = 0.0;
    for (int deg = -90; deg <= 90; ++deg) {
        const double pitch = pitch_at(deg);
        const double now = moment(pitch);
        if (deg > -90 && (last < 0.0) != (now < 0.0)) {
            found.push_back(balanced_between(sums, pitch_at(deg - 1), pitch, last, now));
        } else if (deg > -89 && (before < 0.0) == (last < 0.0) && std::abs(last) < std::abs(before) &&
                   std::abs(last) < std::abs(now)) {
            const double bend = before - 2.0 * last + now;
            const double at = rad_from_deg(deg - 1 + 0.5 * (before - now) / bend);
            const double there = moment(at);
            if ((there < 0.0) != (last < 0.0)) {
                found.push_back(balanced_between(sums, pitch_at(deg - 2), at, before, there));
                found.push_back(balanced_between(sums, at, pitch, there, now));
            }
        }
        before = last;
        last = now;
    }
    return found;
}

FallAttitude fall_attitude_of(double pitch_rad, bool rises) {
    const double level = rad_from_deg(5.0);
    const double steep = rad_from_deg(60.0);
    if (std::abs(pitch_rad) <= level) return FallAttitude::level;
    const bool nose_lower = pitch_rad < 0.0;
    // When a lure rises, its upper end leads.
    if (std::abs(pitch_rad) > steep)
        return nose_lower != rises ? FallAttitude::nose_first : FallAttitude::tail_first;
    return nose_lower ? FallAttitude::nose_down : FallAttitude::tail_down;
}

SteadyFall fall_at(const SteadySums& sums, double pitch_rad) {
    const SteadySums::Speeds speeds = sums.speeds(pitch_rad);
    const auto [u, w] = speeds;
    const double sine = std::sin(pitch_rad);
    const double cosine = std::cos(pitch_rad);
    SteadyFall f;
    f.pitch_rad = pitch_rad;
    f.along_m_s = u;
    f.across_m_s = w;
    f.vertical_m_s = speeds.vertical_m_s(pitch_rad);
    f.manner = fall_attitude_of(pitch_rad, f.vertical_m_s < 0.0);
    f.forward_m_s = u * cosine + w * sine;
    f.glide_rad = std::atan2(f.forward_m_s, std::abs(f.vertical_m_s));
    return f;
}

/// The equations linearised about a steady fall, by central differences.
Eigen::Matrix4d linearised(const Motion& motion, const SteadyFall& f) {
    const double speed = std::hypot(f.along_m_s, f.across_m_s);
    const std::array<double, 4> step{1e-5 * speed, 1e-5 * speed, 1e-4 * speed, 1e-5};
    Eigen::Matrix4d jacobian = Eigen::Matrix4d::Zero();
    for (std::size_t k = 0; k < 4; ++k) {
        const auto shifted = [&](double by) {
            MotionState s{f.along_m_s, f.across_m_s, 0.0, f.pitch_rad};
            double* const parts[] = {&s.along_m_s, &s.across_m_s, &s.pitching_rad_s, &s.pitch_rad};
            *parts[k] += by;
            return motion.rates(s);
        };
        const auto plus = shifted(step[k]);
        const auto minus = shifted(-step[k]);
        for (std::size_t i = 0; i < 3; ++i) {
            jacobian(static_cast<int>(i), static_cast<int>(k)) = (plus[i] - minus[i]) / (2.0 * step[k]);
        }
    }
    jacobian(3, 2) = 1.0;
    return jacobian;
}

/// Whether every small disturbance decays: all eigenvalues have negative real parts (Routh 1877 and Hurwitz
/// 1895, for four), which their polynomial tells (Faddeev and LeVerrier) in a tenth of the time that they
/// take.
bool decays(const Eigen::Matrix4d& jacobian) {
    std::array<double, 4> c{}; // λ⁴ + c₀λ³ + c₁λ² + c₂λ + c₃
    Eigen::Matrix4d m = jacobian;
    for (std::size_t k = 0; k < 4; ++k) {
        if (k > 0) m = (jacobian * (m + c[k - 1] * Eigen::Matrix4d::Identity())).eval();
        c[k] = -m.trace() / static_cast<double>(k + 1);
    }
    return c[0] > 0.0 && c[3] > 0.0 && c[0] * c[1] * c[2] > c[2] * c[2] + c[0] * c[0] * c[3] && c[2] > 0.0;
}

std::array<std::complex<double>, 4> modes_of(const Eigen::Matrix4d& jacobian) {
    const Eigen::EigenSolver<Eigen::Matrix4d> solver(jacobian, false);
    std::array<std::complex<double>, 4> modes;
    for (std::size_t i = 0; i < 4; ++i)
        modes[i] = solver.eigenvalues()(static_cast<int>(i));
    std::sort(modes.begin(), modes.end(), [](const auto& a, const auto& b) {
        return a.real() != b.real() ? a.real() > b.real() : a.imag() > b.imag();
    });
    return modes;
}

/// With its stability.
SteadyFall fall_at(const Motion& motion, double pitch_rad) {
    SteadyFall f = fall_at(motion.sums(), pitch_rad);
    f.stable = decays(linearised(motion, f));
    return f;
}

/// The root of changed sums that continues the one at `pitch`, where the moment falls (or `rises`) with
/// pitch; absent where there is none within 84°, the range of the steps.
std::optional<double> continued_root(const SteadySums& sums, double pitch, bool rises = false) {
    double from = std::clamp(pitch, -widest_rad, widest_rad);
    double at_from = sums.moment_n_m(from);
    if (at_from == 0.0) return from;
    const double way = (at_from > 0.0) != rises ? 1.0 : -1.0;
    for (double step = rad_from_deg(0.5); step < rad_from_deg(40.0); step *= 1.7) {
        const double to = std::clamp(from + way * step, -widest_rad, widest_rad);
        if (to == from) return std::nullopt;
        const double at_to = sums.moment_n_m(to);
        if ((at_to < 0.0) != (at_from < 0.0)) {
            return balanced_between(sums, from, to, at_from, at_to);
        }
        from = to;
        at_from = at_to;
    }
    return std::nullopt;
}

/// Shifts of one value by independent causes, root of the sum of squares on each side.
struct Shifts {
    double down = 0.0;
    double up = 0.0;
    void add(double least, double most, double usual) {
        const double lower = std::min(least, usual) - usual;
        const double upper = std::max(most, usual) - usual;
        down += lower * lower;
        up += upper * upper;
    }
    [[nodiscard]] Band around(double usual) const { return {usual - std::sqrt(down), usual + std::sqrt(up)}; }
};

struct ClosureRange {
    ModelFactors low;
    ModelFactors high;
};

std::array<ClosureRange, 4> causes_around(const ModelFactors& usual) {
    std::array<ClosureRange, 4> causes;
    causes.fill({usual, usual});
    causes[0].low.ends = -1.0;
    causes[0].high.ends = 1.0;
    causes[1].low.parts = -1.0;
    causes[1].high.parts = 1.0;
    causes[2].low.munk = 0.7;
    causes[3].low.along = 0.6;
    causes[3].high.along = 1.4;
    return causes;
}

void set_bands(SteadyFall& fall, bool rises, std::span<const std::array<SteadySums, 2>> variants) {
    Shifts pitch, vertical, forward, glide;
    for (const auto& pair : variants) {
        SteadyFall ends[2] = {fall, fall};
        for (std::size_t i = 0; i < 2; ++i) {
            if (const auto there = continued_root(pair[i], fall.pitch_rad, rises)) {
                ends[i] = fall_at(pair[i], *there);
            } else {
                fall.holds_over_band = false;
            }
        }
        const auto add = [&](Shifts& shifts, double SteadyFall::*figure) {
            const auto [least, most] = std::minmax(ends[0].*figure, ends[1].*figure);
            shifts.add(least, most, fall.*figure);
        };
        add(pitch, &SteadyFall::pitch_rad);
        add(vertical, &SteadyFall::vertical_m_s);
        add(forward, &SteadyFall::forward_m_s);
        add(glide, &SteadyFall::glide_rad);
    }
    fall.pitch_band_rad = pitch.around(fall.pitch_rad);
    fall.vertical_band_m_s = vertical.around(fall.vertical_m_s);
    fall.forward_band_m_s = forward.around(fall.forward_m_s);
    fall.glide_band_rad = glide.around(fall.glide_rad);
}

std::vector<SteadyFall> falls_of(const FallingLure& descent, const Motion& motion) {
    std::vector<SteadyFall> falls;
    const double kg = descent.in_water_kg();
    if (!(std::abs(kg) > still_kg && std::isfinite(kg)) || descent.hull().slices.empty()) return falls;
    // A moment that is not finite would count as a root at every pitch.
    if (!std::isfinite(motion.sums().moment_n_m(0.5))) return falls;
    for (const double pitch : balanced_pitches(motion.sums())) {
        falls.push_back(fall_at(motion, pitch));
    }
    return falls;
}

/// The main fall without a scan, for the usual lure whose hang pitch is near it: the sign of the moment at
/// the hang pitch tells the direction, and no other change of sign may lie at up to the same distance on the
/// other side. Absent where that does not hold.
std::optional<SteadyFall> near_fall(const FallingLure& descent, const Motion& motion) {
    const double kg = descent.in_water_kg();
    const auto hang = descent.hang_pitch_rad();
    if (!(std::abs(kg) > still_kg && std::isfinite(kg)) || descent.hull().slices.empty() || !hang)
        return std::nullopt;
    const double at_hang = motion.sums().moment_n_m(*hang);
    if (!std::isfinite(at_hang)) return std::nullopt;
    const auto pitch = continued_root(motion.sums(), *hang);
    if (!pitch || std::abs(*pitch - *hang) > rad_from_deg(10.0)) return std::nullopt;
    const double mirror = motion.sums().moment_n_m(2.0 * *hang - *pitch);
    if ((mirror < 0.0) != (at_hang < 0.0)) return std::nullopt;
    SteadyFall f = fall_at(motion, *pitch);
    if (!f.stable) return std::nullopt;
    return f;
}

std::optional<std::size_t> main_of(const std::vector<SteadyFall>& falls,
                                   std::optional<double> hang_pitch_rad) {
    std::optional<std::size_t> main;
    const double hang = hang_pitch_rad.value_or(0.0);
    for (std::size_t i = 0; i < falls.size(); ++i) {
        if (!falls[i].stable) continue;
        if (!main || std::abs(falls[i].pitch_rad - hang) < std::abs(falls[*main].pitch_rad - hang)) main = i;
    }
    return main;
}

} // namespace

SteadyFalls FallingLure::steady() const {
    SteadyFalls all;
    all.hang_pitch_rad = hang_pitch_rad();
    const Motion equations = motion();
    all.falls = falls_of(*this, equations);
    all.main = main_of(all.falls, all.hang_pitch_rad);
    for (SteadyFall& fall : all.falls) {
        fall.reynolds = reynolds(fall.across_m_s);
        fall.modes_1_s = modes_of(linearised(equations, fall));
    }
    compute_bands(all.falls);
    return all;
}

std::optional<SteadyFall> FallingLure::main_fall(ModelBands doubts) const {
    const Motion equations = motion();
    std::optional<SteadyFall> fall = near_fall(*this, equations);
    if (!fall) {
        const auto falls = falls_of(*this, equations);
        if (const auto main = main_of(falls, hang_pitch_rad())) fall = falls[*main];
    }
    if (fall) fall->reynolds = reynolds(fall->across_m_s);
    if (fall && doubts == ModelBands::bands) compute_bands({&*fall, 1});
    return fall;
}

double FallingLure::reynolds(double speed_m_s) const {
    return water_.density_kg_m3 * hull_.mean_height_m / water_.viscosity_pa_s * std::abs(speed_m_s);
}

void FallingLure::compute_bands(std::span<SteadyFall> falls) const {
    if (falls.empty()) return;
    std::array<std::array<SteadySums, 2>, 5> variants; // the causes, and beyond the drag laws these
    const auto causes = causes_around(closure_);
    for (std::size_t i = 0; i < causes.size(); ++i) {
        variants[i] = {steady_sums(hull_, weights_, items_, water_, causes[i].low),
                       steady_sums(hull_, weights_, items_, water_, causes[i].high)};
    }
    for (SteadyFall& fall : falls) {
        std::size_t used = causes.size();
        if (const DragFactor factor = drag_factor_at(reynolds(std::hypot(fall.along_m_s, fall.across_m_s)));
            factor.low < 1.0 || factor.high > 1.0) {
            ModelFactors least = closure_;
            ModelFactors most = closure_;
            least.drag *= factor.low;
            most.drag *= factor.high;
            fall.in_drag_laws = false;
            variants[used++] = {steady_sums(hull_, weights_, items_, water_, least),
                                steady_sums(hull_, weights_, items_, water_, most)};
        }
        // Where a fall is stable the moment falls with pitch; where it is not, it may rise.
        bool rises = false;
        if (!fall.stable) {
            const SteadySums usual = sums();
            constexpr double aside = 1e-5;
            rises = usual.moment_n_m(fall.pitch_rad + aside) > usual.moment_n_m(fall.pitch_rad - aside);
        }
        set_bands(fall, rises, {variants.data(), used});
    }
}

} // namespace evenfall::fall
