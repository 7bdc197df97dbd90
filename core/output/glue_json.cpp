#include "output/glue_json.hpp"

#include "document/json_text.hpp"
#include "output/trees.hpp"

namespace evenfall::output {

const char* glue_word(glue::GlueKind sort) {
    switch (sort) {
    case glue::GlueKind::thin_ca:
        return "thin CA";
    case glue::GlueKind::thick_ca:
        return "thick CA";
    case glue::GlueKind::epoxy:
        return "epoxy";
    }
    return "";
}

std::string glue_json(const document::Document& document, const glue::GlueAnswer& answer,
                      const units::UnitSet& units) {
    Tree rows = list_of(answer.rows, [](const glue::GluedRow& r) {
        return Tree{{"joint", r.joint ? Tree(*r.joint + 1) : Tree(nullptr)},
                    {"eyes", r.eyes},
                    {"gap_ml", cubic_centimetres(r.gap_m3)},
                    {"width_mm", millimetres(r.width_m)},
                    {"glue", glue_word(r.sort)},
                    {"in_lure_g", grams(r.glue_kg)}};
    });
    Tree caps = list_of(answer.caps, [](const glue::CapRow& c) {
        return Tree{{"hole", c.hole + 1},
                    {"volume_ml", cubic_centimetres(c.volume_m3)},
                    {"soda_g", grams(c.soda_kg)},
                    {"ca_ml", cubic_centimetres(c.ca_m3)}};
    });
    Tree take = Tree::array();
    for (std::size_t k = 0; k < glue::glue_kind_count; ++k) {
        take.push_back({{"glue", glue_word(static_cast<glue::GlueKind>(k))},
                        {"ml", cubic_centimetres(answer.take_m3[k])},
                        {"g", grams(answer.take_kg[k])}});
    }
    return document::laid_out_text({{"name", document.name},
                                    {"eyes", std::move(rows)},
                                    {"caps", std::move(caps)},
                                    {"take", std::move(take)},
                                    {"soda_g", grams(answer.soda_kg)},
                                    {"warnings", problem_list(answer.warnings, units)}});
}

} // namespace evenfall::output
