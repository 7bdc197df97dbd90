#include "bench/other_material.hpp"

namespace evenfall::bench {

document::Document in_wood(document::Document document, std::string_view wood) {
    document.wood.species = wood;
    document.wood.density_kg_m3.reset();
    document.wood.density_spread.reset();
    document.log.clear();
    document.corrections.clear();
    return document;
}

document::Document with_metal(document::Document document, std::string_view metal) {
    for (document::Hole& hole : document.holes) {
        if (hole.use == document::HoleUse::fixed) continue;
        // As much of a lighter metal as there is now need not fit: the plan begins with none of it.
        hole.fill = document::Fill{std::string(metal), 0.0, std::nullopt, std::nullopt};
    }
    return document;
}

} // namespace evenfall::bench
