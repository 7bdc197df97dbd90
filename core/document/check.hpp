#pragma once

#include "base/problem.hpp"
#include "document/document.hpp"

namespace evenfall::document {

/// Everything about a document that can be judged without geometry: numbers finite and within the limits of
/// the field table, counts and text lengths, known materials that serve their use, exactly one of mass and
/// length where one is asked for, one segment name more than joints. Empty when all is well; at most 20
/// problems. What needs geometry (order along x, crossed lines, walls, overlaps) is judged by shape and
/// ledger.
[[nodiscard]] Problems check(const Document& document);

/// Whether a reading has all that its kind needs.
[[nodiscard]] bool is_complete(const Reading& reading);

} // namespace evenfall::document
