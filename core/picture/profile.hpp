#pragma once

#include "document/document.hpp"
#include "picture/outline.hpp"

#include <optional>

namespace evenfall::picture {

/// What the carver says about the picture: how large it is and how it lies.
struct Scale {
    Spot from; ///< two places in the picture …
    Spot to;
    double distance_m = 0.0; ///< … and how far apart they are in truth, 1 mm to 2 m
    std::optional<Spot>
        nose; ///< the datum line runs from nose to tail through these two; absent: along the outline's
    std::optional<Spot> tail;    ///< own long axis
    bool nose_right = false;     ///< without nose and tail: the nose is at the right in the picture
    double tolerance_m = 0.0003; ///< the lines may leave the outline by this much, 0.05 to 5 mm
    int most_points = 24;        ///< of each line, 4 to document::max_curve_points
};

/// Back and belly as lines of a drawing: x from the nose, z up from the datum line.
struct Profile {
    document::CurvePoints top;
    document::CurvePoints bottom;
    double length_m = 0.0;
    double greatest_height_m = 0.0;
    double off_top_m = 0.0;    ///< greatest distance between outline and back line …
    double off_bottom_m = 0.0; ///< … and belly line, both ways
    /// Furthest that the outline lies off the nearer of the two lines, as in a bay or a forked tail that no
    /// line over x can follow; about 0 for none.
    double overhang_m = 0.0;
    double turned_rad = 0.0; ///< from the picture's level to the datum line, clockwise as seen
};

/// The outline turned level, scaled, and drawn through as few points as keep within the tolerance: back line
/// and belly line are the upper and lower side of the outline over x, and points are set until the bench's
/// own curve (body/curve.hpp) lies within the tolerance of it everywhere. A rounded nose or tail ends in an
/// upright face where the outline is two fifths of the tolerance in from its tip. The back is the side
/// further up in the picture. Places are rounded to 0.01 mm. Problems: numbers off their limits; nose and
/// tail on one spot; an outline too short, or longer or higher than a drawing may be; a tolerance that so few
/// points cannot keep (says what they reach).
[[nodiscard]] Outcome<Profile> profile_from(const Contour& contour, const Scale& scale);

/// A document with this profile. Whatever lies along x (width line, section, joints, holes, pockets, parts)
/// moves in proportion to the length; widths and everything else stay.
[[nodiscard]] document::Document with_profile(const document::Document& document, const Profile& profile);

/// A one-piece document with this profile, everything else as a new lure has it. The width line, which no
/// view from the side shows, is an oval guess: half as wide as the piece is high.
[[nodiscard]] document::Document new_lure(const Profile& profile);

} // namespace evenfall::picture
