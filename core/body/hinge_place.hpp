#pragma once

#include "body/body.hpp"
#include "body/pin.hpp"

#include <optional>
#include <vector>

namespace evenfall::joints {

/// An interval of heights; infinite where a pocket is open.
struct HeightRange {
    double from_m = 0.0;
    double to_m = 0.0;

    [[nodiscard]] bool meets(const HeightRange& o) const { return from_m < o.to_m && o.from_m < to_m; }
};
[[nodiscard]] HeightRange heights_of(const document::Pocket& pocket);

/// True where the pocket's box, seen from above, contains the pin's axis.
[[nodiscard]] bool holds_axis(const document::Pocket& pocket, const Pin& pin);

/// One eye of a hinge and the pocket that it turns in.
struct EyePlace {
    double z_m = 0.0;
    std::optional<int>
        pocket; ///< index in document.pockets; absent: no pocket is drawn round the pin at this height
};

/// Position of a joint's hinge: from its own fields, else from the drawn pockets, else the usual position.
struct HingePlace {
    document::Hinge hinge;
    Pin pin;
    bool pocket_aft = true;     ///< the aft segment holds pin and pockets
    std::vector<EyePlace> eyes; ///< lowest first; at least one
    double eye_spacing_m = 0.0; ///< 0 with one eye
};

/// Where the hinge gives no heights, each pocket whose box contains the pin's axis has an eye at its middle;
/// without pockets, two eyes 0.6 of the body's height apart (common practice, no source).
[[nodiscard]] HingePlace hinge_place(const document::Document& document, const shape::Body& body, int joint);

/// Clearance of an eye on its pin, or on the other eye's wire where eyes are linked; never negative.
[[nodiscard]] inline double play_per_eye_m(const document::Hinge& hinge) {
    const double inside = hinge.kind == document::HingeKind::pinned ? hinge.pin_diameter_m : hinge.wire_m;
    return hinge.eye_inside_m > inside ? hinge.eye_inside_m - inside : 0.0;
}

/// Total thickness of all films: as given, or mass over density and covered area.
struct FilmThickness {
    double on_faces_m = 0.0;
    double in_pockets_m = 0.0;
};
[[nodiscard]] FilmThickness films_of(const document::Document& document, const shape::Body& body);

} // namespace evenfall::joints
