#include "workshop/joint_answers.hpp"

#include "body/pin_span.hpp"
#include "body/twist_hole.hpp"
#include "document/check.hpp"
#include "materials/solids.hpp"
#include "materials/woods.hpp"
#include "workshop/chain.hpp"
#include "workshop/joint_warnings.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace evenfall::joints {

namespace {

constexpr std::array ways{SwingSide::port, SwingSide::starboard};

double by(const EyeRoom& room, SwingSide way) {
    return way == SwingSide::port ? room.port_rad : room.starboard_rad;
}

LinkedEyes linked_eyes_of(const document::Hinge& hinge) {
    return {hinge.wire_m, hinge.eye_inside_m, hinge.lean_rad};
}

/// The cause of the smallest angle; wood where two are equal.
StoppedBy stopped_by(const JointAnswer& a, std::size_t w) {
    if (a.eyes_rad[w] < std::min(a.finished[w].angle_rad, a.wire_rad[w])) return StoppedBy::eyes;
    if (a.wire_rad[w] < a.finished[w].angle_rad) return StoppedBy::pocket_mouth;
    return a.finished[w].stopped ? StoppedBy::wood : StoppedBy::nothing;
}

wire::Temper temper_of(const document::Hinge& hinge) {
    return hinge.temper == document::WireTemper::soft ? wire::Temper::soft : wire::Temper::spring;
}

/// The piece's density over its species' at the same moisture.
double density_share(const document::Wood& wood, const materials::Wood& species) {
    return wood.density_kg_m3
               ? *wood.density_kg_m3 / materials::wood_density_kg_m3(species, wood.moisture_percent)
               : 1.0;
}

double wall_before_pin(const JointAnswer& a) {
    for (const Wall& wall : a.walls) {
        if (wall.between == WallKind::pin_and_face) return wall.thickness_m;
    }
    return 0.0;
}

wire::PinAndWire hold_of(const document::Wood& wood, const HingePlace& place, const PinHold& pin,
                         double twist_hole_m, double twist_reach_m, double pin_wall_m) {
    const document::Hinge& h = place.hinge;
    wire::PinAndWire hold;
    hold.temper = temper_of(h);
    // A document that was checked names a wood of the table.
    const materials::Wood& species = *materials::find_wood(wood.species);
    hold.wood_shear_pa = materials::shear_along_grain_pa(species, density_share(wood, species));
    hold.wood_bearing_pa = materials::pin_bearing_pa(species, density_share(wood, species));
    hold.wire_m = h.wire_m;
    hold.hole_m = twist_hole_m;
    hold.glued_m = std::min(h.glued_m, twist_reach_m);
    hold.has_pin = h.kind == document::HingeKind::pinned;
    hold.pin_m = h.pin_diameter_m;
    hold.eyes = static_cast<int>(place.eyes.size());
    if (pin.span_m > 0.0) hold.pin_span_m = pin.span_m;
    hold.pin_in_wood_m = pin.in_wood_m;
    hold.pin_wall_m = pin_wall_m;
    return hold;
}

Outcome<JointAnswer> one_joint(const document::Document& document, const shape::Body& body, int joint,
                               const FilmThickness& films, double line_n) {
    JointAnswer a;
    a.place = hinge_place(document, body, joint);
    const document::Hinge& h = a.place.hinge;
    const std::string path = "/joints/" + std::to_string(joint) + "/hinge";
    auto eye = wire::twisted_eye(twisted_eye_of(h), materials::find_solid("stainless")->density_kg_m3.value,
                                 wire::yield_pa(temper_of(h), h.wire_m), path.c_str());
    if (!eye) return eye.problems();
    a.eye = *eye;

    for (const EyePlace& place : a.place.eyes) {
        EyeAnswer answer{place, {}};
        if (place.pocket) answer.room = eye_room(document, body, joint, a.place, place, films.in_pockets_m);
        a.eyes.push_back(answer);
    }
    for (const SwingSide way : ways) {
        const auto w = static_cast<std::size_t>(way);
        // A pin on the middle plane: both sides are mirror images.
        const bool mirrored = w > 0 && a.place.pin.y_m == 0.0;
        a.bare[w] = mirrored ? a.bare[0] : swing(body, joint, a.place.pin, way);
        if (mirrored)
            a.finished[w] = a.finished[0];
        else
            a.finished[w] =
                films.on_faces_m > 0.0 ? swing(body, joint, a.place.pin, way, films.on_faces_m) : a.bare[w];
        a.wire_rad[w] = most_swing_rad;
        if (h.kind == document::HingeKind::pinned) {
            for (const EyeAnswer& answer : a.eyes) {
                if (answer.room) a.wire_rad[w] = std::min(a.wire_rad[w], by(*answer.room, way));
            }
        }
        a.eyes_rad[w] = most_swing_rad;
        if (h.kind == document::HingeKind::linked) {
            // Only as far as the wood allows: larger angles are not needed, and the search is slow.
            const double wood = a.finished[w].angle_rad;
            const double eyes = mirrored ? a.eyes_rad[0] : link_swing(linked_eyes_of(h), wood);
            if (eyes < wood) a.eyes_rad[w] = eyes;
        }
        a.swing_rad[w] = std::min({a.finished[w].angle_rad, a.wire_rad[w], a.eyes_rad[w]});
        a.stopped_by[w] = stopped_by(a, w);
        for (const EyeAnswer& answer : a.eyes) {
            if (a.wire_rad[w] >= a.finished[w].angle_rad || !a.mouth_m[w]) break;
            if (!answer.room || by(*answer.room, way) >= a.finished[w].angle_rad) continue;
            const auto width_m = mouth_for(document, body, joint, a.place, answer.place, way,
                                           a.finished[w].angle_rad, films.in_pockets_m);
            a.mouth_m[w] = width_m ? std::optional(std::max(*a.mouth_m[w], *width_m)) : std::nullopt;
        }
    }
    a.play_per_eye_m = h.eye_inside_m - (h.kind == document::HingeKind::pinned ? h.pin_diameter_m : h.wire_m);
    if (h.kind == document::HingeKind::linked) a.play = link_play(linked_eyes_of(h));
    if (a.place.eye_spacing_m > 0.0) {
        a.sag_rad = std::atan(play_per_eye_m(h) / a.place.eye_spacing_m);
    }
    if (a.eyes.size() == 1) {
        const double ring_m = h.eye_inside_m + h.wire_m;
        const bool pinned = h.kind == document::HingeKind::pinned;
        a.rocks_rad = pinned ? std::acos(std::min(1.0, (h.pin_diameter_m + h.wire_m) / ring_m))
                             : link_swing(linked_eyes_of(h), most_swing_rad);
    }
    if (h.kind == document::HingeKind::pinned) {
        const PinSpan span = pin_span(a.place.pin, body);
        a.pin_length_m = span.length_m;
        a.pin_middle_z_m = span.middle_z_m;
    }
    const HeightRange pin = PinSpan{a.pin_length_m, a.pin_middle_z_m}.heights();
    a.twist_reach_m = std::numeric_limits<double>::infinity();
    for (const bool aft : {false, true}) {
        if (!holds_eyes(h, aft)) continue;
        for (const EyePlace& place : a.place.eyes) {
            a.twist_reach_m =
                std::min(a.twist_reach_m, twist_hole(document, body, joint, a.place, place, aft).reach_m);
        }
    }
    a.walls = walls(document, body, joint, a.place, pin);
    a.eye_bits = bits::for_glue(a.eye.twist_outside_m);
    a.pin_bits = bits::for_pin(h.pin_diameter_m);
    const auto& metric = a.eye_bits[static_cast<std::size_t>(bits::System::metric)];
    a.strength = wire::strength(hold_of(document.wood, a.place, pin_hold(document, a.place.pin, pin),
                                        metric ? metric->diameter_m : a.eye.twist_outside_m, a.twist_reach_m,
                                        wall_before_pin(a)),
                                line_n);
    return a;
}

} // namespace

Outcome<JointsAnswer> joint_answers(const document::Document& document, const shape::Body& body) {
    JointsAnswer out;
    out.films = films_of(document, body);
    out.line_n = document.targets.line_n.value_or(usual_line_n);
    std::vector<Pin> pins;
    Swings swings;
    for (std::size_t k = 0; k < document.joints.size(); ++k) {
        auto joint = one_joint(document, body, static_cast<int>(k), out.films, out.line_n);
        if (!joint) return joint.problems();
        pins.push_back(joint->place.pin);
        for (std::size_t w = 0; w < 2; ++w) {
            swings[w].push_back(joint->swing_rad[w]);
            out.wrap_rad[w] += joint->swing_rad[w];
        }
        out.joints.push_back(std::move(*joint));
    }
    for (std::size_t w = 0; w < 2; ++w)
        out.turn_radius_m[w] = turn_radius_m(body.lines->length_m(), pins, swings[w]);
    out.hooks = hook_fouls(document, body, pins, swings);
    out.warnings = joint_warnings(document, body, out);
    return out;
}

Outcome<JointsAnswer> joint_answers(const document::Document& document) {
    Problems unfit = document::check(document);
    if (!unfit.empty()) return unfit;
    auto lines = shape::drawn_lines(document.shape);
    if (!lines) return lines.problems();
    const auto body = shape::cut(std::move(*lines), document.joints);
    if (!body) return body.problems();
    return joint_answers(document, *body);
}

} // namespace evenfall::joints
