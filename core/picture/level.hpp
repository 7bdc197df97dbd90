#pragma once

#include "picture/profile.hpp"

namespace evenfall::picture {

/// A place beside the datum line [m]: x from the nose, z up.
struct Place {
    double x = 0.0;
    double z = 0.0;
};

/// The outline turned level and scaled: nose tip at x = 0, tail tip at x = length.
struct Levelled {
    std::vector<Place> ring;
    double length_m = 0.0;
    double turned_rad = 0.0;
};

/// Problems: numbers off their limits, places on one spot, an outline too short, too long or too high for a
/// drawing.
[[nodiscard]] Outcome<Levelled> levelled(const Contour& contour, const Scale& scale);

/// Back and belly of a levelled outline as functions of x, on places closer together towards nose and tail.
/// The last `face_m` at either end keep the height that they have there.
struct Sides {
    std::vector<Place> upper;
    std::vector<Place> lower;
    double overhang_m =
        0.0; ///< furthest that the outline lies off the nearer of the two (a bay, a forked tail)
};
[[nodiscard]] Sides sides_of(const Levelled& outline, double face_m);

/// Distance from a place to a line, looked for within `window_m` of it along x; infinity where nothing is
/// near.
[[nodiscard]] double distance_near(const std::vector<Place>& line, Place from, double window_m);

} // namespace evenfall::picture
