#pragma once

// The picture behind the side view, in the Shape step, and its marks under a finger.

#include "drawing/scene.hpp"

namespace evenfall::shell::drawing {

/// The picture itself, over the wood and under its lines, so that both can be seen.
void draw_backdrop(Scene& scene, const WorldToScreen& map);
void draw_backdrop_marks(Scene& scene, const WorldToScreen& map);

/// A finger on a mark moves it over the picture, which lies still meanwhile. True while the finger is taken
/// by a mark. `busy`: the finger is at something else already.
bool take_backdrop_finger(widgets::Ui& ui, state::Backdrop& backdrop, const widgets::Touch& touch,
                          const WorldToScreen& map, bool busy);

} // namespace evenfall::shell::drawing
