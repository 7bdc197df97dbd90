#include "body/fittings.hpp"

#include "body/pin_span.hpp"
#include "body/twist_hole.hpp"
#include "materials/bits.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::fittings {

namespace {

double circle_m2(double diameter_m) {
    return 0.25 * std::numbers::pi * diameter_m * diameter_m;
}

/// Volumes and centre of an eye of which `shank_m3` of wire, `shank_m` long, follows the ring. `eye_m` is the
/// ring's middle.
struct Shank {
    double ring_m3 = 0.0;
    double shank_m3 = 0.0;
    double shank_m = 0.0;
    double begins_m = 0.0; ///< behind the ring's middle
};

void put_shank(Fitting& f, const Shank& s, const Vec3& eye_m) {
    const double inside = s.shank_m > 0.0 ? std::min(1.0, f.in_wood_m / s.shank_m) : 0.0;
    f.wire_m3 = s.ring_m3 + s.shank_m3;
    f.outside_m3 = s.ring_m3 + s.shank_m3 * (1.0 - inside);
    const Vec3 middle = eye_m + f.into * (s.begins_m + 0.5 * s.shank_m);
    f.at_m = (eye_m * s.ring_m3 + middle * s.shank_m3) * (1.0 / f.wire_m3);
    f.eyes_m = {eye_m};
}

/// Ring and shank of a twisted eye; nothing where its wire cannot be bent.
std::optional<Shank> twisted(const wire::TwistedEye& eye) {
    const auto bent = wire::twisted_eye(eye, 1.0, 0.0);
    if (!bent) return std::nullopt;
    const double area = circle_m2(eye.wire_m);
    const double ring_m = 0.5 * (eye.inside_m + eye.wire_m) * eye.wrap_rad;
    return Shank{area * ring_m, area * (bent->cut_m - ring_m), bent->twist_m + eye.leg_m,
                 0.5 * eye.inside_m + eye.wire_m};
}

void append_eyes(const document::Document& document, const shape::Body& body, int joint,
                 const joints::HingePlace& place, std::vector<Fitting>& out) {
    const document::Hinge& hinge = place.hinge;
    const auto shank = twisted(joints::twisted_eye_of(hinge));
    if (!shank) return;
    for (const bool aft : {false, true}) {
        if (!joints::holds_eyes(hinge, aft)) continue;
        for (const joints::EyePlace& eye : place.eyes) {
            const joints::TwistHole hole = joints::twist_hole(document, body, joint, place, eye, aft);
            Fitting f;
            f.kind = FittingKind::hinge_eye;
            f.item = joint;
            f.segment = joint + (aft ? 1 : 0);
            f.into = {aft ? 1.0 : -1.0, 0.0, 0.0};
            f.mouth_m = {hole.wood_from_x_m, place.pin.y_m, eye.z_m};
            f.in_wood_m = hole.reach_m;
            f.bored_m = std::max(hole.reach_m, hinge.glued_m);
            f.hole_m = joints::twist_hole_m(hinge.wire_m);
            f.eye_inside_m = hinge.eye_inside_m;
            const double offset_m =
                hinge.kind == document::HingeKind::linked ? joints::linked_offset_m(hinge) : 0.0;
            put_shank(f, *shank, Vec3{place.pin.x_m, place.pin.y_m, eye.z_m} + f.into * offset_m);
            out.push_back(std::move(f));
        }
    }
}

void append_pin(const document::Document& document, const shape::Body& body, int joint,
                const joints::HingePlace& place, std::vector<Fitting>& out) {
    if (place.hinge.kind != document::HingeKind::pinned) return;
    const joints::PinSpan span = joints::pin_span(place.pin, body);
    if (!(span.length_m > 0.0)) return;
    const bool in_gap = shape::segment_at(body, place.pin.x_m) < 0;
    const double area = circle_m2(place.hinge.pin_diameter_m);
    Fitting f;
    f.kind = FittingKind::hinge_pin;
    f.item = joint;
    f.segment = joint + (place.pocket_aft ? 1 : 0);
    f.into = {0.0, 0.0, 1.0};
    f.mouth_m = {place.pin.x_m, place.pin.y_m, span.heights().from_m};
    f.in_wood_m = f.bored_m = span.length_m;
    f.hole_m = place.hinge.pin_diameter_m;
    f.wire_m3 = area * span.length_m;
    const double held_m = in_gap ? 0.0 : joints::pin_hold(document, place.pin, span.heights()).in_wood_m;
    f.outside_m3 = area * (span.length_m - held_m);
    f.at_m = {place.pin.x_m, place.pin.y_m, span.middle_z_m};
    out.push_back(std::move(f));
}

/// The place of a hanger on the skin, its direction and the wood before it.
struct HangerPlace {
    Vec3 mouth_m;
    Vec3 into;
    int segment = 0;
    double wood_m = 0.0; ///< through to the other side of its segment
};

HangerPlace place_of(const document::Hanger& hanger, const shape::Body& body) {
    const shape::Lines& lines = *body.lines;
    const int last = static_cast<int>(body.segments.size()) - 1;
    const auto along = [&](int segment, double x_m, double way) {
        const shape::Segment& s = body.segments[static_cast<std::size_t>(segment)];
        return HangerPlace{{x_m, 0.0, hanger.z_m}, {way, 0.0, 0.0}, segment, s.x_to_m - s.x_from_m};
    };
    switch (hanger.on) {
    case document::HangerOn::nose:
        return along(0, 0.0, 1.0);
    case document::HangerOn::tail:
        return along(last, lines.length_m(), -1.0);
    case document::HangerOn::belly:
    case document::HangerOn::back:
        break;
    }
    const shape::Station s = lines.at(std::clamp(hanger.x_m, 0.0, lines.length_m()));
    const double up = hanger.on == document::HangerOn::belly ? 1.0 : -1.0;
    return {{hanger.x_m, 0.0, s.centre_z_m - up * s.half_height_m},
            {0.0, 0.0, up},
            shape::nearest_segment(body, hanger.x_m),
            2.0 * s.half_height_m};
}

std::optional<Fitting> hanger_fitting(const document::Hanger& hanger, const shape::Body& body) {
    const HangerPlace place = place_of(hanger, body);
    Fitting f;
    f.kind = FittingKind::hanger;
    f.segment = place.segment;
    f.mouth_m = place.mouth_m;
    f.into = place.into;
    f.eye_inside_m = hanger.eye_inside_m;
    const double area = circle_m2(hanger.wire_m);
    const double ring_m3 = area * std::numbers::pi * (hanger.eye_inside_m + hanger.wire_m);
    const double ring_outer_m = 0.5 * hanger.eye_inside_m + hanger.wire_m;
    switch (hanger.kind) {
    case document::HangerKind::twisted: {
        wire::TwistedEye eye;
        eye.wire_m = hanger.wire_m;
        eye.inside_m = hanger.eye_inside_m;
        eye.turns = hanger.turns;
        const auto shank = twisted(eye);
        if (!shank) return std::nullopt;
        f.in_wood_m = f.bored_m = std::min(hanger.depth_m, shank->shank_m);
        f.hole_m = joints::twist_hole_m(hanger.wire_m);
        // What the hole does not take of the twist stands out of the wood, before the eye.
        put_shank(f, *shank, place.mouth_m - place.into * (shank->begins_m + shank->shank_m - f.in_wood_m));
        f.gap_m3 = std::max(0.0, f.in_wood_m * circle_m2(f.hole_m) - (f.wire_m3 - f.outside_m3));
        return f;
    }
    case document::HangerKind::screw:
        f.in_wood_m = f.bored_m = hanger.depth_m;
        f.hole_m = hanger.wire_m;
        put_shank(f, {ring_m3, area * hanger.depth_m, hanger.depth_m, ring_outer_m},
                  place.mouth_m - place.into * ring_outer_m);
        return f;
    case document::HangerKind::straight:
        break;
    }
    const auto bit = bits::next_up(bits::System::metric, hanger.wire_m);
    f.in_wood_m = f.bored_m = place.wood_m;
    f.hole_m = bit ? bit->diameter_m : hanger.wire_m;
    f.wire_m3 = 2.0 * ring_m3 + area * place.wood_m;
    f.outside_m3 = 2.0 * ring_m3;
    f.gap_m3 = place.wood_m * (circle_m2(f.hole_m) - area);
    f.at_m = place.mouth_m + place.into * (0.5 * place.wood_m);
    f.eyes_m = {place.mouth_m - place.into * ring_outer_m,
                place.mouth_m + place.into * (place.wood_m + ring_outer_m)};
    return f;
}

} // namespace

bool has_hinge(const document::Document& document, const shape::Body& body, int joint) {
    if (document.joints[static_cast<std::size_t>(joint)].hinge) return true;
    const auto eyes = joints::hinge_place(document, body, joint).eyes;
    return std::any_of(eyes.begin(), eyes.end(), [](const auto& eye) { return eye.pocket.has_value(); });
}

std::vector<Fitting> fittings(const document::Document& document, const shape::Body& body) {
    std::vector<Fitting> out;
    for (int j = 0; j < static_cast<int>(document.joints.size()); ++j) {
        if (!has_hinge(document, body, j)) continue;
        const joints::HingePlace place = joints::hinge_place(document, body, j);
        append_eyes(document, body, j, place, out);
        append_pin(document, body, j, place, out);
    }
    for (std::size_t i = 0; i < document.hangers.size(); ++i) {
        auto fitting = hanger_fitting(document.hangers[i], body);
        if (!fitting) continue;
        fitting->item = static_cast<int>(i);
        out.push_back(std::move(*fitting));
    }
    return out;
}

} // namespace evenfall::fittings
