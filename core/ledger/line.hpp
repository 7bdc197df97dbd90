#pragma once

#include "base/vec3.hpp"
#include "document/document.hpp"

#include <algorithm>
#include <array>
#include <cstddef>
#include <vector>

namespace evenfall::ledger {

enum class Kind {
    wood,         ///< the carved segment, solid
    hole_wood,    ///< wood drilled out for a hole (negative)
    hole_water,   ///< displacement lost in a flooded hole (negative)
    pocket_wood,  ///< wood cut out of a pocket or slot (negative)
    pocket_water, ///< displacement lost in a flooded pocket (negative)
    bore_wood,    ///< wood removed for an embedded part (negative)
    fill,         ///< lead or other ballast
    cap,
    glue,   ///< round the twists of hinge eyes; `item` is the joint
    hinge,  ///< wire of a hinge that weighs itself, and the wood it takes the place of (negative); `item` is
            ///< the joint
    hanger, ///< the same of a hanger, with its glue
    part,   ///< hooks, hardware, skirts and the like
    tail,   ///< the soft tail with a drawn shape: item 0 behind the wood, item 1 its tenon
    coat,
    air, ///< caught under water in flooded pockets and under hooks: displaces, weighs nothing
};

/// The independent causes of uncertainty. Lines of the same cause and group vary together, each by its
/// relative standard deviation. Drag changes no line.
using Cause = document::Cause;

/// How a line depends on one cause. The cause has one factor f for all its lines, 1 before any reading, with
/// the standard deviation `relative`; it multiplies the line's mass, and its displacement too where
/// `moves_volume`, by line_factor(f, share).
struct Variation {
    Cause cause = Cause::none;
    int group = 0; ///< equal groups of one cause vary together (for example one coat over all segments):
                   ///< index in the list; carved size uses 0 for the whole body and n for segment n alone
    double relative = 0.0; ///< standard deviation of the factor, ≥ 0
    bool moves_mass = true;
    bool moves_volume = false;
    double share = 1.0; ///< how far the line follows: more than 1 where it changes more than others do,
                        ///< negative where it falls as others rise
    double aft_m = 0.0; ///< what the cause does within the line: its mass moment, per mass and f − 1
};

/// The smallest factor on a line.
inline constexpr double least_factor = 0.05;

/// The factor on a line that follows its cause's factor by a share.
[[nodiscard]] constexpr double line_factor(double factor, double share) {
    return std::max(least_factor, 1.0 + share * (factor - 1.0));
}

/// Causes that one line may have.
inline constexpr std::size_t most_variations = 5;

/// One line of the ledger: everything that has mass or displaces water.
struct Line {
    Kind kind = Kind::wood;
    int item = 0; ///< index in the document's list; for wood the segment
    int segment = 0;
    Stage stage = Stage::carved; ///< counts from this stage on
    double mass_kg = 0.0;
    double displaced_m3 = 0.0;
    Vec3 at_m;               ///< centroid of the displacement, and of the mass but for the next
    double mass_aft_m = 0.0; ///< of the mass's centroid aft of that, where wood is denser at one end
    Inertia own_kg_m2;       ///< of the mass, about at_m
    std::array<Variation, most_variations> spreads{};
    int pocket = -1; ///< of a coat: the pocket whose walls it covers; −1 = skin and joint faces

    [[nodiscard]] Vec3 mass_at_m() const { return {at_m.x + mass_aft_m, at_m.y, at_m.z}; }
};

using Ledger = std::vector<Line>;

} // namespace evenfall::ledger
