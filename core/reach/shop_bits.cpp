#include "reach/shop_bits.hpp"

#include "materials/bits.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::reach {

namespace {

constexpr double thinnest_m = 3e-3;
constexpr double widest_m = 13e-3;
constexpr double same_m = 2e-5; // a quarter of an inch is no 6.3 or 6.4 mm

bool is_of(bits::System system, double diameter_m) {
    return std::abs(bits::nearest(system, diameter_m).diameter_m - diameter_m) < same_m;
}

} // namespace

std::vector<double> shop_bits_m(const document::Document& document) {
    const auto of = [&](bits::System system) {
        return std::count_if(document.holes.begin(), document.holes.end(),
                             [&](const document::Hole& h) { return is_of(system, h.diameter_m); });
    };
    const bool inches = of(bits::System::fraction) > of(bits::System::metric);
    const double step_m = inches ? units::inch_m / 32.0 : 0.5e-3;
    std::vector<double> out;
    for (const bits::Bit& bit : bits::all(inches ? bits::System::fraction : bits::System::metric)) {
        const double steps = bit.diameter_m / step_m;
        if (bit.diameter_m >= thinnest_m && bit.diameter_m <= widest_m &&
            std::abs(steps - std::round(steps)) < 1e-6)
            out.push_back(bit.diameter_m);
    }
    return out;
}

} // namespace evenfall::reach
