#pragma once

// Help on the figures of the Water step.

#include "help/help.hpp"
#include "help/sources.hpp"

namespace evenfall::shell::help {

inline constexpr const char* swim_trust = "Never checked against a real lure. Beats a metre are known to "
                                          "about a third before you count, to a tenth "
                                          "after; how wide it swings may be half or double.";

inline constexpr Entry water_entries[] = {
    {.topic = Topic::water_density,
     .id = "water_density",
     .title = "Density of the water",
     .what = "What a cubic measure of your fishing water weighs. Denser water carries more.",
     .how = "From its temperature and salt. Fresh water is densest at 4 °C; salt adds nearly 3 % in the sea.",
     .source = "Millero and Poisson 1981 (UNESCO equation of state).",
     .trust = "Far finer than it matters. The salt of brackish water is the doubtful part: measure it.",
     .find = "salt temperature cold warm sea fresh brackish"},
    {.topic = Topic::fall_attitude,
     .id = "fall_attitude",
     .title = "Angle and glide of the fall",
     .what = "The angle at which the lure falls, and how far its path leans from straight down. It is not "
             "the angle at "
             "which it hangs.",
     .how = "The angle at which the turning of weight, buoyancy and drag cancels, found by a search over all "
            "angles. "
            "A steady fall comes back to it after a knock.",
     .source = fall_model,
     .trust = "The range beside it is the model's own. Rolling and turning sideways are left out.",
     .find = "nose down glide path spiral stable angle falling"},
    {.topic = Topic::fall_time,
     .id = "fall_time",
     .title = "From rest to a depth",
     .what = "How long the lure takes from rest, how far it glides meanwhile, and what share of the time it "
             "needs to "
             "get up to speed.",
     .how = "The motion from rest in still water, step by step, from the angle at which it hangs.",
     .source = fall_model,
     .trust = "As the rate of fall. No line, no waves, no current.",
     .find = "time seconds depth countdown start glide count down"},
    {.topic = Topic::waterline,
     .id = "waterline",
     .title = "How it lies afloat",
     .what = "The angles at which it lies on the water, how deep nose and tail go, and how far the back "
             "stands out.",
     .how = "The cut shape is let down until the water pushed aside weighs as much as the lure, and turned "
            "until it "
            "comes to rest. Every way of lying at rest is looked for.",
     .source = statics,
     .trust =
         "For still water and no line. A lure that nearly suspends changes its waterline a great deal for a "
         "little weight.",
     .find = "draft float floating freeboard waterline surface topwater"},
    {.topic = Topic::back_showing,
     .id = "back_showing",
     .title = "Back line showing",
     .what = "The share of the back line that lies above the water.",
     .how = "The drawn back line, cut by the water as the lure lies.",
     .source = statics,
     .trust = "As the waterline.",
     .find = "afloat out of water back percent"},
    {.topic = Topic::metacentre,
     .id = "metacentre",
     .title = "GM, metacentric height",
     .what = "How stiffly the lure stays upright afloat for a small heel. Positive: it stays up.",
     .how = "The height of B, and the second moment of the waterplane over the volume under water, less the "
            "height of "
            "G.",
     .source = statics,
     .trust =
         "For small angles only; the righting arm shows the large ones. Small lures rest on the last drop of "
         "paint high up.",
     .find = "stability gm heel upright tender stiff"},
    {.topic = Topic::righting_arm,
     .id = "righting_arm",
     .title = "Righting arm",
     .what = "The lever by which the water turns the lure back upright at each heel. Where the curve goes "
             "below zero "
             "it rolls on.",
     .how = "The lure is cut by the water at each heel, free to pitch; the arm is the distance athwart "
            "between B and "
            "G.",
     .source = statics,
     .trust = "No small-angle formula is in it. As sure as the heights of G and B.",
     .find = "gz curve heel capsize roll lever vanishes"},
    {.topic = Topic::righting_moment,
     .id = "righting_moment",
     .title = "Righting moment under water",
     .what = "How hard the lure turns back upright under water, for each degree that it is heeled.",
     .how = "Its weight times the height of B above G, times one degree.",
     .source = statics,
     .trust = "As the height of B above G.",
     .find = "upright torque turn back heel"},
    {.topic = Topic::season,
     .id = "season",
     .title = "Over the season",
     .what = "How weight in water and fall change with the temperature or the salt of the water.",
     .how = "The finished lure in each water: the density and the viscosity of the water, once with the lure "
            "at its "
            "size and once with it growing as warm wood does.",
     .source = "Density: Millero and Poisson 1981. Growth of wood: Wood Handbook, from memory.",
     .trust =
         "The truth lies between the two lines. Water soaked up through a scratch matters more than either.",
     .find = "temperature winter summer cold warm salt suspends season"},
    {.topic = Topic::segment_alone,
     .id = "segment_alone",
     .title = "Each segment let go alone",
     .what = "What each finished segment would weigh in water by itself, and whether it would sink or float.",
     .how = "The lines of the ledger that belong to it.",
     .source = own_bookkeeping,
     .trust = "As the weight of the whole lure. A floating tail behind a sinking head makes a joint bind.",
     .find = "piece floats sinks alone segment"},
    {.topic = Topic::hinge_load,
     .id = "hinge_load",
     .title = "Pull at a hinge",
     .what =
         "How the piece behind a joint pulls at it while the lure hangs or falls, and the force on its eyes.",
     .how = "The weight in water behind the joint, less its share of the drag; its leverage over the "
            "distance between "
            "the eyes gives the force on them.",
     .source = statics,
     .trust = "For still water. A cast and a fish load the joint far more: see the strength of the joint.",
     .find = "hinge force eyes shear load moment"},
    {.topic = Topic::sag,
     .id = "sag",
     .title = "Sag and the float line",
     .what = "How far the piece behind a joint drops or rises within the play of its eyes.",
     .how = "Each eye moves half its play off the pin, one fore, one aft, over the distance between them; "
            "which way the "
            "pull decides.",
     .source = "Plain geometry.",
     .trust = "Exact for the play as drawn. Worn or hand-bent eyes have more.",
     .find = "droop kink tail drops play float line"},
    {.topic = Topic::swings_from,
     .id = "swings_from",
     .title = "Swings freely from",
     .what = "The speed of pull above which friction in the eyes no longer holds the joint.",
     .how = "Friction of wire on wire under the pull at the hinge, set against the push of the water.",
     .source = "Own estimate from one lure of three segments; no source.",
     .trust = "Experimental: within a factor of two at best.",
     .find = "friction speed start swing bind stiff"},
    {.topic = Topic::swims,
     .id = "swims",
     .title = "Whether it swims",
     .what = "What becomes of the lure on a steady pull: it beats, leans, glides or runs straight.",
     .how = "The chain of segments is towed in a calculation many times, each time with other assumptions "
            "about wood, "
            "water and wake. The box tells what most of them come to.",
     .source = swim_model,
     .trust = swim_trust,
     .find = "swim action wobble beat glide straight retrieve works"},
    {.topic = Topic::beats,
     .id = "beats",
     .title = "Beats over a way",
     .what = "How often the tail goes there and back on a given way. It hardly depends on the speed.",
     .how = "The middle of all assumptions that beat; the filled part of the bar holds eight of ten. Counts "
            "in the "
            "Bench log narrow it.",
     .source = swim_model,
     .trust = swim_trust,
     .find = "tail kicks action frequency count metre feet"},
    {.topic = Topic::retrieves,
     .id = "retrieves",
     .title = "Beats a second",
     .what = "How often a second the tail goes there and back at three speeds of the retrieve.",
     .how = "Beats over a way times the speed.",
     .source = swim_model,
     .trust = swim_trust,
     .find = "speed slow fast handle turns reel second rhythm"},
    {.topic = Topic::wave,
     .id = "wave",
     .title = "Joints in the wave",
     .what = "How far each joint swings to either side in a beat, whether it reaches its stop, and how much "
             "later the "
             "piece behind follows.",
     .how = "One beat of the calculation with the usual assumptions.",
     .source = swim_model,
     .trust = swim_trust,
     .find = "joint swing lag wave bend stop"},
    {.topic = Topic::swim_change,
     .id = "swim_change",
     .title = "What a change did to the swim",
     .what = "Whether the last change makes more or fewer beats, and a wider or narrower swing.",
     .how = "Both lures under the same assumptions, one by one. Where they disagree, nothing is told.",
     .source = swim_model,
     .trust = "A comparison of two lures is surer than the figures of one. Still: count yours.",
     .find = "compare change more fewer wider narrower"},
};

} // namespace evenfall::shell::help
