#pragma once

#include <string>

namespace evenfall::document {

/// The JSON Schema (draft 2020-12) of the documents this build reads, made from the field table; the text of
/// presets/schema/preset.schema.json. It judges what `check` judges, save rules between fields far apart
/// (segment names against joints, segment numbers against segments, what soaks has no
/// thickness).
[[nodiscard]] std::string schema_text();

} // namespace evenfall::document
