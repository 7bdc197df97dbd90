#pragma once

#include "document/json_text.hpp"

namespace evenfall::document {

/// A document of version 1 in the words of version 2. Problems found in it afterwards name the new words.
[[nodiscard]] Tree from_version_1(Tree document);

} // namespace evenfall::document
