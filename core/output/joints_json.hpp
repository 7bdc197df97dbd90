#pragma once

#include "workshop/joint_answers.hpp"

#include <string>

namespace evenfall::output {

/// The joints as indented JSON with units in the keys. The keys are the program's `--json` contract.
[[nodiscard]] std::string joints_json(const document::Document& document, const joints::JointsAnswer& answer,
                                      const units::UnitSet& units = units::metric);

[[nodiscard]] const char* wall_kind_word(joints::WallKind between);
[[nodiscard]] const char* weakest_word(wire::Weakest weakest);

} // namespace evenfall::output
