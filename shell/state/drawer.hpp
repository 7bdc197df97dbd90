#pragma once

// The builder's own pieces, weighed and measured once: hooks, rings, eyes, tails, wire, lead stock. Saved on
// the device, separate from the lures: adding a piece to a lure copies its numbers. Pure.

#include "evenfall.hpp"
#include "state/edits.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall::shell::state {

enum class DrawerItemKind {
    part,  ///< weighed: name, material, mass, stage; hooks with their reach
    wire,  ///< diameter and temper
    stock, ///< rod for ballast holes: material and diameter
};

struct DrawerItem {
    DrawerItemKind kind = DrawerItemKind::part;
    std::string name;                                     ///< 1 to 80 bytes
    std::string material = "stainless";                   ///< part, stock
    double mass_kg = 0.0;                                 ///< part: 0 to 2 kg
    std::optional<double> mass_sigma_kg;                  ///< part
    std::optional<double> reach_m;                        ///< part
    Stage put_on = Stage::hardware;                       ///< part, as Part::stage
    double diameter_m = 0.0;                              ///< wire, stock: 0.2 to 40 mm
    document::WireTemper temper = document::usual_temper; ///< wire
};

inline constexpr std::size_t most_things = 200;
inline constexpr std::size_t most_drawer_bytes = 128 * 1024;

class Drawer {
public:
    [[nodiscard]] const std::vector<DrawerItem>& things() const { return things_; }
    /// Adds a piece, its name cut to the allowed length; replaces one of the same kind and name. False where
    /// the drawer is full or the name is empty.
    bool put(DrawerItem thing);
    void remove(std::size_t index);
    /// False where another of its kind has this name, or the name is empty.
    bool replace(std::size_t index, DrawerItem thing);
    [[nodiscard]] bool holds(DrawerItemKind kind, const std::string& name) const;
    /// Increases with every change.
    [[nodiscard]] unsigned revision() const { return revision_; }

private:
    [[nodiscard]] std::size_t place_of(DrawerItemKind kind, const std::string& name) const;

    std::vector<DrawerItem> things_;
    unsigned revision_ = 0;
};

/// The drawer as a file: JSON, {"evenfall_drawer": 1, "things": [...]}, lengths in mm and masses in g.
[[nodiscard]] std::string write_drawer(const Drawer& drawer);
/// Strict: unknown keys, wrong types and numbers outside their limits are refused with the path of the field.
[[nodiscard]] Outcome<Drawer> read_drawer(const std::string& text);

[[nodiscard]] DrawerItem drawer_item_of(const document::Part& part);
/// Adds a new part with the piece's numbers, placed where new parts go.
[[nodiscard]] Edit add_part_from(const DrawerItem& thing);

} // namespace evenfall::shell::state
