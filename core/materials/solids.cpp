#include "materials/solids.hpp"

#include <algorithm>
#include <array>

namespace evenfall::materials {

namespace {

using enum Provenance;

constexpr unsigned ballast = static_cast<unsigned>(Use::ballast);
constexpr unsigned cap = static_cast<unsigned>(Use::cap);
constexpr unsigned part = static_cast<unsigned>(Use::part);
constexpr unsigned coat = static_cast<unsigned>(Use::coat);
constexpr unsigned tail = static_cast<unsigned>(Use::tail);

/// A density in g/cm³. The half width of its usual range counts as two standard deviations.
constexpr SourcedValue one(double g_cm3, double either_side, Provenance provenance, std::string_view source) {
    return {g_cm3 * 1000.0, either_side / 2.0 / g_cm3, provenance, source};
}

/// A range in g/cm³: its middle, with the ends at two standard deviations.
constexpr SourcedValue range(double low, double high, Provenance provenance, std::string_view source) {
    return one((low + high) / 2.0, (high - low) / 2.0, provenance, source);
}

constexpr std::array table{
    Solid{"lead", "Lead, soft", ballast | part,
          one(11.34, 0.04, memory,
              "CRC Handbook of Chemistry and Physics, from memory; 11.3 read in Wood Handbook FPL-GTR-190 "
              "(2010), ch. 4")},
    Solid{"lead_antimony", "Lead, hardened", ballast | part,
          range(10.9, 11.1, memory, "2 to 6 % antimony, wheel-weight sort: 10.9 to 11.1, from memory")},
    Solid{"tungsten", "Tungsten", ballast | part,
          range(19.25, 19.3, memory, "CRC Handbook of Chemistry and Physics: 19.25 to 19.3, from memory")},
    Solid{"tungsten_alloy", "Tungsten heavy alloy", ballast | part,
          range(17.0, 18.5, memory, "Sintered W-Ni-Fe or W-Ni-Cu, ASTM B777: 17.0 to 18.5, from memory")},
    Solid{"tungsten_putty", "Tungsten putty", ballast,
          range(7.0, 11.0, practice, "Common practice, no source: 7 to 11 by binder; weigh it")},
    Solid{"tin", "Tin", ballast | part,
          one(7.29, 0.025, memory,
              "CRC Handbook of Chemistry and Physics, white tin: 7.265 to 7.31, from memory")},
    Solid{"bismuth", "Bismuth", ballast | part,
          range(9.78, 9.79, memory, "CRC Handbook of Chemistry and Physics: 9.78 to 9.79, from memory")},
    Solid{"steel", "Steel, carbon", ballast | part,
          one(7.85, 0.05, memory,
              "Common value, from memory; 7.8 read in Wood Handbook FPL-GTR-190 (2010), ch. 4")},
    Solid{"stainless", "Stainless steel", ballast | part,
          one(7.9, 0.1, memory, "EN 10088-1, types 302 and 304: 7.9, others to 8.0, from memory")},
    Solid{
        "brass", "Brass", ballast | part,
        range(8.50, 8.53, memory, "Copper Development Association data: C360 8.50, C260 8.53, from memory")},
    Solid{"copper", "Copper", ballast | part,
          one(8.96, 0.07, memory,
              "CRC Handbook of Chemistry and Physics; wrought C110 8.89 to 8.94; from memory")},
    Solid{"aluminium", "Aluminium", part,
          one(2.70, 0.03, memory,
              "Common value, from memory; 2.7 read in Wood Handbook FPL-GTR-190 (2010), ch. 4")},
    Solid{"ca_soda", "CA glue and baking soda", cap,
          one(1.5, 0.3, practice, "Common practice, no source: soda soaked with CA, about 1.5")},
    Solid{"dowel", "Hardwood dowel", cap,
          one(0.70, 0.15, practice, "Common practice, no source: birch, beech or maple at bench moisture")},
    Solid{"epoxy", "Epoxy, cured", cap | part | coat,
          range(1.10, 1.20, memory,
                "Cured, unfilled: 1.10 to 1.20, from memory; a resin maker's data sheet, read, gives 1.108 "
                "mixed, before cure")},
    Solid{"ca", "CA glue, cured", cap | part | coat,
          one(1.2, 0.1, memory, "Cured about 1.2 (liquid 1.05 to 1.10), from memory")},
    Solid{"polyurethane", "Polyurethane clear", coat,
          range(1.05, 1.20, memory, "Cast or two-part clear: 1.05 to 1.20, from memory")},
    Solid{"acrylic_paint", "Acrylic paint, dry", coat,
          range(1.2, 1.6, practice, "Common practice, no source: dry film 1.2 to 1.6 by pigment")},
    Solid{
        "primer", "Primer, dry", coat,
        range(1.3, 1.8, practice, "Common practice, no source: more filler than paint, dry film 1.3 to 1.8")},
    Solid{"uv_resin", "UV resin, cured", coat,
          range(1.10, 1.25, practice, "Common practice, no source: cured acrylate clear, 1.10 to 1.25")},
    Solid{"lacquer", "Lacquer, dry", coat,
          range(1.15, 1.40, memory, "Cellulose nitrate 1.35 to 1.40, less with plasticiser, from memory")},
    Solid{"nylon", "Nylon", part, range(1.13, 1.14, memory, "Nylon 6 1.13, nylon 6-6 1.14, from memory")},
    Solid{"glass", "Glass", part, one(2.5, 0.05, memory, "Soda-lime glass 2.5, from memory")},
    Solid{"plastisol", "Soft plastic", part | tail,
          range(0.98, 1.15, practice, "Common practice, no source: 0.98 to 1.15; salt-loaded to 1.3")},
    Solid{"silicone", "Silicone", part | tail,
          range(1.03, 1.10, memory, "RTV unfilled 1.03 to 1.10, filled to 1.4, from memory")},
};

} // namespace

std::span<const Solid> solids() {
    return table;
}

const Solid* find_solid(std::string_view id) {
    const auto found =
        std::find_if(table.begin(), table.end(), [id](const Solid& solid) { return solid.id == id; });
    return found == table.end() ? nullptr : &*found;
}

std::string name_of(const std::string& id) {
    const Solid* solid = find_solid(id);
    return solid != nullptr ? std::string(solid->name) : id;
}

bool is_soft(std::string_view id) {
    const Solid* solid = find_solid(id);
    return solid != nullptr && solid->serves(Use::tail);
}

} // namespace evenfall::materials
