#pragma once

// What is said before hands, eyes and lungs can be hurt, in one place for page, program and sheet: it stands
// where the work begins, ahead of its figures, and once. Common practice; labels, safety sheets and local
// rules go first.

#include <string_view>

namespace evenfall::cautions {

inline constexpr const char* saws =
    "Clamp the work, cut away from your hands and keep fingers behind the edge; eye protection, dust mask, "
    "extraction. Follow the tool maker's instructions.";
inline constexpr const char* burrs = "Clamp the piece: a saw jumps and a burr runs off along the grain. Eye "
                                     "protection, no loose sleeves or gloves near what turns, dust mask.";
inline constexpr const char* wire = "Cut ends fly: cover your eyes and hold both ends. A torch softens "
                                    "spring wire and can start a fire: clear the bench.";
inline constexpr const char* drilling = "Clamp the segment before drilling and try the bit in scrap wood "
                                        "first. Eye protection, no loose sleeves, dust mask.";
inline constexpr const char* lead =
    "Wash your hands after lead, make no dust, never sand it dry, and keep it from children and food. Melt "
    "it only outdoors or under strong extraction, bone-dry. Some waters forbid lead tackle: tungsten, "
    "bismuth, tin and steel are in the tables. Local rules decide.";
inline constexpr const char* lead_chips =
    "Lead chips: hold the segment in a clamp, drill slowly with a wet cloth under it, no dust, wash your "
    "hands; keep chips from children and food.";
inline constexpr const char* hooks =
    "Hooks catch hands and eyes: cover their points with cork or tube while you handle and weigh the lure, "
    "and cover your eyes when you pull at one.";
inline constexpr const char* ca =
    "CA bonds skin and eyelids in a second and its fumes sting: moving air, eyes covered, gloves that it "
    "does not soak, never cotton. Follow the label.";
inline constexpr const char* ca_on_soda = "CA glue on baking soda heats up at once and fumes: a few drops at "
                                          "a time, eyes covered, moving air. Follow the label.";
inline constexpr const char* epoxy =
    "Uncured epoxy can make the skin allergic for life: gloves, moving air, no solvent on skin, no torch or "
    "flame near solvent. A full cup heats by itself: mix little and spread it at once. Follow the label.";
inline constexpr const char* sanding =
    "Sand only what has cured, wet or with extraction, dust mask on; never where lead lies bare.";
inline constexpr const char* spray = "Spray paint and clear coats outdoors or with an extractor, a mask "
                                     "against vapours on, no flame or spark near. Follow the label.";
inline constexpr const char* plastisol =
    "Hot plastisol burns deep and clings: gloves, long sleeves, face covered. Heat it slowly outdoors or "
    "under a hood and never past its label's heat: overheated it gives off acid fumes. A drop of water in "
    "mould or cup makes it spit: both bone dry. Follow the label.";
inline constexpr const char* silicone =
    "Silicone sets by itself: parts, times, gloves and fresh air as its label has them.";

/// Whether a material of the tables is lead, alloyed or not: tungsten, tin and the like ask for none of its
/// cautions.
constexpr bool is_lead(std::string_view material) {
    return material.substr(0, 4) == "lead";
}

} // namespace evenfall::cautions
