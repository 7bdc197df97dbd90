#pragma once

#include "document/document.hpp"

namespace evenfall::reach {

/// A hook: rigged, with a reach.
[[nodiscard]] bool is_hook(const document::Part& part);

/// Index of the usual hook (materials/tackle.hpp) that is nearest in weight.
[[nodiscard]] int nearest_hook(const document::Part& part);

/// A hook so many sizes larger, within the table: weight and reach change as the table's do, its bend hangs
/// as much deeper, and its size in the name goes along.
void change_hook(document::Part& hook, int sizes);

} // namespace evenfall::reach
