#include "output/tail_json.hpp"

#include "body/tail_loft.hpp"
#include "output/trees.hpp"

namespace evenfall::output {

namespace {

Tree trim(const Answers& a) {
    return {{"mass_g", grams(a.mass.kg)},
            {"in_water_g", grams(a.in_water.kg)},
            {"pitch_deg", degrees(a.pitch_rad)},
            {"bg_mm", millimetres(a.bg_m)},
            {"fall_mm_s", a.fall ? speed(a.fall->speed_m_s) : Tree(nullptr)}};
}

} // namespace

std::string tail_json(const document::Document& document, const Evaluation& evaluation,
                      const tail::TailEffect& tail_effect, const tail::TailCasting& pour) {
    const Answers& with = evaluation.answers;
    const Answers& without = tail_effect.without;
    const document::Tail& tail = *document.tail;
    std::optional<double> turned;
    if (with.pitch_rad && without.pitch_rad) turned = *with.pitch_rad - *without.pitch_rad;
    const bool both_fall = with.fall && without.fall;
    Tree blend = Tree::array();
    for (std::size_t i = 0; i < tail::ingredient_count; ++i) {
        blend.push_back({{"what", tail::ingredient_word(static_cast<tail::Ingredient>(i))},
                         {"mass_g", grams(pour.blend[i].mass_kg)},
                         {"volume_ml", cubic_centimetres(pour.blend[i].volume_m3)}});
    }
    return document::laid_out_text(
        {{"name", document.name},
         {"material", tail.material},
         {"density_kg_m3", number(tail::density_kg_m3(tail))},
         {"volume_cm3", cubic_centimetres(pour.cast.volume_m3)},
         {"tenon_cm3", cubic_centimetres(pour.tenon_m3)},
         {"mass_g", grams(tail_effect.own.mass.kg)},
         {"displaced_cm3", cubic_centimetres(tail_effect.own.displaced_m3)},
         {"in_water_g", grams(tail_effect.own.in_water(with.water_density_kg_m3).kg)},
         {"g_mm", point(tail_effect.own.g_m())},
         {"with", trim(with)},
         {"without", trim(without)},
         {"pull",
          {{"in_water_g", grams((with.in_water - without.in_water).kg)},
           {"pitch_deg", degrees(turned)},
           {"bg_mm", millimetres(with.bg_m - without.bg_m)},
           {"fall_mm_s", both_fall ? speed(with.fall->speed_m_s - without.fall->speed_m_s) : Tree(nullptr)}}},
         {"mould",
          {{"cavity_cm3", cubic_centimetres(pour.cavity_m3)},
           {"box_mm", point(pour.box_m)},
           {"rubber_cm3", cubic_centimetres(pour.rubber.volume_m3)},
           {"rubber_g", grams(pour.rubber.mass_kg)}}},
         {"plastic",
          {{"poured_g", grams(pour.poured_kg)},
           {"heated_g", grams(pour.heated_kg)},
           {"blend", std::move(blend)}}}});
}

} // namespace evenfall::output
