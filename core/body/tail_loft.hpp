#pragma once

#include "base/outcome.hpp"
#include "body/body.hpp"
#include "document/document.hpp"

namespace evenfall::tail {

/// A soft tail worked through: what the ledger books and the drawing draws.
///
/// How its tenon is booked. The slot is a pocket of the document: its wood is out of the ledger already, and
/// where it floods, its water as well. The tenon pushes that water out again, so it displaces its own volume
/// there, as it would outside the wood. In a slot that stays dry the wood's envelope pushes the water aside,
/// slot and all: what of the tenon lies inside the wood then weighs and displaces nothing.
struct Loft {
    shape::Body body;    ///< one segment, its skin not summed; x from the root, z over the tail's axis
    double dry_m3 = 0.0; ///< of the tenon: lies in a slot that stays dry
};

/// The tail of a document on its cut body. Refused under "/tail/…": lines that cross or do not end together,
/// a root inside the wood, a tenon without a slot, or longer, thicker or higher than its slot.
[[nodiscard]] Outcome<Loft> loft(const document::Document& document, const shape::Body& body);

/// Its shape alone: volume, centroid and second moments behind the root, tenon left out. By seven-point
/// Gauss–Legendre between the stations of all three curves: exact to rounding, as the curves are cubics there
/// (shape/segment_sums.hpp). Refuses what is wrong with the lines.
[[nodiscard]] Outcome<shape::Body> shaped(const document::Tail& tail);

/// Of the cast plastic, weighed or by the table [kg/m³]. The material must be known.
[[nodiscard]] double density_kg_m3(const document::Tail& tail);

/// Is it cast of what is melted? Else it sets from what is mixed.
[[nodiscard]] inline bool is_melted(const document::Tail& tail) {
    return tail.material == "plastisol";
}

/// Volume of the tenon [m³]; 0 without one.
[[nodiscard]] double tenon_m3(const document::Tail& tail);

/// From the tail's own place to the lure's axes.
[[nodiscard]] inline Vec3 in_lure(const document::Tail& tail, const Vec3& at_m) {
    return at_m + Vec3{tail.x_m, 0.0, tail.z_m};
}

/// Areas of the tail behind its root as seen from the side and from above [m²]; exact for the curves.
struct Shadow {
    double side_m2 = 0.0;
    double above_m2 = 0.0;
};
[[nodiscard]] Shadow shadow(const document::Tail& tail);

/// Edges of the smallest box round the tail, tenon included [m].
[[nodiscard]] Vec3 extent(const document::Tail& tail);

} // namespace evenfall::tail
