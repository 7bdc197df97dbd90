#include "water/fall/drag_items.hpp"

#include "body/body.hpp"
#include "body/tail_loft.hpp"
#include "materials/solids.hpp"
#include "water/fall/bluff.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string_view>

namespace evenfall::fall {

namespace {

constexpr double usual_speed_m_s = 0.2;
constexpr double usual_kinematic_m2_s =
    1.14e-6; // fresh water at 15 °C; a tenth either way changes no number here by 3 %

bool is_any_of(std::string_view material, std::initializer_list<std::string_view> names) {
    return std::find(names.begin(), names.end(), material) != names.end();
}

DragItem soft(const Vec3& at, double edge_m2, double flank_m2) {
    const double usual = 1.2 * edge_m2 + 2.0 * 0.02 * flank_m2;
    return {at, 0.5 * usual, usual, 2.0 * usual, 0, true};
}

DragItem wire(const Vec3& at, double volume_m3, double mass_kg) {
    const double d = 1.1e-3 * std::cbrt(mass_kg / 2e-3);
    const double broadside = 4.0 * volume_m3 / (std::numbers::pi * d);
    const double full = wire_drag_coefficient(usual_speed_m_s * d / usual_kinematic_m2_s) * broadside;
    return {at, 0.25 * full, 0.45 * full, 0.65 * full};
}

DragItem plate(const Vec3& at, double volume_m3) {
    const double side = soft_plate_side_m(volume_m3);
    return soft(at, side * soft_plate_m, side * side);
}

DragItem ball(const Vec3& at, double volume_m3) {
    const double d = std::cbrt(6.0 * volume_m3 / std::numbers::pi);
    const double usual =
        sphere_drag_coefficient(usual_speed_m_s * d / usual_kinematic_m2_s) * std::numbers::pi / 4.0 * d * d;
    return {at, 0.7 * usual, usual, 1.6 * usual};
}

bool is_outside(const shape::Lines& lines, const Vec3& at) {
    return std::abs(at.y) >= shape::skin_half_width(lines, at.x, at.z);
}

} // namespace

double soft_plate_side_m(double volume_m3) {
    return std::sqrt(volume_m3 / soft_plate_m);
}

std::vector<DragItem> drag_items(const shape::Lines& lines, const document::Document& document,
                                 const ledger::Ledger& ledger, Stage stage) {
    std::vector<DragItem> items;
    const auto append = [&](DragItem item, const ledger::Line& line) {
        item.segment = line.segment;
        items.push_back(item);
    };
    for (const ledger::Line& line : ledger) {
        if (line.kind == ledger::Kind::tail && line.item == 0 && line.stage <= stage && document.tail) {
            const tail::ProjectedAreas shadow = tail::shadow(*document.tail);
            append(soft(line.at_m, shadow.above_m2, shadow.side_m2), line);
        }
        if (line.kind != ledger::Kind::part || line.stage > stage) continue;
        if (!(line.displaced_m3 > 0.0 && line.mass_kg > 0.0)) continue;
        const auto index = static_cast<std::size_t>(line.item);
        if (index >= document.parts.size()) { // a test weight (ledger/hung_on.hpp)
            append(ball(line.at_m, line.displaced_m3), line);
            continue;
        }
        if (!is_outside(lines, line.at_m)) continue;
        const document::Part& part = document.parts[index];
        if (is_any_of(part.material, {"stainless", "steel", "brass", "copper", "aluminium"})) {
            append(wire(line.at_m, line.displaced_m3, line.mass_kg * (1.0 - part.embedded)), line);
        } else if (materials::is_soft(part.material)) {
            append(plate(line.at_m, line.displaced_m3), line);
        } else {
            append(ball(line.at_m, line.displaced_m3), line);
        }
    }
    return items;
}

} // namespace evenfall::fall
