#pragma once

#include "base/outcome.hpp"
#include "body/body.hpp"
#include "document/document.hpp"

namespace evenfall::tail {

/// The geometry of a soft tail, for the ledger and the drawing.
///
/// Tenon: the slot is a pocket of the document, so its wood is already subtracted in the ledger and, where it
/// floods, its displacement too. There the tenon displaces its own volume, as it would outside the wood. In a
/// slot that stays dry the outer surface already displaces the water, slot included: the part of the tenon
/// inside the wood then has weight but adds no displacement.
struct TailGeometry {
    shape::Body body;    ///< one segment, skin not computed; x from the root, z from the tail's axis
    double dry_m3 = 0.0; ///< volume of the tenon inside a slot that stays dry
};

/// The tail of a document on its cut body. Refused under "/tail/…": lines that cross or do not end together,
/// a root inside the wood, a tenon without a slot, or one longer, thicker or higher than its slot.
[[nodiscard]] Outcome<TailGeometry> tail_geometry(const document::Document& document,
                                                  const shape::Body& body);

/// Its shape alone: volume, centroid and second moments behind the root, without the tenon. By seven-point
/// Gauss–Legendre between the stations of all three curves: exact to rounding, as the curves are cubics there
/// (segment_sums.hpp). Refuses lines with problems.
[[nodiscard]] Outcome<shape::Body> shaped(const document::Tail& tail);

/// Density of the cast plastic, weighed or from the table [kg/m³]. The material must be known.
[[nodiscard]] double density_kg_m3(const document::Tail& tail);

/// True for a melted material (plastisol); others are mixed and cure.
[[nodiscard]] inline bool is_melted(const document::Tail& tail) {
    return tail.material == "plastisol";
}

/// The pocket that takes the tenon, by its index; −1 where there is no tenon, or no pocket for it.
[[nodiscard]] int slot_of(const document::Document& document);

/// Volume of the tenon [m³]; 0 without one.
[[nodiscard]] double tenon_m3(const document::Tail& tail);

/// From the tail's own axes to the lure's axes.
[[nodiscard]] inline Vec3 to_lure_axes(const document::Tail& tail, const Vec3& at_m) {
    return at_m + Vec3{tail.x_m, 0.0, tail.z_m};
}

/// Areas of the tail behind its root seen from the side and from above [m²]; exact for the curves.
struct ProjectedAreas {
    double side_m2 = 0.0;
    double above_m2 = 0.0;
};
[[nodiscard]] ProjectedAreas shadow(const document::Tail& tail);

/// Edge lengths of the smallest box round the tail, tenon included [m].
[[nodiscard]] Vec3 extent(const document::Tail& tail);

} // namespace evenfall::tail
