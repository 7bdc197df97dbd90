#pragma once

#include "workshop/joint_answers.hpp"

namespace evenfall::joints {

/// Warnings before sawing: wire that meets wood, eyes that do not fit, thin walls, weak links, hooks that
/// foul. Paths name the joint, hole or part.
[[nodiscard]] Problems joint_warnings(const document::Document& document, const shape::Body& body,
                                      const JointsAnswer& answer);

} // namespace evenfall::joints
