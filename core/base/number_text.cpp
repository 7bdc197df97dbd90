#include "base/number_text.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdio>
#include <numeric>

namespace evenfall::units {

namespace {

constexpr std::string_view minus_sign = "−"; // U+2212
constexpr std::string_view nothing = "–";

/// Steps of a size for a number with this sign.
long long steps_of(double value, Rounding rounding) {
    constexpr double hair = 1e-6; // of a step: what converting a unit costs, far below what can be seen
    const double steps = rounding == Rounding::up     ? std::ceil(value - hair)
                         : rounding == Rounding::down ? std::floor(value + hair)
                                                      : std::round(value);
    return static_cast<long long>(steps);
}

std::string fraction_text(long long parts, long long parts_of_one) {
    const long long size = std::abs(parts);
    const long long whole = size / parts_of_one;
    const long long above = size % parts_of_one;
    std::string text = parts < 0 ? std::string(minus_sign) : std::string();
    if (whole != 0 || above == 0) text += std::to_string(whole);
    if (above != 0) {
        const long long shared = std::gcd(above, parts_of_one);
        if (whole != 0) text += " ";
        text += std::to_string(above / shared) + "/" + std::to_string(parts_of_one / shared);
    }
    return text;
}

long long power_of_ten(int exponent) {
    long long power = 1;
    for (int i = 0; i < exponent; ++i)
        power *= 10;
    return power;
}

std::string decimal_text(double value, int decimals, Rounding rounding) {
    if (!(std::fabs(value) < 1e9)) return std::string(nothing); // so that nine decimals fit the integer below
    const int places = std::clamp(decimals, 0, 9);
    const long long scale = power_of_ten(places);
    const long long steps = steps_of(value * static_cast<double>(scale), rounding);
    const long long size = std::abs(steps);
    std::string text = steps < 0 ? std::string(minus_sign) : std::string();
    text += std::to_string(size / scale);
    if (places > 0) {
        const std::string part = std::to_string(size % scale);
        text += "." + std::string(static_cast<std::size_t>(places) - part.size(), '0') + part;
    }
    return text;
}

std::string without_zeros_behind(std::string text) {
    if (std::count(text.begin(), text.end(), '.') == 0) return text;
    while (text.back() == '0')
        text.pop_back();
    if (text.back() == '.') text.pop_back();
    return text;
}

/// Decimals of a unit that tell about as much as `decimals` of the metric one.
int decimals_in(Unit unit, int decimals) {
    switch (unit) {
    case Unit::inch:
        return std::min(decimals + 2, 3);
    case Unit::ounce:
        return decimals + 1;
    case Unit::grain:
        return std::max(decimals - 1, 0);
    case Unit::s_per_ft:
    case Unit::s_per_m:
        return 2;
    default:
        return decimals;
    }
}

constexpr double shortest_fraction_in = 0.125;
constexpr double same_in = 0.0005; ///< half of a thousandth

std::string inches_text(double length_in, bool fractions, int decimals, Rounding rounding) {
    if (!(std::fabs(length_in) < 1e9)) return std::string(nothing);
    const double parts = length_in * 64.0;
    if (fractions && (std::fabs(length_in) >= shortest_fraction_in ||
                      std::fabs(parts - std::round(parts)) < 64.0 * same_in))
        return fraction_text(steps_of(parts, rounding), 64);
    return decimal_text(length_in, decimals_in(Unit::inch, decimals), rounding);
}

} // namespace

std::string number_text(double core, Unit unit, int decimals) {
    if (unit == Unit::inch_fraction) return inch_text(core);
    return decimal_text(from_core(core, unit), decimals, Rounding::nearest);
}

std::string with_plus(double value, std::string text) {
    if (value > 0.0 && text.find_first_of("123456789") != std::string::npos) text.insert(0, 1, '+');
    return text;
}

std::string inch_text(double length_m, InchStep step) {
    const double length_in = inch_from_m(length_m);
    if (!(std::fabs(length_in) < 1e9)) return std::string(nothing);
    const auto parts_of_one = static_cast<long long>(step);
    return fraction_text(std::llround(length_in * static_cast<double>(parts_of_one)), parts_of_one);
}

std::string plain_number(double value) {
    if (std::isnan(value)) return "not a number";
    if (std::isinf(value)) return value > 0.0 ? "infinity" : "-infinity";
    if (!(std::abs(value) < 1e9)) {
        std::array<char, 32> buffer{};
        std::snprintf(buffer.data(), buffer.size(), "%.6g", value);
        return buffer.data();
    }
    // By integers, so that no locale and no library difference can change a digit.
    const long long millionths = std::llround(value * 1e6);
    const unsigned long long size =
        static_cast<unsigned long long>(millionths < 0 ? -millionths : millionths);
    std::string text = (millionths < 0 ? "-" : "") + std::to_string(size / 1'000'000ULL);
    if (const unsigned long long rest = size % 1'000'000ULL; rest != 0) {
        std::string decimals = std::to_string(rest);
        decimals.insert(0, 6 - decimals.size(), '0');
        decimals.erase(decimals.find_last_not_of('0') + 1);
        text += '.' + decimals;
    }
    return text;
}

std::string number_text(double core, Quantity quantity, const UnitSet& units, int decimals,
                        Rounding rounding) {
    const Unit unit = units.of(quantity);
    const double value = from_core(core, unit);
    if (unit == metric.of(quantity))
        return decimals == plain ? plain_number(value) : decimal_text(value, decimals, Rounding::nearest);
    // A time for a way grows as the speed falls.
    if (quantity == Quantity::speed && unit != Unit::mm_per_s && rounding != Rounding::nearest)
        rounding = rounding == Rounding::up ? Rounding::down : Rounding::up;
    constexpr int usual = 1;
    const int places = decimals == plain ? usual : decimals;
    std::string text = unit == Unit::inch || unit == Unit::inch_fraction
                           ? inches_text(value, unit == Unit::inch_fraction, places, rounding)
                           : decimal_text(value, decimals_in(unit, places), rounding);
    return decimals == plain ? without_zeros_behind(std::move(text)) : text;
}

std::string with_symbol(std::string number, Unit unit) {
    const std::string_view sign = symbol(unit);
    if (!sign.empty()) number.append(unit == Unit::degree ? "" : " ").append(sign);
    return number;
}

} // namespace evenfall::units
