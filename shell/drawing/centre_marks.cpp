#include "drawing/flags.hpp"
#include "drawing/scene.hpp"

#include "look/words_drawing.hpp"

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;

/// B: an open ring on a mast, its letter in a round flag.
void draw_b(Scene& scene, ImVec2 at, ImVec2 flag) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    list.AddLine(at, flag, ink.paper, 4.0f);
    list.AddLine(at, flag, ink.water_line, pen::medium);
    list.AddCircleFilled(at, 6.0f, ink.paper);
    list.AddCircle(at, 6.0f, ink.water_line, 0, pen::heavy);
    list.AddCircleFilled(at, 1.5f, ink.water_line);
    list.AddCircleFilled(flag, 11.0f, ink.paper);
    list.AddCircle(flag, 11.0f, ink.water_line, 0, pen::medium);
    ImFont* const font = scene.ui.type.label_strong;
    pen::text(list, font, flag.x, flag.y - 0.5f * font->FontSize, ink.water_line, words::letter_b,
              pen::Side::middle);
}

/// G: a solid plumb bob whose point is at the place itself, its letter in a square flag.
void draw_g(Scene& scene, ImVec2 at, ImVec2 flag) {
    auto& list = scene.list;
    const auto& ink = scene.ink();
    list.AddLine(at, flag, ink.paper, 4.0f);
    list.AddLine(at, flag, ink.mark, pen::medium);
    const ImVec2 bob[] = {{at.x, at.y + 7.0f}, {at.x - 6.0f, at.y}, {at.x, at.y - 7.0f}, {at.x + 6.0f, at.y}};
    list.AddConvexPolyFilled(bob, 4, ink.mark);
    list.AddPolyline(bob, 4, ink.paper, ImDrawFlags_Closed, pen::hair);
    list.AddRectFilled({flag.x - 10.0f, flag.y - 10.0f}, {flag.x + 10.0f, flag.y + 10.0f}, ink.paper, 2.0f);
    list.AddRect({flag.x - 10.0f, flag.y - 10.0f}, {flag.x + 10.0f, flag.y + 10.0f}, ink.mark, 2.0f, 0,
                 pen::medium);
    ImFont* const font = scene.ui.type.label_strong;
    pen::text(list, font, flag.x, flag.y - 0.5f * font->FontSize, ink.mark, words::letter_g,
              pen::Side::middle);
}

} // namespace

void draw_centres(Scene& scene, const WorldToScreen& map, bool above) {
    const auto& answers = scene.evaluation.answers;
    const Vec3& g = answers.g_m;
    const Vec3& b = answers.b_m;
    const ImVec2 at_g = pen::vec(above ? map.at(g.x, g.y) : map.at(g.x, g.z));
    const ImVec2 at_b = pen::vec(above ? map.at(b.x, b.y) : map.at(b.x, b.z));
    if (above) {
        // Seen from above the two nearly coincide: symbols only; the letters are in the side view.
        scene.list.AddCircle(at_b, 6.0f, scene.ink().water_line, 0, pen::heavy);
        const ImVec2 bob[] = {{at_g.x, at_g.y + 5.0f},
                              {at_g.x - 4.0f, at_g.y},
                              {at_g.x, at_g.y - 5.0f},
                              {at_g.x + 4.0f, at_g.y}};
        scene.list.AddConvexPolyFilled(bob, 4, scene.ink().mark);
        return;
    }
    // Flags point away from each other, whichever of the two is forward, and leave numbers and names to be
    // read.
    const float forward = g.x <= b.x ? -1.0f : 1.0f;
    std::vector<widgets::Rect> taken = scene.labels;
    const ImVec2 flag_b = flag_place(at_b, -forward, -1.0f, taken);
    taken.push_back({flag_b.x - 0.5f * flag_size, flag_b.y - 0.5f * flag_size, flag_size, flag_size});
    draw_b(scene, at_b, flag_b);
    draw_g(scene, at_g, flag_place(at_g, forward, 1.0f, taken));
}

} // namespace evenfall::shell::drawing
