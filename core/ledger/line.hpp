#pragma once

#include "base/vec3.hpp"
#include "document/document.hpp"

#include <array>
#include <vector>

namespace evenfall::ledger {

enum class Kind {
    wood,         ///< the carved segment, solid
    hole_wood,    ///< wood bored out of a hole (negative)
    hole_water,   ///< displacement lost where a hole floods (negative)
    pocket_wood,  ///< wood cut out of a pocket or slot (negative)
    pocket_water, ///< displacement lost where it floods (negative)
    bore_wood,    ///< wood that made room for an embedded part (negative)
    fill,         ///< lead or its like
    cap,
    glue, ///< round the twists of a hinge's eyes; `item` is the joint
    part, ///< hardware and dress
    tail, ///< the soft tail by its shape: item 0 behind the wood, item 1 its tenon
    coat,
};

/// The independent causes of spread. Lines with the same cause and group move together, by their relative
/// shares. Drag moves no line.
using Cause = document::Cause;

/// How a line answers to one cause: one standard deviation moves its mass by `relative`, and its displacement
/// as well where `moves_volume`.
struct Spread {
    Cause cause = Cause::none;
    int group = 0; ///< within one cause, equal groups move together (one coat over all segments, say): entry
                   ///< of the list; carved size has 0 for the whole body and n for segment n alone
    double relative = 0.0; ///< standard deviation over value, ≥ 0
    bool moves_mass = true;
    bool moves_volume = false;
};

/// One line of the ledger: everything that has mass or pushes water aside.
struct Line {
    Kind kind = Kind::wood;
    int item = 0; ///< which entry of the document's list it comes from; for wood the segment
    int segment = 0;
    Stage stage = Stage::carved; ///< from this stage on it counts
    double mass_kg = 0.0;
    double displaced_m3 = 0.0;
    Vec3 at_m;         ///< centroid of both
    Inertia own_kg_m2; ///< of the mass, about at_m
    std::array<Spread, 4> spreads{};
    int pocket = -1; ///< of a coat: the pocket whose walls it lies on; −1 = skin and joint faces
};

using Ledger = std::vector<Line>;

} // namespace evenfall::ledger
