#pragma once

#include "base/problem.hpp"
#include "body/body.hpp"
#include "document/document.hpp"
#include "ledger/line.hpp"
#include "materials/water_properties.hpp"

#include <vector>

namespace evenfall::fall {

struct SegmentLoad {
    double in_water_kg = 0.0; ///< of the segment alone; negative floats
    double moment_n_m = 0.0;  ///< about its own centre of buoyancy when free; positive: its tail goes down
};

/// One joint of a lure that hangs in water, or falls, at a given pitch. Forces on the part aft of it.
struct JointLoad {
    double shear_n = 0.0;       ///< positive: the aft part pulls down
    double moment_n_m = 0.0;    ///< positive: its tail turns down
    double eye_force_n = 0.0;   ///< fore-and-aft on the upper eye and, opposite, on the lower one:
                                ///< |moment|/spacing; 0 with one eye, which carries no moment
    double eye_spacing_m = 0.0; ///< of the joint's hinge (hinge_place.hpp); 0 with one eye
    double sag_rad = 0.0; ///< angle allowed by the play: each eye moves half its play off the pin's axis, one
                          ///< fore, one aft, so ±atan(play/spacing) with the sign of the moment; 0 where the
                          ///< moment is zero, and with one eye
    double pin_friction_n_m = 0.0; ///< moment of friction against swinging
    double swings_from_m_s = 0.0;  ///< speed of pull above which that friction no longer stops the swing
    bool may_bind = false;
};

struct HingeLoads {
    std::vector<SegmentLoad> segments;
    std::vector<JointLoad> joints;
    Problems warnings; ///< joints that may bind, "/joints/0"
};

/// Weight and buoyancy by segment, and the loads on the joints; finished lure, fully submerged.
///
///   pitch_rad  in which it hangs or falls: arms are horizontal
///   shear      ∑ weight in water aft, less the aft share of the drag, distributed as over the strips of a
///              level fall (no drag where the lure suspends)
///   friction   0.25·(2·eye force·0.6 mm + shear·1.5 mm): wire on wire, pin of 1.2 mm, eyes that bear on each
///              other (own estimate)
///   swings     friction = ½ρv²L³·3e-4: from a prototype of three segments, experimental, within a factor of
///              two at best
///   may bind   one neighbour floats and the other sinks, each by 0.3 g or more, and it swings only above 0.2
///              m/s
///
/// For a lure that floats these are the loads when pulled under: afloat, the part above water loads the
/// joints differently.
[[nodiscard]] HingeLoads hinge_loads(const shape::Body& body, const ledger::Ledger& ledger,
                                     const document::Document& document,
                                     const materials::WaterProperties& water, double pitch_rad);

} // namespace evenfall::fall
