#include "materials/bits.hpp"

#include "base/trade.hpp"

#include <algorithm>
#include <cmath>
#include <cstdio>
#include <string_view>

namespace evenfall::bits {

namespace {

/// #1 first, in inches.
constexpr std::array<double, 80> number_in{
    .2280, .2210, .2130, .2090, .2055, .2040, .2010, .1990, .1960, .1935, .1910, .1890, .1850, .1820,
    .1800, .1770, .1730, .1695, .1660, .1610, .1590, .1570, .1540, .1520, .1495, .1470, .1440, .1405,
    .1360, .1285, .1200, .1160, .1130, .1110, .1100, .1065, .1040, .1015, .0995, .0980, .0960, .0935,
    .0890, .0860, .0820, .0810, .0785, .0760, .0730, .0700, .0670, .0635, .0595, .0550, .0520, .0465,
    .0430, .0420, .0410, .0400, .0390, .0380, .0370, .0360, .0350, .0330, .0320, .0310, .0292, .0280,
    .0260, .0250, .0240, .0225, .0210, .0200, .0180, .0160, .0145, .0135};

/// A first, in inches.
constexpr std::array<double, 26> letter_in{.234, .238, .242, .246, .250, .257, .261, .266, .272,
                                           .277, .281, .290, .295, .302, .316, .323, .332, .339,
                                           .348, .358, .368, .377, .386, .397, .404, .413};

constexpr int most_sixty_fourths = 32;

/// Tolerance for a diameter that was typed or converted: 0.01 µm.
constexpr double same_m = 1e-8;

/// Index of the table's nearest entry.
template <std::size_t N>
std::size_t place_in(const std::array<double, N>& table_in, double diameter_m) {
    const auto nearer = [&](double a, double b) {
        return std::abs(units::m_from_inch(a) - diameter_m) < std::abs(units::m_from_inch(b) - diameter_m);
    };
    return static_cast<std::size_t>(std::min_element(table_in.begin(), table_in.end(), nearer) -
                                    table_in.begin());
}

std::string fraction_name(double diameter_m) {
    int over = static_cast<int>(std::lround(units::inch_from_m(diameter_m) * 64.0));
    int under = 64;
    while (over % 2 == 0 && under > 1) {
        over /= 2;
        under /= 2;
    }
    return std::to_string(over) + '/' + std::to_string(under) + " in";
}

std::string metric_name(double diameter_m) {
    const long hundredths = std::lround(units::mm_from_m(diameter_m) * 100.0);
    std::string text = std::to_string(hundredths / 100);
    if (const long rest = hundredths % 100; rest != 0) {
        text += '.';
        text += static_cast<char>('0' + rest / 10);
        if (rest % 10 != 0) text += static_cast<char>('0' + rest % 10);
    }
    return text + " mm";
}

std::vector<Bit> made(System system) {
    std::vector<Bit> out;
    switch (system) {
    case System::fraction:
        for (int n = 1; n <= most_sixty_fourths; ++n)
            out.push_back({system, units::m_from_inch(n / 64.0)});
        break;
    case System::number:
        for (auto in = number_in.rbegin(); in != number_in.rend(); ++in)
            out.push_back({system, units::m_from_inch(*in)});
        break;
    case System::letter:
        for (const double in : letter_in)
            out.push_back({system, units::m_from_inch(in)});
        break;
    case System::metric:
        // Counted in hundredths of a millimetre to avoid rounding errors.
        for (int h = 50; h <= 1300; h += h < 300 ? 5 : h < 1000 ? 10 : 50)
            out.push_back({system, units::m_from_mm(h / 100.0)});
        break;
    }
    return out;
}

} // namespace

std::string Bit::name() const {
    switch (system) {
    case System::fraction:
        return fraction_name(diameter_m);
    case System::number:
        return '#' + std::to_string(place_in(number_in, diameter_m) + 1);
    case System::letter:
        return std::string("letter ") + static_cast<char>('A' + place_in(letter_in, diameter_m));
    case System::metric:
        break;
    }
    return metric_name(diameter_m);
}

const std::vector<Bit>& all(System system) {
    static const std::array<std::vector<Bit>, 4> of_each{made(System::fraction), made(System::number),
                                                         made(System::letter), made(System::metric)};
    return of_each[static_cast<std::size_t>(system)];
}

std::optional<Bit> next_up(System system, double diameter_m) {
    const std::vector<Bit>& bits = all(system);
    const auto bit = std::lower_bound(bits.begin(), bits.end(), diameter_m - same_m,
                                      [](const Bit& b, double least_m) { return b.diameter_m < least_m; });
    return bit == bits.end() ? std::nullopt : std::optional(*bit);
}

BitOfEachSystem next_up(double diameter_m) {
    BitOfEachSystem out;
    for (std::size_t k = 0; k < out.size(); ++k)
        out[k] = next_up(static_cast<System>(k), diameter_m);
    return out;
}

Bit nearest(System system, double diameter_m) {
    const std::vector<Bit>& bits = all(system);
    return *std::min_element(bits.begin(), bits.end(), [&](const Bit& a, const Bit& b) {
        return std::abs(a.diameter_m - diameter_m) < std::abs(b.diameter_m - diameter_m);
    });
}

std::string inch_name(double diameter_m) {
    constexpr double same_bit_m = 5e-5;
    const auto off_m = [&](const Bit& bit) { return std::abs(bit.diameter_m - diameter_m); };
    Bit best = nearest(System::fraction, diameter_m);
    for (const System system : {System::number, System::letter}) {
        const Bit other = nearest(system, diameter_m);
        if (off_m(best) >= same_bit_m && off_m(other) < off_m(best)) best = other;
    }
    return (off_m(best) < same_bit_m ? "" : "near ") + best.name();
}

std::string names(const BitOfEachSystem& bits, const units::UnitSet& units) {
    std::string out;
    for (const auto& bit : bits) {
        if (!bit || (units.inches() && bit->system == System::metric)) continue;
        if (!out.empty()) out += ", ";
        out += bit->name();
    }
    return out;
}

Sentence bit_text(double diameter_m, int decimals) {
    return Sentence::by_system(units::number_text(diameter_m, units::Unit::mm, decimals) + " mm",
                               inch_name(diameter_m));
}

BitOfEachSystem for_glue(double diameter_m, const GlueRoom& room) {
    BitOfEachSystem out;
    for (std::size_t k = 0; k < out.size(); ++k) {
        const auto bit = next_up(static_cast<System>(k), diameter_m + room.least_m);
        if (bit && bit->diameter_m <= diameter_m + room.loosest_m + same_m) out[k] = bit;
    }
    return out;
}

BitOfEachSystem for_pin(double diameter_m) {
    constexpr double not_told_apart_m = 0.01e-3;
    BitOfEachSystem out = next_up(diameter_m - not_told_apart_m);
    for (auto& bit : out) {
        if (bit && bit->diameter_m >= 1.5 * diameter_m) bit.reset();
    }
    return out;
}

} // namespace evenfall::bits
