#pragma once

// What evaluate() and plan_lead() share behind the public face.

#include "evenfall.hpp"
#include "water/properties.hpp"

namespace evenfall {

/// The waters of a document, worked out.
struct Surroundings {
    water::Properties fishing;
    water::Properties tub;
};
[[nodiscard]] Outcome<Surroundings> surroundings(const preset::Document& document);

}  // namespace evenfall
