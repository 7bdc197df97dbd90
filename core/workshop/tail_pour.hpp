#pragma once

#include "base/outcome.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"

#include <array>
#include <cstddef>

namespace evenfall::tail {

/// What is blended. Old plastic is what was cast before and is melted again.
enum class Ingredient { old, fresh, softener, hardener, colour };
inline constexpr std::size_t ingredient_count = 5;

/// As a document of the program names it: "old".
[[nodiscard]] const char* ingredient_word(Ingredient ingredient);

struct Share {
    double parts = 0.0; ///< 0 to 1000
    double kg_m3 = 0.0; ///< 800 to 2000; used where parts are by volume, and for millilitres
};

/// Parts of the whole by weight or volume. Densities from memory: read the sheet of your own plastic.
struct Blend {
    bool by_volume = false;
    std::array<Share, ingredient_count> of{
        {{0.0, 1065.0}, {100.0, 1050.0}, {0.0, 985.0}, {0.0, 1050.0}, {0.0, 1050.0}}};
};

/// Numbers without a source are common practice: weigh your own first cast and put them right.
struct PourRequest {
    int tails = 1; ///< 1 to 1000
    double shrink =
        0.02; ///< of its hot volume that a cast loses as it cools, 0 to 0.2; common practice, no source
    double sprue = 0.15;   ///< of what is poured: sprue and flash, 0 to 0.9; common practice, no source
    double loss = 0.10;    ///< of what is heated or mixed: left in the cup, scorched, spilt, 0 to 0.9; common
                           ///< practice, no source
    double wall_m = 0.008; ///< of rubber round the cavity, 1 to 50 mm; common practice, no source
    bool open = false;     ///< cast on its side in one open half, that flank flat; else in two halves
    double rubber_kg_m3 = 1065.0; ///< 900 to 2000; the table's silicone, from memory
    Blend blend;
};

struct Portion {
    double mass_kg = 0.0;
    double volume_m3 = 0.0;
};

/// Mould and plastic. Masses of all tails together, the mould of one.
struct Pour {
    Portion cast;           ///< one tail, tenon included, cold
    double tenon_m3 = 0.0;  ///< of the cast
    double cavity_m3 = 0.0; ///< hot: the cast over 1 − shrink
    Vec3 box_m;             ///< inside of the mould's frame: the cavity's smallest box and the wall; y across
    Portion rubber;         ///< of the whole mould: box less cavity; channels for sprue and air not taken off
    double poured_kg = 0.0; ///< casts over 1 − sprue
    double heated_kg = 0.0; ///< that over 1 − loss
    std::array<Portion, ingredient_count> blend; ///< of what is heated
};

/// The document's tail must be one that evaluates, into this ledger. Refuses by name: "/tails", "/shrink",
/// "/sprue", "/loss", "/wall_mm",
/// "/rubber_g_cm3", "/blend/old", "/blend/old_g_cm3" …, and a blend of nothing.
/// Heat and times are the label's: nothing is foretold of them.
[[nodiscard]] Outcome<Pour> pour(const document::Tail& tail, const ledger::Ledger& ledger,
                                 const PourRequest& request);

} // namespace evenfall::tail
