#pragma once

#include "reach/ways.hpp"

namespace evenfall::reach {

/// How hard a change is at the bench: `once` for taking it on, `each` for every further unit of it. 1 is a
/// millimetre of thickness more on the whole body, still to be sawn. Common practice, no source.
struct Cost {
    double once = 0.0;
    double each = 0.0;
};

/// The one table that ways are ranked by.
[[nodiscard]] constexpr Cost cost_of(Kind kind) {
    switch (kind) {
    case Kind::deeper_holes: // a stop on the bit moved: per hole; per millimetre
        return {0.2, 0.1};
    case Kind::wider_bits: // per hole; per size of bit
        return {0.3, 0.2};
    case Kind::hook_size: // per hook; per size, and the hook still has to suit the fish
        return {0.5, 0.4};
    case Kind::coat_more: // a day of drying
        return {0.8, 0.0};
    case Kind::coat_less: // less to keep the water out
        return {1.2, 0.0};
    case Kind::another_hole: // marked, drilled, filled and capped
        return {1.0, 0.0};
    case Kind::hanger_moved: // per millimetre, and the hooks hang elsewhere
        return {0.4, 0.1};
    case Kind::other_metal: // to be bought
        return {2.0, 0.0};
    case Kind::thickness: // per millimetre
        return {0.0, 1.0};
    case Kind::belly: // per millimetre; another template too
    case Kind::back:
        return {0.2, 1.0};
    case Kind::tail_size: // another mould; per millimetre of its length
        return {1.0, 0.1};
    case Kind::joint_moved: // pockets and hinge go along; per millimetre
        return {0.8, 0.2};
    case Kind::other_wood: // another board; per 100 kg/m³ of difference, which turns the lure into another
        return {2.5, 1.0};
    }
    return {};
}

} // namespace evenfall::reach
