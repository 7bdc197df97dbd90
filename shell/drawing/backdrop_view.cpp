#include "drawing/backdrop_view.hpp"

#include "look/words_picture.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;
using state::Backdrop;
using state::Mark;
using state::PicturePlacement;

constexpr std::array<const char*, state::mark_count> ids{"draw.picture.nose", "draw.picture.tail",
                                                         "draw.picture.rule_from", "draw.picture.rule_to"};
constexpr std::array<const char*, state::mark_count> names{words::mark_nose, words::mark_tail,
                                                           words::mark_rule, words::mark_rule};

std::size_t marks_shown(const Backdrop& backdrop) {
    return backdrop.by_rule() ? state::mark_count : 2;
}

ImVec2 on_screen(const WorldToScreen& map, const PicturePlacement& placement, picture::Spot spot) {
    const auto world = placement.world_of(spot);
    return pen::vec(map.at(world.x_m, world.z_m));
}

} // namespace

void draw_backdrop(Scene& scene, const WorldToScreen& map) {
    const Backdrop& backdrop = *scene.backdrop;
    const PicturePlacement placement = backdrop.placement();
    const double w = backdrop.width();
    const double h = backdrop.height();
    const ImVec2 a = on_screen(map, placement, {0.0, 0.0});
    const ImVec2 b = on_screen(map, placement, {w, 0.0});
    const ImVec2 c = on_screen(map, placement, {w, h});
    const ImVec2 d = on_screen(map, placement, {0.0, h});
    const auto alpha = static_cast<ImU32>(std::lround(255.0f * backdrop.strength()));
    if (backdrop.texture != 0) {
        scene.list.AddImageQuad(reinterpret_cast<ImTextureID>(backdrop.texture), a, b, c, d, {0.0f, 0.0f},
                                {1.0f, 0.0f}, {1.0f, 1.0f}, {0.0f, 1.0f}, 0x00FFFFFFu | (alpha << 24));
    }
    scene.list.AddQuad(a, b, c, d, scene.ink().line, pen::hair);
}

void draw_backdrop_marks(Scene& scene, const WorldToScreen& map) {
    const Backdrop& backdrop = *scene.backdrop;
    const PicturePlacement placement = backdrop.placement();
    for (std::size_t i = 0; i < marks_shown(backdrop); ++i) {
        const ImVec2 at = on_screen(map, placement, backdrop.mark(static_cast<Mark>(i)));
        const bool held = backdrop.held == static_cast<Mark>(i);
        constexpr float ring = 9.0f;
        constexpr float arm = 15.0f;
        scene.list.AddCircle(at, ring, scene.ink().paper, 0, 4.0f);
        scene.list.AddCircle(at, ring, scene.ink().mark, 0, held ? pen::heavy : pen::medium);
        scene.list.AddLine({at.x - arm, at.y}, {at.x + arm, at.y}, scene.ink().mark, pen::hair);
        scene.list.AddLine({at.x, at.y - arm}, {at.x, at.y + arm}, scene.ink().mark, pen::hair);
        pen::text(scene.list, scene.ui.type.small, at.x, at.y + arm + 1.0f, scene.ink().ink, names[i],
                  pen::Side::middle, scene.ink().paper);
        if (!scene.lens)
            scene.ui.items.record({ids[i], at.x - 22.0f, at.y - 22.0f, 44.0f, 44.0f, !scene.ui.covered});
    }
}

bool take_backdrop_finger(widgets::Ui& ui, Backdrop& backdrop, const widgets::Touch& touch,
                          const WorldToScreen& map, bool busy) {
    const ImVec2 at = ImGui::GetIO().MousePos;
    if (!ImGui::IsMousePosValid(&at)) {
        if (backdrop.held) backdrop.hold(std::nullopt);
        return false;
    }
    const PicturePlacement placement = backdrop.placement();
    if (!backdrop.held && touch.pressed && !busy) {
        float nearest = 20.0f;
        std::optional<Mark> found;
        for (std::size_t i = 0; i < marks_shown(backdrop); ++i) {
            const ImVec2 mark = on_screen(map, placement, backdrop.mark(static_cast<Mark>(i)));
            const float way = std::hypot(mark.x - at.x, mark.y - at.y);
            if (way >= nearest) continue;
            nearest = way;
            found = static_cast<Mark>(i);
        }
        if (found) backdrop.hold(found);
    }
    if (!backdrop.held) return false;
    ui.glide.owned = true;
    if (!ImGui::IsMouseDown(ImGuiMouseButton_Left)) {
        // The picture is aligned again to the new place of the mark.
        backdrop.hold(std::nullopt);
        return true;
    }
    const ImVec2 way = ImGui::GetMouseDragDelta(ImGuiMouseButton_Left, 0.0f);
    if (std::hypot(way.x, way.y) > 3.0f)
        backdrop.put_mark(*backdrop.held, placement.spot_of(map.u_m(at.x), map.v_m(at.y)));
    return true;
}

} // namespace evenfall::shell::drawing
