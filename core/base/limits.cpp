#include "base/limits.hpp"

#include <cmath>

namespace evenfall::units {

void check_limit(const LimitedNumber& n, Problems& out) {
    if (n.value >= n.least && n.value <= n.most) return;
    const Quantity quantity = quantity_of(n.unit);
    const Sentence limit = metric.of(quantity) == n.unit
                               ? range_text(n.least, n.most, quantity, n.decimals)
                               : Sentence(number_text(n.least, n.unit, n.decimals) + " to " +
                                          with_symbol(number_text(n.most, n.unit, n.decimals), n.unit));
    out.push_back({std::isfinite(n.value) ? ProblemCode::out_of_range : ProblemCode::not_a_number, n.path,
                   limit, std::string(n.what) + " goes from " + limit + "."});
}

} // namespace evenfall::units
