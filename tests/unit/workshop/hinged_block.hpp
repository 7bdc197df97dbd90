#pragma once

#include "base/trade.hpp"
#include "support/small_lures.hpp"

namespace evenfall::support {

/// The block cut in its middle by a gap of 2 mm without relief, hung on eyes of the fore half: pin of 1.2 mm
/// 4 mm behind the gap's middle, two pockets 6 mm wide that open to the joint.
inline document::Document hinged_block() {
    document::Document d = block();
    d.joints = {{0.06, 0.002, 0.0, 0.0, document::Hinge{}}};
    d.joints[0].hinge->pin_aft_m = 0.004;
    d.segment_names = {"Fore", "Aft"};
    for (const double z_m : {-0.008, 0.008}) {
        document::Pocket p;
        p.x_from_m = 0.0605;
        p.x_to_m = 0.068;
        p.width_m = 0.006;
        p.z_from_m = z_m - 0.0015;
        p.z_to_m = z_m + 0.0015;
        d.pockets.push_back(p);
    }
    return d;
}

} // namespace evenfall::support
