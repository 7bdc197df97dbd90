#include "base/limits.hpp"

#include "base/number_text.hpp"

#include <cmath>

namespace evenfall::units {

void check_limit(const LimitedNumber& n, Problems& out) {
    if (n.value >= n.least && n.value <= n.most) return;
    const std::string_view unit = symbol(n.unit);
    std::string limit = number_text(n.least, n.unit, n.decimals);
    limit += " to ";
    limit += number_text(n.most, n.unit, n.decimals);
    if (!unit.empty()) {
        limit += ' ';
        limit += unit;
    }
    std::string sentence = n.what;
    sentence += " goes from ";
    sentence += limit;
    sentence += '.';
    out.push_back({std::isfinite(n.value) ? ProblemCode::out_of_range : ProblemCode::not_a_number, n.path,
                   std::move(limit), std::move(sentence)});
}

} // namespace evenfall::units
