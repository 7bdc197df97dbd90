#pragma once

// What the model of swimming was tried on (own runs in water in three dimensions, and what they resemble).

#include "base/problem.hpp"
#include "body/body.hpp"
#include "document/document.hpp"
#include "water/swim/chain.hpp"

namespace evenfall::swim {

/// The numbers that are held against the limits, besides those of document and body.
struct Held {
    double tie_x_m = 0.0; ///< of the line tie, from the nose
    std::size_t tie = 0;  ///< the hanger; as many as there are: none is drawn
    double mass_kg = 0.0;
    double in_water_kg = 0.0;
    double kinematic_m2_s = 0.0; ///< of the water
};

/// One sentence for each limit that the lure breaks. Limits that need joints are left out where their number
/// is one that is broken.
///
///   joints   their swings; as many as the document has
[[nodiscard]] Problems beyond_limits(const document::Document& document, const shape::Body& body,
                                     const std::vector<Joint>& joints, const Held& held);

} // namespace evenfall::swim
