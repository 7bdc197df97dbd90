#pragma once

// Quantities of numbers on the page, and the units they are shown in. Pure: no ImGui.

#include "evenfall.hpp"

#include <optional>
#include <span>
#include <string>
#include <string_view>

namespace evenfall::shell::widgets {

enum class Quantity {
    length,      ///< m;      mm · in · in as a fraction
    thickness,   ///< m;      mm · µm · thousandths of an inch (coats, wire gaps)
    mass,        ///< kg;     g · oz · grain
    fall,        ///< m/s;    s/ft · mm/s · s/m   (a time per length grows as the speed falls)
    angle,       ///< rad;    °
    temperature, ///< °C;     °C · °F
    salinity,    ///< g/kg
    percent,     ///< a share of 1, shown as %
    per_hundred, ///< a number that is already in % (moisture)
    density,     ///< kg/m³;  kg/m³ · lb/ft³
    number,      ///< a number without unit
    depth,       ///< m;      m · ft · mm (depth of water: a tub, a fall)
    retrieve,    ///< m/s;    m/s · km/h · ft/s · mph
    time,        ///< s
    volume,      ///< m³;     cm³
};

using units::Unit;

/// Units that a quantity can be shown in; the first is the metric default.
[[nodiscard]] std::span<const Unit> units_of(Quantity quantity);

using units::symbol;
/// Label of the button for the unit: as symbol(), but "in 0.00" and "in 1/64" for decimal and fractional
/// inches.
[[nodiscard]] std::string_view choice_label(Unit unit);

/// SI value → number in the unit, and back. A fall of zero or less has no time per length: +infinity.
[[nodiscard]] double to_unit(double si, Unit unit);
[[nodiscard]] double from_unit(double shown, Unit unit);

/// The number as text in the unit, without its symbol: "−3.1", "1.9", "1 3/8". True minus sign; trailing
/// zeros to the unit's usual number of decimals (mm 1, in 3, g 2, s/ft 2, mm/s 0, ° 1, °C 1 …) unless
/// `decimals` is given.
[[nodiscard]] std::string number_text(double si, Unit unit, int decimals = -1);
/// The same as it is typed, with a point in every language.
[[nodiscard]] std::string typed_number_text(double si, Unit unit, int decimals = -1);
/// A typed number with the device's decimal separator (Dear ImGui's PlatformLocaleDecimalPoint).
[[nodiscard]] std::string as_shown(std::string typed);
/// One end of the range of a speed of fall: a word where the fall is too slow to see and a time per length is
/// meaningless.
[[nodiscard]] std::string fall_end_text(double speed_m_s, Unit unit);
/// number_text with its symbol: "15.8 mm", "−3.1°".
[[nodiscard]] std::string value_text(double si, Unit unit, int decimals = -1);

/// The resolution of number_text in the unit: 0.1 for millimetres, 1/64 for inch_fraction.
[[nodiscard]] double resolution(Unit unit, int decimals = -1);

/// A suitable − / + step in the unit: 0.5 mm, 1/64 in, 0.1 g, 0.05 s/ft, 0.5° …
[[nodiscard]] double usual_step(Unit unit);

/// The units that are set, asked for by the page's quantities.
struct Units : units::UnitSet {
    Units() : UnitSet{.fall = Unit::s_per_ft} {}
    Units(const UnitSet& set, bool retrieve_by_hour = false)
        : UnitSet(set), retrieve_by_hour_(retrieve_by_hour) {}

    /// As for UnitSet, but coats and wire are in thousandths ("mil") where lengths are inches: they are typed
    /// here.
    [[nodiscard]] Unit of(Quantity quantity) const;

private:
    bool retrieve_by_hour_ = false;
};

} // namespace evenfall::shell::widgets
