#include "water/fall/descent.hpp"

#include "base/trade.hpp"
#include "water/fall/balance.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::fall {

namespace {

using units::rad_from_deg;

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

bool has_way(const FallingLure& lure) {
    const double kg = lure.in_water_kg();
    return std::abs(kg) > still_kg && std::isfinite(kg) && !lure.hull().slices.empty();
}

/// Whether there is a way to look for. A moment that is not finite would count as a root at every pitch.
bool can_be_scanned(const FallingLure& lure, const SteadySums& sums) {
    return has_way(lure) && std::isfinite(sums.moment_n_m(0.5));
}

/// The pitch of the fall near the hang pitch, where the usual lure has it: the sign of the moment at the hang
/// pitch tells the direction, and no other change of sign may lie at up to the same distance on the other
/// side. Absent where that does not hold.
std::optional<double> pitch_near_hang(const FallingLure& lure, const SteadySums& sums) {
    const auto hang = lure.hang_pitch_rad();
    if (!has_way(lure) || !hang) return std::nullopt;
    const double at_hang = sums.moment_n_m(*hang);
    if (!std::isfinite(at_hang)) return std::nullopt;
    const auto pitch = continued_root(sums, *hang);
    if (!pitch || std::abs(*pitch - *hang) > near_hang_rad) return std::nullopt;
    const double mirror = sums.moment_n_m(2.0 * *hang - *pitch);
    if ((mirror < 0.0) != (at_hang < 0.0)) return std::nullopt;
    return pitch;
}

} // namespace

DisturbanceRates FallingLure::disturbances(const SteadySums& sums, const SteadyFall& fall) const {
    return disturbance_rates(*hull_, weights_, items_, water_, closure_, sums,
                             {fall.along_m_s, fall.across_m_s, 0.0, fall.pitch_rad});
}

SteadyFalls FallingLure::steady() const {
    SteadyFalls all;
    all.hang_pitch_rad = hang_pitch_rad();
    const SteadySums usual = sums();
    if (!can_be_scanned(*this, usual)) return all;
    const double hang = all.hang_pitch_rad.value_or(0.0);
    for (const double pitch : PitchScan(MomentByPitch(usual)).roots()) {
        SteadyFall& fall = all.falls.emplace_back(fall_at(usual, pitch));
        const DisturbanceRates rates = disturbances(usual, fall);
        fall.stable = decays(rates);
        fall.modes_1_s = modes_of(rates);
        fall.reynolds = reynolds(fall.across_m_s);
        if (!fall.stable) continue;
        if (!all.main || std::abs(pitch - hang) < std::abs(all.falls[*all.main].pitch_rad - hang))
            all.main = all.falls.size() - 1;
    }
    compute_bands(all.falls);
    return all;
}

std::optional<SteadyFall> FallingLure::main_fall(ModelBands doubts) const {
    const SteadySums usual = sums();
    const auto is_stable = [&](double pitch) { return decays(disturbances(usual, fall_at(usual, pitch))); };
    std::optional<double> pitch = pitch_near_hang(*this, usual);
    if (!pitch || !is_stable(*pitch)) {
        if (!can_be_scanned(*this, usual)) return std::nullopt;
        pitch = PitchScan(MomentByPitch(usual)).nearest(hang_pitch_rad().value_or(0.0), is_stable);
    }
    if (!pitch) return std::nullopt;
    SteadyFall fall = fall_at(usual, *pitch);
    fall.stable = true;
    fall.reynolds = reynolds(fall.across_m_s);
    if (doubts == ModelBands::bands) compute_bands({&fall, 1});
    return fall;
}

double FallingLure::reynolds(double speed_m_s) const {
    return water_.density_kg_m3 * hull_->mean_height_m / water_.viscosity_pa_s * std::abs(speed_m_s);
}

void FallingLure::compute_bands(std::span<SteadyFall> falls) const {
    if (falls.empty()) return;
    std::array<std::array<SteadySums, 2>, 5> variants; // the causes, and beyond the drag laws these
    const auto causes = causes_around(closure_);
    for (std::size_t i = 0; i < causes.size(); ++i) {
        variants[i] = {steady_sums(*hull_, weights_, items_, water_, causes[i].low),
                       steady_sums(*hull_, weights_, items_, water_, causes[i].high)};
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
            variants[used++] = {steady_sums(*hull_, weights_, items_, water_, least),
                                steady_sums(*hull_, weights_, items_, water_, most)};
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
