#pragma once

// What is shared behind the public face.

#include "answers/answers.hpp"
#include "materials/water_properties.hpp"

namespace evenfall {

/// The waters of a document, worked out.
struct Surroundings {
    materials::WaterProperties fishing;
    materials::WaterProperties tub;
};
[[nodiscard]] Outcome<Surroundings> surroundings(const document::Document& document);

/// What a lure of this mass less the water pushed aside does [kg], in whichever water that is.
[[nodiscard]] Behaviour behaviour_of(double in_water_kg);

} // namespace evenfall
