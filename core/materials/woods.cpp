#include "materials/woods.hpp"

#include "base/trade.hpp"
#include "materials/moisture.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::materials {

namespace {

using enum Provenance;

// Within a species: a coefficient of variation of about 10 % fits the oven-dry density of pieces of one
// species (Wood Handbook FPL-GTR-190, 2010, ch. 4, density section; read).
constexpr double of_species = 0.10;
// Sold from 0.10 to 0.25 g/cm³ (second-hand); the ends count as two standard deviations.
constexpr double of_balsa = 0.20;
// The mean itself is uncertain by about as much as pieces differ (own allowance): weigh the piece.
constexpr double of_paulownia = 0.15;
// Coefficient of variation of side hardness within a species (Wood Handbook ch. 5, from memory).
constexpr double of_hardness = 0.20;
// The same of shear along the grain (Wood Handbook ch. 5, from memory).
constexpr double of_shear = 0.14;

constexpr std::string_view table_5_3a = "Wood Handbook FPL-GTR-282 (2021), Table 5-3a, from a copied table";
constexpr std::string_view table_5_3b = "Wood Handbook FPL-GTR-282 (2021), Table 5-3b, from a trade reprint";
constexpr std::string_view table_5_5a = "Wood Handbook FPL-GTR-282 (2021), Table 5-5a, as quoted";
constexpr std::string_view edition_1974 =
    "Wood Handbook, 1974 edition, table of strength properties, from a reprint";
constexpr std::string_view recalled = "Wood Handbook FPL-GTR-282 (2021), ch. 5, from memory, not re-read";

constexpr SourcedValue sg(double value, Provenance provenance, std::string_view source,
                          double spread = of_species) {
    return {value, spread, provenance, source};
}
constexpr SourcedValue hardness_lbf(double lbf, Provenance provenance, std::string_view source) {
    return {units::n_from_lbf(lbf), of_hardness, provenance, source};
}

constexpr std::string_view recalled_shear =
    "Wood Handbook FPL-GTR-282 (2021), Table 5-3b, shear parallel to grain, from memory";
constexpr SourcedValue shear_psi(double psi, std::string_view source = recalled_shear) {
    return {units::n_from_lbf(psi) / (units::inch_m * units::inch_m), of_shear, memory, source};
}

constexpr std::array table{
    Wood{"basswood", "Basswood, American", sg(0.32, second_hand, table_5_3b),
         sg(0.37, second_hand, table_5_3b), hardness_lbf(410, second_hand, table_5_3b), shear_psi(990)},
    Wood{"yellow_poplar", "Yellow-poplar", sg(0.40, second_hand, table_5_3a),
         sg(0.42, second_hand, table_5_3a), hardness_lbf(540, second_hand, table_5_3b), shear_psi(1190)},
    Wood{"black_walnut", "Walnut, black", sg(0.51, memory, recalled), sg(0.55, second_hand, table_5_3a),
         hardness_lbf(1010, memory, recalled), shear_psi(1370)},
    Wood{"douglas_fir", "Douglas-fir, coast", sg(0.45, second_hand, table_5_3a),
         sg(0.48, second_hand, table_5_3a),
         hardness_lbf(710, memory,
                      "From memory of a table of wood hardness; 3200 N in Wood Handbook Table 5-3a, "
                      "second-hand"),
         shear_psi(1130)},
    Wood{"western_redcedar", "Redcedar, western", sg(0.31, second_hand, edition_1974),
         sg(0.32, second_hand, edition_1974), hardness_lbf(350, second_hand, edition_1974), shear_psi(990)},
    Wood{"white_pine", "Pine, eastern white", sg(0.34, second_hand, edition_1974),
         sg(0.35, second_hand, edition_1974), hardness_lbf(380, second_hand, edition_1974), shear_psi(900)},
    // The only hardness found for balsa (100 lbf) is of green wood, so none is given here.
    Wood{
        "balsa", "Balsa", sg(0.16, second_hand, table_5_5a, of_balsa), std::nullopt, std::nullopt,
        shear_psi(300, "Wood Handbook FPL-GTR-282 (2021), Table 5-5b, shear parallel to grain, from memory")},
    Wood{"hard_maple", "Maple, sugar (hard)", sg(0.56, second_hand, table_5_3a),
         sg(0.63, second_hand, table_5_3a), hardness_lbf(1450, memory, recalled), shear_psi(2330)},
    Wood{"red_alder", "Alder, red", sg(0.37, memory, recalled),
         sg(0.41, second_hand, "Wood Handbook FPL-GTR-282 (2021), ch. 5, from a reprint"),
         hardness_lbf(590, second_hand, "Wood Handbook FPL-GTR-282 (2021), ch. 5, from a trade reprint"),
         shear_psi(1080)},
    Wood{"paulownia", "Paulownia",
         sg(0.265, memory, "Middle of 0.25 to 0.28, from memory; no handbook row found: weigh it",
            of_paulownia),
         sg(0.29, memory, "Middle of 0.28 to 0.30, from memory; no handbook row found: weigh it",
            of_paulownia),
         hardness_lbf(300, memory, "About 300 lbf, from memory; no handbook row found"),
         SourcedValue{5.4e6, 0.2, memory,
                      "21.9 MPa · G^1.13, hardwoods at 12 % (Wood Handbook, Table 5-11a, from memory); no "
                      "handbook row found"}},
};

} // namespace

std::span<const Wood> woods() {
    return table;
}

const Wood* find_wood(std::string_view id) {
    const auto found =
        std::find_if(table.begin(), table.end(), [id](const Wood& wood) { return wood.id == id; });
    return found == table.end() ? nullptr : &*found;
}

const SourcedValue& specific_gravity(const Wood& wood) {
    return wood.sg_12 ? *wood.sg_12 : *wood.sg_green;
}

double wood_density_kg_m3(const Wood& wood, double moisture_percent) {
    const double green = wood.sg_green ? wood.sg_green->value : green_gravity(wood.sg_12->value, 12.0);
    const double to_table = wood.sg_12 ? wood.sg_12->value / gravity_at(green, 12.0) : 1.0;
    return 1000.0 * to_table * gravity_at(green, moisture_percent) * (1.0 + moisture_percent / 100.0);
}

double shear_along_grain_pa(const Wood& wood, double density_share) {
    return wood.shear_pa.value * density_share;
}

double pin_bearing_pa(const Wood& wood, double density_share) {
    const double gravity = wood_density_kg_m3(wood, 0.0) * density_share / 1000.0;
    return units::n_from_lbf(16600.0) / (units::inch_m * units::inch_m) * std::pow(gravity, 1.84);
}

} // namespace evenfall::materials
