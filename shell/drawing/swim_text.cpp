#include "drawing/swim_text.hpp"

#include "look/words_swim.hpp"

namespace evenfall::shell::drawing {

using widgets::Unit;

std::string retrieve_text(const state::Retrieve& retrieve, double speed_m_s, const widgets::Units& units) {
    if (retrieve.by == state::RetrieveBy::turns)
        return widgets::number_text(speed_m_s / retrieve.line_per_turn_m, Unit::one, 2) + " " +
               look::words::turns_a_second;
    return widgets::value_text(speed_m_s, units.of(widgets::Quantity::retrieve));
}

std::string beats_text(double beats_per_s) {
    return widgets::number_text(beats_per_s, Unit::one, beats_per_s < 9.95 ? 1 : 0);
}

} // namespace evenfall::shell::drawing
