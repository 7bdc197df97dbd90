#include "workshop/coat_schedule.hpp"

#include "document/coat_traits.hpp"

#include <algorithm>

namespace evenfall::resin {

namespace {

/// Area of one segment's skin and joint faces without the pockets, and the area of the pockets' walls.
struct SegmentAreas {
    double skin_m2 = 0.0;
    double faces_m2 = 0.0;
    double pockets_m2 = 0.0;
};

SegmentAreas left_of(const Evaluation& evaluation, std::size_t s, bool on_pockets) {
    const shape::Segment& segment = evaluation.body.segments[s];
    SegmentAreas left{segment.skin_m2, 0.0, 0.0};
    for (const shape::Face& face : segment.faces)
        left.faces_m2 += face.area_m2;
    if (!on_pockets) return left;
    for (const shape::PocketPiece& piece : evaluation.kept.geometry.pockets->pieces) {
        if (piece.segment != static_cast<int>(s)) continue;
        left.skin_m2 = std::max(0.0, left.skin_m2 - piece.surface.skin.area_m2);
        left.faces_m2 = std::max(0.0, left.faces_m2 - piece.surface.faces.area_m2);
        left.pockets_m2 += piece.surface.wall.area_m2;
    }
    return left;
}

} // namespace

std::vector<CoatGrams> schedule(const document::Document& document, const Evaluation& evaluation) {
    std::vector<CoatGrams> out(document.coats.size());
    for (std::size_t c = 0; c < out.size(); ++c) {
        const document::Coat& coat = document.coats[c];
        CoatGrams& grams = out[c];
        grams.coat = static_cast<int>(c);
        for (std::size_t s = 0; s < evaluation.body.segments.size(); ++s) {
            const SegmentAreas left = left_of(evaluation, s, coat.on_pockets);
            const double skin = coat.on_skin ? left.skin_m2 : 0.0;
            const double faces = coat.on_joint_faces ? left.faces_m2 : 0.0;
            grams.skin_m2 += skin;
            grams.faces_m2 += faces;
            grams.pockets_m2 += left.pockets_m2;
            for (const ledger::Line& line : evaluation.ledger) {
                if (line.kind != ledger::Kind::coat || line.item != grams.coat ||
                    line.segment != static_cast<int>(s))
                    continue;
                if (line.pocket >= 0) {
                    grams.pockets_kg += line.mass_kg;
                } else if (skin + faces > 0.0) {
                    grams.skin_kg += line.mass_kg * skin / (skin + faces);
                    grams.faces_kg += line.mass_kg * faces / (skin + faces);
                }
            }
        }
    }
    return out;
}

bool is_resin(const document::Coat& coat) {
    return traits_of(coat.kind).is_mixed && coat.material == "epoxy";
}

int resin_coat(const document::Document& document) {
    for (std::size_t c = 0; c < document.coats.size(); ++c) {
        if (is_resin(document.coats[c])) return static_cast<int>(c);
    }
    return -1;
}

} // namespace evenfall::resin
