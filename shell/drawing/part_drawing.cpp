#include "drawing/scene.hpp"

#include "body.hpp"
#include "drawing/glyph.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <string>

namespace evenfall::shell::drawing {
namespace {

/// Heights of a hinge's eyes, as shares of the body from belly to back.
constexpr std::array<double, 2> pin_shares{0.27, 0.73};

struct Around {
    double back_z_m = 0.0;
    double belly_z_m = 0.0;
    double length_m = 0.0;
};

Around around(const Scene& scene, double x_m) {
    const auto& lines = *scene.body().lines;
    const double length = lines.length_m();
    const auto station = lines.at(std::clamp(x_m, 0.0, length));
    return {station.centre_z_m + station.half_height_m, station.centre_z_m - station.half_height_m, length};
}

widgets::Rect square(ImVec2 middle, float half) {
    return {middle.x - half, middle.y - half, 2.0f * half, 2.0f * half};
}

widgets::Rect draw_ring(Scene& scene, ImVec2 at, float radius, ImU32 colour, float weight) {
    scene.list.AddCircle(at, radius, colour, 0, weight);
    return square(at, radius);
}

/// One wire eye from its ring to the end of its shank.
widgets::Rect draw_loop(Scene& scene, ImVec2 ring, ImVec2 end, float radius, ImU32 colour) {
    const float way = std::max(1.0f, std::hypot(end.x - ring.x, end.y - ring.y));
    const ImVec2 out{ring.x + (end.x - ring.x) * radius / way, ring.y + (end.y - ring.y) * radius / way};
    scene.list.AddLine(out, end, colour, pen::heavy);
    scene.list.AddCircle(ring, radius, colour, 0, pen::heavy);
    const ImVec2 least{std::min(ring.x - radius, end.x), std::min(ring.y - radius, end.y)};
    const ImVec2 most{std::max(ring.x + radius, end.x), std::max(ring.y + radius, end.y)};
    return {least.x, least.y, most.x - least.x, most.y - least.y};
}

/// The joint of eyes at x; −1 where none is near.
int joint_near(const Scene& scene, double x_m) {
    constexpr double near_m = 0.016;
    int best = -1;
    double best_way = near_m;
    for (std::size_t j = 0; j < scene.document.joints.size(); ++j) {
        const double way = std::abs(scene.document.joints[j].at_m - x_m);
        if (way < best_way) {
            best = static_cast<int>(j);
            best_way = way;
        }
    }
    return best;
}

/// A wire eye: at the nose or tail it points outward, at a joint across the gap to the pin, elsewhere down
/// out of the belly. Its shank ends as far behind the part's centre of mass as the ring is before it.
widgets::Rect draw_wire_eye(Scene& scene, const WorldToScreen& map, const document::Part& part,
                            ImU32 colour) {
    const Around body = around(scene, part.at_m.x);
    const double x = part.at_m.x;
    const double z = part.at_m.z;
    const float radius = std::clamp(map.px(0.0016), 3.0f, 6.0f);
    const double radius_m = static_cast<double>(radius) / map.px_per_m();
    const auto mirrored = [&](double ring_x, double ring_z) {
        return draw_loop(scene, pen::vec(map.at(ring_x, ring_z)),
                         pen::vec(map.at(2.0 * x - ring_x, 2.0 * z - ring_z)), radius, colour);
    };
    if (x < nose_share * body.length_m) return mirrored(-radius_m, z);
    if (x > tail_share * body.length_m) return mirrored(body.length_m + radius_m, z);
    const int joint = joint_near(scene, x);
    const bool below = z < body.belly_z_m + 0.35 * (body.back_z_m - body.belly_z_m);
    if (joint >= 0 && !below) {
        // Two eyes, for a pin to run through.
        const auto& cut = scene.document.joints[static_cast<std::size_t>(joint)];
        const double side = cut.at_m >= x ? 1.0 : -1.0;
        // Round the pin and at the heights of a drawn hinge; else just across the gap.
        const double ring_x =
            cut.hinge ? cut.at_m + cut.hinge->pin_aft_m : cut.at_m + side * (0.5 * cut.gap_m + radius_m);
        const Around there = around(scene, ring_x);
        std::vector<double> heights;
        if (cut.hinge) {
            const auto place = evenfall::joints::hinge_place(scene.document, scene.body(), joint);
            for (const auto& eye : place.eyes)
                heights.push_back(eye.z_m);
        } else {
            for (double share : pin_shares)
                heights.push_back(there.belly_z_m + share * (there.back_z_m - there.belly_z_m));
        }
        widgets::Rect all;
        for (const double at_z : heights) {
            const ImVec2 end = pen::vec(map.at(std::min(2.0 * x - ring_x, ring_x - side * 0.006), at_z));
            const widgets::Rect one = draw_loop(scene, pen::vec(map.at(ring_x, at_z)), end, radius, colour);
            all = all.w == 0.0f
                      ? one
                      : widgets::Rect{all.x, std::min(all.y, one.y), all.w, std::abs(one.y - all.y) + one.h};
        }
        return all;
    }
    return mirrored(x, std::min(body.belly_z_m - radius_m, z));
}

widgets::Rect draw_through_wire(Scene& scene, const WorldToScreen& map, const document::Part& part,
                                ImU32 colour) {
    const Around body = around(scene, part.at_m.x);
    const float radius = std::clamp(map.px(0.0016), 3.0f, 6.0f);
    const double radius_m = static_cast<double>(radius) / map.px_per_m();
    const ImVec2 nose = pen::vec(map.at(-radius_m, part.at_m.z));
    const ImVec2 tail = pen::vec(map.at(body.length_m + radius_m, part.at_m.z));
    scene.list.AddLine({nose.x + radius, nose.y}, {tail.x - radius, tail.y}, colour, pen::medium);
    scene.list.AddCircle(nose, radius, colour, 0, pen::heavy);
    scene.list.AddCircle(tail, radius, colour, 0, pen::heavy);
    return {nose.x - radius, nose.y - radius, tail.x - nose.x + 2.0f * radius, 2.0f * radius};
}

widgets::Rect draw_pin(Scene& scene, const WorldToScreen& map, const document::Part& part, ImU32 colour) {
    const Around body = around(scene, part.at_m.x);
    const double inset = 0.12 * (body.back_z_m - body.belly_z_m);
    const ImVec2 top = pen::vec(map.at(part.at_m.x, body.back_z_m - inset));
    const ImVec2 low = pen::vec(map.at(part.at_m.x, body.belly_z_m + inset));
    scene.list.AddLine(top, low, colour, pen::heavy);
    const float eye = std::clamp(map.px(0.0018), 3.0f, 6.0f);
    // Bent over at the top, so that it does not fall through.
    scene.list.AddLine(top, {top.x + eye, top.y}, colour, pen::heavy);
    return {top.x - eye, top.y, 2.0f * eye, low.y - top.y};
}

/// A generic hook outline: ring, shank, bend, point.
widgets::Rect draw_hook(Scene& scene, const WorldToScreen& map, const document::Part& part, ImU32 colour) {
    const HookHanger from = hook_hanger(scene.document, *scene.body().lines, part);
    const ImVec2 belly = pen::vec(map.at(from.x_m, from.z_m));
    const float drop = map.px(hook_drop_m(part, from));
    const float radius = std::clamp(0.1f * drop, 2.5f, 5.0f);
    // Below the ring of its hanger.
    const ImVec2 ring{belly.x, belly.y + radius + 4.0f};
    scene.list.AddCircle(ring, radius, colour, 0, pen::medium);
    const float bend = std::clamp(0.28f * drop, 5.0f, 16.0f);
    const float shank_end = std::max(ring.y + radius + 3.0f, belly.y + drop - bend);
    std::vector<ImVec2> wire{{ring.x, ring.y + radius}, {ring.x, shank_end}};
    for (int i = 1; i <= 12; ++i) {
        const float t = std::numbers::pi_v<float> * static_cast<float>(i) / 12.0f;
        wire.push_back({ring.x + bend * 0.5f * (1.0f - std::cos(t)), shank_end + bend * 0.6f * std::sin(t)});
    }
    wire.push_back({ring.x + bend, shank_end - 0.55f * bend});
    pen::line(scene.list, wire, colour, pen::heavy);
    scene.list.AddLine({ring.x + bend, shank_end - 0.55f * bend},
                       {ring.x + 0.68f * bend, shank_end - 0.15f * bend}, colour, pen::medium);
    return {ring.x - radius, belly.y, bend + 2.0f * radius, drop + 2.0f};
}

widgets::Rect draw_tail(Scene& scene, const WorldToScreen& map, const document::Part& part, ImU32 colour,
                        ImU32 ground) {
    const auto& lines = *scene.body().lines;
    const double length = lines.length_m();
    const double end = tail_end_m(part, length);
    const double root = length - 0.05 * length;
    const auto station = lines.at(root);
    const double half = std::max(0.6 * station.half_height_m, 0.002);
    const double fork = 1.9 * std::max(station.half_height_m, 0.004);
    const double middle = station.centre_z_m;
    // A paddle outline: along the root, out to the two tips, in to the notch.
    const std::array<std::array<double, 2>, 7> shape{{{root, half},
                                                      {length + 0.25 * (end - length), 0.9 * half},
                                                      {end, fork},
                                                      {end - 0.16 * (end - length), 0.0},
                                                      {end, -fork},
                                                      {length + 0.25 * (end - length), -0.9 * half},
                                                      {root, -half}}};
    std::vector<ImVec2> rim;
    for (const auto& p : shape)
        rim.push_back(pen::vec(map.at(p[0], middle + p[1])));
    const ImVec2 inside = pen::vec(map.at(length + 0.4 * (end - length), middle));
    pen::fill_star(scene.list, inside, rim, look::faded(ground, 0.55f));
    rim.push_back(rim.front());
    pen::dashed(scene.list, rim, colour, pen::medium);
    const ImVec2 low = pen::vec(map.at(length, middle - fork));
    const ImVec2 high = pen::vec(map.at(end, middle + fork));
    return {low.x, high.y, high.x - low.x, low.y - high.y};
}

widgets::Rect draw_glass_eye(Scene& scene, const WorldToScreen& map, const document::Part& part,
                             ImU32 colour) {
    const ImVec2 at = pen::vec(map.at(part.at_m.x, part.at_m.z));
    const float radius = std::clamp(map.px(0.0035), 5.0f, 14.0f);
    scene.list.AddCircleFilled(at, radius, scene.ink().paper);
    scene.list.AddCircle(at, radius, colour, 0, pen::medium);
    scene.list.AddCircleFilled(at, 0.42f * radius, colour);
    return square(at, radius);
}

widgets::Rect draw_bead(Scene& scene, const WorldToScreen& map, const document::Part& part, ImU32 colour) {
    const ImVec2 at = pen::vec(map.at(part.at_m.x, part.at_m.z));
    const float half = 4.0f;
    scene.list.AddRectFilled({at.x - half, at.y - half}, {at.x + half, at.y + half}, scene.ink().paper);
    scene.list.AddRect({at.x - half, at.y - half}, {at.x + half, at.y + half}, colour, 0.0f, 0, pen::medium);
    return square(at, half);
}

} // namespace

void draw_dress(Scene& scene, const WorldToScreen& map) {
    draw_soft_tail(scene, map, false, false);
    for (const auto& part : scene.document.parts) {
        const Around body = around(scene, part.at_m.x);
        switch (glyph_of(part, body.belly_z_m, body.length_m)) {
        case Glyph::hook:
            draw_hook(scene, map, part, scene.ink().metal);
            break;
        case Glyph::soft_tail:
            draw_tail(scene, map, part, scene.ink().ink, scene.ink().tint);
            break;
        case Glyph::glass_eye:
            draw_glass_eye(scene, map, part, scene.ink().ink);
            break;
        default:
            break;
        }
    }
}

void draw_parts(Scene& scene, const WorldToScreen& map) {
    for (std::size_t i = 0; i < scene.document.parts.size(); ++i) {
        const auto& part = scene.document.parts[i];
        const bool chosen = scene.chosen(state::ItemKind::part, i);
        const ImU32 metal = chosen ? scene.ink().mark : scene.ink().metal;
        const ImU32 ink = chosen ? scene.ink().mark : scene.ink().ink;
        const Around body = around(scene, part.at_m.x);
        widgets::Rect place;
        switch (glyph_of(part, body.belly_z_m, body.length_m)) {
        case Glyph::wire_eye:
            place = draw_wire_eye(scene, map, part, metal);
            break;
        case Glyph::through_wire:
            place = draw_through_wire(scene, map, part, metal);
            break;
        case Glyph::pin:
            place = draw_pin(scene, map, part, metal);
            break;
        case Glyph::hook:
            place = draw_hook(scene, map, part, metal);
            break;
        case Glyph::soft_tail:
            place = draw_tail(scene, map, part, ink, scene.ink().tint);
            break;
        case Glyph::glass_eye:
            place = draw_glass_eye(scene, map, part, ink);
            break;
        case Glyph::ring:
            place = draw_ring(scene, pen::vec(map.at(part.at_m.x, part.at_m.z)),
                              std::clamp(map.px(0.002), 3.0f, 8.0f), metal, pen::medium);
            break;
        case Glyph::bead:
            place = draw_bead(scene, map, part, ink);
            break;
        }
        if (chosen) {
            pen::corners(scene.list, {place.x - 5.0f, place.y - 5.0f},
                         {place.right() + 5.0f, place.bottom() + 5.0f}, scene.ink().mark, 7.0f, pen::heavy);
        }
        add_hit(scene, "draw.part." + std::to_string(i), {state::ItemKind::part, static_cast<int>(i)}, place,
                2);
    }
}

} // namespace evenfall::shell::drawing
