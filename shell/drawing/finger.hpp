#pragma once

// Handling of fingers, wheel and keys on the drawing.

#include "drawing/places.hpp"
#include "drawing/scene.hpp"
#include "state/drag.hpp"

namespace evenfall::shell::drawing {

/// Two fingers or the wheel over the drawing: zoom and pan.
void take_zoom(widgets::Ui& ui, state::Session& session, const widgets::Rect& area);

/// One finger: chooses what it taps, drags what it holds, adds a point where it taps a line in the Shape
/// step, moves the station of the section elsewhere; two taps on empty paper fit the drawing again. One drag
/// is one entry of the history.
void take_finger(Scene& scene, state::Session& session, const widgets::Touch& touch, const Places& places);

/// Arrow keys on the drawing: move the chosen item by one step.
void take_keys(widgets::Ui& ui, state::Session& session, const widgets::Touch& touch);

/// The magnifier above the finger; where the held item cannot be, the reason of the refusal.
void draw_held(Scene& scene, const Places& places, const widgets::Rect& area);

/// The rules for drags and arrow keys.
[[nodiscard]] state::DragRules rules_of(const state::Session& session, state::Pane pane, double px_per_m);

} // namespace evenfall::shell::drawing
