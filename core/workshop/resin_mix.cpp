#include "workshop/resin_mix.hpp"

#include "base/limits.hpp"
#include "base/sentence.hpp"
#include "base/trade.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::resin {

namespace {

using units::Unit;

constexpr double activation_j_mol = 55e3;
constexpr double gas_constant_j_mol_k = 8.314462618; // CODATA 2018
constexpr double zero_c_k = 273.15;
constexpr double day_s = 24.0 * 3600.0;

Problems off_limits(const MixRequest& r) {
    Problems out;
    const auto number = [&out](const char* path, const char* what, double value, double least, double most,
                               Unit unit = Unit::one, int decimals = 0) {
        units::check_limit({path, what, value, least, most, unit, decimals}, out);
    };
    const auto minutes = [&](const char* path, const char* what, double seconds, double least_s,
                             double most_s) {
        number(path, what, seconds / 60.0, least_s / 60.0, most_s / 60.0, Unit::one, 2);
    };
    number("/on_lure_g", "What stays on one lure", r.on_lure_kg, 1e-6, 1.0, Unit::gram, 3);
    number("/lures", "The number of lures", r.lures, 1.0, 1000.0);
    number("/loss", "The loss", r.loss, 0.0, 0.9, Unit::percent);
    number("/ratio/resin", "The parts of resin", *r.ratio.resin, 0.1, 100.0, Unit::one, 1);
    number("/ratio/hardener", "The parts of hardener", *r.ratio.hardener, 0.1, 100.0, Unit::one, 1);
    number("/ratio/resin_g_cm3", "The resin's density", r.ratio.resin_kg_m3, 800.0, 2000.0, Unit::g_per_cm3,
           1);
    number("/ratio/hardener_g_cm3", "The hardener's density", r.ratio.hardener_kg_m3, 800.0, 2000.0,
           Unit::g_per_cm3, 1);
    number("/label/temperature_c", "The label's temperature", r.label.temperature_c, 5.0, 40.0,
           Unit::celsius);
    number("/label/batch_g", "The label's batch", r.label.batch_kg, 0.001, 1.0, Unit::gram);
    minutes("/label/working_min", "The working time in minutes", r.label.working_s, 30.0, day_s);
    minutes("/label/pot_life_min", "The pot life in minutes, no shorter than the working time,",
            r.label.pot_life_s, r.label.working_s, 2.0 * day_s);
    minutes("/label/recoat_from_min", "The earliest recoat in minutes", r.label.recoat_from_s, 0.0,
            7.0 * day_s);
    minutes("/label/recoat_to_min", "The latest recoat in minutes, no sooner than the earliest,",
            r.label.recoat_to_s, r.label.recoat_from_s, 30.0 * day_s);
    minutes("/label/cure_min", "The cure in minutes", r.label.cure_s, 60.0, 60.0 * day_s);
    number("/mix_c", "The mix's temperature", r.mix_c, 5.0, 40.0, Unit::celsius);
    number("/room_c", "The room's temperature", r.room_c, 5.0, 40.0, Unit::celsius);
    minutes("/per_lure_min", "The minutes for one lure", r.per_lure_s, 1.0, 4.0 * 3600.0);
    return out;
}

MixAmounts portion(const Ratio& ratio, double mixed_kg) {
    // Grams of each component in one part of the label.
    const double resin = *ratio.resin * (ratio.by_volume ? ratio.resin_kg_m3 : 1.0);
    const double hardener = *ratio.hardener * (ratio.by_volume ? ratio.hardener_kg_m3 : 1.0);
    MixAmounts p;
    p.mixed_kg = mixed_kg;
    p.resin_kg = mixed_kg * resin / (resin + hardener);
    p.hardener_kg = mixed_kg * hardener / (resin + hardener);
    p.resin_m3 = p.resin_kg / ratio.resin_kg_m3;
    p.hardener_m3 = p.hardener_kg / ratio.hardener_kg_m3;
    return p;
}

/// Whole lures in a ratio, with tolerance for rounding.
int whole(double share) {
    return static_cast<int>(std::floor(std::min(share, 1e6) * (1.0 + 1e-12)));
}

} // namespace

double time_ratio(double temperature_c, double label_c) {
    return std::exp(activation_j_mol / gas_constant_j_mol_k *
                    (1.0 / (temperature_c + zero_c_k) - 1.0 / (label_c + zero_c_k)));
}

Outcome<Mix> mix(const MixRequest& r) {
    if (!r.ratio.resin || !r.ratio.hardener)
        return Problem{
            ProblemCode::missing_key, "/ratio", "",
            "Enter the parts of resin and of hardener as your label has them: the ratio differs from "
            "resin to resin."};
    if (Problems problems = off_limits(r); !problems.empty()) return problems;
    const double one_kg = r.on_lure_kg / (1.0 - r.loss);
    Mix m;
    m.all = portion(r.ratio, one_kg * r.lures);
    m.lost_kg = m.all.mixed_kg * r.loss;
    const double mixing = time_ratio(r.mix_c, r.label.temperature_c);
    m.working_s = r.label.working_s * mixing;
    m.pot_life_s = r.label.pot_life_s * mixing;
    m.lures_by_time = whole(m.working_s / r.per_lure_s);
    m.lures_by_batch = whole(r.label.batch_kg / one_kg);
    m.lures_a_mix = std::min({m.lures_by_time, m.lures_by_batch, r.lures});
    if (m.lures_a_mix > 0) {
        m.mixes = (r.lures + m.lures_a_mix - 1) / m.lures_a_mix;
        m.cup = portion(r.ratio, one_kg * m.lures_a_mix);
    }
    const double curing = time_ratio(r.room_c, r.label.temperature_c);
    m.recoat_from_s = r.label.recoat_from_s * curing;
    m.recoat_to_s = r.label.recoat_to_s * curing;
    m.cure_s = r.label.cure_s * std::max(curing, 1.0);
    if (m.lures_by_time == 0) {
        m.warnings.push_back(
            {ProblemCode::cannot_be_met, "/per_lure_min", "",
             "It thickens before one lure is coated: work cooler, faster, or with a slower hardener."});
    }
    if (m.lures_by_batch == 0) {
        Sentence sentence = "One lure alone takes ";
        sentence += mass_text(one_kg);
        sentence += ", more than the label's batch: it thickens sooner than the label says. Coat it from ";
        sentence += std::to_string(
            static_cast<int>(std::ceil(std::min(one_kg / r.label.batch_kg, 1e6) * (1.0 - 1e-12))));
        sentence += " mixes.";
        m.warnings.push_back(
            {ProblemCode::cannot_be_met, "/label/batch_g", mass_text(r.label.batch_kg), std::move(sentence)});
    }
    return m;
}

} // namespace evenfall::resin
