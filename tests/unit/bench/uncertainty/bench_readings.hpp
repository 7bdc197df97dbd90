#pragma once

// The readings that the tests of surety begin from.

#include "base/trade.hpp"
#include "support/invented_lures.hpp"

#include <utility>
#include <vector>

namespace evenfall::support {

inline const preset::Document& millrace() {
    static const preset::Document document = invented::preset_named("millrace-170");
    return document;
}

inline preset::Document with(std::vector<preset::Reading> readings, preset::Document document = millrace()) {
    for (preset::Reading& r : readings)
        document.log.push_back(std::move(r));
    return document;
}

inline preset::Reading dry(Stage stage, double g) {
    preset::Reading r = invented::weighed(preset::ReadingKind::dry_weight, stage);
    r.mass_kg = units::kg_from_g(g);
    return r;
}

inline preset::Reading held(Stage stage, double g) {
    preset::Reading r = invented::weighed(preset::ReadingKind::held_under, stage);
    r.mass_kg = units::kg_from_g(g);
    return r;
}

} // namespace evenfall::support
