#include "body/rim_table.hpp"

#include "base/quadrature.hpp"

#include <cmath>

namespace evenfall::shape {

namespace {

// Gauss points per smooth piece of rim, from the measurements in orders_test.cpp.
constexpr std::size_t curved_order = 6;
constexpr std::size_t straight_order = 5;
constexpr std::size_t many_order = 3;    ///< for outlines of more than few_pieces edges
constexpr std::size_t crowded_order = 2; ///< for outlines of more than many_pieces edges
constexpr std::size_t few_pieces = 6;
constexpr std::size_t many_pieces = 16;

} // namespace

RimTable::RimTable(const SectionFamily& family) : family_(family) {
    const std::span<const double> breaks = family.rim_breaks();
    const auto lay = [&]<std::size_t N>(const GaussRule<N>& rule, double from, double to) {
        for (std::size_t k = 0; k < N && size_ < most_points; ++k) {
            tau_[size_] = from + (to - from) * rule.node[k];
            weight_[size_] = (to - from) * rule.weight[k];
            ++size_;
        }
    };
    for (std::size_t k = 0; k <= breaks.size(); ++k) {
        const double from = k == 0 ? -1.0 : breaks[k - 1];
        const double to = k == breaks.size() ? 1.0 : breaks[k];
        if (!family.is_polygon()) {
            lay(gauss_rule<curved_order>, from, to);
        } else if (breaks.size() < few_pieces) {
            lay(gauss_rule<straight_order>, from, to);
        } else if (breaks.size() < many_pieces) {
            lay(gauss_rule<many_order>, from, to);
        } else {
            lay(gauss_rule<crowded_order>, from, to);
        }
    }
}

void RimTable::set_parameter(double parameter) {
    if (filled_ && parameter == parameter_) return;
    family_.rims(parameter, std::span(tau_).first(size_), std::span(point_).first(size_));
    parameter_ = parameter;
    filled_ = true;
}

double RimTurn::to(double y, double z) {
    const double half_tan = (y_ * z - z_ * y) / (1.0 + y_ * y + z_ * z);
    y_ = y;
    z_ = z;
    const double q = half_tan * half_tan;
    // Most turns are small; then the series is within 1e-8 of the arc tangent.
    if (q < 0.02) return 2.0 * half_tan * (1.0 - q * (1.0 / 3.0 - q * (0.2 - q / 7.0)));
    return 2.0 * std::atan(half_tan);
}

double lean_term(double h) {
    const double q = h * h;
    if (q < 0.02) return q * (1.0 - q * (1.0 / 3.0 - q * (0.2 - q / 7.0)));
    return h * std::atan(h);
}

} // namespace evenfall::shape
