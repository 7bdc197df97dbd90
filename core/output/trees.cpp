#include "output/trees.hpp"

#include "base/trade.hpp"
#include "document/fields.hpp"

#include <cmath>

namespace evenfall::output {

Tree number(double trade) {
    return std::isfinite(trade) ? Tree(document::round_trade(trade)) : Tree(nullptr);
}

Tree grams(double kg) {
    return number(units::g_from_kg(kg));
}
Tree millimetres(double m) {
    return number(units::mm_from_m(m));
}
Tree cubic_centimetres(double m3) {
    return number(units::cm3_from_m3(m3));
}
Tree speed(double m_s) {
    return number(units::mm_s_from_m_s(m_s));
}

Tree degrees(const std::optional<double>& rad) {
    return rad ? number(units::deg_from_rad(*rad)) : Tree(nullptr);
}

Tree point(const Vec3& at) {
    return Tree::array({millimetres(at.x), millimetres(at.y), millimetres(at.z)});
}

Tree problem_list(const Problems& problems) {
    Tree list = Tree::array();
    for (const Problem& problem : problems) {
        list.push_back({{"code", static_cast<int>(problem.code)},
                        {"path", problem.path},
                        {"limit", problem.limit},
                        {"sentence", problem.sentence}});
    }
    return list;
}

} // namespace evenfall::output
