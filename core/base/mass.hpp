#pragma once

// Three kinds of mass, all in kg, that must not be added or compared with each other: what a body has, what
// water it pushes aside has, and what a scale reads when it hangs in water. Their one relation is the
// subtraction below.

#include <compare>

namespace evenfall {

/// A mass [kg] of the kind that `Kind` names. Arithmetic and comparison within one kind only.
template <class Kind>
struct MassOf {
    double kg = 0.0;

    MassOf& operator+=(MassOf other) {
        kg += other.kg;
        return *this;
    }
    friend MassOf operator+(MassOf a, MassOf b) { return {a.kg + b.kg}; }
    friend MassOf operator-(MassOf a, MassOf b) { return {a.kg - b.kg}; }
    friend MassOf operator*(double factor, MassOf mass) { return {factor * mass.kg}; }
    friend auto operator<=>(MassOf, MassOf) = default;
};

using Mass = MassOf<struct OwnMass>;             ///< what a scale in a vacuum shows
using DisplacedMass = MassOf<struct WaterAside>; ///< of the water pushed aside: density times volume
using MassInWater = MassOf<struct HungInWater>;  ///< what a scale reads below which it hangs in water

/// Archimedes: the only way from one kind to another.
inline MassInWater operator-(Mass mass, DisplacedMass displaced) {
    return {mass.kg - displaced.kg};
}

} // namespace evenfall
