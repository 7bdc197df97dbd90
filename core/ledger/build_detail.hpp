#pragma once

// Shared by the files that build the ledger. Private to this folder.

#include "ledger/build.hpp"

#include <string>

namespace evenfall::ledger {

[[nodiscard]] Problem unknown_material(std::string path, const std::string& id);

/// All lines of all coats. Problems: an unknown material, a coat without a surface.
[[nodiscard]] Problems append_coats(const LedgerInputs& inputs, Ledger& out);

} // namespace evenfall::ledger
