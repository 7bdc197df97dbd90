#pragma once

// How closely a carver's body follows its drawing.

#include "base/sentence.hpp"
#include "body/body.hpp"

namespace evenfall::ledger {

/// Standard deviations of the carved surface from the drawn one, outwards: of the whole body, and of each of
/// several segments besides (common practice, no source).
///   careful  templates on all sides and a caliper
///   usual    a template, then by eye and hand
///   rough    by eye
struct CarvedWithin {
    double all_m = 0.0;
    double segment_m = 0.0;
};
[[nodiscard]] CarvedWithin carved_within(document::Carving carving);

/// Relative standard deviation of a volume whose whole skin lies so far off, 0.5 at most.
[[nodiscard]] double relative_size(double within_m, double skin_m2, double volume_m3);

/// The carved body as its size varies. The factor of the cause carved_size is that of the body's volume (of
/// one segment's volume for the part of its own): a skin t further out all round is the factor
/// 1 + t·skin/volume.
struct CarvedSize {
    CarvedWithin within;
    double skin_m2 = 0.0;
    double volume_m3 = 0.0;
    double centroid_x_m = 0.0; ///< of the volume, from the nose
    double length_m = 0.0;
    double relative = 0.0; ///< standard deviation of the body's volume over its value, all round
};
[[nodiscard]] CarvedSize carved_size(const document::Document& document, const shape::Body& body);
/// "±0.2 mm all round is ±1.7 % of the volume: ±0.9 g of water."
[[nodiscard]] Sentence carved_size_note(const CarvedSize& size, double water_kg_m3);

} // namespace evenfall::ledger
