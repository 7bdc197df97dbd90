#pragma once

#include "base/outcome.hpp"

#include <optional>

namespace evenfall::resin {

/// The label's mixing ratio: there is no usual one. Densities convert volumes to grams; the defaults are from
/// memory: read the data sheet.
struct Ratio {
    bool by_volume = false;
    std::optional<double> resin; ///< parts, 0.1 to 100
    std::optional<double> hardener;
    double resin_kg_m3 = 1150.0; ///< 800 to 2000
    double hardener_kg_m3 = 980.0;
};

/// Times on the label, at its temperature and for a batch up to its size. Defaults: common practice for a
/// slow clear coat, no source. Read the label.
struct Label {
    double temperature_c = 23.0;     ///< 5 to 40
    double batch_kg = 0.020;         ///< 1 g to 1 kg
    double working_s = 20.0 * 60.0;  ///< can be brushed and levels, 30 s to 24 h
    double pot_life_s = 30.0 * 60.0; ///< thickens in the cup; at least the working time
    double recoat_from_s = 4.0 * 3600.0;
    double recoat_to_s = 12.0 * 3600.0; ///< later the surface must be sanded first
    double cure_s = 24.0 * 3600.0;
};

/// Left in cup and brush and dripped off, over all that is mixed; common practice, no source.
inline constexpr double usual_loss = 0.35;

struct MixRequest {
    double on_lure_kg = 0.0;  ///< one coat on one lure, as it stays there, above 0 to 1 kg
    int lures = 1;            ///< 1 to 1000
    double loss = usual_loss; ///< over all that is mixed, 0 to 0.9
    Ratio ratio;
    Label label;
    double mix_c = 20.0;       ///< temperature of resin and hardener when mixed, 5 to 40
    double room_c = 20.0;      ///< temperature where it cures, 5 to 40
    double per_lure_s = 240.0; ///< time to coat one lure, 1 s to 4 h
};

struct MixAmounts {
    double mixed_kg = 0.0;
    double resin_kg = 0.0;
    double hardener_kg = 0.0;
    double resin_m3 = 0.0;
    double hardener_m3 = 0.0;
};

struct Mix {
    MixAmounts all;         ///< for all lures, loss included
    MixAmounts cup;         ///< one mix for `lures_a_mix` lures; zero where that is 0
    double lost_kg = 0.0;   ///< part of `all`
    double working_s = 0.0; ///< at mix_c, for a cup up to the label's batch
    double pot_life_s = 0.0;
    int lures_by_time = 0;      ///< lures that can be coated within the working time
    int lures_by_batch = 0;     ///< lures whose mix is within the label's batch
    int lures_a_mix = 0;        ///< the smaller of both, at most the number of lures
    int mixes = 0;              ///< 0 where not even one lure can be coated
    double recoat_from_s = 0.0; ///< at room_c
    double recoat_to_s = 0.0;
    double cure_s = 0.0; ///< at room_c, and never less than the label's
    Problems warnings;
};

/// Ratio of times at two temperatures: exp[Ea/R·(1/T − 1/T_label)] (Arrhenius 1889) with Ea = 55 kJ/mol,
/// common for amine-cured epoxy (from memory); about "ten degrees halve it". A rule for rates, not a label's
/// promise. Temperatures in °C.
[[nodiscard]] double time_ratio(double temperature_c, double label_c);

/// mixed = grams on the lure · lures/(1 − loss); by weight in parts of mass, by volume in parts of volume
/// weighted by both densities.
///
/// A larger batch retains its heat and thickens sooner, and thick cups can overheat; this is not calculated.
/// So times hold only for cups up to the label's batch, and the lures are divided into mixes within it.
/// Refuses by name: "/on_lure_g", "/lures", "/loss", "/ratio" where it is not given, "/ratio/…", "/label/…",
/// "/mix_c", "/room_c",
/// "/per_lure_min".
[[nodiscard]] Outcome<Mix> mix(const MixRequest& request);

} // namespace evenfall::resin
