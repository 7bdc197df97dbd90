#pragma once

#include "base/problem.hpp"
#include "base/vec3.hpp"
#include "document/json_text.hpp"
#include "document/log.hpp"

#include <optional>

namespace evenfall::output {

using document::Tree;

// Core values → JSON in the metric trade units that its keys name, rounded to a millionth; absent or not
// finite gives null. Sentences are told in the units given.

[[nodiscard]] Tree number(const std::optional<double>& trade);
[[nodiscard]] Tree grams(const std::optional<double>& kg);
[[nodiscard]] Tree millimetres(const std::optional<double>& m);
[[nodiscard]] Tree cubic_centimetres(double m3);
[[nodiscard]] Tree speed(const std::optional<double>& m_s); ///< mm/s
[[nodiscard]] Tree degrees(const std::optional<double>& rad);
[[nodiscard]] Tree point(const Vec3& at); ///< [x, y, z] mm
[[nodiscard]] Tree problem_list(const Problems& problems, const units::UnitSet& units);
[[nodiscard]] std::string stage_word(Stage stage); ///< as documents have it

/// A list with what `entry` makes of each.
template <class Range, class Entry>
[[nodiscard]] Tree list_of(const Range& range, const Entry& entry) {
    Tree list = Tree::array();
    for (const auto& one : range)
        list.push_back(entry(one));
    return list;
}

} // namespace evenfall::output
