#pragma once

// What drawing, joints and pockets alone decide of a lure. An edit of lead, hardware or coats leaves it as it
// is, and it takes more than half of an evaluation.

#include "body/body.hpp"
#include "body/pocket_surface.hpp"

#include <memory>
#include <vector>

namespace evenfall::shape {

/// What one pocket takes out of one segment. Those that meet no wood of it are left out.
struct PocketPiece {
    int pocket = 0;
    int segment = 0;
    BoxCut cut;
    PocketSurface surface; ///< not computed where no coat goes into pockets
};

/// The cut body and its pockets, each with what it was made from. Cheap to copy: nothing in it changes.
struct Geometry {
    struct CutBody {
        document::Shape shape;
        Body body;
    };
    struct CutPockets {
        std::shared_ptr<const CutBody> wood;
        std::vector<Box> boxes;
        bool with_surfaces = false;
        std::vector<PocketPiece> pieces;
    };
    std::shared_ptr<const CutBody> wood;
    std::shared_ptr<const CutPockets> pockets;
};

/// Refuses what drawn_lines() and cut() refuse. What is the same as in `before`, if there is one, is shared
/// with it: the answer is the same bit for bit.
[[nodiscard]] Outcome<Geometry> geometry_of(const document::Document& document,
                                            const Geometry* before = nullptr);

} // namespace evenfall::shape
