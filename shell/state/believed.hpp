#pragma once

#include "bench/uncertainty/uncertainty.hpp"
#include "evenfall.hpp"

namespace evenfall::shell::state {

/// The answers corrected by the bench log's readings, where there are any. Unchanged without `uncertainty` or
/// without readings.
[[nodiscard]] Answers believed(Answers answers, const Uncertainty* uncertainty);

} // namespace evenfall::shell::state
