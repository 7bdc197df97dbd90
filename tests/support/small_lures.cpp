#include "support/small_lures.hpp"

#include "base/trade.hpp"

namespace evenfall::support {

using units::kg_from_g;
using units::m_from_mm;
using units::rad_from_deg;

namespace {

document::CurvePoints curve_mm(std::initializer_list<std::pair<double, double>> points) {
    document::CurvePoints out;
    for (const auto& [x, value] : points)
        out.push_back({m_from_mm(x), m_from_mm(value)});
    return out;
}

document::Part part(const char* name, Stage stage, const char* material, double grams, double x, double z,
                    double embedded) {
    document::Part p;
    p.name = name;
    p.stage = stage;
    p.material = material;
    p.mass_kg = kg_from_g(grams);
    p.at_m = {m_from_mm(x), 0.0, m_from_mm(z)};
    p.embedded = embedded;
    return p;
}

document::Coat coat(const char* name, Stage stage, document::CoatKind kind, const char* material) {
    document::Coat c;
    c.name = name;
    c.stage = stage;
    c.kind = kind;
    c.material = material;
    return c;
}

} // namespace

document::Hole belly_hole(double x_mm, double diameter_mm, double max_depth_mm) {
    document::Hole hole;
    hole.x_m = m_from_mm(x_mm);
    hole.diameter_m = m_from_mm(diameter_mm);
    hole.max_depth_m = m_from_mm(max_depth_mm);
    hole.wall_m = m_from_mm(2.0);
    hole.fill = document::Fill{};
    hole.fill->mass_kg = 0.0;
    return hole;
}

document::Document block() {
    document::Document d;
    d.name = "Block";
    d.wood.density_kg_m3 = 500.0;
    d.wood.density_spread = 0.10;
    d.water = {20.0, 0.0};
    d.tub = {20.0, 0.0};
    d.shape.back = curve_mm({{0, 15}, {120, 15}});
    d.shape.belly = curve_mm({{0, -15}, {120, -15}});
    d.shape.half_width = curve_mm({{0, 10}, {120, 10}});
    d.shape.section.kind = document::SectionKind::chamfered;
    d.shape.section.curve() = {{0.0, 0.0}};
    d.segment_names = {"Block"};
    return d;
}

document::Document fish() {
    document::Document d;
    d.name = "Test fish";
    d.wood.species = "basswood";
    d.water = {15.0, 0.0};
    d.tub = {20.0, 0.0};
    d.shape.back = curve_mm({{0, 4}, {10, 11}, {30, 17}, {60, 19}, {95, 15}, {125, 9}, {150, 6}});
    d.shape.belly = curve_mm({{0, -3}, {10, -10}, {30, -16}, {60, -18}, {95, -14}, {125, -8}, {150, -5}});
    d.shape.half_width = curve_mm({{0, 4}, {10, 8}, {30, 11}, {60, 11.5}, {95, 9}, {125, 5.5}, {150, 3}});
    d.shape.section.curve() = {{0.0, 2.5}};
    d.segment_names = {"Head", "Middle", "Tail"};
    for (const double at : {62.0, 108.0}) {
        document::Joint j;
        j.at_m = m_from_mm(at);
        j.gap_m = m_from_mm(2.0);
        j.relief_fore_rad = rad_from_deg(10.0);
        j.relief_aft_rad = rad_from_deg(15.0);
        d.joints.push_back(j);
    }
    d.holes = {belly_hole(20, 8, 18), belly_hole(32, 8, 22), belly_hole(46, 8, 22), belly_hole(74, 8, 22),
               belly_hole(91, 8, 20)};
    d.parts = {part("line tie", Stage::hardware, "stainless", 0.5, 2, 1, 0.6),
               part("hinge 1", Stage::hardware, "stainless", 1.1, 62, 0, 0.5),
               part("hinge 2", Stage::hardware, "stainless", 0.9, 108, 0, 0.5),
               part("front hook", Stage::rigged, "steel", 2.2, 36, -28, 0.0),
               part("rear hook", Stage::rigged, "steel", 2.2, 84, -26, 0.0)};
    document::Coat sealer = coat("sealer", Stage::sealed, document::CoatKind::soaks, "ca");
    sealer.mass_kg = kg_from_g(0.9);
    document::Coat paint = coat("paint", Stage::painted, document::CoatKind::film, "acrylic_paint");
    paint.thickness_m = 60e-6;
    document::Coat clear = coat("clear", Stage::clear_coated, document::CoatKind::film, "epoxy");
    clear.thickness_m = 0.35e-3;
    d.coats = {sealer, paint, clear};
    d.targets.by = document::TargetBy::in_water;
    d.targets.in_water_kg = kg_from_g(1.0);
    d.targets.pitch_rad = 0.0;
    return d;
}

document::Document four_piece() {
    document::Document d = fish();
    d.joints.clear();
    for (const double at : {42.0, 78.0, 114.0}) {
        document::Joint j;
        j.at_m = m_from_mm(at);
        j.gap_m = m_from_mm(2.0);
        d.joints.push_back(j);
    }
    d.segment_names = {"One", "Two", "Three", "Four"};
    d.holes = {belly_hole(18, 7, 16), belly_hole(31, 8, 22),  belly_hole(53, 8, 22),   belly_hole(67, 8, 22),
               belly_hole(88, 7, 18), belly_hole(101, 6, 16), belly_hole(121, 4.5, 8), belly_hole(132, 4, 8)};
    return d;
}

} // namespace evenfall::support
