#pragma once

#include "drawing/scene.hpp"
#include "state/motion.hpp"
#include "state/session.hpp"
#include "widgets/ui.hpp"

namespace evenfall::shell::drawing {

/// The drawing while the Water step is open: the lure falling from rest in real time, with "water.play" and
/// "water.scrub"; or floating at rest; or suspended. Requests more frames only while it moves.
void water_sheet(widgets::Ui& ui, state::Session& session, state::PanelState& motion,
                 const widgets::Rect& area);

// Its parts.
void draw_fall(Scene& scene, const fall::Track& track, double now_s, const widgets::Rect& rect);
void draw_afloat(Scene& scene, const afloat::FloatAnswers& afloat, const widgets::Rect& rect);

/// "on its side", "on its side, either side".
[[nodiscard]] std::string posture_words(const afloat::Rest& rest);

} // namespace evenfall::shell::drawing
