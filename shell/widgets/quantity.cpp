#include "widgets/quantity.hpp"

#include "evenfall.hpp"
#include "look/words.hpp"

#include "imgui.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace evenfall::shell::widgets {
namespace {

constexpr std::array length_units{Unit::mm, Unit::inch, Unit::inch_fraction};
constexpr std::array thickness_units{Unit::mm, Unit::micrometre, Unit::mil};
constexpr std::array mass_units{Unit::gram, Unit::ounce, Unit::grain};
constexpr std::array fall_units{Unit::s_per_ft, Unit::mm_per_s, Unit::s_per_m};
constexpr std::array angle_units{Unit::degree};
constexpr std::array temperature_units{Unit::celsius, Unit::fahrenheit};
constexpr std::array salinity_units{Unit::g_per_kg};
constexpr std::array percent_units{Unit::percent};
constexpr std::array density_units{Unit::kg_per_m3, Unit::lb_per_ft3};
constexpr std::array depth_units{Unit::m, Unit::foot, Unit::mm};
constexpr std::array retrieve_units{Unit::m_per_s, Unit::km_per_h, Unit::ft_per_s, Unit::mile_per_h};
constexpr std::array time_units{Unit::second};
constexpr std::array volume_units{Unit::cm3};
constexpr std::array plain_units{Unit::one};

bool by_time(Unit unit) {
    return unit == Unit::s_per_ft || unit == Unit::s_per_m;
}

/// How a unit is read on the bench: decimals, and the step of the − and + keys, in the unit.
struct Usual {
    Unit unit;
    int decimals;
    double step;
};
constexpr Usual usual[] = {
    {Unit::mm, 1, 0.5},          {Unit::inch, 3, 0.01},      {Unit::inch_fraction, 0, 1.0 / 64.0},
    {Unit::micrometre, 0, 10.0}, {Unit::mil, 1, 0.5},        {Unit::gram, 2, 0.1},
    {Unit::ounce, 3, 0.005},     {Unit::grain, 1, 1.0},      {Unit::s_per_ft, 2, 0.05},
    {Unit::s_per_m, 2, 0.2},     {Unit::mm_per_s, 0, 5.0},   {Unit::degree, 1, 0.5},
    {Unit::celsius, 1, 1.0},     {Unit::fahrenheit, 1, 1.0}, {Unit::g_per_kg, 1, 0.5},
    {Unit::percent, 0, 1.0},     {Unit::kg_per_m3, 0, 5.0},  {Unit::lb_per_ft3, 1, 0.5},
    {Unit::m, 2, 0.1},           {Unit::foot, 2, 0.5},       {Unit::second, 2, 0.1},
    {Unit::m_per_s, 2, 0.05},    {Unit::km_per_h, 1, 0.2},   {Unit::ft_per_s, 1, 0.2},
    {Unit::mile_per_h, 1, 0.1},  {Unit::per_m, 1, 0.1},      {Unit::per_10_ft, 1, 0.1},
    {Unit::cm3, 2, 0.05},        {Unit::one, 2, 0.1}};

const Usual& usual_of(Unit unit) {
    const auto* row =
        std::find_if(std::begin(usual), std::end(usual), [unit](const Usual& u) { return u.unit == unit; });
    return row != std::end(usual) ? *row : *std::prev(std::end(usual));
}

int places(Unit unit, int decimals) {
    return std::clamp(decimals >= 0 ? decimals : usual_of(unit).decimals, 0, 6);
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
    case Quantity::retrieve:
        return retrieve_units;
    case Quantity::time:
        return time_units;
    case Quantity::volume:
        return volume_units;
    case Quantity::per_hundred:
    case Quantity::number:
        break;
    }
    return plain_units;
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
    return units::from_core(si, unit);
}

double from_unit(double shown, Unit unit) {
    if (by_time(unit) && !(shown > 0.0)) return std::numeric_limits<double>::infinity();
    return units::to_core(shown, unit);
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
    return units::number_text(si, unit, places(unit, decimals));
}

double resolution(Unit unit, int decimals) {
    return unit == Unit::inch_fraction ? 1.0 / 64.0 : std::pow(10.0, -places(unit, decimals));
}

std::string fall_end_text(double speed_m_s, Unit unit) {
    constexpr double least_seen_m_s = 1e-3;
    return speed_m_s < least_seen_m_s ? std::string(look::words::at_rest)
                                      : widgets::number_text(speed_m_s, unit);
}

std::string value_text(double si, Unit unit, int decimals) {
    const std::string_view sign = symbol(unit);
    std::string text = widgets::number_text(si, unit, decimals);
    if (sign.empty()) return text;
    if (unit != Unit::degree) text += "\u00a0";
    return text + std::string(sign);
}

double usual_step(Unit unit) {
    return usual_of(unit).step;
}

Unit Units::of(Quantity quantity) const {
    switch (quantity) {
    case Quantity::length:
        return length;
    case Quantity::thickness:
        return inches() ? Unit::mil : Unit::mm;
    case Quantity::depth:
        return inches() ? Unit::foot : Unit::m;
    case Quantity::retrieve:
        if (retrieve_by_hour_) return inches() ? Unit::mile_per_h : Unit::km_per_h;
        return UnitSet::of(units::Quantity::retrieve);
    case Quantity::mass:
        return mass;
    case Quantity::fall:
        return fall;
    case Quantity::temperature:
        return temperature;
    default:
        return units_of(quantity).front(); // one for everybody
    }
}

} // namespace evenfall::shell::widgets
