#pragma once

#include "base/sentence.hpp"

#include <string>
#include <vector>

namespace evenfall {

/// Why input was refused. The number of a code never changes once released; its text may.
enum class ProblemCode {
    not_a_number = 1,     ///< NaN or infinity where a number is needed
    out_of_range = 2,     ///< a number outside its stated limits
    unknown_key = 3,      ///< a key that this version does not have
    missing_key = 4,      ///< a required key is absent
    wrong_type = 5,       ///< for example text where a number is needed
    unknown_version = 6,  ///< a document or link of a version that this build cannot read
    not_json = 7,         ///< text that is not JSON
    too_large = 8,        ///< text, list or nesting above its limit
    unknown_name = 9,     ///< a wood, material or word that is not in the tables
    out_of_order = 10,    ///< stations, joints or ends in the wrong order
    crossed_profile = 11, ///< the top line at or below the bottom line, or no width
    outside_segment = 12, ///< a hole, pocket or part that reaches outside its segment
    through_wall = 13,    ///< a hole that leaves less wood than its wall limit
    overlap = 14,         ///< two holes or cuts in the same wood
    does_not_fit = 15,    ///< a fill or cap longer than its hole
    damaged_link = 16,    ///< a share link that is truncated or altered
    cannot_be_met = 17,   ///< targets that no ballast in the given holes reaches
    capsizes = 18,        ///< the centre of gravity is not below the centre of buoyancy
    binds_joint =
        19, ///< neighbouring segments whose buoyancy and weight load a hinge so much that it may stick
    drag_unknown = 20, ///< a shape or a speed of which no measured drag is known here
    swim_unknown = 21, ///< a lure beyond those that the model of swimming was tried on
};

/// One refusal. Errors are values: when one is returned, nothing has been changed.
struct Problem {
    ProblemCode code{};
    std::string path;  ///< JSON pointer into the document: "/holes/0/depth_mm"; empty for the whole document
    Sentence limit;    ///< the limit that was broken: "0 to 40 °C"; may be empty
    Sentence sentence; ///< one sentence that names the field and the limit
};

using Problems = std::vector<Problem>;

} // namespace evenfall
