#pragma once

// The picture behind the side view, in every step that draws it, and dragging its marks in the Shape step.

#include "drawing/scene.hpp"

namespace evenfall::shell::drawing {

/// The picture itself, above the wood and below its lines, so that both are visible.
void draw_backdrop(Scene& scene, const WorldToScreen& map);
void draw_backdrop_marks(Scene& scene, const WorldToScreen& map);

/// Drags a mark over the picture, which stays still meanwhile. True while a mark has the finger. `busy`: the
/// finger is in use already.
bool take_backdrop_finger(widgets::Ui& ui, state::Backdrop& backdrop, const widgets::Touch& touch,
                          const WorldToScreen& map, bool busy);

} // namespace evenfall::shell::drawing
