#pragma once

// Help on the figures of joints, wire and glue.

#include "help/help.hpp"

namespace evenfall::shell::help {

inline constexpr Entry joint_entries[] = {
    {.topic = Topic::swing,
     .id = "swing",
     .title = "Swing of a joint",
     .what = "How far the piece behind the joint swings to port and to starboard before something stops it.",
     .how =
         "The smallest of three: wood meets wood with all coats on, the twist meets the mouth of its pocket, "
         "linked eyes meet each other.",
     .source = "Plain geometry of the cut wood, checked against contact of meshes.",
     .trust = "Exact for the lure as drawn. A thicker coat, or a gap cut narrower, takes off from it: try "
              "the joint "
              "dry, and again after each coat.",
     .find = "angle joint hinge bend move freely degrees relief gap"},
    {.topic = Topic::wrap,
     .id = "wrap",
     .title = "All joints together",
     .what = "How far the whole chain bends when every joint is at its stop, to port and to starboard.",
     .how = "The swings of all joints added up.",
     .source = "Plain geometry.",
     .trust = "As the swings that it is made of.",
     .find = "sum total bend curl joints swing"},
    {.topic = Topic::turn,
     .id = "turn",
     .title = "Tightest turn",
     .what = "The radius of the circle that the chain follows with every joint at its stop.",
     .how = "From the swing of each joint and the distances between the pins.",
     .source = "Plain geometry.",
     .trust = "A measure to compare lures by. It is not the path that the lure swims.",
     .find = "radius circle curve bend"},
    {.topic = Topic::eye_wire,
     .id = "eye_wire",
     .title = "Wire for an eye",
     .what = "How much wire to cut for one eye, the rod to bend it round, and how far to bend past the angle "
             "that "
             "you want.",
     .how = "The eye is most of a circle, the twist two helices, then two straight legs. Wire springs back "
            "by its "
            "yield strength over its stiffness.",
     .source = "Length: plain geometry. Springback: bending of a round bar, any text on strength of "
               "materials. Yield "
               "of wire: common practice, no source. Turns by hand: common practice, no source.",
     .trust =
         "Cut length to a few per cent of a hand twist. Springback differs from coil to coil: try a scrap.",
     .find = "cut length twist turns bend mandrel rod springback eyelet hinge"},
    {.topic = Topic::bits,
     .id = "bits",
     .title = "Drill bit",
     .what = "The smallest bit of each system that leaves room for glue round the twist, or that lets the "
             "pin in.",
     .how = "For the twist: its width and room for glue, at least and at most so much. For the pin: the next "
            "size "
            "up.",
     .source =
         "Sizes: ASME B94.11M, read in a public table; metric by ISO 235, from memory. Room for glue: common "
         "practice, no source.",
     .trust = "Bits cut wide in soft wood. Drill a scrap and try the twist in it.",
     .find = "drill hole size twist pin fraction number letter metric"},
    {.topic = Topic::play,
     .id = "play",
     .title = "Play in the joint",
     .what = "How far an eye can move on its pin, or two linked eyes on each other, and what that lets the "
             "tail do: "
             "sag, rock, slide.",
     .how = "The inside of the eye less the pin, or less the other wire. With two eyes each moves half its "
            "play, one "
            "fore and one aft, over the distance between them.",
     .source = "Plain geometry.",
     .trust =
         "For eyes bent round. An eye bent by hand is often wider one way than the other: measure yours.",
     .find = "loose sag rock room eye slide clearance"},
    {.topic = Topic::walls,
     .id = "walls",
     .title = "Wood left",
     .what = "The thinnest wood between the pin or the pocket and the nearest face, skin or hole.",
     .how = "The least distance on the drawn lure, before any coat.",
     .source = "Plain geometry. What counts as too thin: common practice, no source.",
     .trust = "A bit that runs off by a little takes it off here. Below zero the two overlap.",
     .find = "wall thin thickness breaks split grain"},
    {.topic = Topic::strength,
     .id = "strength",
     .title = "Strength of a joint",
     .what = "The pull at which the weakest part of the hinge is thought to give: the eye, the glued twist, "
             "the pin, "
             "or the wood before it.",
     .how =
         "Each part by itself: wire by its tensile strength, with a loss for bending; the twist by the shear "
         "of "
         "wood round its hole; the pin by shear and bending. The least of them counts, and stands over the "
         "breaking load of the line.",
     .source = "Wire: ASTM A313, from a reprint; soft wire from memory. Shear of wood and the loss by "
               "bending: from "
               "memory and own choice, no source.",
     .trust = "An estimate, easily off by half. Pull one of your own hinges until it gives before you trust "
              "a lure to "
              "it.",
     .find = "break breaking load strong pull pull-out hinge line pounds newton fish"},
    {.topic = Topic::glue,
     .id = "glue",
     .title = "Glue",
     .what = "Which glue suits the gap round the eyes, and how much to have at hand for all lures.",
     .how = "The gap is the hole less the twist. The fastest glue that fills it and stays open while you fit "
            "the "
            "joint is named. What stays in cup and on the tip is added. A cap takes its volume of baking "
            "soda and "
            "the thin CA that fills the spaces.",
     .source =
         "Which gap for which glue, and working times: common practice, no source. Baking soda: 1.0 loose, "
         "crystals 2.20 times as dense as water, CRC Handbook, from memory.",
     .trust = "Good for buying and laying out. The label of your glue comes first.",
     .find = "ca cyanoacrylate epoxy superglue soda cap millilitres gap"},
};

} // namespace evenfall::shell::help
