#include "output/trees.hpp"

#include "base/trade.hpp"
#include "document/field_table.hpp"

#include <cmath>

namespace evenfall::output {

Tree number(const std::optional<double>& trade) {
    return trade && std::isfinite(*trade) ? Tree(document::round_trade(*trade)) : Tree(nullptr);
}

Tree grams(const std::optional<double>& kg) {
    return kg ? number(units::g_from_kg(*kg)) : Tree(nullptr);
}
Tree millimetres(const std::optional<double>& m) {
    return m ? number(units::mm_from_m(*m)) : Tree(nullptr);
}
Tree cubic_centimetres(double m3) {
    return number(units::cm3_from_m3(m3));
}
Tree speed(const std::optional<double>& m_s) {
    return m_s ? number(units::mm_s_from_m_s(*m_s)) : Tree(nullptr);
}

Tree degrees(const std::optional<double>& rad) {
    return rad ? number(units::deg_from_rad(*rad)) : Tree(nullptr);
}

Tree point(const Vec3& at) {
    return Tree::array({millimetres(at.x), millimetres(at.y), millimetres(at.z)});
}

Tree problem_list(const Problems& problems, const units::UnitSet& units) {
    return list_of(problems, [&](const Problem& problem) {
        return Tree{{"code", static_cast<int>(problem.code)},
                    {"path", problem.path},
                    {"limit", problem.limit.text(units)},
                    {"sentence", problem.sentence.text(units)}};
    });
}

std::string stage_word(Stage stage) {
    return std::string(document::word_of(document::table::stage_words, stage));
}

} // namespace evenfall::output
