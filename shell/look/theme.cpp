#include "look/theme.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::look {
namespace {

/// 0xRRGGBB as in a style sheet.
constexpr Ink rgb(std::uint32_t colour, std::uint32_t opacity = 255u) {
    return (opacity << 24u) | ((colour & 0xFFu) << 16u) | (colour & 0xFF00u) | (colour >> 16u);
}

constexpr Palette light_palette{
    .bench = rgb(0xF1EADC),
    .paper = rgb(0xFFFDF8),
    .card = rgb(0xFBF8F2),
    .well = rgb(0xF3EDE1),
    .pressed = rgb(0xE3D8C2),
    .tint = rgb(0xEBDFC8),
    .scrim = rgb(0x22302E, 64),
    .ink = rgb(0x22302E),
    .ink_soft = rgb(0x5B6562),
    .line = rgb(0x857E6C),
    .rule = rgb(0xDED5C4),
    .solid = rgb(0x22302E),
    .solid_pressed = rgb(0x3C4D4A),
    .on_solid = rgb(0xFFFDF8),
    .mark = rgb(0xA4471F),
    .focus = rgb(0x2C6E8A),
    .caution = rgb(0xF5E7D3),
    .good = rgb(0x2F6B4F),
    .wood = rgb(0xE6CC9F),
    .wood_grain = rgb(0xC9A972),
    .wood_shade = rgb(0xD3B37F),
    .lead = rgb(0x59636E),
    .lead_hatch = rgb(0xB9C1C9),
    .cap = rgb(0xF3E3C0),
    .cavity = rgb(0xFFFDF8),
    .metal = rgb(0x4A545C),
    .water = rgb(0xE4EEF0),
    .water_line = rgb(0x2C6E8A),
};

constexpr Palette dark_palette{
    .bench = rgb(0x141A19),
    .paper = rgb(0x1B2221),
    .card = rgb(0x202827),
    .well = rgb(0x2A3331),
    .pressed = rgb(0x3D4845),
    .tint = rgb(0x39413A),
    .scrim = rgb(0x060909, 150),
    .ink = rgb(0xEDE6D6),
    .ink_soft = rgb(0xABB0A6),
    .line = rgb(0x868D84),
    .rule = rgb(0x343E3B),
    .solid = rgb(0xE7DBC1),
    .solid_pressed = rgb(0xC9BC9F),
    .on_solid = rgb(0x1B2221),
    .mark = rgb(0xF2986E),
    .focus = rgb(0x7CC0DE),
    .caution = rgb(0x3A3025),
    .good = rgb(0x8CC7A4),
    .wood = rgb(0x9C7B49),
    .wood_grain = rgb(0x7C5F36),
    .wood_shade = rgb(0x846638),
    .lead = rgb(0x46505A),
    .lead_hatch = rgb(0x98A3AE),
    .cap = rgb(0xCDB483),
    .cavity = rgb(0x1B2221),
    .metal = rgb(0xC2CAD0),
    .water = rgb(0x1E2F36),
    .water_line = rgb(0x7CC0DE),
};

} // namespace

const Palette& palette(Scheme scheme) {
    return scheme == Scheme::dark ? dark_palette : light_palette;
}

Ink faded(Ink colour, float opacity) {
    const float held = static_cast<float>(colour >> 24u) * std::clamp(opacity, 0.0f, 1.0f);
    return (colour & 0x00FFFFFFu) | (static_cast<Ink>(std::lround(held)) << 24u);
}

} // namespace evenfall::shell::look
