#include "output/mix_json.hpp"

#include "base/trade.hpp"
#include "document/json_text.hpp"
#include "output/trees.hpp"

namespace evenfall::output {

namespace {

Tree minutes(double seconds) {
    return number(units::min_from_s(seconds));
}

Tree portion(const resin::MixAmounts& p) {
    return {{"mixed_g", grams(p.mixed_kg)},
            {"resin_g", grams(p.resin_kg)},
            {"hardener_g", grams(p.hardener_kg)},
            {"resin_ml", cubic_centimetres(p.resin_m3)},
            {"hardener_ml", cubic_centimetres(p.hardener_m3)}};
}

} // namespace

std::string resin_json(const document::Document& document, const std::vector<resin::CoatGrams>& coats,
                       int coat, const resin::Mix& mix, const units::UnitSet& units) {
    Tree list = list_of(coats, [&](const resin::CoatGrams& c) {
        return Tree{{"coat", c.coat + 1},
                    {"name", document.coats[static_cast<std::size_t>(c.coat)].name},
                    {"skin_g", grams(c.skin_kg)},
                    {"faces_g", grams(c.faces_kg)},
                    {"pockets_g", grams(c.pockets_kg)},
                    {"together_g", grams(c.together_kg())}};
    });
    return document::laid_out_text({{"name", document.name},
                                    {"coats", std::move(list)},
                                    {"mixed_for_coat", coat + 1},
                                    {"all", portion(mix.all)},
                                    {"lost_g", grams(mix.lost_kg)},
                                    {"working_min", minutes(mix.working_s)},
                                    {"pot_life_min", minutes(mix.pot_life_s)},
                                    {"lures_by_time", mix.lures_by_time},
                                    {"lures_by_batch", mix.lures_by_batch},
                                    {"lures_a_mix", mix.lures_a_mix},
                                    {"mixes", mix.mixes},
                                    {"one_mix", portion(mix.cup)},
                                    {"recoat_from_min", minutes(mix.recoat_from_s)},
                                    {"recoat_to_min", minutes(mix.recoat_to_s)},
                                    {"cure_min", minutes(mix.cure_s)},
                                    {"warnings", problem_list(mix.warnings, units)}});
}

std::string stock_json(const document::Document& document, const stock::StockList& list) {
    Tree holes = list_of(list.holes, [](const stock::HoleStock& h) {
        return Tree{{"hole", h.hole + 1},
                    {"fill_g", grams(h.fill_kg)},
                    {"length_mm", millimetres(h.length_m)},
                    {"count", h.count},
                    {"over_g", grams(h.over_kg)},
                    {"area_cm2", number(units::cm2_from_m2(h.area_m2))},
                    {"enters", h.enters ? Tree(*h.enters) : Tree(nullptr)}};
    });
    return document::laid_out_text({{"name", document.name},
                                    {"holes", std::move(holes)},
                                    {"fill_g", grams(list.fill_kg)},
                                    {"length_mm", millimetres(list.length_m)},
                                    {"count", list.count},
                                    {"over_g", grams(list.over_kg)},
                                    {"area_cm2", number(units::cm2_from_m2(list.area_m2))}});
}

} // namespace evenfall::output
