#pragma once

// Colours and dimensions of the page. Every colour used in the shell is named here.

#include <cstdint>

namespace evenfall::shell::look {

/// A colour as ImGui takes it: 0xAABBGGRR.
using Ink = std::uint32_t;

enum class Scheme { light, dark };

/// One set of colours. Text colours have a contrast of 4.5:1 or better on bench, paper, card and well; lines
/// that carry meaning 3:1 (contrast_test.cpp).
struct Palette {
    // backgrounds
    Ink bench;   ///< the page behind everything
    Ink paper;   ///< the drawing sheet
    Ink card;    ///< panel, strip, bar
    Ink well;    ///< a field to tap, an unselected choice, a key of the keypad
    Ink pressed; ///< background of a pressed control
    Ink tint;    ///< background of a chosen item
    Ink scrim;   ///< over the page while a sheet is open
    // text and lines
    Ink ink;      ///< text, outlines
    Ink ink_soft; ///< labels, units, second lines
    Ink line;     ///< lines that carry meaning: ruler ticks, dashed outlines, field edges
    Ink rule;     ///< hairlines that only separate rows; carries no meaning
    Ink solid;    ///< background of the one main button of a panel
    Ink solid_pressed;
    Ink on_solid; ///< text on `solid`
    // meaning (never colour alone: always with a word, a shape or a hatching)
    Ink mark;    ///< G, refusals, the chosen step
    Ink focus;   ///< the keyboard focus ring
    Ink caution; ///< background of safety notes
    Ink good;    ///< on target
    // the drawing
    Ink wood;
    Ink wood_grain; ///< thin lines in wood
    Ink wood_shade; ///< the inside of a cut, end grain
    Ink lead;
    Ink lead_hatch;
    Ink cap;
    Ink cavity;     ///< empty space, an open hole
    Ink metal;      ///< wire, pins, hooks
    Ink water;      ///< background of water
    Ink water_line; ///< surface, B
};

[[nodiscard]] const Palette& palette(Scheme scheme);

/// The colour with its opacity scaled by `opacity` (0 to 1).
[[nodiscard]] Ink faded(Ink colour, float opacity);

// Dimensions in CSS px, on a grid of 8.
inline constexpr float grid = 8.0f;
inline constexpr float gutter = 16.0f; ///< between regions, and inside cards
inline constexpr float target = 48.0f; ///< least side of a touch target
inline constexpr float card_rounding = 10.0f;
inline constexpr float control_rounding = 8.0f;
inline constexpr float outline = 1.75f; ///< width of outlines

} // namespace evenfall::shell::look
