#include "base/unit.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <array>

namespace evenfall::units {

namespace {

double same(double value) {
    return value;
}

struct UnitRow {
    Unit unit;
    Quantity quantity;
    std::string_view symbol;
    double (*to_core)(double);
    double (*from_core)(double);
    std::array<std::string_view, 4> spellings; ///< accepted besides the symbol; lower case
};

// In the order of the enumeration: a unit's number is its index.
constexpr std::array rows{
    UnitRow{Unit::one, Quantity::number, "", same, same, {}},
    UnitRow{Unit::percent,
            Quantity::share,
            "%",
            [](double v) { return v / 100.0; },
            [](double v) { return v * 100.0; },
            {"percent"}},
    UnitRow{Unit::mm, Quantity::length, "mm", m_from_mm, mm_from_m, {}},
    UnitRow{Unit::cm,
            Quantity::length,
            "cm",
            [](double v) { return v / 100.0; },
            [](double v) { return v * 100.0; },
            {}},
    UnitRow{Unit::m, Quantity::length, "m", same, same, {}},
    UnitRow{Unit::micrometre,
            Quantity::length,
            "µm",
            [](double v) { return v / 1e6; },
            [](double v) { return v * 1e6; },
            {"um", "μm"}},
    UnitRow{Unit::inch, Quantity::length, "in", m_from_inch, inch_from_m, {"\"", "inch", "inches", "″"}},
    UnitRow{Unit::mil,
            Quantity::length,
            "mil",
            [](double v) { return m_from_inch(v / 1000.0); },
            [](double v) { return inch_from_m(v) * 1000.0; },
            {"mils", "thou"}},
    UnitRow{Unit::foot, Quantity::length, "ft", m_from_ft, ft_from_m, {"'", "foot", "feet", "′"}},
    UnitRow{Unit::gram, Quantity::mass, "g", kg_from_g, g_from_kg, {"gram", "grams"}},
    UnitRow{Unit::kilogram, Quantity::mass, "kg", same, same, {}},
    UnitRow{Unit::ounce, Quantity::mass, "oz", kg_from_oz, oz_from_kg, {"ounce", "ounces"}},
    UnitRow{Unit::pound,
            Quantity::mass,
            "lb",
            [](double v) { return v * pound_kg; },
            [](double v) { return v / pound_kg; },
            {"lbs"}},
    UnitRow{Unit::grain, Quantity::mass, "grain", kg_from_grain, grain_from_kg, {"gr", "grains"}},
    UnitRow{Unit::degree, Quantity::angle, "°", rad_from_deg, deg_from_rad, {"deg", "degree", "degrees"}},
    UnitRow{Unit::radian, Quantity::angle, "rad", same, same, {}},
    UnitRow{Unit::celsius, Quantity::temperature, "°C", same, same, {"c"}},
    UnitRow{Unit::fahrenheit,
            Quantity::temperature,
            "°F",
            celsius_from_fahrenheit,
            fahrenheit_from_celsius,
            {"f"}},
    UnitRow{Unit::s_per_ft, Quantity::speed, "s/ft", m_s_from_s_ft, s_ft_from_m_s, {}},
    UnitRow{Unit::s_per_m, Quantity::speed, "s/m", m_s_from_s_m, s_m_from_m_s, {}},
    UnitRow{Unit::mm_per_s, Quantity::speed, "mm/s", m_s_from_mm_s, mm_s_from_m_s, {}},
    UnitRow{Unit::cm_per_s,
            Quantity::speed,
            "cm/s",
            [](double v) { return v / 100.0; },
            [](double v) { return v * 100.0; },
            {}},
    UnitRow{Unit::m_per_s, Quantity::speed, "m/s", same, same, {}},
    UnitRow{Unit::inch_per_s, Quantity::speed, "in/s", m_from_inch, inch_from_m, {}},
    UnitRow{Unit::ft_per_s, Quantity::speed, "ft/s", m_from_ft, ft_from_m, {}},
    UnitRow{Unit::km_per_h, Quantity::speed, "km/h", m_s_from_km_h, km_h_from_m_s, {"kmh", "kph"}},
    UnitRow{Unit::mile_per_h, Quantity::speed, "mph", m_s_from_mile_h, mile_h_from_m_s, {"mi/h"}},
    UnitRow{Unit::per_m, Quantity::beats, "/m", same, same, {}},
    UnitRow{Unit::per_10_ft,
            Quantity::beats,
            "/10 ft",
            [](double v) { return v / m_from_ft(10.0); },
            [](double v) { return v * m_from_ft(10.0); },
            {}},
    UnitRow{Unit::g_per_cm3,
            Quantity::density,
            "g/cm³",
            kg_m3_from_g_cm3,
            g_cm3_from_kg_m3,
            {"g/cm3", "g/cc", "g/ml"}},
    UnitRow{Unit::kg_per_m3, Quantity::density, "kg/m³", same, same, {"kg/m3"}},
    UnitRow{Unit::lb_per_ft3,
            Quantity::density,
            "lb/ft³",
            [](double v) { return v * pound_per_cubic_foot_kg_m3; },
            [](double v) { return v / pound_per_cubic_foot_kg_m3; },
            {"lb/ft3"}},
    UnitRow{Unit::cm3, Quantity::volume, "cm³", m3_from_cm3, cm3_from_m3, {"cm3", "cc", "ml"}},
    UnitRow{Unit::m3, Quantity::volume, "m³", same, same, {"m3"}},
    UnitRow{Unit::g_per_kg, Quantity::salinity, "g/kg", same, same, {}},
    UnitRow{Unit::second, Quantity::time, "s", same, same, {"seconds"}},
    UnitRow{Unit::minute, Quantity::time, "min", s_from_min, min_from_s, {"minutes"}},
    UnitRow{Unit::hour, Quantity::time, "h", s_from_hour, hour_from_s, {"hours"}},
    UnitRow{Unit::inch_fraction, Quantity::length, "in", m_from_inch, inch_from_m, {}},
};

constexpr bool in_order() {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (rows[i].unit != static_cast<Unit>(i)) return false;
    }
    return true;
}
static_assert(in_order() && rows.size() == static_cast<std::size_t>(Unit::inch_fraction) + 1);

const UnitRow& row_of(Unit unit) {
    return rows[static_cast<std::size_t>(unit)];
}

char lower(char c) {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

bool same_word(std::string_view typed, std::string_view ours) {
    return std::equal(typed.begin(), typed.end(), ours.begin(), ours.end(),
                      [](char a, char b) { return lower(a) == lower(b); });
}

} // namespace

Quantity quantity_of(Unit unit) {
    return row_of(unit).quantity;
}

std::string_view symbol(Unit unit) {
    return row_of(unit).symbol;
}

double to_core(double value, Unit unit) {
    return row_of(unit).to_core(value);
}

double from_core(double core, Unit unit) {
    return row_of(unit).from_core(core);
}

std::optional<Unit> find_unit(std::string_view text) {
    if (text.empty()) return std::nullopt;
    for (const UnitRow& row : rows) {
        if (same_word(text, row.symbol)) return row.unit;
        for (std::string_view spelling : row.spellings) {
            if (!spelling.empty() && same_word(text, spelling)) return row.unit;
        }
    }
    return std::nullopt;
}

std::string symbols_of(Quantity quantity) {
    std::string list;
    for (const UnitRow& row : rows) {
        if (row.quantity != quantity || row.symbol.empty() || row.unit == Unit::inch_fraction) continue;
        if (!list.empty()) list += ", ";
        list += row.symbol;
    }
    return list;
}

std::string_view words_of(Quantity quantity) {
    switch (quantity) {
    case Quantity::number:
        return "a plain number";
    case Quantity::share:
        return "a share";
    case Quantity::length:
    case Quantity::thickness:
    case Quantity::depth:
        return "a length";
    case Quantity::mass:
        return "a mass";
    case Quantity::angle:
        return "an angle";
    case Quantity::temperature:
        return "a temperature";
    case Quantity::speed:
    case Quantity::retrieve:
        return "a speed";
    case Quantity::beats:
        return "beats on a way";
    case Quantity::density:
        return "a density";
    case Quantity::volume:
        return "a volume";
    case Quantity::salinity:
        return "a salinity";
    case Quantity::time:
        return "a time";
    }
    return "";
}

} // namespace evenfall::units
