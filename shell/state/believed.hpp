#pragma once

#include "bench/uncertainty/uncertainty.hpp"
#include "evenfall.hpp"

namespace evenfall::shell::state {

/// The answers as the bench log has them: of this piece of wood, where it has been weighed. The same ones
/// without a uncertainty or without readings.
[[nodiscard]] Answers believed(Answers answers, const Uncertainty* uncertainty);

} // namespace evenfall::shell::state
