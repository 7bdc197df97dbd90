#pragma once

#include "evenfall.hpp"
#include "water.hpp"

namespace evenfall::cli {

/// How the lure of a document swims; takes a second or two.
[[nodiscard]] Outcome<swim::SwimAnswer> swum(const document::Document& document);

} // namespace evenfall::cli
