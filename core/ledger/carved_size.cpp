#include "ledger/carved_size.hpp"

#include "base/number_text.hpp"

#include <algorithm>

namespace evenfall::ledger {

CarvedWithin carved_within(document::Carving carving) {
    switch (carving) {
    case document::Carving::careful:
        return {0.0001, 0.00008};
    case document::Carving::usual:
        return {0.0002, 0.00015};
    case document::Carving::rough:
        return {0.0004, 0.0003};
    }
    return {};
}

double relative_size(double within_m, double skin_m2, double volume_m3) {
    constexpr double most = 0.5;
    return volume_m3 > 0.0 ? std::min(most, within_m * skin_m2 / volume_m3) : 0.0;
}

CarvedSize carved_size(const document::Document& document, const shape::Body& body) {
    CarvedSize size;
    size.within = carved_within(document.shape.carving);
    for (const shape::Segment& segment : body.segments) {
        size.skin_m2 += segment.skin_m2;
        size.volume_m3 += segment.volume_m3;
        size.centroid_x_m += segment.volume_m3 * segment.centroid_m.x;
    }
    size.centroid_x_m /= size.volume_m3;
    size.length_m = body.lines->tail_m() - body.lines->nose_m();
    size.relative = relative_size(size.within.all_m, size.skin_m2, size.volume_m3);
    return size;
}

Sentence carved_size_note(const CarvedSize& size, double water_kg_m3) {
    return "±" + length_text(size.within.all_m) + " all round is ±" +
           units::number_text(100.0 * size.relative, units::Unit::one, 1) + " % of the volume: ±" +
           mass_text(water_kg_m3 * size.relative * size.volume_m3, 1) + " of water pushed aside.";
}

} // namespace evenfall::ledger
