#pragma once

// Internal declarations shared by the files of this folder.

#include "answers/answers.hpp"
#include "materials/water_properties.hpp"

namespace evenfall {

/// Properties of a document's two waters.
struct Waters {
    materials::WaterProperties fishing;
    materials::WaterProperties tub;
};
[[nodiscard]] Outcome<Waters> waters_of(const document::Document& document);

/// Behaviour of a lure with this weight in water.
[[nodiscard]] Behaviour behaviour_of(MassInWater in_water);

} // namespace evenfall
