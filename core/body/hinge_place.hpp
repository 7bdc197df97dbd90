#pragma once

#include "body/body.hpp"
#include "body/pin.hpp"

#include <optional>
#include <vector>

namespace evenfall::joints {

/// A stretch of heights; endless where a pocket is open.
struct Heights {
    double from_m = 0.0;
    double to_m = 0.0;

    [[nodiscard]] bool meets(const Heights& o) const { return from_m < o.to_m && o.from_m < to_m; }
};
[[nodiscard]] Heights heights_of(const document::Pocket& pocket);

/// Does the pocket's box, seen from above, hold the pin's axis?
[[nodiscard]] bool holds_axis(const document::Pocket& pocket, const Pin& pin);

/// One eye of a hinge and the pocket it turns in.
struct EyePlace {
    double z_m = 0.0;
    std::optional<int> pocket; ///< of document.pockets; absent: no pocket drawn round the pin at this height
};

/// Where a joint's hinge sits: from its own fields, else from the pockets drawn, else as is usual.
struct HingePlace {
    document::Hinge hinge;
    Pin pin;
    bool pocket_aft = true;     ///< the segment with pin and pockets is the aft one
    std::vector<EyePlace> eyes; ///< lowest first; one or more
    double eye_spacing_m = 0.0; ///< 0 with one eye
};

/// Heights that the hinge does not give are the middles of the pockets whose box holds the pin's axis, each
/// its own eye; without pockets, two eyes 0.6 of the body's height apart (common practice, no source).
[[nodiscard]] HingePlace hinge_place(const document::Document& document, const shape::Body& body, int joint);

/// What an eye has over its pin, or over the other's wire where eyes hang in each other; never below nothing.
[[nodiscard]] inline double play_per_eye_m(const document::Hinge& hinge) {
    const double inside = hinge.kind == document::HingeKind::pinned ? hinge.pin_diameter_m : hinge.wire_m;
    return hinge.eye_inside_m > inside ? hinge.eye_inside_m - inside : 0.0;
}

/// How thick all films together lie: as given, or mass over density and the area that they cover.
struct Films {
    double on_faces_m = 0.0;
    double in_pockets_m = 0.0;
};
[[nodiscard]] Films films_of(const document::Document& document, const shape::Body& body);

} // namespace evenfall::joints
