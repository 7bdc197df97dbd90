#include "drawing/scene.hpp"

#include "body.hpp"

#include <algorithm>

namespace evenfall::shell::drawing {
namespace {

using fittings::Fitting;
using fittings::FittingKind;

/// A rectangle round a line of wire and its eyes.
class Bounds {
public:
    void add(ImVec2 at, float round) {
        low_ = {std::min(low_.x, at.x - round), std::min(low_.y, at.y - round)};
        high_ = {std::max(high_.x, at.x + round), std::max(high_.y, at.y + round)};
    }
    [[nodiscard]] widgets::Rect rect() const { return {low_.x, low_.y, high_.x - low_.x, high_.y - low_.y}; }

private:
    ImVec2 low_{1e6f, 1e6f};
    ImVec2 high_{-1e6f, -1e6f};
};

widgets::Rect draw_wire(Scene& scene, const WorldToScreen& map, const Fitting& f, bool above, ImU32 colour) {
    const auto at = [&](const Vec3& p) { return pen::vec(map.at(p.x, above ? p.y : p.z)); };
    const float radius = std::max(2.5f, map.px(0.5 * f.eye_inside_m));
    Bounds bounds;
    const ImVec2 end = at(f.mouth_m + f.into * f.in_wood_m);
    ImVec2 from = at(f.mouth_m);
    for (const Vec3& eye : f.eyes_m) {
        scene.list.AddCircle(at(eye), radius, colour, 0, pen::heavy);
        bounds.add(at(eye), radius);
    }
    if (!f.eyes_m.empty()) from = at(f.eyes_m.front() + f.into * (0.5 * f.eye_inside_m));
    scene.list.AddLine(from, end, colour, pen::heavy);
    bounds.add(from, 1.0f);
    bounds.add(end, 1.0f);
    return bounds.rect();
}

} // namespace

void draw_fittings(Scene& scene, const WorldToScreen& map, bool above) {
    for (const Fitting& f : fittings::fittings(scene.document, scene.body())) {
        const auto i = static_cast<std::size_t>(f.item);
        const bool hanger = f.kind == FittingKind::hanger;
        // Hinges that do not weigh themselves are drawn by the parts that stand for them.
        if (!hanger && !(scene.document.joints[i].hinge && scene.document.joints[i].hinge->weighs)) continue;
        const bool chosen = hanger && scene.chosen(state::ItemKind::hanger, i);
        const widgets::Rect place =
            draw_wire(scene, map, f, above, chosen ? scene.ink().mark : scene.ink().metal);
        if (!hanger) continue;
        if (chosen) {
            pen::corners(scene.list, {place.x - 5.0f, place.y - 5.0f},
                         {place.right() + 5.0f, place.bottom() + 5.0f}, scene.ink().mark, 7.0f, pen::heavy);
        }
        add_hit(scene, (above ? "draw.above.hanger." : "draw.hanger.") + std::to_string(i),
                {state::ItemKind::hanger, f.item}, place, 2);
    }
}

} // namespace evenfall::shell::drawing
