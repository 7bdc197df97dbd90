#include "drawing/swim_text.hpp"
#include "drawing/water_sheet.hpp"
#include "look/words_swim.hpp"
#include "look/words_water.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"

#include <algorithm>
#include <array>

namespace evenfall::shell::drawing {
namespace {

namespace words = look::words;

constexpr double slowed = 0.25; ///< share of the tempo in slow motion

/// Start, slow motion and the three retrieves in one line.
void controls(Scene& scene, state::PanelState& motion, const widgets::Rect& row) {
    widgets::Ui& ui = scene.ui;
    auto& swim = motion.swim;
    const float play_w = ui.phone ? 76.0f : 104.0f;
    const float slow_w = ui.phone ? 108.0f : 128.0f;
    const float between = ui.phone ? 6.0f : 12.0f;
    const bool playing = swim.clock.playing();
    if (widgets::button_at(ui, "swim.play", {row.x, row.y, play_w, row.h},
                           playing ? words::play_pause : words::play_start,
                           playing ? widgets::ButtonKind::plain : widgets::ButtonKind::main)) {
        if (playing)
            swim.clock.pause();
        else
            swim.clock.start(ui.now_s);
    }
    const widgets::Rect slow{row.x + play_w + between, row.y, slow_w, row.h};
    const widgets::Touch touch = widgets::touch_area(ui, "swim.slow", slow);
    if (touch.tapped) swim.slow_motion = !swim.slow_motion;
    const auto& ink = ui.inks();
    scene.list.AddRectFilled({slow.x, slow.y}, {slow.right(), slow.bottom()},
                             touch.pressed      ? ink.pressed
                             : swim.slow_motion ? ink.tint
                                                : ink.well,
                             look::control_rounding);
    if (swim.slow_motion)
        scene.list.AddRect({slow.x, slow.y}, {slow.right(), slow.bottom()}, ink.ink, look::control_rounding,
                           0, 1.5f);
    widgets::text_in(ui, slow.inset(4.0f), swim.slow_motion ? ui.type.label_strong : ui.type.label, ink.ink,
                     words::slow_motion, widgets::Align::middle);
    if (touch.focused) widgets::focus_ring(ui, slow, look::control_rounding);

    const float left = slow.right() + between;
    const float most_w = ui.phone ? row.w : 300.0f;
    const widgets::Rect speeds{left, row.y, std::min(row.right() - left, most_w), row.h};
    const std::array<std::string_view, 3> names{words::retrieve_names[0], words::retrieve_names[1],
                                                words::retrieve_names[2]};
    // Where there is no room, the rows of the panel choose alone.
    if (speeds.w < 3.0f * 44.0f) return;
    if (const auto chosen = widgets::choice_at(ui, "swim.retrieve", speeds, names, swim.retrieve))
        swim.retrieve = *chosen;
}

} // namespace

void swim_sheet(Scene& scene, const state::Session& session, state::PanelState& motion,
                const widgets::Rect& area) {
    auto& swim = motion.swim;
    const swim::SwimAnswer* answer = swim.answers.answer();
    if (answer == nullptr || !answer->wave) {
        swim.clock.pause();
        say_instead(scene, area,
                    swim.answers.refusal().empty() ? words::swim_begins : words::swim_no_answer_why);
        return;
    }
    swim::Wave wave = *answer->wave;
    // At the tempo that the panel tells, of all draws and counts.
    const auto known = swim.answers.known_beats(session);
    if (known) wave.beats_per_m = known->per_m.mid;
    const bool beats = wave.poses.size() > 1 && wave.beats_per_m > 0.0;
    if (!beats) {
        swim.clock.pause();
        draw_swim(scene, wave, 0.0, {words::stays_so, {}}, area);
        return;
    }
    const widgets::Rect row{area.x, area.bottom() - look::target, area.w, look::target};
    controls(scene, motion, row);
    const state::Retrieve& retrieve = session.settings.retrieve;
    const double speed_m_s = retrieve.speed_m_s[static_cast<std::size_t>(swim.retrieve)];
    const double beats_per_s = wave.beats_per_m * speed_m_s;
    swim.clock.advance(scene.ui.now_s, beats_per_s * (swim.slow_motion ? slowed : 1.0));
    SwimLabels labels{swim.slow_motion ? words::slow_tempo : words::true_tempo, {}};
    // Of two links that glide from side to side no beats are told.
    if (known) labels.beats = beats_text(beats_per_s) + " " + words::beats_a_second;
    if (known && !scene.ui.phone)
        labels.beats += std::string(words::at_speed) + retrieve_text(retrieve, speed_m_s, scene.ui.units);
    draw_swim(scene, wave, swim.clock.at(), labels, {area.x, area.y, area.w, row.y - area.y - 8.0f});
    if (swim.clock.playing()) scene.ui.frames_wanted = std::max(scene.ui.frames_wanted, 2);
}

} // namespace evenfall::shell::drawing
