#pragma once

// Speeds of a retrieve as they are told.

#include "state/retrieve.hpp"
#include "widgets/quantity.hpp"

#include <string>

namespace evenfall::shell::drawing {

/// "0.50 m/s", "1.8 km/h", "0.71 turns a second".
[[nodiscard]] std::string retrieve_text(const state::Retrieve& retrieve, double speed_m_s,
                                        const widgets::Units& units);

/// Beats a second to a digit that means something: "0.6", "12".
[[nodiscard]] std::string beats_text(double beats_per_s);

} // namespace evenfall::shell::drawing
