#include "widgets/quantity.hpp"

#include "base/number_text.hpp"
#include "base/trade.hpp"
#include "base/unit.hpp"
#include "look/words.hpp"

#include "imgui.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace evenfall::shell::widgets {
namespace {

constexpr std::array length_units{Unit::millimetre, Unit::inch, Unit::inch_fraction};
constexpr std::array thickness_units{Unit::millimetre, Unit::micrometre, Unit::mil};
constexpr std::array mass_units{Unit::gram, Unit::ounce, Unit::grain};
constexpr std::array fall_units{Unit::second_per_foot, Unit::millimetre_per_second, Unit::second_per_metre};
constexpr std::array angle_units{Unit::degree};
constexpr std::array temperature_units{Unit::celsius, Unit::fahrenheit};
constexpr std::array salinity_units{Unit::gram_per_kilogram};
constexpr std::array percent_units{Unit::percent};
constexpr std::array density_units{Unit::kilogram_per_cubic_metre, Unit::pound_per_cubic_foot};
constexpr std::array depth_units{Unit::metre, Unit::foot, Unit::millimetre};
constexpr std::array plain_units{Unit::none};

constexpr double micrometre_m = 1e-6;
constexpr double mil_m = units::inch_m / 1000.0;

/// The core's unit of the same name; nullopt for units that only the shell has.
std::optional<units::Unit> core_unit(Unit unit) {
    switch (unit) {
    case Unit::millimetre:
        return units::Unit::mm;
    case Unit::inch:
    case Unit::inch_fraction:
        return units::Unit::inch;
    case Unit::gram:
        return units::Unit::gram;
    case Unit::ounce:
        return units::Unit::ounce;
    case Unit::grain:
        return units::Unit::grain;
    case Unit::second_per_foot:
        return units::Unit::s_per_ft;
    case Unit::millimetre_per_second:
        return units::Unit::mm_per_s;
    case Unit::second_per_metre:
        return units::Unit::s_per_m;
    case Unit::degree:
        return units::Unit::degree;
    case Unit::celsius:
        return units::Unit::celsius;
    case Unit::fahrenheit:
        return units::Unit::fahrenheit;
    case Unit::gram_per_kilogram:
        return units::Unit::g_per_kg;
    case Unit::percent:
        return units::Unit::percent;
    case Unit::kilogram_per_cubic_metre:
        return units::Unit::kg_per_m3;
    case Unit::metre:
        return units::Unit::m;
    case Unit::foot:
        return units::Unit::foot;
    case Unit::none:
        return units::Unit::one;
    case Unit::micrometre:
    case Unit::mil:
    case Unit::pound_per_cubic_foot:
        break;
    }
    return std::nullopt;
}

/// One of a unit that only the shell has, in SI.
double size_of(Unit unit) {
    if (unit == Unit::micrometre) return micrometre_m;
    if (unit == Unit::mil) return mil_m;
    return units::pound_kg / (units::foot_m * units::foot_m * units::foot_m);
}

bool by_time(Unit unit) {
    return unit == Unit::second_per_foot || unit == Unit::second_per_metre;
}

int usual_decimals(Unit unit) {
    switch (unit) {
    case Unit::millimetre:
        return 1;
    case Unit::inch:
        return 3;
    case Unit::mil:
        return 1;
    case Unit::gram:
        return 2;
    case Unit::ounce:
        return 3;
    case Unit::grain:
        return 1;
    case Unit::second_per_foot:
        return 2;
    case Unit::second_per_metre:
        return 2;
    case Unit::degree:
        return 1;
    case Unit::celsius:
    case Unit::fahrenheit:
        return 1;
    case Unit::gram_per_kilogram:
        return 1;
    case Unit::percent:
        return 0;
    case Unit::pound_per_cubic_foot:
        return 1;
    case Unit::metre:
    case Unit::foot:
    case Unit::none:
        return 2;
    default:
        return 0;
    }
}

int places(Unit unit, int decimals) {
    return std::clamp(decimals >= 0 ? decimals : usual_decimals(unit), 0, 6);
}

} // namespace

std::span<const Unit> units_of(Quantity quantity) {
    switch (quantity) {
    case Quantity::length:
        return length_units;
    case Quantity::thickness:
        return thickness_units;
    case Quantity::mass:
        return mass_units;
    case Quantity::fall:
        return fall_units;
    case Quantity::angle:
        return angle_units;
    case Quantity::temperature:
        return temperature_units;
    case Quantity::salinity:
        return salinity_units;
    case Quantity::percent:
        return percent_units;
    case Quantity::density:
        return density_units;
    case Quantity::depth:
        return depth_units;
    case Quantity::per_hundred:
    case Quantity::number:
        break;
    }
    return plain_units;
}

std::string_view symbol(Unit unit) {
    switch (unit) {
    case Unit::micrometre:
        return "µm";
    case Unit::mil:
        return "mil";
    case Unit::pound_per_cubic_foot:
        return "lb/ft³";
    default:
        return units::symbol(*core_unit(unit));
    }
}

std::string_view choice_label(Unit unit) {
    switch (unit) {
    case Unit::inch:
        return "in 0.00";
    case Unit::inch_fraction:
        return "in 1/64";
    default:
        return symbol(unit);
    }
}

double to_unit(double si, Unit unit) {
    if (by_time(unit) && !(si > 0.0)) return std::numeric_limits<double>::infinity();
    if (const auto core = core_unit(unit)) return units::from_core(si, *core);
    return si / size_of(unit);
}

double from_unit(double shown, Unit unit) {
    if (by_time(unit) && !(shown > 0.0)) return std::numeric_limits<double>::infinity();
    if (const auto core = core_unit(unit)) return units::to_core(shown, *core);
    return shown * size_of(unit);
}

std::string as_shown(std::string typed) {
    const bool comma =
        ImGui::GetCurrentContext() != nullptr && ImGui::GetIO().PlatformLocaleDecimalPoint == ',';
    if (comma) std::replace(typed.begin(), typed.end(), '.', ',');
    return typed;
}

std::string number_text(double si, Unit unit, int decimals) {
    return as_shown(typed_number_text(si, unit, decimals));
}

std::string typed_number_text(double si, Unit unit, int decimals) {
    const double shown = to_unit(si, unit);
    if (!std::isfinite(shown)) return "–";
    if (unit == Unit::inch_fraction) return units::inch_text(si);
    return units::number_text(shown, units::Unit::one, places(unit, decimals));
}

double resolution(Unit unit, int decimals) {
    return unit == Unit::inch_fraction ? 1.0 / 64.0 : std::pow(10.0, -places(unit, decimals));
}

std::string fall_end_text(double speed_m_s, Unit unit) {
    constexpr double least_seen_m_s = 1e-3;
    return speed_m_s < least_seen_m_s ? std::string(look::words::at_rest) : number_text(speed_m_s, unit);
}

std::string value_text(double si, Unit unit, int decimals) {
    const std::string_view sign = symbol(unit);
    std::string text = number_text(si, unit, decimals);
    if (sign.empty()) return text;
    if (unit != Unit::degree) text += "\u00a0";
    return text + std::string(sign);
}

double usual_step(Unit unit) {
    switch (unit) {
    case Unit::millimetre:
        return 0.5;
    case Unit::inch:
        return 0.01;
    case Unit::inch_fraction:
        return 1.0 / 64.0;
    case Unit::micrometre:
        return 10.0;
    case Unit::mil:
        return 0.5;
    case Unit::gram:
        return 0.1;
    case Unit::ounce:
        return 0.005;
    case Unit::second_per_foot:
        return 0.05;
    case Unit::second_per_metre:
        return 0.2;
    case Unit::millimetre_per_second:
        return 5.0;
    case Unit::degree:
        return 0.5;
    case Unit::gram_per_kilogram:
        return 0.5;
    case Unit::kilogram_per_cubic_metre:
        return 5.0;
    case Unit::pound_per_cubic_foot:
        return 0.5;
    case Unit::metre:
    case Unit::none:
        return 0.1;
    case Unit::foot:
        return 0.5;
    default:
        return 1.0;
    }
}

Units::Units() {
    for (std::size_t i = 0; i < chosen_.size(); ++i)
        chosen_[i] = units_of(static_cast<Quantity>(i)).front();
}

void Units::choose(Quantity quantity, Unit unit) {
    const auto fitting = units_of(quantity);
    if (std::find(fitting.begin(), fitting.end(), unit) != fitting.end()) {
        chosen_[static_cast<std::size_t>(quantity)] = unit;
    }
}

} // namespace evenfall::shell::widgets
