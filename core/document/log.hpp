#pragma once

// What the bench adds to a document: readings of scale, tub and rule, and what was learnt from them.
// How a reading is taken into account: bench/uncertainty/uncertainty.hpp.

#include "base/unit.hpp"

#include <array>
#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace evenfall {

/// The stages of a build, in the order of the bench and of the ledger.
enum class Stage { carved, drilled, hardware, leaded, sealed, painted, clear_coated, rigged };
inline constexpr int stage_count = 8;

/// What a lure is after a stage, as it is told everywhere: "the lure sealed", "after: hardware in".
[[nodiscard]] inline std::string stage_name(Stage stage) {
    constexpr std::array<const char*, stage_count> names{"carved", "drilled", "hardware in",  "leaded",
                                                         "sealed", "painted", "clear coated", "rigged"};
    return names[static_cast<std::size_t>(stage)];
}

} // namespace evenfall

namespace evenfall::document {

inline constexpr std::size_t max_readings = 200;
inline constexpr std::size_t max_corrections = 200;
inline constexpr int max_lures = 99;
inline constexpr int max_hole_changes = 200;

/// What was read on the bench.
enum class ReadingKind {
    dry_weight,    ///< on the scale, dry, in air: `mass_kg`
    held_under,    ///< cup of water on the scale, the piece held under by a wire: what the scale gains,
                   ///< `mass_kg`
    hung_in_water, ///< hung under water below the scale: `mass_kg`
    board,         ///< the board before it is sawn: `mass_kg`, `length_m`, `width_m`, `height_m`
    tub_fall,      ///< let go from rest under water: `time_s` over `depth_m`
    suspends,   ///< neither rises nor falls with something clipped on: its dry `mass_kg` and `clip_material`
    freeboard,  ///< afloat and upright: `freeboard_m` of its highest point over the water
    hang_angle, ///< under water, at rest: `angle_rad`, nose-up positive
    caliper,    ///< across the body at `x_m` from the nose: `width_m` or `height_m`, one of both
    beats,      ///< on a steady retrieve: so many `beats` over `travel_m`, or over `time_s` at `speed_m_s`
};
/// Tells how it swims, and nothing of its weight or its balance (bench/beats.hpp).
[[nodiscard]] constexpr bool is_of_swim(ReadingKind kind) {
    return kind == ReadingKind::beats;
}

inline constexpr std::size_t max_hung = 20;

/// The stages at which something can be hung on for a test that the stage itself does not have.
inline constexpr std::array test_stages{Stage::leaded, Stage::sealed, Stage::painted, Stage::clear_coated};

/// What hangs on the lure for a test, beyond what its stage has.
enum class HungKind {
    all,   ///< all that the rigged lure has: hooks, rings and tail
    part,  ///< one part of the rigged lure
    tail,  ///< the soft tail that is drawn
    weight ///< a test weight
};

/// One thing that hangs on the lure for a test.
struct HungOn {
    HungKind what = HungKind::all;
    std::optional<int> part;       ///< from 0: which part
    std::optional<double> mass_kg; ///< of a test weight
    std::string material;          ///< of a test weight: id in materials/solids

    bool operator==(const HungOn&) const = default;
};
using HungList = std::vector<HungOn>;
/// Hooks, rings and tail: all that the rigged lure has.
[[nodiscard]] inline HungList all_hung_on() {
    return {HungOn{}};
}

/// One reading. Stage, segment and what hung on say what was on the bench: everything that the ledger has up
/// to and with that stage, and what was hung on besides. Fields that a kind does not name above must be
/// absent; those it names must be there (a clip of no mass needs no material).
struct Reading {
    ReadingKind kind = ReadingKind::dry_weight;
    Stage stage = Stage::carved;
    std::optional<int> segment; ///< from 0: this segment alone (weights only); absent = the whole piece
    HungList with;              ///< hung on for the test; whole lures only, from the stage leaded on
    std::optional<int> lure;    ///< from 0: which of the lures built from this recipe; absent = the first
    std::optional<double> mass_kg;
    std::optional<double>
        holder_kg; ///< under water: what the scale reads with the wire (or thread) alone, to be taken off
    std::optional<double> length_m;
    std::optional<double> width_m;
    std::optional<double> height_m;
    std::optional<double> x_m;
    std::optional<double> time_s;
    std::optional<double> depth_m; ///< that its middle went down
    std::string clip_material;     ///< id in materials/solids, or empty
    std::optional<double> freeboard_m;
    std::optional<double> angle_rad;
    std::optional<double> beats; ///< counted: the tail there and back is one
    std::optional<double> travel_m;
    std::optional<double> speed_m_s;
    std::optional<double>
        foretold_per_m; ///< beats per metre that were foretold of the design then; absent = now's
    std::optional<double> temperature_c; ///< of the water; absent = the document's tub
    std::optional<double> mass_sigma_kg; ///< standard deviation of `mass_kg`; absent: observation.hpp
    std::optional<double> time_sigma_s;
    std::optional<double> length_sigma_m; ///< of a freeboard or a caliper
    std::optional<double> angle_sigma_rad;
    std::optional<double> beats_sigma;
    std::string date; ///< "2026-03-14" or empty
    std::string note;
    bool excluded = false;              ///< kept, but not believed
    bool stands = false;                ///< believed, however far off it is
    std::optional<int> before_change{}; ///< from 0: taken before this change of the holes (HoleBefore);
                                        ///< absent = of the holes as they are
};

/// What is written down of a kind of reading: its main number with its standard deviation, and their unit.
struct ReadingNumber {
    std::optional<double> Reading::*value;
    std::optional<double> Reading::*sigma;
    units::Unit unit;
    units::Unit judged_in; ///< the unit in which it is held against the others: of a board its density
};
[[nodiscard]] constexpr ReadingNumber number_of(ReadingKind kind) {
    using units::Unit;
    switch (kind) {
    case ReadingKind::tub_fall:
        return {&Reading::time_s, &Reading::time_sigma_s, Unit::second, Unit::second};
    case ReadingKind::freeboard:
        return {&Reading::freeboard_m, &Reading::length_sigma_m, Unit::mm, Unit::mm};
    case ReadingKind::caliper:
        return {&Reading::width_m, &Reading::length_sigma_m, Unit::mm, Unit::mm};
    case ReadingKind::hang_angle:
        return {&Reading::angle_rad, &Reading::angle_sigma_rad, Unit::degree, Unit::degree};
    case ReadingKind::board:
        return {&Reading::mass_kg, &Reading::mass_sigma_kg, Unit::gram, Unit::kg_per_m3};
    case ReadingKind::beats:
        return {&Reading::beats, &Reading::beats_sigma, Unit::one, Unit::one};
    case ReadingKind::dry_weight:
    case ReadingKind::held_under:
    case ReadingKind::hung_in_water:
    case ReadingKind::suspends:
        break;
    }
    return {&Reading::mass_kg, &Reading::mass_sigma_kg, Unit::gram, Unit::gram};
}

/// The same of one reading: a caliper lay across the width or the height.
[[nodiscard]] inline ReadingNumber number_of(const Reading& r) {
    ReadingNumber number = number_of(r.kind);
    if (r.kind == ReadingKind::caliper && r.height_m) number.value = &Reading::height_m;
    return number;
}

/// A weighing of the piece or of one segment of it.
[[nodiscard]] constexpr bool is_weighing(ReadingKind kind) {
    return kind == ReadingKind::dry_weight || kind == ReadingKind::held_under ||
           kind == ReadingKind::hung_in_water;
}

/// Which lure a reading is of, from 0.
inline int lure_of(const Reading& reading) {
    return reading.lure.value_or(0);
}

/// The independent causes of spread, and of corrections.
enum class Cause {
    none,
    wood_density,
    carved_size,
    part_mass,
    fill_mass,
    cap_mass,
    coat_amount,
    drag,
    moisture,
    tail,
    hinge_mass,
    hanger_mass,
    wood_gradient, ///< its factor: density at the tail over that at the nose, even along the body
    beats          ///< counted over foretold beats per metre; changes no line
};

/// What was learnt of one cause: a factor on every ledger line it moves (on all drag for `drag`), and the
/// relative standard deviation that is left.
struct Correction {
    Cause of = Cause::wood_density;
    std::optional<int> item; ///< from 0: which part, hole or coat; which segment of carved size, absent = the
                             ///< whole body; of the tail its plastic (first) or its size (second)
    double factor = 1.0;     ///< 0.05 to 20
    std::optional<double> spread; ///< absent = as without a correction
};

/// The group of a cause as ledger/line.hpp has it: the entry of the list; for carved size 0 the whole body, n
/// segment n alone.
inline int group_of(const Correction& c) {
    return c.of == Cause::carved_size ? (c.item ? *c.item + 1 : 0) : c.item.value_or(0);
}

} // namespace evenfall::document
