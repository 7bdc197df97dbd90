#pragma once

// Settings of this device: units, look, hand and reel. Saved on the device, not part of a lure, not undone.

#include "evenfall.hpp"
#include "state/retrieve.hpp"

#include <string>

namespace evenfall::shell::state {

enum class Theme { light, dark };

inline constexpr double large_text_scale = 1.25; ///< the page's style sheet has the same figure

struct Settings {
    std::string language; ///< "en", "de"; empty: that of the device
    units::UnitSet units{.fall = units::Unit::s_per_ft};
    Theme theme = Theme::light;
    bool large_text = false;  ///< everything by large_text_scale
    bool left_handed = false; ///< the panel at the left of the drawing where they lie side by side
    Retrieve retrieve;

    bool operator==(const Settings&) const = default;
};

} // namespace evenfall::shell::state
