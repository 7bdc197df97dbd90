#pragma once

#include "materials/figure.hpp"

#include <span>
#include <string>
#include <string_view>

namespace evenfall::materials {

/// What a material is used for; a document may name it only for these uses.
enum class Use : unsigned {
    ballast = 1u, ///< fills holes
    cap = 2u,     ///< closes holes
    part = 4u,    ///< wire, hooks, eyes, tails
    coat = 8u,    ///< sealers, paints, clear coats
    tail = 16u,   ///< cast soft tails
};

struct Solid {
    std::string_view id;        ///< as in a document: "lead"
    std::string_view name;      ///< as shown: "Lead, soft"
    unsigned uses = 0;          ///< Use flags, combined with |
    SourcedValue density_kg_m3; ///< as on the finished lure (cured, dry, set)

    [[nodiscard]] bool serves(Use use) const { return (uses & static_cast<unsigned>(use)) != 0u; }
};

[[nodiscard]] std::span<const Solid> solids();

/// The material with this id, or nullptr.
[[nodiscard]] const Solid* find_solid(std::string_view id);

/// Its name as shown; the id itself where there is none of that id.
[[nodiscard]] std::string name_of(const std::string& id);

/// True where the material exists and soft tails are cast of it.
[[nodiscard]] bool is_soft(std::string_view id);

} // namespace evenfall::materials
