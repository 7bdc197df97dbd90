#pragma once

#include "materials/figure.hpp"

#include <optional>
#include <span>
#include <string_view>

namespace evenfall::materials {

/// A wood species with its handbook figures. Specific gravity is oven-dry mass over volume at the stated
/// moisture, divided by the density of water: a piece at 12 % weighs 1.12 times its `sg_12`.
struct Wood {
    std::string_view id;                         ///< as in a document: "basswood"
    std::string_view name;                       ///< as shown: "Basswood, American"
    std::optional<SourcedValue> sg_green;        ///< basic specific gravity Gb; every wood has this or sg_12
    std::optional<SourcedValue> sg_12;           ///< at 12 % moisture
    std::optional<SourcedValue> side_hardness_n; ///< Janka side hardness at 12 % [N]
    SourcedValue shear_pa{};                     ///< strength in shear along the grain at 12 % [Pa]
};

[[nodiscard]] std::span<const Wood> woods();

/// The wood with this id, or nullptr.
[[nodiscard]] const Wood* find_wood(std::string_view id);

/// The figure that the density is computed from: sg_12, or sg_green where there is no sg_12. Its spread is
/// that of the density.
[[nodiscard]] const SourcedValue& specific_gravity(const Wood& wood);

/// Density of a piece at `moisture_percent` (0 to 30, % of oven-dry mass) [kg/m³]. Between green and 12 %: Gx
/// = Gb/[1 − 0.265 Gb(1 − x/30)], ρ = 1000 Gx(1 + x/100) (Wood Handbook FPL-GTR-282, 2021, eqs. 4-13 and
/// 4-14), scaled to match the tabulated sg_12 at 12 % exactly where there is one.
[[nodiscard]] double wood_density_kg_m3(const Wood& wood, double moisture_percent);

/// Strength in shear along the grain of a dry piece [Pa]. `density_share`: its density over the species' at
/// the same moisture, 1 where it is not known; strength is taken to go with it (from species to species it
/// goes with the power 0.85 to 1.24: Wood Handbook, Table 5-11a, from memory).
[[nodiscard]] double shear_along_grain_pa(const Wood& wood, double density_share);

/// What the wood under a wire or pin bears before it is crushed, along or across the grain [Pa]: 16,600 psi ·
/// G^1.84 for nails up to 1/4 in, G the oven-dry gravity of the piece (National Design Specification for Wood
/// Construction, dowel bearing strength, and Wood Handbook ch. 8; from memory).
[[nodiscard]] double pin_bearing_pa(const Wood& wood, double density_share);

} // namespace evenfall::materials
