#pragma once

// What fingers, wheel and keys do on the sheet.

#include "drawing/places.hpp"
#include "drawing/scene.hpp"
#include "state/drag.hpp"

namespace evenfall::shell::drawing {

/// Two fingers or the wheel over the sheet: enlarges and moves it.
void take_zoom(widgets::Ui& ui, state::Session& session, const widgets::Rect& area);

/// One finger: chooses what it taps, drags what it holds, puts a point where it taps a line in the Shape
/// step, slides the station of the section elsewhere; two taps on bare paper fit the sheet again. One drag is
/// one entry of the history.
void take_finger(Scene& scene, state::Session& session, const widgets::Touch& touch, const Places& places);

/// Arrow keys on the sheet: nudge the chosen thing by a step.
void take_keys(widgets::Ui& ui, state::Session& session, const widgets::Touch& touch);

/// The lens above the finger; and where the held thing cannot be, its refusal with the reason.
void draw_held(Scene& scene, const Places& places, const widgets::Rect& area);

/// The rules that drags and nudges go by.
[[nodiscard]] state::DragRules rules_of(const state::Session& session, state::Pane pane, double px_per_m);

} // namespace evenfall::shell::drawing
