#pragma once

#include "bench/lead/lead_plan.hpp"
#include "reach/ways.hpp"
#include "workshop/joint_answers.hpp"

namespace evenfall::reach {

/// All that is known of one lure: what ways are held against.
struct Known {
    Evaluation evaluation;
    joints::JointsAnswer joints;
    Problems warnings; ///< of both
};
[[nodiscard]] Outcome<Known> known_of(const document::Document& document);

/// True where `after` is warned of something that `before` is not.
[[nodiscard]] bool warns_anew(const Problems& before, const Problems& after);

/// What a change does to joint swing, to the walls round pins and pockets, and to the board: sentences, none
/// where nothing changes that a bench would notice.
[[nodiscard]] std::vector<Sentence> side_effects(const Known& before, const Known& after);

} // namespace evenfall::reach
