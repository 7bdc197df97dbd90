#pragma once

// Settings of this device: units and look. Saved on the device, not part of a lure, not undone.

#include "evenfall.hpp"

namespace evenfall::shell::state {

enum class Theme { light, dark };

struct Settings {
    units::Unit length = units::Unit::mm;
    units::Unit mass = units::Unit::gram;
    units::Unit fall = units::Unit::s_per_ft;
    units::Unit temperature = units::Unit::celsius;
    Theme theme = Theme::light;

    bool operator==(const Settings&) const = default;
};

} // namespace evenfall::shell::state
