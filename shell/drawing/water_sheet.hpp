#pragma once

#include "drawing/scene.hpp"
#include "state/motion.hpp"
#include "state/session.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::drawing {

/// The drawing while the Water step is open: in its Swim view the lure in its wave; in the others the lure
/// falling from rest in real time, with "water.play" and "water.scrub"; or floating at rest; or suspended.
/// Requests more frames only while it moves.
void water_sheet(widgets::Ui& ui, state::Session& session, state::PanelState& motion,
                 const widgets::Rect& area);

// Its parts.
void draw_fall(Scene& scene, const fall::Track& track, double now_s, const widgets::Rect& rect);
void draw_afloat(Scene& scene, const afloat::FloatAnswers& afloat, const widgets::Rect& rect);

/// The lure from above in its wave in true tempo or slowed, with "swim.play", "swim.slow" and
/// "swim.retrieve".
void swim_sheet(Scene& scene, const state::Session& session, state::PanelState& motion,
                const widgets::Rect& area);
struct SwimLabels {
    std::string tempo; ///< "true tempo"
    std::string beats; ///< "0.6 a second at 0.50 m/s"; empty without a beat
};
/// `beat` is the part of a beat that is shown, 0 to 1.
void draw_swim(Scene& scene, const swim::Wave& wave, double beat, const SwimLabels& labels,
               const widgets::Rect& rect);

/// A sentence in the place of a drawing.
void say_instead(Scene& scene, const widgets::Rect& area, std::string_view sentence);

/// "on its side", "on its side, either side".
[[nodiscard]] std::string posture_words(const afloat::Rest& rest);

} // namespace evenfall::shell::drawing
