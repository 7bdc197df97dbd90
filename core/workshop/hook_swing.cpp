#include "workshop/hook_swing.hpp"

#include "materials/solids.hpp"
#include "workshop/chain.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace evenfall::joints {

namespace {

constexpr int girth_levels = 16;
constexpr int bend_steps = 8;

bool is_hook(const document::Part& part) {
    return part.reach_m.value_or(0.0) > 0.0;
}

int segment_of(const document::Part& part, const shape::Body& body) {
    return std::clamp(part.segment.value_or(shape::nearest_segment(body, part.at_m.x)), 0,
                      static_cast<int>(body.segments.size()) - 1);
}

/// Distance from a hanger to the edge of a cut, on the lower half of the body.
double to_cut_m(const Hanger& hanger, const shape::Body& body, double at_m) {
    const shape::Station station = body.lines->at(at_m);
    double nearest = std::numeric_limits<double>::infinity();
    for (int k = 0; k <= girth_levels; ++k) {
        const double z_m =
            station.centre_z_m - station.half_height_m * (1.0 - static_cast<double>(k) / girth_levels);
        // At the belly itself the skin may be level: any y within its half width is on the edge.
        const double half_m = shape::skin_half_width(*body.lines, at_m, z_m);
        const double y_m =
            k == 0 ? std::clamp(hanger.at_m.y, -half_m, half_m) : std::copysign(half_m, hanger.at_m.y);
        nearest = std::min(nearest, length(Vec3{at_m, y_m, z_m} - hanger.at_m));
    }
    return nearest;
}

/// A point of a segment in the segment's new position.
Vec3 carried(const Vec3& at, const SegmentPose& stand) {
    const Pin p = stand.of(at.x, at.y);
    return {p.x_m, p.y_m, at.z};
}

struct Bend {
    std::vector<SegmentPose> stands;
    std::optional<SwingSide> way;
    bool part_way = false;
};

std::vector<Bend> bends(const shape::Body& body, std::span<const Pin> pins, const Swings& swings) {
    std::vector<Bend> out{{std::vector<SegmentPose>(body.segments.size()), std::nullopt}};
    if (pins.empty()) return out;
    for (const SwingSide way : {SwingSide::port, SwingSide::starboard}) {
        // Full swing first: of several equal results the first is reported.
        for (int k = bend_steps; k > 0; --k) {
            std::vector<double> turned = swings[static_cast<std::size_t>(way)];
            for (double& rad : turned)
                rad *= (way == SwingSide::port ? -1.0 : 1.0) * k / bend_steps;
            out.push_back({chain_poses(pins, turned), way, k < bend_steps});
        }
    }
    return out;
}

} // namespace

Hanger hanger_of(const document::Part& hook, const shape::Body& body) {
    Hanger h{hook.at_m, hook.reach_m.value_or(0.0), segment_of(hook, body)};
    const double to_hanger_m = hanger_share * h.reach_m;
    if (hook.at_m.x > body.lines->length_m())
        h.at_m.x -= to_hanger_m;
    else
        h.at_m.z += to_hanger_m;
    return h;
}

std::vector<HookFoul> hook_fouls(const document::Document& document, const shape::Body& body,
                                 std::span<const Pin> pins, const Swings& swings) {
    std::vector<HookFoul> out;
    const std::vector<Bend> poses = bends(body, pins, swings);
    for (std::size_t i = 0; i < document.parts.size(); ++i) {
        if (!is_hook(document.parts[i])) continue;
        const Hanger hook = hanger_of(document.parts[i], body);
        const auto meets = [&](FoulKind what, int other, const Vec3& at_m, int segment, double reach_m) {
            HookFoul worst{static_cast<int>(i), what, other, 0.0, {}};
            for (const Bend& pose : poses) {
                const Vec3 here = carried(hook.at_m, pose.stands[static_cast<std::size_t>(hook.segment)]);
                const Vec3 there = carried(at_m, pose.stands[static_cast<std::size_t>(segment)]);
                const double over_m = hook.reach_m + reach_m - length(there - here);
                if (over_m <= worst.over_m) continue;
                worst.over_m = over_m;
                worst.bent = pose.way;
                worst.part_way = pose.part_way;
                if (!pose.way) break; // fouls when straight; bending adds nothing
            }
            if (worst.over_m > 0.0) out.push_back(worst);
        };
        for (std::size_t k = 0; k < document.parts.size(); ++k) {
            const document::Part& other = document.parts[k];
            if (k > i && is_hook(other)) {
                const Hanger second = hanger_of(other, body);
                meets(FoulKind::hook, static_cast<int>(k), second.at_m, second.segment, second.reach_m);
            }
            if (k != i && materials::is_soft(other.material) && other.at_m.x > hook.at_m.x) {
                meets(FoulKind::tail, static_cast<int>(k), other.at_m, segment_of(other, body), 0.0);
            }
        }
        if (document.tail && document.tail->x_m > hook.at_m.x) {
            meets(FoulKind::tail, -1, {document.tail->x_m, 0.0, document.tail->z_m},
                  static_cast<int>(body.segments.size()) - 1, 0.0);
        }
        for (std::size_t k = 0; k < document.joints.size(); ++k) {
            const double over_m = hook.reach_m - to_cut_m(hook, body, document.joints[k].at_m);
            if (over_m > 0.0)
                out.push_back({static_cast<int>(i), FoulKind::joint, static_cast<int>(k), over_m, {}});
        }
    }
    return out;
}

} // namespace evenfall::joints
