#pragma once

#include "base/problem.hpp"
#include "body/body.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"
#include "materials/water_properties.hpp"

#include <vector>

namespace evenfall::fall {

struct SegmentLoad {
    double in_water_kg = 0.0; ///< alone; negative floats
    double moment_n_m = 0.0;  ///< that turns it about its own centre of buoyancy when let go alone; positive:
                              ///< its tail goes down
};

/// One joint of a lure that hangs in the water, or falls, at a given pitch. Forces on the part aft of it.
struct JointLoad {
    double shear_n = 0.0;       ///< positive: the aft part pulls down
    double moment_n_m = 0.0;    ///< positive: its tail wants to go down
    double eye_force_n = 0.0;   ///< fore-and-aft on the upper and, the other way, on the lower eye:
                                ///< |moment|/spacing; 0 with one eye, which takes no couple
    double eye_spacing_m = 0.0; ///< as the joint's hinge stands (joints/hinge_place.hpp); 0 with one eye
    double sag_rad =
        0.0; ///< how far the slop lets it: each eye half its play off the pin's axis, one fore, one aft, so
             ///< ±atan(play/spacing) with the sign of the moment; 0 where nothing pulls, and with one eye
    double pin_friction_n_m = 0.0; ///< against swinging
    double swings_from_m_s =
        0.0; ///< pull through the water from which that friction no longer stops the swing
    bool may_bind = false;
};

struct HingeLoads {
    std::vector<SegmentLoad> segments;
    std::vector<JointLoad> joints;
    Problems warnings; ///< joints that may bind, "/joints/0"
};

/// Weight and buoyancy by segment, and what they do to the joints, finished and wholly under water.
///
///   pitch_rad   in which it hangs or falls: arms are level ones
///   shear       ∑ in-water weight aft, less the share of the drag that carries it there: the drag as the
///   strips of a level fall
///               spread it along the body. Nothing where it hangs still.
///   friction    0.25·(2·eye force·0.6 mm + shear·1.5 mm): wire on wire, pin of 1.2 mm, eyes that bear on
///   each other (own estimate) swings      friction = ½ρv²L³·3e-4: from a prototype of three segments,
///   experimental, within a factor of two at best may bind    one neighbour floats and the other sinks, by
///   0.3 g each or more, and it swings only from 0.2 m/s
///
/// A lure that floats carries its out-of-water part otherwise: these are its loads when drawn under.
[[nodiscard]] HingeLoads hinge_loads(const shape::Body& body, const ledger::Ledger& ledger,
                                     const document::Document& document, const materials::WaterProperties& water,
                                     double pitch_rad);

} // namespace evenfall::fall
