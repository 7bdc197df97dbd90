#pragma once

#include "workshop/glue.hpp"

#include <string>

namespace evenfall::output {

/// As indented JSON with units in the keys. The keys are the program's `--json` contract.
[[nodiscard]] std::string glue_json(const document::Document& document, const glue::GlueAnswer& answer,
                                    const units::UnitSet& units = units::metric);

/// "thin CA", "thick CA", "epoxy".
[[nodiscard]] const char* glue_word(glue::GlueKind sort);

} // namespace evenfall::output
