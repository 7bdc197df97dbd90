#include "drawing/water_sheet.hpp"

#include "look/words_drawing.hpp"
#include "look/words_water.hpp"
#include "widgets/button.hpp"
#include "widgets/slider.hpp"

#include <algorithm>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;

void play_controls(Scene& scene, state::PlayClock& clock, double end_s, const widgets::Rect& row) {
    widgets::Ui& ui = scene.ui;
    const float button_w = ui.phone ? 88.0f : 104.0f;
    const bool playing = clock.playing();
    if (widgets::button_at(ui, "water.play", {row.x, row.y, button_w, row.h},
                           playing ? words::play_pause : words::play_start,
                           playing ? widgets::ButtonKind::plain : widgets::ButtonKind::main)) {
        if (playing) {
            clock.pause();
        } else {
            clock.start(ui.now_s, end_s);
        }
    }
    const widgets::Rect bar{row.x + button_w + 12.0f, row.y, row.w - button_w - 16.0f, row.h};
    const double share = end_s > 0.0 ? clock.at_s(end_s) / end_s : 0.0;
    if (const auto slid = widgets::slider_at(ui, "water.scrub", bar, share)) clock.slide_to(*slid * end_s);
}

void falling(Scene& scene, const state::Session& session, state::PanelState& motion,
             const widgets::Rect& area) {
    const fall::Track* track = motion.answers.track(session);
    if (track == nullptr || track->points.size() < 2) {
        say_instead(scene, area, words::no_track);
        return;
    }
    const double end_s = state::duration_s(*track);
    motion.clock.advance(scene.ui.now_s, end_s);
    const widgets::Rect row{area.x, area.bottom() - look::target, area.w, look::target};
    play_controls(scene, motion.clock, end_s, row);
    // Drawn after the finger was read, so that the lure matches the knob.
    draw_fall(scene, *track, motion.clock.at_s(end_s), {area.x, area.y, area.w, row.y - area.y - 8.0f});
    if (motion.clock.playing()) scene.ui.frames_wanted = std::max(scene.ui.frames_wanted, 2);
}

} // namespace

void say_instead(Scene& scene, const widgets::Rect& area, std::string_view sentence) {
    scene.list.AddRectFilled({area.x, area.y}, {area.right(), area.bottom()}, scene.ink().water,
                             look::control_rounding);
    const std::string broken = widgets::broken_at_spaces(scene.ui.type.body, sentence, area.w - 32.0f);
    pen::text(scene.list, scene.ui.type.body, area.x + 16.0f, area.y + 16.0f, scene.ink().ink, broken);
}

void water_sheet(widgets::Ui& ui, state::Session& session, state::PanelState& motion,
                 const widgets::Rect& area) {
    ImDrawList& list = *ImGui::GetWindowDrawList();
    if (!session.evaluation()) {
        pen::text(list, ui.type.body, area.x, area.y, ui.ink->ink_soft, words::nothing_to_draw);
        return;
    }
    Scene scene{ui, list, session.document(), *session.evaluation(), session.view, {}, {}};
    if (session.view.water_view == state::WaterView::swim) {
        motion.clock.pause();
        swim_sheet(scene, session, motion, area);
        return;
    }
    motion.swim.clock.pause();
    switch (scene.evaluation.answers.behaviour) {
    case Behaviour::falls:
        falling(scene, session, motion, area);
        return;
    case Behaviour::floats:
        motion.clock.pause();
        if (const auto* afloat = motion.answers.afloat(session); afloat != nullptr && afloat->floats) {
            draw_afloat(scene, *afloat, area);
        } else {
            say_instead(scene, area, words::no_rest);
        }
        return;
    case Behaviour::suspends:
        motion.clock.pause();
        draw_hang_view(scene, area);
        pen::text(list, ui.type.label, area.x + 10.0f, area.y + 34.0f, scene.ink().ink,
                  widgets::broken_at_spaces(ui.type.label, words::hangs_still_here, area.w - 20.0f));
        return;
    }
}

} // namespace evenfall::shell::drawing
