#pragma once

#include "bench/uncertainty/surety.hpp"
#include "evenfall.hpp"

namespace evenfall::shell::state {

/// The answers as the bench log has them: of this piece of wood, where it has been weighed. The same ones
/// without a surety or without readings.
[[nodiscard]] Answers believed(Answers answers, const Surety* surety);

} // namespace evenfall::shell::state
