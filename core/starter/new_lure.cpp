#include "starter/new_lure.hpp"

#include "answers/answers.hpp"
#include "base/limits.hpp"
#include "base/trade.hpp"
#include "materials/woods.hpp"
#include "starter/body_form.hpp"
#include "starter/hook_layout.hpp"
#include "starter/joint_layout.hpp"
#include "starter/lead_holes.hpp"

#include <cmath>

namespace evenfall::starter {

namespace {

Problems off_limits(const LureCard& card) {
    Problems out;
    using units::Unit;
    units::check_limit(
        {"/length_mm", "The length", card.length_m, least_length_m, greatest_length_m, Unit::mm, 0}, out);
    const double height_m = card.height_m.value_or(usual_height_m(card.form, card.length_m));
    units::check_limit(
        {"/height_mm", "The height", height_m, 0.06 * card.length_m, 0.5 * card.length_m, Unit::mm, 0}, out);
    units::check_limit({"/thickness_mm", "The thickness",
                        card.thickness_m.value_or(usual_thickness_m(card.form, height_m)), 0.25 * height_m,
                        1.5 * height_m, Unit::mm, 0},
                       out);
    units::check_limit({"/segments", "The number of segments", static_cast<double>(card.segments), 1.0,
                        static_cast<double>(most_segments), Unit::one, 0},
                       out);
    units::check_limit({"/hooks", "The number of hooks", static_cast<double>(card.hooks), 0.0,
                        static_cast<double>(most_hooks), Unit::one, 0},
                       out);
    if (card.fall == WantedFall::by_speed)
        units::check_limit({"/fall", "The speed of fall", card.speed_m_s, least_speed_m_s, greatest_speed_m_s,
                            Unit::mm_per_s, 0},
                           out);
    if (materials::find_wood(card.wood) == nullptr)
        out.push_back(
            {ProblemCode::unknown_name, "/wood", "", "“" + card.wood + "” is not in the table of woods."});
    return out;
}

void add_coats(document::Document& d) {
    document::Coat sealer;
    sealer.name = "Sealer";
    sealer.stage = Stage::sealed;
    sealer.kind = document::CoatKind::soaks;
    sealer.material = "ca";
    // 0.1 kg/m² soaks into a carved surface: common practice, no source.
    double area_m2 = 0.0;
    if (const auto bare = evaluate(d)) {
        for (const shape::Segment& s : bare->body.segments) {
            area_m2 += s.skin_m2;
            for (const shape::Face& face : s.faces)
                area_m2 += face.area_m2;
        }
    }
    sealer.mass_kg = std::round(0.1 * area_m2 * 1e4) / 1e4;
    document::Coat paint;
    paint.name = "Primer and paint";
    paint.stage = Stage::painted;
    paint.material = "acrylic_paint";
    paint.thickness_m = 0.09e-3;
    paint.spread = 0.3;
    document::Coat clear;
    clear.name = "Clear coat";
    clear.thickness_m = 0.3e-3;
    d.coats = {sealer, paint, clear};
}

} // namespace

void ask_for_fall(document::Document& d, const LureCard& card) {
    const bool by_weight = card.fall == WantedFall::floats || card.fall == WantedFall::suspends;
    d.targets.by = by_weight ? document::TargetBy::in_water : document::TargetBy::fall;
    d.targets.fall_m_s = speed_of(card);
    d.targets.in_water_kg = 0.0;
    if (card.fall == WantedFall::floats) {
        // A thirtieth of what it displaces stands out of the water: its back just shows.
        const auto whole = evaluate(d);
        const double share = whole ? whole->answers.displaced_m3 * 1000.0 / 30.0 : 0.0;
        d.targets.in_water_kg = -std::round(share * 1e4) / 1e4;
    }
}

double speed_of(const LureCard& card) {
    switch (card.fall) {
    case WantedFall::slow:
        return 0.12;
    case WantedFall::medium:
        return 0.22;
    case WantedFall::fast:
        return 0.35;
    case WantedFall::floats:
    case WantedFall::suspends:
    case WantedFall::by_speed:
        break;
    }
    return card.speed_m_s;
}

Outcome<document::Document> new_lure(const LureCard& card) {
    if (Problems problems = off_limits(card); !problems.empty()) return problems;
    document::Document d;
    d.name = card.name;
    d.wood.species = card.wood;
    d.wood.moisture_percent = 8.0;
    d.shape = shape_of(card);
    d.segment_names = {"Body"};
    if (card.tail == TailFin::soft) add_soft_tail(d);
    Outcome<document::Document> jointed = with_joints(d, card.segments);
    if (!jointed) return jointed;
    Outcome<document::Document> hooked = with_hooks(*jointed, card.hooks);
    if (!hooked) return hooked;
    add_coats(*hooked);
    ask_for_fall(*hooked, card);
    const bool falls = hooked->targets.by == document::TargetBy::fall;
    hooked->targets.pitch_rad = (falls ? -2.0 : 0.0) * units::degree_rad;
    return with_lead(*hooked);
}

} // namespace evenfall::starter
