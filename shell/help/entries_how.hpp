#pragma once

// Help on ways of working. The steps of a reading are the core's (output::reading_steps).

#include "help/help.hpp"

namespace evenfall::shell::help {

inline constexpr Entry how_entries[] = {
    {.topic = Topic::weigh_dry,
     .id = "weigh_dry",
     .title = "How to weigh it dry",
     .what = "The first reading, and the easiest: it tells the wood.",
     .how = "Bench log, Readings, Add reading: Dry, on the scale.",
     .find = "scale weigh weighing dry wood air kitchen",
     .reading = document::ReadingKind::dry_weight},
    {.topic = Topic::weigh_under,
     .id = "weigh_under",
     .title = "How to weigh it under water, in a cup on the scale",
     .what = "With a dry weight it gives the weight in water without any guess at wood or size.",
     .how = "Bench log, Readings, Add reading: Held under water, on the scale.",
     .find = "weigh weighing under water hold held submerged displacement volume scale cup fork",
     .reading = document::ReadingKind::held_under},
    {.topic = Topic::weigh_hung,
     .id = "weigh_hung",
     .title = "How to weigh it under water, hung below the scale",
     .what = "It gives the weight in water itself.",
     .how = "Bench log, Readings, Add reading: Hung in water, below the scale.",
     .find = "weigh weighing under water hang hung thread tub scale",
     .reading = document::ReadingKind::hung_in_water},
    {.topic = Topic::weigh_board,
     .id = "weigh_board",
     .title = "How to weigh the board before sawing",
     .what = "It tells the density of this very board.",
     .how = "Bench log, Readings, Add reading: Board, weighed and measured.",
     .find = "board blank weigh measure density wood before",
     .reading = document::ReadingKind::board},
    {.topic = Topic::time_fall,
     .id = "time_fall",
     .title = "How to time a fall in the tub",
     .what = "It tells weight in water and drag of this lure at once.",
     .how = "Bench log, Readings, Add reading: Timed fall in the tub.",
     .find = "stopwatch seconds sink rate test tub time measure video",
     .reading = document::ReadingKind::tub_fall},
    {.topic = Topic::try_clip,
     .id = "try_clip",
     .title = "How to try it with clip-on weights",
     .what = "It tells how much more weight would make it suspend.",
     .how = "Bench log, Readings, Add reading: Suspends with a clip on.",
     .find = "suspend neutral clip weight trim wire split shot",
     .reading = document::ReadingKind::suspends},
    {.topic = Topic::read_freeboard,
     .id = "read_freeboard",
     .title = "How to measure a floater",
     .what = "How far the back stands over the water tells the lift that is left.",
     .how = "Bench log, Readings, Add reading: Freeboard afloat.",
     .find = "floats floating height waterline back ruler",
     .reading = document::ReadingKind::freeboard},
    {.topic = Topic::read_hang,
     .id = "read_hang",
     .title = "How to read the angle at which it hangs",
     .what = "The best reading for the hang, off a photo.",
     .how = "Bench log, Readings, Add reading: Angle it hangs at.",
     .find = "photo angle hang level nose trim measure",
     .reading = document::ReadingKind::hang_angle},
    {.topic = Topic::read_caliper,
     .id = "read_caliper",
     .title = "How to measure with a caliper",
     .what = "It tells how far the carved skin stands off the drawing.",
     .how = "Bench log, Readings, Add reading: Width or height, by caliper.",
     .find = "caliper width height thickness measure carved size",
     .reading = document::ReadingKind::caliper},
    {.topic = Topic::count_beats,
     .id = "count_beats",
     .title = "How to count beats",
     .what = "It narrows the range of beats of this lure, and of the next from its recipe.",
     .how = "Bench log, Readings, Add reading: Beats counted on the retrieve.",
     .find = "count beats swim action video retrieve pool",
     .reading = document::ReadingKind::beats},
    {.topic = Topic::start_lure,
     .id = "start_lure",
     .title = "How to begin a lure of your own",
     .what = "From a few choices, from a picture of a sketch, or from a lure on the shelf.",
     .how = "Shelf, New lure: form, length, segments, wood, hooks and fall make a whole lure with joints, "
            "coats and "
            "lead. Or Shape, Picture behind the drawing. Or Shelf, Copy this lure. Then change any number by "
            "a tap.",
     .find = "new start first begin own create copy draw"},
    {.topic = Topic::plan_steps,
     .id = "plan_steps",
     .title = "How to plan the lead",
     .what = "How much lead goes into which hole, and how deep.",
     .how = "Lead: say how the finished lure shall fall, or weigh in water, and hang. Place the holes. Tap "
            "Plan the lead, "
            "look at before and after, and keep it. Where the holes cannot do it, If lead is not enough "
            "lists what "
            "would.",
     .find = "lead ballast plan where how much hole place weight"},
    {.topic = Topic::drill,
     .id = "drill",
     .title = "How to drill hole by hole",
     .what = "One hole a screen, to be read from a step away.",
     .how = "Lead or Bench log, Drill by steps. Each screen tells which side is up, the bit, the depth, the "
            "lead and "
            "what the scale should read after it. Tick off what is done: what is drilled stays drilled.",
     .find = "drill bit depth tape steps tick done workshop"},
    {.topic = Topic::lead_safety,
     .id = "lead_safety",
     .title = "Working with lead",
     .what = "Lead harms by mouth and as dust.",
     .how = cautions::lead,
     .find = "safe safety melt melting poison hazard danger wash caution fumes tungsten"},
    {.topic = Topic::order_of_work,
     .id = "order_of_work",
     .title = "In which order to work and test",
     .what = "Carve, drill, fit hardware, lead, seal, test in the tub with hooks and tail on, paint, clear "
             "coat, rig.",
     .how = "Weigh each segment dry once it is carved and lay a caliper across it. Once it is sealed, hang "
            "on hooks and "
            "tail, time a fall and take a photo of the hang. Bench log, Do now tells what to change while "
            "the lead "
            "can still be reached.",
     .find = "order steps stages when test tub workflow sequence"},
    {.topic = Topic::log_slip,
     .id = "log_slip",
     .title = "A reading that does not fit",
     .what = "A slip – decimal point, unit, stage – is left out until you say that it is right.",
     .how = "Bench log, Readings: tap the reading. It says what the others expect and which slip would "
            "explain it. Put "
            "it right, exclude it, or tap It is right: use it.",
     .find = "wrong mistake error outlier exclude remove correct reading"},
    {.topic = Topic::picture,
     .id = "picture",
     .title = "A picture behind the drawing",
     .what =
         "A photo or scan of a sketch or of a carved piece, to draw by; its outline can be found for you.",
     .how = "Shape, Picture behind the drawing: choose it, put the two marks on nose and tail or on a rule, "
            "and let the "
            "outline be found, or drag the points of back and belly onto it.",
     .find = "photo scan sketch trace outline image background"},
    {.topic = Topic::units,
     .id = "units",
     .title = "Units, large text, dark screen",
     .what = "Inches or millimetres, ounces, grain or grams; and how the screen looks.",
     .how = "Shelf, This bench. On the keypad of a number the unit can be changed as well; 7/64 and 1 3/8 "
            "can be typed.",
     .find = "inch inches mm metric imperial ounce fraction settings dark light large text left hand"},
    {.topic = Topic::share,
     .id = "share",
     .title = "How to share a recipe",
     .what =
         "The whole lure is in a link, a square code or a small file. Nothing is sent by the page itself.",
     .how = "Shelf, Share: the link with its code, with or without the bench log, or a file.",
     .find = "send friend link code qr export give email message"},
    {.topic = Topic::save_all,
     .id = "save_all",
     .title = "How to save everything",
     .what = "Lures stay on this device. A browser may clear what it keeps: a file is the safe copy.",
     .how = "Shelf, Everything on this device: save it to one file, with logs and photos. Open the file on "
            "another "
            "device to merge it or put it in the place of what is there.",
     .find = "backup save lost restore device file copy bin undo"},
    {.topic = Topic::print,
     .id = "print",
     .title = "How to print the build sheet",
     .what = "Templates true to size, lists of wire, wood, lead and coats, and the weigh-in card.",
     .how =
         "Sheet, Print. Print at 100 %, without fitting to the page, and check the printed rule with yours.",
     .find = "print printer sheet template paper pdf letter a4 scale"},
    {.topic = Topic::offline,
     .id = "offline",
     .title = "Without a network",
     .what = "Once loaded, the page works without a network. Nothing leaves this device.",
     .how = "Where the browser offers it, Shelf, Install puts it among the programs of the device.",
     .find = "internet network wifi install app privacy data offline"},
};

} // namespace evenfall::shell::help
