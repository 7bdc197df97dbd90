#pragma once

// Settings of this device: units and look. Saved on the device, not part of a lure, not undone.

namespace evenfall::shell::state {

enum class LengthUnit { mm, inch, inch_fraction };
enum class MassUnit { gram, ounce, grain };
enum class FallUnit { s_per_ft, mm_per_s, s_per_m };
enum class TemperatureUnit { celsius, fahrenheit };
enum class Theme { light, dark };

struct Settings {
    LengthUnit length = LengthUnit::mm;
    MassUnit mass = MassUnit::gram;
    FallUnit fall = FallUnit::s_per_ft;
    TemperatureUnit temperature = TemperatureUnit::celsius;
    Theme theme = Theme::light;

    bool operator==(const Settings&) const = default;
};

} // namespace evenfall::shell::state
