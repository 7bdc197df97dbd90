#pragma once

// What is to be done at one hole, as the bench is told: a row of a table, a screen of its own on the page.

#include "body/body.hpp"

#include <string>

namespace evenfall {

enum class HoleWork {
    leave_whole, ///< not drilled
    leave_empty, ///< drilled and capped over nothing
    fill,        ///< drilled where it is not yet, filled and capped
    take_out,    ///< fill drilled out from the mouth, the void capped again
    add,         ///< fill laid on what is there, through the cap
};

struct HoleStep {
    HoleWork work = HoleWork::fill;
    int hole = 0; ///< index into the document's holes
    std::string material;
    double diameter_m = 0.0; ///< of the bit
    double depth_m = 0.0;    ///< from the skin: of the hole; take_out: to where the bit stops
    bool drills = false;     ///< the bit cuts wood or fill: the depth is to be drilled
    bool is_new = false;     ///< the document has no such hole yet
    double fill_kg = 0.0;    ///< put in, or taken out
    double column_m = 0.0;   ///< length of that fill
};

/// What the plan asks for at a hole that is not leaded: by its depth and fill; drilled unless it is cut
/// already.
[[nodiscard]] HoleStep hole_step(const document::Document& document, std::size_t index,
                                 const shape::Body& body);

} // namespace evenfall
