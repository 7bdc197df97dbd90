#pragma once

#include "base/outcome.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"

#include <array>
#include <cstddef>

namespace evenfall::tail {

/// Components of the plastic. Old plastic was cast before and is melted again.
enum class Ingredient { old, fresh, softener, hardener, colour };
inline constexpr std::size_t ingredient_count = 5;

/// The word used in JSON: "old".
[[nodiscard]] const char* ingredient_word(Ingredient ingredient);

struct Share {
    double parts = 0.0; ///< 0 to 1000
    double kg_m3 = 0.0; ///< 800 to 2000; used where parts are by volume, and for millilitres
};

/// Parts by weight or volume. Densities from memory: read the data sheet of your plastic.
struct Blend {
    bool by_volume = false;
    std::array<Share, ingredient_count> of{
        {{0.0, 1065.0}, {100.0, 1050.0}, {0.0, 985.0}, {0.0, 1050.0}, {0.0, 1050.0}}};
};

/// Numbers without a source are common practice: weigh your first casting and correct them.
struct PourRequest {
    int tails = 1;        ///< 1 to 1000
    double shrink = 0.02; ///< share of its hot volume that a casting loses as it cools, 0 to 0.2; common
                          ///< practice, no source
    double sprue = 0.15;  ///< share of what is poured: sprue and flash, 0 to 0.9; common practice, no source
    double loss = 0.10; ///< share of what is heated or mixed: left in the cup, burnt, spilt, 0 to 0.9; common
                        ///< practice, no source
    double wall_m = 0.008; ///< thickness of rubber round the cavity, 1 to 50 mm; common practice, no source
    bool open = false;     ///< cast on its side in an open half mould, upper flank flat; else in two halves
    double rubber_kg_m3 = 1150.0; ///< of mould silicone, 900 to 2000; usually 1100 to 1200, common practice
    Blend blend;
};

struct MassAndVolume {
    double mass_kg = 0.0;
    double volume_m3 = 0.0;
};

/// Mould and plastic. Masses for all tails together; one mould.
struct TailCasting {
    MassAndVolume cast;     ///< one tail with tenon, cold
    double tenon_m3 = 0.0;  ///< of the cast
    double cavity_m3 = 0.0; ///< when hot: the casting over 1 − shrink
    Vec3 box_m;           ///< inside of the mould's frame: the cavity's smallest box plus the wall; y across
    MassAndVolume rubber; ///< for the whole mould: box less cavity; channels for sprue and air not subtracted
    double poured_kg = 0.0;                            ///< castings over 1 − sprue
    double heated_kg = 0.0;                            ///< poured over 1 − loss
    std::array<MassAndVolume, ingredient_count> blend; ///< components of the heated plastic
};

/// The tail must belong to a document that evaluates, with this ledger. Refuses by name: "/tails", "/shrink",
/// "/sprue", "/loss", "/wall_mm", "/rubber_g_cm3", "/blend/old", "/blend/old_g_cm3" …, and an empty blend.
/// Temperatures and times are on the label; they are not calculated.
[[nodiscard]] Outcome<TailCasting> pour(const document::Tail& tail, const ledger::Ledger& ledger,
                                        const PourRequest& request);

} // namespace evenfall::tail
