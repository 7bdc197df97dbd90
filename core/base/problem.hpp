#pragma once

#include <string>
#include <vector>

namespace evenfall {

/// Why something was refused. The number of a code never changes once released; texts may.
enum class ProblemCode {
    not_a_number = 1,     ///< NaN or infinity where a number is needed
    out_of_range = 2,     ///< a number outside its stated limits
    unknown_key = 3,      ///< a key that this version does not know
    missing_key = 4,      ///< a key that must be there
    wrong_type = 5,       ///< text where a number is needed, and the like
    unknown_version = 6,  ///< a document or link of a version that this build cannot read
    not_json = 7,         ///< text that is not JSON at all
    too_large = 8,        ///< text, list or nesting beyond its cap
    unknown_name = 9,     ///< a wood, material or word that is not in the tables
    out_of_order = 10,    ///< stations, joints or ends in the wrong order
    crossed_profile = 11, ///< the top line at or below the bottom line, or no width
    outside_segment = 12, ///< a hole, pocket or part that leaves the wood it belongs to
    through_wall = 13,    ///< a hole that leaves less wood than its wall limit
    overlap = 14,         ///< two holes or cuts in the same wood
    does_not_fit = 15,    ///< a fill or cap longer than its hole
    damaged_link = 16,    ///< a share link that is cut or altered
    cannot_be_met = 17,   ///< targets that no filling of the given holes reaches
    capsizes = 18,        ///< the centre of gravity is not below the centre of buoyancy
    binds_joint = 19,     ///< neighbouring segments that pull a hinge so far apart that it may stick
};

/// One refusal. Errors are values in Evenfall: nothing is half-applied when one is returned.
struct Problem {
    ProblemCode code{};
    std::string
        path; ///< where, as a JSON pointer into the document: "/holes/0/depth_mm"; empty for the whole
    std::string limit;    ///< the limit that was broken, in trade units: "0 to 40 °C"; may be empty
    std::string sentence; ///< one clear sentence that names the field and the limit in a carver's words
};

using Problems = std::vector<Problem>;

} // namespace evenfall
