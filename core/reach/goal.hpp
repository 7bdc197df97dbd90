#pragma once

#include "answers/answers.hpp"

#include <optional>

namespace evenfall::reach {

/// What the finished lure is to do.
struct Goal {
    document::Targets targets;      ///< fall or weight in water, and hang
    std::optional<double> chance{}; ///< that fall and hang are within their bands, least; absent: any
};

/// No lure does more than this (own choice). Slower than still_m_s it hangs still: ask for a weight in water
/// of 0 instead.
inline constexpr double greatest_fall_m_s = 1.5;
inline constexpr double steepest_hang_rad = 45.0 * units::degree_rad;
inline constexpr double greatest_chance = 0.99;

/// The righting distance of every way out, least: below it a lure carved as it is carved may well roll over
/// (own choice).
inline constexpr double least_bg_m = 0.5e-3;

/// Empty, or a problem with the range for each part of the goal that no lure of this size could meet
/// ("/targets/fall_mm_s", "/targets/in_water_g", "/targets/pitch_deg", "/chance"). A weight in water lies
/// between floating and sinking with as much as it displaces.
[[nodiscard]] Problems off_range(const Goal& goal, const Answers& answers);

/// The six figures of a finished lure.
struct Figures {
    double mass_kg = 0.0;
    double in_water_kg = 0.0;
    std::optional<double> fall_m_s;  ///< its steady way under water, down positive; absent where it has none
    std::optional<double> pitch_rad; ///< hang, nose-up positive; absent where it rolls over
    double bg_m = 0.0;               ///< righting distance, B above G
    double chance = 0.0;             ///< that fall and hang are within their bands
};

/// Refuses what evaluate() refuses.
[[nodiscard]] Outcome<Figures> figures_of(const document::Document& document);

} // namespace evenfall::reach
