#include "drawing/scene.hpp"

#include "drawing/glyph.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::drawing {

void add_hit(Scene& scene, const std::string& id, state::Selection item, const widgets::Rect& rect,
             int rank) {
    if (scene.lens) return;
    // Items of the open step win over others at the same distance.
    const int preferred = state::step_of(item.kind) == scene.view.step ? rank - 10 : rank;
    scene.hits.push_back({item, rect, preferred, scene.pane});
    scene.ui.items.record({id, rect.x, rect.y, rect.w, rect.h, !scene.ui.covered});
}

const Hit* nearest_hit(const std::vector<Hit>& hits, ImVec2 point) {
    // Half of the least touch target: anything closer counts as touched.
    constexpr float reach_px = 0.5f * look::target;
    const Hit* best = nullptr;
    float best_way = reach_px + 3.0f;
    for (const Hit& hit : hits) {
        const float dx = std::max({hit.rect.x - point.x, point.x - hit.rect.right(), 0.0f});
        const float dy = std::max({hit.rect.y - point.y, point.y - hit.rect.bottom(), 0.0f});
        const float way = std::hypot(dx, dy);
        // Differences too small for a finger count as equal.
        constexpr float equal_px = 3.0f;
        const bool nearer = way < best_way - equal_px;
        const bool as_near = best != nullptr && way <= best_way + equal_px && hit.rank < best->rank;
        if (nearer || as_near) {
            best = &hit;
            best_way = way;
        }
    }
    return best;
}

PartsExtent reach(const document::Document& document, const Evaluation& evaluation) {
    const auto& lines = *evaluation.body.lines;
    const double length = lines.length_m();
    PartsExtent result{0.0, length, 0.0};
    for (double x : lines.breakpoints_m()) {
        const auto station = lines.at(x);
        result.lowest_z_m = std::min(result.lowest_z_m, station.centre_z_m - station.half_height_m);
    }
    for (const fittings::Fitting& f : fittings::fittings(document, evaluation.body)) {
        for (const Vec3& eye : f.eyes_m) {
            const double round_m = f.eye_inside_m;
            result.fore_m = std::min(result.fore_m, eye.x - round_m);
            result.aft_m = std::max(result.aft_m, eye.x + round_m);
            result.lowest_z_m = std::min(result.lowest_z_m, eye.z - round_m);
            result.highest_z_m = std::max(result.highest_z_m, eye.z + round_m);
        }
    }
    if (document.tail) {
        result.aft_m = std::max(result.aft_m, document.tail->x_m + document.tail->back.back().x_m);
        for (const auto& point : document.tail->belly)
            result.lowest_z_m = std::min(result.lowest_z_m, document.tail->z_m + point.value);
        for (const auto& point : document.tail->back)
            result.highest_z_m = std::max(result.highest_z_m, document.tail->z_m + point.value);
    }
    for (const auto& part : document.parts) {
        const double x = std::clamp(part.at_m.x, 0.0, length);
        const auto station = lines.at(x);
        const double belly = station.centre_z_m - station.half_height_m;
        switch (glyph_of(part, belly, length)) {
        case Glyph::hook: {
            const HookHanger from = hook_hanger(document, lines, part);
            result.lowest_z_m = std::min(result.lowest_z_m, from.z_m - hook_drop_m(part, from));
            result.aft_m = std::max(result.aft_m, from.x_m + 0.007);
            break;
        }
        case Glyph::through_wire:
            result.fore_m = std::min(result.fore_m, -0.0045);
            result.aft_m = std::max(result.aft_m, length + 0.0045);
            break;
        case Glyph::wire_eye:
            // A ring projects at the nose or tail; in between it comes out of the belly.
            if (part.at_m.x < nose_share * length) result.fore_m = std::min(result.fore_m, -0.0045);
            if (part.at_m.x > tail_share * length) result.aft_m = std::max(result.aft_m, length + 0.0045);
            break;
        case Glyph::soft_tail:
            result.aft_m = std::max(result.aft_m, tail_end_m(part, length));
            break;
        default:
            result.lowest_z_m = std::min(result.lowest_z_m, part.at_m.z);
            result.aft_m = std::max(result.aft_m, part.at_m.x + 0.003);
            result.fore_m = std::min(result.fore_m, part.at_m.x - 0.004);
            break;
        }
    }
    return result;
}

} // namespace evenfall::shell::drawing
