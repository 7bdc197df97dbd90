// The weight at which a lure falls so fast.

#include "base/trade.hpp"
#include "water/fall/balance.hpp"
#include "water/fall/descent.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::fall {

namespace {

/// A lure that is held at a pitch and sinks (or rises) at one vertical speed, whatever weight that takes.
class HeldAtSpeed {
public:
    HeldAtSpeed(const FallingLure& lure, const materials::WaterProperties& water, double vertical_m_s)
        : sums_(lure.sums()), way_(vertical_m_s > 0.0 ? 1.0 : -1.0), vertical_m_s_(std::abs(vertical_m_s)),
          displaced_kg_(water.density_kg_m3 * lure.weights().displaced_m3),
          righting_m2_s2_(sums_.righting_n_m / lure.weights().mass_kg),
          forward_m2_s2_(sums_.forward_n_m / lure.weights().mass_kg) {}

    [[nodiscard]] double in_water_kg(double pitch_rad) {
        return held_at(pitch_rad).weight_n / units::standard_gravity_m_s2;
    }

    /// What is left of the moment at that weight: zero in a steady fall.
    [[nodiscard]] double moment_n_m(double pitch_rad) {
        const Held held = held_at(pitch_rad);
        const double mass_kg = displaced_kg_ + held.weight_n / units::standard_gravity_m_s2;
        sums_.righting_n_m = righting_m2_s2_ * mass_kg;
        sums_.forward_n_m = forward_m2_s2_ * mass_kg;
        return sums_.moment_n_m(pitch_rad, held.speeds);
    }

private:
    struct Held {
        double weight_n;
        SteadySums::Speeds speeds;
    };

    /// The speeds u along and w across lie on the line u·sin + w·cos = v. Where the force of the drag on that
    /// line is plumb, weight can hold it: drag is the gradient of a convex function of the speeds, so its
    /// part along the line rises from end to end, and Newton's method within the ends so far finds its zero.
    [[nodiscard]] Held held_at(double pitch_rad) {
        const double sine = std::abs(std::sin(pitch_rad));
        const double cosine = std::cos(pitch_rad);
        double low = -vertical_m_s_ * sine / cosine;
        double high = sine > 0.0 ? vertical_m_s_ * cosine / sine : 0.0;
        double at = sine > 0.0 && aside_ > low && aside_ < high ? aside_ : 0.0;
        double u = 0.0, w = 0.0, fx = 0.0, fz = 0.0;
        bool is_close = false;
        for (int i = 0; i < 60; ++i) {
            u = std::max(vertical_m_s_ * sine + at * cosine, 0.0);
            w = std::max(vertical_m_s_ * cosine - at * sine, 0.0);
            const double v = std::sqrt(u * u + w * w);
            const double root_u = std::sqrt(u);
            const double root_w = std::sqrt(w);
            const double along = sums_.along_p * u + sums_.along_f * root_u + sums_.parts * v;
            const double across = sums_.cross_p * w + sums_.cross_f * root_w + sums_.parts * v;
            fx = u * along;
            fz = w * across;
            if (is_close || !(sine > 0.0)) break;
            const double off_plumb = fx * cosine - fz * sine;
            (off_plumb > 0.0 ? high : low) = at;
            const double j11 =
                along + sums_.along_p * u + 0.5 * sums_.along_f * root_u + sums_.parts * u * u / v;
            const double j22 =
                across + sums_.cross_p * w + 0.5 * sums_.cross_f * root_w + sums_.parts * w * w / v;
            const double j12 = sums_.parts * u * w / v;
            const double slope = j11 * cosine * cosine - 2.0 * j12 * cosine * sine + j22 * sine * sine;
            double next = at - off_plumb / slope;
            if (!(next > low && next < high)) next = 0.5 * (low + high);
            const double step = std::abs(next - at);
            at = next;
            // Convergence is quadratic: the error after this step is below rounding.
            is_close = step * cosine <= 1e-7 * u && step * sine <= 1e-7 * w;
        }
        aside_ = at;
        const double weight_n = way_ * (fx * sine + fz * cosine);
        return {weight_n, {weight_n * std::sin(pitch_rad) > 0.0 ? -u : u, way_ * w}};
    }

    SteadySums sums_;
    double way_; ///< 1 down, −1 up
    double vertical_m_s_;
    double displaced_kg_;
    double righting_m2_s2_; ///< by mass
    double forward_m2_s2_;
    double aside_ = 0.0; ///< along the line at the last pitch, from its point nearest to rest [m/s]
};

bool is_askable(const FallingLure& lure, double vertical_m_s) {
    return std::isfinite(vertical_m_s) && vertical_m_s != 0.0 && lure.weights().displaced_m3 > 0.0 &&
           !lure.hull().slices.empty();
}

bool is_in_range(const FallingLure& lure, const materials::WaterProperties& water, double in_water_kg) {
    // A rising lure keeps a positive mass; for a sinking one 1 kg per litre is enough.
    const double most = in_water_kg < 0.0 ? std::min(1000.0, water.density_kg_m3) : 1000.0;
    constexpr double lightest_kg = 2e-6;
    return std::abs(in_water_kg) >= lightest_kg &&
           std::abs(in_water_kg) <= most * lure.weights().displaced_m3 * (1.0 - 1e-9);
}

} // namespace

bool FallingLure::falls_with(double in_water_kg, double vertical_m_s) const {
    const auto fall = with_in_water(in_water_kg).main_fall();
    return fall && std::abs(fall->vertical_m_s / vertical_m_s - 1.0) <= 1e-6;
}

std::optional<double> FallingLure::in_water_near_hang(double vertical_m_s) const {
    const auto hang = hang_pitch_rad();
    if (!hang || !is_askable(*this, vertical_m_s)) return std::nullopt;
    HeldAtSpeed held(*this, water_, vertical_m_s);
    const auto pitch =
        continued_root([&](double p) { return held.moment_n_m(p); }, nothing_of(sums()), *hang);
    if (!pitch || std::abs(*pitch - *hang) > near_hang_rad) return std::nullopt;
    const double kg = held.in_water_kg(*pitch);
    return is_in_range(*this, water_, kg) ? std::optional(kg) : std::nullopt;
}

std::optional<double> FallingLure::in_water_for(double vertical_m_s, std::optional<double> near_kg) const {
    if (const auto kg = in_water_near_hang(vertical_m_s); kg && falls_with(*kg, vertical_m_s)) return kg;
    if (!is_askable(*this, vertical_m_s)) return std::nullopt;
    HeldAtSpeed held(*this, water_, vertical_m_s);
    if (!std::isfinite(held.moment_n_m(0.5))) return std::nullopt;
    const double near = std::abs(near_kg.value_or(held.in_water_kg(0.0)));
    std::vector<double> all_kg;
    for (const double pitch : PitchScan([&](double p) { return held.moment_n_m(p); }).roots()) {
        const double kg = held.in_water_kg(pitch);
        if (is_in_range(*this, water_, kg)) all_kg.push_back(kg);
    }
    const auto off = [near](double kg) { return std::abs(std::log(std::abs(kg) / near)); };
    std::sort(all_kg.begin(), all_kg.end(), [&](double a, double b) { return off(a) < off(b); });
    // Among several steady falls of one weight another may be the main one.
    const auto found =
        std::find_if(all_kg.begin(), all_kg.end(), [&](double kg) { return falls_with(kg, vertical_m_s); });
    return found != all_kg.end() ? std::optional(*found) : std::nullopt;
}

} // namespace evenfall::fall
