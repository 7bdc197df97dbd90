#pragma once

#include "document/document.hpp"

#include <array>
#include <numbers>
#include <vector>

namespace evenfall::support {

inline constexpr double degree = std::numbers::pi / 180.0;

/// A drawn body of 140 mm with roughly elliptic sections, separate stations on every line and a belly deeper
/// than its back.
inline document::Shape drawn_minnow() {
    document::Shape s;
    const double mm = 1e-3;
    for (const auto& [x, z] : {std::pair{0.0, 2.0},
                               {6.0, 8.0},
                               {20.0, 13.0},
                               {48.0, 16.5},
                               {80.0, 14.0},
                               {112.0, 9.0},
                               {140.0, 5.0}})
        s.back.push_back({x * mm, z * mm});
    for (const auto& [x, z] :
         {std::pair{0.0, -1.0}, {9.0, -9.0}, {30.0, -17.0}, {60.0, -19.0}, {100.0, -12.0}, {140.0, -4.0}})
        s.belly.push_back({x * mm, z * mm});
    for (const auto& [x, y] : {std::pair{0.0, 1.5},
                               {5.0, 5.0},
                               {25.0, 9.0},
                               {55.0, 10.5},
                               {90.0, 8.0},
                               {120.0, 5.0},
                               {140.0, 2.5}})
        s.half_width.push_back({x * mm, y * mm});
    s.section.curve() = {{0.0, 2.6}};
    return s;
}

/// Test body F of the prototype: 140 mm, eleven stations, n = 2.6, back and belly symmetric.
inline document::Shape prototype_shape() {
    const std::array<double, 11> x{0.0, 0.03, 0.08, 0.16, 0.28, 0.42, 0.56, 0.70, 0.82, 0.92, 1.0};
    const std::array<double, 11> height{0.12, 0.52, 0.74, 0.92, 1.0, 1.0, 0.97, 0.82, 0.64, 0.48, 0.42};
    const std::array<double, 11> width{0.12, 0.55, 0.78, 0.95, 1.0, 1.0, 0.95, 0.80, 0.56, 0.36, 0.25};
    document::Shape s;
    for (std::size_t k = 0; k < x.size(); ++k) {
        s.back.push_back({0.140 * x[k], 0.0175 * height[k]});
        s.belly.push_back({0.140 * x[k], -0.0175 * height[k]});
        s.half_width.push_back({0.140 * x[k], 0.010 * width[k]});
    }
    s.section.curve() = {{0.0, 2.6}};
    return s;
}

/// Every kind of section on the same lines: two constant, one varying, one with corners, one drawn.
inline std::vector<document::Section> section_kinds() {
    using document::Section;
    using document::SectionKind;
    return {
        Section{SectionKind::rounded, {{0.0, 2.0}}, {}, {}},
        Section{SectionKind::rounded, {{0.0, 2.6}}, {}, {}},
        Section{SectionKind::rounded, {{0.0, 2.0}, {0.05, 2.8}, {0.14, 4.0}}, {}, {}},
        Section{SectionKind::chamfered, {}, {{0.0, 0.3}}, {}},
        Section{SectionKind::chamfered, {}, {{0.01, 0.2}, {0.1, 0.7}}, {}},
        Section{SectionKind::drawn,
                {{0.0, 2.4}},
                {},
                {{0.0, -1.0}, {0.4, -0.9}, {0.9, -0.2}, {1.0, 0.2}, {0.8, 0.7}, {0.3, 1.0}, {0.0, 1.0}}},
    };
}

/// Two joints with different reliefs fore and aft.
inline std::vector<document::Joint> two_joints() {
    return {{0.054, 0.002, 18.0 * degree, 25.0 * degree}, {0.096, 0.0025, 0.0, 30.0 * degree}};
}

} // namespace evenfall::support
