#pragma once

// Text of the soft tail with a drawn shape: its form, its effect, its mould and its plastic.

#include <array>
#include <string_view>

namespace evenfall::shell::look::words {

inline constexpr const char* tail_group = "Tail by its shape";
inline constexpr const char* tail_below = "A soft tail that is drawn: the bench works out what it weighs and "
                                          "pulls. One that you can weigh goes under Rigged instead.";
inline constexpr const char* tail_add = "Draw a tail";
inline constexpr const char* tail_remove = "Remove the tail";
inline constexpr const char* tail_density = "Density of the cast";
inline constexpr const char* tail_root = "Root, from the nose";
inline constexpr const char* tail_axis = "Height of its axis";
inline constexpr const char* tail_length = "Length behind the root";
inline constexpr const char* tail_height = "Height at its highest";
inline constexpr const char* tail_thickness = "Thickness at its thickest";
inline constexpr const char* tail_exponent = "Exponent of its sections";
inline constexpr const char* tail_exponent_below = "2 an ellipse, more squarer";
inline constexpr const char* tail_tenon = "Tenon in a slot";
inline constexpr const char* tail_tenon_below = "the slot is a pocket that ends with the wood";
inline constexpr const char* tenon_length = "Tenon, length";
inline constexpr const char* tenon_thickness = "Tenon, thickness";
inline constexpr const char* tenon_height = "Tenon, height";
inline constexpr const char* tail_line = "Points of its";
inline constexpr std::array<std::string_view, 3> tail_lines{"upper line", "lower line", "thickness"};
inline constexpr const char* tail_point_x = "Behind the root";
inline constexpr const char* tail_point_z = "Over the axis";
inline constexpr const char* tail_point_y = "Half thickness";
inline constexpr const char* tail_volume = "Volume";
inline constexpr const char* tail_in_water = "The tail in the water";
inline constexpr const char* tail_without = "The lure without it";
inline constexpr const char* tail_hang_without = "Hang without it";
inline constexpr const char* tail_now = "now ";

inline constexpr const char* pour_group = "Mould and plastic";
inline constexpr const char* pour_below = "Common practice, no source: put in what your own mould and "
                                          "plastic show. Heat and times stand on the label.";
inline constexpr const char* pour_tails = "Tails cast";
inline constexpr std::array<std::string_view, 2> pour_moulds{"two halves", "open, on its side"};
inline constexpr const char* pour_mould = "Mould";
inline constexpr const char* pour_wall = "Rubber round the cavity";
inline constexpr const char* pour_shrink = "Shrinks as it cools";
inline constexpr const char* pour_shrink_below = "of its volume";
inline constexpr const char* pour_sprue = "Sprue and flash";
inline constexpr const char* pour_sprue_below = "of what is poured";
inline constexpr const char* pour_loss = "Left in the cup";
inline constexpr const char* pour_loss_below = "of what is made ready";
inline constexpr std::array<const char*, 5> pour_parts{"Parts of old plastic", "Parts of fresh plastic",
                                                       "Parts of softener", "Parts of hardener",
                                                       "Parts of colour"};
inline constexpr std::array<const char*, 5> pour_densities{
    "Density of the old", "Density of the fresh", "Density of the softener", "Density of the hardener",
    "Density of the colour"};
inline constexpr std::array<const char*, 5> pour_grams{"Old plastic", "Fresh plastic", "Softener", "Hardener",
                                                       "Colour"};
inline constexpr const char* pour_by = "Parts are by";
inline constexpr const char* pour_cavity = "Cavity";
inline constexpr const char* pour_rubber = "Mould rubber";
inline constexpr const char* pour_frame = "frame inside ";
inline constexpr const char* pour_heat = "Plastic to heat";
inline constexpr const char* pour_mix = "Silicone to mix";

} // namespace evenfall::shell::look::words
