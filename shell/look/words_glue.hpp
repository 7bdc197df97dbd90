#pragma once

// Text about glue and about measuring before sawing: eyes in their holes, caps, a board.

namespace evenfall::shell::look::words {

inline constexpr const char* glue_group = "Glue";
inline constexpr const char* glue_below =
    "Round each twisted eye and for the caps. Which glue fills which gap is common practice, no source; take "
    "the working times from your own labels.";
inline constexpr const char* glue_lures = "Lures glued at once";
inline constexpr const char* glue_loss = "Wiped off and left over";
inline constexpr const char* glue_fitting = "Seconds to fit one joint";
inline constexpr const char* glue_thin_time = "Thin CA works for, s";
inline constexpr const char* glue_thick_time = "Thick CA works for, s";
inline constexpr const char* glue_epoxy_time = "Epoxy works for, min";
inline constexpr const char* glue_thin = "Thin CA";
inline constexpr const char* glue_thick = "Thick CA";
inline constexpr const char* glue_epoxy = "Epoxy";
inline constexpr const char* glue_hangers = "Hook hangers";
inline constexpr const char* glue_gap = "gap";
inline constexpr const char* glue_take = "Take of";
inline constexpr const char* glue_soda = "Baking soda for the caps";
inline constexpr const char* glue_millilitre = "ml";
inline constexpr const char* hinge_glue = "Glued with";
inline constexpr const char* hinge_glue_none = "not weighed";
inline constexpr const char* hinge_glue_ca = "CA";
inline constexpr const char* hinge_glue_epoxy = "epoxy";
inline constexpr const char* line_glue = "Glue of joint";
inline constexpr const char* line_hinge = "Wire of joint";
inline constexpr const char* line_hinge_wood = "Bored for wire of joint";
inline constexpr const char* line_glue_wood = "Bored for glue of joint";

inline constexpr const char* weighed_board_group = "A board, measured and weighed";
inline constexpr const char* weighed_board_length = "Length of the board";
inline constexpr const char* weighed_board_width = "Width of the board";
inline constexpr const char* weighed_board_height = "Height of the board";
inline constexpr const char* weighed_board_mass = "The board weighs";
inline constexpr const char* weighed_board_moisture = "Its moisture now";
inline constexpr const char* weighed_board_density = "Density now";
inline constexpr const char* weighed_board_then = "Density at the lure's moisture";
inline constexpr const char* weighed_board_usual = "usual for this wood:";
inline constexpr const char* weighed_board_as_usual = "As dense as boards of this wood are.";
inline constexpr const char* weighed_board_heavier = "Heavier than usual, in standard deviations";
inline constexpr const char* weighed_board_heavier_below =
    "perhaps wetter than said, measured too small, or another wood";
inline constexpr const char* weighed_board_lighter = "Lighter than usual, in standard deviations";
inline constexpr const char* weighed_board_lighter_below =
    "perhaps measured too large, another wood, or much drier than said";
inline constexpr const char* weighed_board_use = "Use this density";

} // namespace evenfall::shell::look::words
