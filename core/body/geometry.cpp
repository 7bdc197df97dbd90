#include "body/geometry.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::shape {

namespace {

/// Whether both cut the wood alike: a hinge does not.
bool same_cut(const document::Joint& a, const document::Joint& b) {
    return a.at_m == b.at_m && a.gap_m == b.gap_m && a.relief_fore_rad == b.relief_fore_rad &&
           a.relief_aft_rad == b.relief_aft_rad;
}

bool is_of(const Geometry::CutBody& wood, const document::Document& document) {
    return std::equal(wood.body.joints.begin(), wood.body.joints.end(), document.joints.begin(),
                      document.joints.end(), same_cut) &&
           wood.shape == document.shape;
}

Outcome<std::shared_ptr<const Geometry::CutBody>> cut_body(const document::Document& document) {
    auto lines = drawn_lines(document.shape);
    if (!lines) return lines.problems();
    Outcome<Body> body = cut(std::move(lines).value(), document.joints);
    if (!body) return body.problems();
    return std::make_shared<const Geometry::CutBody>(
        Geometry::CutBody{document.shape, std::move(body).value()});
}

std::vector<PocketPiece> pieces_of(const Geometry::CutPockets& pockets) {
    std::vector<PocketPiece> pieces;
    const Body& body = pockets.wood->body;
    for (std::size_t i = 0; i < pockets.boxes.size(); ++i) {
        for (int s = 0; s < static_cast<int>(body.segments.size()); ++s) {
            const BoxCut piece = box_in_segment(body, s, pockets.boxes[i]);
            if (piece.volume_m3 <= 0.0) continue;
            pieces.push_back({static_cast<int>(i), s, piece, {}});
            if (pockets.with_surfaces) pieces.back().surface = pocket_surface(body, s, pockets.boxes[i]);
        }
    }
    return pieces;
}

} // namespace

Outcome<Geometry> geometry_of(const document::Document& document, const Geometry* before) {
    Geometry made;
    if (before != nullptr && is_of(*before->wood, document)) {
        made.wood = before->wood;
    } else {
        auto wood = cut_body(document);
        if (!wood) return wood.problems();
        made.wood = std::move(wood).value();
    }
    Geometry::CutPockets pockets{made.wood, {}, false, {}};
    for (const document::Pocket& pocket : document.pockets)
        pockets.boxes.push_back(box_of(pocket));
    for (const document::Coat& coat : document.coats)
        pockets.with_surfaces = pockets.with_surfaces || coat.on_pockets;
    if (before != nullptr && before->pockets->wood == made.wood && before->pockets->boxes == pockets.boxes &&
        before->pockets->with_surfaces == pockets.with_surfaces) {
        made.pockets = before->pockets;
        return made;
    }
    pockets.pieces = pieces_of(pockets);
    made.pockets = std::make_shared<const Geometry::CutPockets>(std::move(pockets));
    return made;
}

} // namespace evenfall::shape
