#pragma once

// The readings that the tests of uncertainty begin from.

#include "base/trade.hpp"
#include "support/invented_lures.hpp"

#include <utility>
#include <vector>

namespace evenfall::support {

inline const document::Document& millrace() {
    static const document::Document document = invented::preset_named("millrace-170");
    return document;
}

inline document::Document with(std::vector<document::Reading> readings,
                               document::Document document = millrace()) {
    for (document::Reading& r : readings)
        document.log.push_back(std::move(r));
    return document;
}

inline document::Reading dry(Stage stage, double g) {
    document::Reading r = invented::weighed(document::ReadingKind::dry_weight, stage);
    r.mass_kg = units::kg_from_g(g);
    return r;
}

inline document::Reading held(Stage stage, double g) {
    document::Reading r = invented::weighed(document::ReadingKind::held_under, stage);
    r.mass_kg = units::kg_from_g(g);
    return r;
}

} // namespace evenfall::support
