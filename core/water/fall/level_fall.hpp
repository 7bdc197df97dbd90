#pragma once

#include "body/lines.hpp"
#include "materials/water_properties.hpp"
#include "water/fall/hull.hpp"

#include <optional>

namespace evenfall::fall {

/// Steady speed straight down, and its range by the uncertainty of the end effect [m/s].
struct Speeds {
    double usual_m_s = 0.0;
    double slow_m_s = 0.0; ///< most drag
    double fast_m_s = 0.0; ///< least drag
};

/// Steady fall of a level body straight down in still water, without line: weight in water = ½ρκ ∑
/// Cd(v)·width·length·v² over its strips.
///
/// Every strip's coefficient is a constant plus a friction term in v^−½, so the whole body is two numbers;
/// they are computed once from the lines, and a speed then costs a fraction of a microsecond.
///
/// Accuracy: the equation is solved to 1e-12; the model's own uncertainty is the band, about −8 and +10 % of
/// speed for a slender body, and should be shown. Drag of hooks, joints and other parts is not included here.
class LevelFall {
public:
    explicit LevelFall(const shape::Lines& lines);
    explicit LevelFall(const HydroBody& hull); ///< the same, where the hull is at hand

    /// Speed at which a body of this weight in water (mass less displaced water) falls.
    ///
    ///   in_water_kg   ≤ 0 or not finite: absent, it does not fall
    [[nodiscard]] std::optional<Speeds> speeds(double in_water_kg,
                                               const materials::WaterProperties& water) const;

    /// Only the usual speed, a third of the work.
    [[nodiscard]] std::optional<double> speed_m_s(double in_water_kg,
                                                  const materials::WaterProperties& water) const;

    /// The inverse: weight in water [kg] that falls at this usual speed; 0 for a speed ≤ 0.
    [[nodiscard]] double in_water_kg(double speed_m_s, const materials::WaterProperties& water) const;

private:
    EndEffect ends_;
    double pressure_m2_ = 0.0;   ///< ∑ (constant part of Cd)·width·length
    double friction_m3_2_ = 0.0; ///< ∑ (friction part of Cd)·√(ρv/μ)·width·length [m^1.5]
};

} // namespace evenfall::fall
