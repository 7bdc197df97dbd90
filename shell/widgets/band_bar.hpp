#pragma once

#include "widgets/ui.hpp"

#include <string>

namespace evenfall::shell::widgets {

/// A range of what may be, on a scale from zero, in the units shown.
struct BandBar {
    std::string title;
    std::string number; ///< of the middle, at the right of the title
    std::string unit{};
    double low = 0.0;
    double mid = 0.0;
    double high = 0.0;
    help::Topic topic = help::Topic::none; ///< a tap on the title explains it
};

/// Full width at the cursor: the title with its figure, the bar with the band and its middle, the scale. True
/// in the frame of a tap for its explanation.
bool band_bar(Ui& ui, const BandBar& band);

/// The end of the scale for a band up to `high` > 0: round, and the same for bands that differ a little.
[[nodiscard]] double band_scale_end(double high);

} // namespace evenfall::shell::widgets
