#pragma once

#include "base/unit.hpp"

#include <string_view>

namespace evenfall::units {

/// The units that somebody reads and types in. What is not named here has one unit for everybody, or follows
/// the length: wire, films and play are in thousandths of an inch where lengths are inches, depth of water in
/// feet, a retrieve in feet a second, beats on ten feet instead of a metre.
struct UnitSet {
    Unit length = Unit::mm;           ///< mm, inch or inch_fraction
    Unit mass = Unit::gram;           ///< gram, ounce or grain
    Unit fall = Unit::mm_per_s;       ///< mm_per_s, s_per_ft or s_per_m
    Unit temperature = Unit::celsius; ///< celsius or fahrenheit

    [[nodiscard]] constexpr bool inches() const { return length != Unit::mm; }
    [[nodiscard]] Unit of(Quantity quantity) const;
    /// For speeds that may be nothing or carry a ±: mm_per_s or inch_per_s. Seconds for a way have no value
    /// at rest.
    [[nodiscard]] constexpr Unit way_in_time() const { return inches() ? Unit::inch_per_s : Unit::mm_per_s; }

    bool operator==(const UnitSet&) const = default;
};

inline constexpr UnitSet metric{};
/// Grams stay: scales show them everywhere, and an ounce is too coarse for a lure's lead.
inline constexpr UnitSet inches{Unit::inch_fraction, Unit::gram, Unit::s_per_ft, Unit::fahrenheit};

/// Whether people of this locale work in inches: "en_US.UTF-8" and "en-US" do, the United States alone.
[[nodiscard]] bool inches_rule(std::string_view locale);

} // namespace evenfall::units
