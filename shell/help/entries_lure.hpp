#pragma once

// Help on the figures of the whole lure and of its wood.

#include "help/help.hpp"
#include "help/sources.hpp"

namespace evenfall::shell::help {

inline constexpr Entry lure_entries[] = {
    {.topic = Topic::finished,
     .id = "finished",
     .title = "Finished weight",
     .what = "What the finished lure weighs in air, with lead, all coats, hooks, rings and tail.",
     .how = "Every line of the ledger added up. Wood is the drawn volume, less what is cut and drilled out, "
            "times "
            "the density of the wood.",
     .source = own_bookkeeping,
     .trust =
         "Two lures in three come out within the ±. Most of it is the wood: two boards of one kind differ by "
         "about a tenth. Weigh the carved lure, add the reading to the Bench log, and the ± shrinks.",
     .find = "mass weight heavy grams ounces total scale air"},
    {.topic = Topic::in_water,
     .id = "in_water",
     .title = "Weight in water",
     .what =
         "The weight that is left under water. Negative: the lure floats. Zero: it suspends. Positive: it "
         "sinks.",
     .how = "The mass of the lure less the mass of the water that it pushes aside.",
     .source = "Archimedes. Density of water: Millero and Poisson 1981 (UNESCO equation of state).",
     .trust =
         "The sum is exact; the wood and the carving are not, and the ± tells how far. A lure held under "
         "water on a scale is the best check.",
     .find = "buoyancy float floats sink sinks suspend suspends neutral under lift"},
    {.topic = Topic::fall,
     .id = "fall",
     .title = "Rate of fall",
     .what = "How fast the finished lure sinks in your fishing water once it has settled into its fall.",
     .how = "The speed at which drag carries the weight in water, at the angle at which the lure falls. Drag "
            "is that "
            "of the cut body, strip by strip, and of hooks, tail and other parts.",
     .source = "Drag: Hoerner 1965, Sucker and Brauer 1975, Brown and Lawler 2003, from memory. Effect of "
               "the ends: "
               "own estimate between published figures. Viscosity: Sharqawy, Lienhard and Zubair 2010, from "
               "memory.",
     .trust =
         "The drag law is known to about ±10 %, less well for a body shorter than five widths; the wood adds "
         "to it. A timed fall of this lure in the tub tells more.",
     .find = "sink rate speed slow fast drop seconds foot drag sinking falls"},
    {.topic = Topic::hang,
     .id = "hang",
     .title = "Hang",
     .what = "The angle at which the lure rests under water when nothing pulls at it. Nose-up is positive, "
             "nose-down negative, 0 is level.",
     .how = "The lure turns until B, the centre of buoyancy, stands straight above G, the centre of gravity. "
            "How far "
            "the two lie apart along the lure and in height gives the angle.",
     .source = statics,
     .trust = "The closer B stands to G, the more a little lead or a thick coat turns the lure. The Bench "
              "log shows "
              "its ±. A photo of the lure under water is the best check.",
     .find = "angle trim tilt level nose tail pitch attitude horizontal"},
    {.topic = Topic::lean,
     .id = "lean",
     .title = "Lean",
     .what = "The angle to one side at which the lure rests under water, to starboard positive.",
     .how = "As for the hang, but seen from behind: G off the middle turns the lure until it lies below B.",
     .source = statics,
     .trust = "A hole drilled off the middle or a grain that is heavier on one side is not known to the "
              "bench. Look "
              "at the lure in the tub.",
     .find = "side roll tilt list sideways"},
    {.topic = Topic::righting,
     .id = "righting",
     .title = "B above G",
     .what = "How far the centre of buoyancy B stands above the centre of gravity G. The more, the more "
             "surely the "
             "lure comes back upright. With G above B it rolls over.",
     .how =
         "The height of B less the height of G. Lead low in the belly makes it larger; heavy paint, eyes and "
         "hardware high in the back make it smaller.",
     .source = statics,
     .trust = "As sure as the drawing: lead that lies higher in its hole than drawn takes off from it.",
     .find = "stable stability upright keel rolls roll over balance"},
    {.topic = Topic::chance,
     .id = "chance",
     .title = "Chance of a right first lure",
     .what = "How likely the first finished lure falls and hangs within the bands that you ask for, if it is "
             "built "
             "as it is planned now.",
     .how = "The ± of wood, carving, lead, parts, coats and drag put together, narrowed by the readings of "
            "the Bench "
            "log, and set against the two bands.",
     .source =
         "First-order propagation of standard deviations, as in any text on measurement. The ± themselves: "
         "common practice, no source, where no table has one.",
     .trust = "Of 1,000 invented lures each with a known truth, about as many came right as were foretold "
              "(README, "
              "What it can and cannot tell). It knows nothing of mistakes.",
     .find = "probability percent likely odds sure certain risk right"},
    {.topic = Topic::centres,
     .id = "centres",
     .title = "Centres G and B",
     .what = "G is the centre of gravity, where the whole weight can be thought to pull. B is the centre of "
             "buoyancy, the middle of the water pushed aside.",
     .how = "Each line of the ledger has a place. G is their mean by mass, B their mean by volume: from the "
            "nose, "
            "off the middle, above the datum line.",
     .source = "Geometry of the drawn lure; volumes are checked against cut meshes.",
     .trust = "G moves with wood that is denser at one end; that is counted as a ± of its own. B is as good "
              "as the "
              "carving.",
     .find = "gravity buoyancy centre center balance point middle"},
    {.topic = Topic::segments,
     .id = "segments",
     .title = "Segment by segment",
     .what = "What each segment weighs by itself when all is finished, in air and in water.",
     .how = "The lines of the ledger that belong to the segment. What sits at a joint counts to the segment "
            "that "
            "holds it.",
     .source = own_bookkeeping,
     .trust =
         "As the weight of the whole lure. Weigh each segment once it is carved: that tells where the weight "
         "is.",
     .find = "pieces parts head tail each alone"},
    {.topic = Topic::parts,
     .id = "parts",
     .title = "Parts together",
     .what = "What these parts weigh together, and how much of that is felt in the water.",
     .how = "Their masses added up. In water each loses what it pushes aside; what sits in the wood takes "
            "the place "
            "of wood and pushes no more water aside.",
     .source =
         "Masses as typed. Usual hooks: from memory, makers differ by a fifth. Wire of eyes and hangers: "
         "worked out from its length and gauge.",
     .trust = "As good as your scale. Weigh ten of a kind together and divide.",
     .find = "hardware hooks rings hangers swivels weight steel"},
    {.topic = Topic::ledger,
     .id = "ledger",
     .title = "Ledger",
     .what = "The list of everything that has mass or pushes water aside, in the order of the work. All "
             "answers are "
             "sums over it.",
     .how = "Each line has a mass, a volume of water pushed aside, a place and a stage. What is drilled out "
            "stands "
            "there with a minus.",
     .source = own_bookkeeping,
     .trust =
         "Volumes are checked against closed forms and against cut meshes, far finer than a kitchen scale "
         "shows. Densities are what you picked or weighed.",
     .find = "list lines sum bookkeeping volume displaces account"},
    {.topic = Topic::wood_density,
     .id = "wood_density",
     .title = "Density of the wood now",
     .what = "What a cubic measure of this wood weighs at its moisture, as the bench counts with it.",
     .how =
         "The density that you weighed, if you did. Else the table's figure for the species, at the moisture "
         "beside it; the source of the species stands below its row.",
     .source =
         "Wood Handbook FPL-GTR-282 (2021), chapters 4 and 5; a few species from memory, as their rows say.",
     .trust =
         "Two boards of one species differ by about ±10 %. A weighed and measured board is known to about "
         "±1 %.",
     .find = "species basswood balsa cedar moisture heavy light grain specific gravity"},
    {.topic = Topic::weighed_board,
     .id = "weighed_board",
     .title = "A weighed board",
     .what = "The density of your own board, and how it compares with others of its kind.",
     .how = "Mass over length, width and height; taken to the moisture of the lure by what wood gains and "
            "swells "
            "with moisture.",
     .source =
         "Change with moisture: Wood Handbook FPL-GTR-282 (2021), chapter 4. Usual spread of a species: the "
         "same.",
     .trust = "About ±1 % with a kitchen scale and a caliper. More than two standard deviations off: measure "
              "again, "
              "or it is another wood.",
     .find = "block blank density heavier lighter measure"},
    {.topic = Topic::woods,
     .id = "woods",
     .title = "The same lure in other woods",
     .what = "How much lead this lure would need in each wood of the table, and whether the holes hold it.",
     .how = "The lure is worked out anew with each wood at the same moisture, and its lead planned anew.",
     .source = "Wood Handbook FPL-GTR-282 (2021), chapter 5; rows from memory say so where a wood is picked.",
     .trust = "Good for choosing a wood. The ± of each density is larger than many of the differences.",
     .find = "compare species hardness janka basswood cedar choose"},
};

} // namespace evenfall::shell::help
