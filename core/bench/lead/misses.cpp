#include "bench/lead/misses.hpp"

#include "base/number_text.hpp"
#include "water/fall/level_fall.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>

namespace evenfall::lead {

double weight_band_kg(const document::Targets& targets, double displaced_kg) {
    constexpr double least_share_of_displaced = 0.002;
    return std::max(targets.fall_band * std::abs(targets.in_water_kg),
                    least_share_of_displaced * displaced_kg);
}

Misses::Misses(const document::Targets& targets, const shape::Lines& lines, bench::FallModel falls,
               double drag)
    : targets_(targets), falls_(std::move(falls)), drag_(drag),
      level_kg_(drag * fall::LevelFall(lines).in_water_kg(targets.fall_m_s, falls_.water())) {}

double Misses::fall_miss(const ledger::Sum& sum) {
    const double water_kg_m3 = falls_.water().density_kg_m3;
    const double kg = sum.in_water(water_kg_m3).kg;
    if (targets_.by == document::TargetBy::in_water)
        return (kg - targets_.in_water_kg) / weight_band_kg(targets_, water_kg_m3 * sum.displaced_m3);
    const auto speed_m_s = kg > 0.0 ? falls_.speed_m_s(sum, drag_) : std::nullopt;
    const double share = speed_m_s ? *speed_m_s / targets_.fall_m_s : kg / level_kg_;
    return (share - 1.0) / targets_.fall_band;
}

double Misses::hang_miss(const ledger::Sum& sum) const {
    const Vec3 g_to_b = sum.b_m() - sum.g_m();
    const double pitch_rad = std::atan2(-g_to_b.x, water::bg_across_m(g_to_b));
    return (pitch_rad - targets_.pitch_rad) / targets_.pitch_band_rad;
}

BandMisses Misses::operator()(const ledger::Sum& sum) {
    return {fall_miss(sum), hang_miss(sum)};
}

std::optional<MissLaw::At> Misses::along_slopes(const ledger::Sum& sum) {
    if (targets_.by == document::TargetBy::in_water) return std::nullopt;
    const auto fall = falls_.slopes(sum, drag_);
    if (!fall || !(fall->per_kg > 0.0)) return std::nullopt;
    const double water_kg_m3 = falls_.water().density_kg_m3;
    const auto off = [water_kg_m3, fall](const ledger::Sum& s) {
        const Vec3 g_to_b = s.b_m() - s.g_m();
        return fall->per_kg * s.in_water(water_kg_m3).kg - fall->per_aft_m * g_to_b.x +
               fall->per_below_m * water::bg_across_m(g_to_b);
    };
    const double speed_m_s = fall->speed_m_s;
    return [this, off, speed_m_s, at_sum = off(sum)](const ledger::Sum& moved) -> BandMisses {
        const double share = (speed_m_s + off(moved) - at_sum) / targets_.fall_m_s;
        return {(share - 1.0) / targets_.fall_band, hang_miss(moved)};
    };
}

MissLaw Misses::law(Misses misses) {
    const auto all = std::make_shared<Misses>(std::move(misses));
    const MissLaw::At at = [all](const ledger::Sum& sum) { return (*all)(sum); };
    const auto near = [all, at](const ledger::Sum& sum) -> MissLaw::At {
        const auto straight = all->along_slopes(sum);
        if (!straight) return at;
        return [all, law = *straight](const ledger::Sum& moved) { return law(moved); };
    };
    return {at, near};
}

Sentence bands_text(double bands) {
    return Sentence(" (") + units::number_text(std::abs(bands), units::Unit::one, 1) + " times its band)";
}

std::optional<std::size_t> first_of(document::MattersMore more) {
    switch (more) {
    case document::MattersMore::both_alike:
        break;
    case document::MattersMore::fall:
        return 0;
    case document::MattersMore::hang:
        return 1;
    }
    return std::nullopt;
}

} // namespace evenfall::lead
