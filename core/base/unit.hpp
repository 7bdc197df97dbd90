#pragma once

#include <optional>
#include <string>
#include <string_view>

namespace evenfall::units {

/// The quantity of a typed or shown value. Different quantities are never mixed.
enum class Quantity {
    number,
    share,
    length,
    thickness, ///< a length measured with caliper or gauge: wire, film, play
    depth,     ///< a length of water
    mass,
    angle,
    temperature,
    speed,
    retrieve, ///< a speed over the water, as a reel pulls
    beats,    ///< of the tail, there and back, on a way
    density,
    volume,
    salinity,
    time
};

/// The units that can be typed and shown. The core itself uses SI (and °C, g/kg).
enum class Unit {
    one,     // number
    percent, // share [1]: 12 % is 0.12 in the core
    mm,
    cm,
    m,
    micrometre,
    inch,
    mil,
    foot, // length [m]
    gram,
    kilogram,
    ounce,
    pound,
    grain, // mass [kg]
    degree,
    radian, // angle [rad]
    celsius,
    fahrenheit, // temperature [°C]
    s_per_ft,
    s_per_m,
    mm_per_s,
    cm_per_s,
    m_per_s,
    inch_per_s,
    ft_per_s,
    km_per_h,
    mile_per_h, // speed [m/s]
    per_m,
    per_10_ft, // beats on a way [1/m]
    g_per_cm3,
    kg_per_m3,
    lb_per_ft3, // density [kg/m³]
    cm3,
    m3,       // volume [m³]
    g_per_kg, // salinity [g/kg]
    second,
    minute,
    hour,          // time [s]
    inch_fraction, // length [m], read on a rule in 64ths; typed as inch
};

/// Never thickness nor depth, their units are those of a length; never retrieve, its units are those of a
/// speed.
[[nodiscard]] Quantity quantity_of(Unit unit);

/// As shown beside a number: "mm", "in", "s/ft", "°C", "cm³"; empty for Unit::one. inch and inch_fraction are
/// both "in".
[[nodiscard]] std::string_view symbol(Unit unit);

/// Value in `unit` → the core's unit (SI; temperature °C; salinity g/kg). Zero seconds per foot or metre
/// gives infinity.
[[nodiscard]] double to_core(double value, Unit unit);

/// The core's unit → value in `unit`. A speed of zero gives infinity in s/ft and s/m.
[[nodiscard]] double from_core(double core, Unit unit);

/// The unit written as `text` ("mm", "\"", "inch", "gr", "°", "S/FT", "g/cm3"); case is ignored for the
/// letters a–z; no spaces around it. Absent where the unit is unknown.
[[nodiscard]] std::optional<Unit> find_unit(std::string_view text);

/// "mm, cm, m, µm, in, mil, ft": the symbols of a quantity's units, for a sentence.
[[nodiscard]] std::string symbols_of(Quantity quantity);

/// "a length", "a mass" …, for a sentence.
[[nodiscard]] std::string_view words_of(Quantity quantity);

} // namespace evenfall::units
