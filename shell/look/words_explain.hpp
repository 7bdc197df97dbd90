#pragma once

// What each answer of the strip means and where it comes from: shown when it is tapped.

namespace evenfall::shell::look::words {

inline constexpr const char* explain_way_finished = "Open the ledger";
inline constexpr const char* explain_finished =
    "Mass of the finished lure in air: wood by its species' density or your own weighing, less what is drilled and cut out, plus lead, "
    "caps, hardware, coats and dress. Every line of the sum stands in the ledger under Water.";
inline constexpr const char* explain_finished_from =
    "± is one standard deviation, from the spread of each line. Wood alone spreads by about 10 % within a species (Wood Handbook, "
    "FPL-GTR-190, ch. 4): weigh yours.";

inline constexpr const char* explain_in_water =
    "Mass less the water it pushes aside, in the fishing water: what a scale would read with the lure hung under water. Positive sinks, "
    "negative floats.";
inline constexpr const char* explain_in_water_from =
    "Water's density from its temperature and salt (EOS-80, Fofonoff and Millard 1983). A slow faller lives below 1 g on a 60 g lure, so a "
    "little wood more or less decides.";

inline constexpr const char* explain_fall =
    "The steady rate at which the finished lure sinks, level or nose-down as it settles. From rest it needs a moment to get there.";
inline constexpr const char* explain_fall_from =
    "Drag of the body in strips by its section (after Hoerner 1965), ends and parts apart, with added mass and the turning moment of a slender "
    "body. Good to about a fifth until a tub fall of your own corrects it; see Water, Fall.";

inline constexpr const char* explain_hang =
    "How the lure points when it hangs still under water: nose-up positive. While it falls it may lie otherwise: the water turns it.";
inline constexpr const char* explain_hang_from =
    "From where its mass and its buoyancy act: tan of the angle is how far G lies before B, over how far it lies below.";

inline constexpr const char* explain_righting =
    "How far the centre of buoyancy B lies above the centre of gravity G. The larger, the more firmly it stays upright; with G above B it rolls "
    "over. Lead low in the belly makes it grow.";
inline constexpr const char* explain_righting_from =
    "Righting moment under water is weight times this distance times the sine of the heel. For a lure that floats see Water, Afloat.";

inline constexpr const char* explain_chance =
    "The chance that the first finished lure falls within the asked band and hangs within the asked band of pitch, if it is built as the plan "
    "stands now.";
inline constexpr const char* explain_chance_from =
    "From the spread of wood, size, lead, hardware, coats and drag, narrowed by what the Bench log holds. A dry weight and one held under water "
    "raise it most.";
inline constexpr const char* explain_way_chance = "Open the Bench log";

}  // namespace evenfall::shell::look::words
