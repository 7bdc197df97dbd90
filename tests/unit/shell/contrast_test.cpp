#include "look/theme.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall::shell::look;

namespace {

double linear(Ink channel) {
    const double share = static_cast<double>(channel & 0xFFu) / 255.0;
    return share <= 0.03928 ? share / 12.92 : std::pow((share + 0.055) / 1.055, 2.4);
}

double luminance(Ink colour) {
    return 0.2126 * linear(colour) + 0.7152 * linear(colour >> 8u) + 0.0722 * linear(colour >> 16u);
}

/// Of two opaque colours, 1 to 21 (WCAG 2.1, definitions of contrast ratio and relative luminance).
double contrast(Ink one, Ink other) {
    const auto [dim, bright] = std::minmax({luminance(one), luminance(other)});
    return (bright + 0.05) / (dim + 0.05);
}

} // namespace

TEST_CASE(
    "contrast is 21 for black on white and 1 for a colour on itself (WCAG 2.1, definition of contrast ratio)",
    "[shell][contrast]") {
    // (1.0 + 0.05) / (0.0 + 0.05) by the definition; roundings of three channels.
    CHECK_THAT(contrast(0xFF000000u, 0xFFFFFFFFu), Catch::Matchers::WithinAbs(21.0, 1e-12));
    CHECK(contrast(0xFF336699u, 0xFF336699u) == 1.0);
}

TEST_CASE("text holds 4.5:1 on every ground it is set on (WCAG 2.1, success criterion 1.4.3)",
          "[shell][contrast]") {
    for (const Scheme scheme : {Scheme::light, Scheme::dark}) {
        const Palette& p = palette(scheme);
        CAPTURE(scheme == Scheme::dark);
        for (const Ink ground : {p.bench, p.paper, p.card, p.well, p.tint, p.caution, p.water, p.pressed}) {
            CHECK(contrast(p.ink, ground) >= 4.5);
        }
        for (const Ink ground : {p.bench, p.paper, p.card, p.well, p.tint, p.water}) {
            CHECK(contrast(p.ink_soft, ground) >= 4.5);
        }
        for (const Ink ground : {p.paper, p.card, p.caution})
            CHECK(contrast(p.mark, ground) >= 4.5);
        for (const Ink ground : {p.paper, p.card, p.water})
            CHECK(contrast(p.water_line, ground) >= 4.5);
        CHECK(contrast(p.on_solid, p.solid) >= 4.5);
        CHECK(contrast(p.on_solid, p.solid_pressed) >= 4.5);
    }
}

TEST_CASE("lines that carry meaning hold 3:1 (WCAG 2.1, success criterion 1.4.11)", "[shell][contrast]") {
    for (const Scheme scheme : {Scheme::light, Scheme::dark}) {
        const Palette& p = palette(scheme);
        CAPTURE(scheme == Scheme::dark);
        for (const Ink ground : {p.bench, p.paper, p.card, p.well}) {
            CHECK(contrast(p.line, ground) >= 3.0);
            CHECK(contrast(p.focus, ground) >= 3.0);
        }
        CHECK(contrast(p.ink, p.wood) >= 3.0);
        CHECK(contrast(p.lead_hatch, p.lead) >= 3.0);
        CHECK(contrast(p.metal, p.paper) >= 3.0);
    }
}
