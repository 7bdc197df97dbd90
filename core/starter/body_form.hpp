#pragma once

#include "starter/new_lure.hpp"

namespace evenfall::starter {

/// The drawing of a card's body.
[[nodiscard]] document::Shape shape_of(const LureCard& card);

} // namespace evenfall::starter
