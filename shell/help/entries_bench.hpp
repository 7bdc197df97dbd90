#pragma once

// Help on lead, coats, resin, the tail and the Bench log.

#include "help/help.hpp"
#include "help/sources.hpp"

namespace evenfall::shell::help {

inline constexpr Entry bench_entries[] = {
    {.topic = Topic::plan,
     .id = "plan",
     .title = "Lead plan, before and after",
     .what = "What the lure does with the lead as it was, and with the lead as planned.",
     .how = "The plan looks for the fills and depths that meet the fall, or the weight, and the hang. Where "
            "there is a "
            "choice it keeps lead low and forward. Both columns are whole evaluations of the lure.",
     .source = "Own method: quadratic programming with bounds, each answer worked out anew.",
     .trust =
         "The plan is as good as the drawing and the wood's density. Weigh the carved lure first, then plan "
         "again.",
     .find = "lead ballast before after optimise amounts"},
    {.topic = Topic::hole_fill,
     .id = "hole_fill",
     .title = "Holes and their fill",
     .what = "For each hole the bit, the depth from the skin, and the lead in it.",
     .how = "The fill is a column as wide as the hole, or as its rod, lying at the deep end. Its mass is its "
            "volume "
            "times the density of the metal; a drill point counts.",
     .source =
         "Plain geometry. Lead: CRC Handbook of Chemistry and Physics, from memory; other metals say theirs "
         "where they are picked.",
     .trust =
         "Weigh the lead before it goes in: that is surer than its length. Poured lead shrinks a little.",
     .find = "lead amount depth bit drill grams column how much"},
    {.topic = Topic::lead_work,
     .id = "lead_work",
     .title = "What to do at each hole",
     .what = "Hole by hole: which bit, how deep, and how much lead to put in or take out now.",
     .how = "The lead plan for the piece as it lies on the bench, with all that the readings taught. What is "
            "drilled "
            "stays drilled; once lead is in, as few holes as possible are changed.",
     .source = "Own method, as the lead plan.",
     .trust = "The chance above the table tells. Do it hole by hole, and weigh after each.",
     .find = "do now drill lead change correct take out add"},
    {.topic = Topic::ways,
     .id = "ways",
     .title = "If lead is not enough",
     .what = "The smallest changes of shape, wood, holes, hooks or coats with which the lead can meet what "
             "is asked.",
     .how = "Each change is tried in small steps; the lure is worked out and its lead planned anew each "
            "time. They "
            "are listed by how much work they make.",
     .source = "Own method. What counts as little work: common practice, no source.",
     .trust =
         "Every change that is listed has been worked out whole: the figures are those of the changed lure.",
     .find = "reach change shape cannot meet wider hole fuller belly"},
    {.topic = Topic::reach_map,
     .id = "reach_map",
     .title = "What the holes can reach",
     .what =
         "All weights in water and hangs that can be had by filling the present holes one way or another.",
     .how = "For each weight the holes are filled so that the lure hangs the most nose-up, and the most "
            "nose-down. Below "
            "the weights stand the falls that go with them.",
     .source = "Own method, as the lead plan.",
     .trust = "As the lead plan. A wish close to the border leaves no room for correction.",
     .find = "map region border possible holes limits"},
    {.topic = Topic::family,
     .id = "family",
     .title = "One body, several falls",
     .what = "The lead of the same body as floater, suspender, slow and fast sinker.",
     .how = "The lead is planned for each, with the hang that you ask for.",
     .source = "Speeds of the words slow, medium and fast: common practice, no source.",
     .trust = "As the lead plan.",
     .find = "floater suspender sinker slow fast versions"},
    {.topic = Topic::metals,
     .id = "metals",
     .title = "The same lure with other metals",
     .what = "How much of each metal this lure would need, and how deep the holes would be.",
     .how = "The lead plan made anew with each material in all holes that it may fill.",
     .source =
         "Densities: CRC Handbook of Chemistry and Physics and standards, mostly from memory; each says so "
         "where it is picked.",
     .trust = "Good for choosing. Putty and shot pack differently: weigh what goes in.",
     .find = "tungsten bismuth tin steel brass lead-free instead compare"},
    {.topic = Topic::stock,
     .id = "stock",
     .title = "Cut from stock",
     .what = "How long a piece of rod or wire, how many shot, or how much sheet gives the fill of each hole.",
     .how = "The mass of the fill over the density of the metal, and over the section of the rod, the size "
            "of a shot, "
            "or the thickness of the sheet.",
     .source = "Plain geometry. Numbered shot: American numbers, common practice, from memory.",
     .trust = "Measure your rod: a diameter off by one part in fifty is a mass off by one in twenty-five. "
              "Weigh the "
              "piece.",
     .find = "rod wire shot sheet length count pieces cut lead"},
    {.topic = Topic::coat_in_water,
     .id = "coat_in_water",
     .title = "What a coat weighs in water",
     .what = "How much a coat changes the weight in water.",
     .how = "A film makes the lure larger, and the water pushed aside carries most of it: 1 less the density "
            "of water "
            "over that of the coat is left. What soaks in makes the lure no larger and is felt in full.",
     .source = "Archimedes. Volume of a film round a body: Steiner 1840. Densities of coats: from memory and "
               "common "
               "practice, as their rows say.",
     .trust = "The thickness by brush varies by about ±20 %. Weigh the lure before and after the coat.",
     .find = "paint clear coat epoxy sealer film soaks thickness"},
    {.topic = Topic::coats,
     .id = "coats",
     .title = "All coats together",
     .what = "What all coats weigh together, and how much of that is felt in the water.",
     .how = "Each coat over the surfaces that it goes on, by its thickness or its mass.",
     .source = "Archimedes. Densities of coats: from memory and common practice, as their rows say.",
     .trust = "The thickness by brush varies by about ±20 % a coat.",
     .find = "paint finish epoxy sealer sum"},
    {.topic = Topic::resin_amount,
     .id = "resin_amount",
     .title = "Resin to mix",
     .what = "How much resin and hardener to weigh out for one coat on all lures, and in how many cups.",
     .how = "What stays on a lure times the number of lures, over the share that is not lost in cup and "
            "brush; parted "
            "by the ratio on your label. A cup holds no more than the label's batch and what you can brush "
            "in its "
            "time.",
     .source = "Loss in cup and brush: common practice, no source. Densities for a ratio by volume: from "
               "memory, read "
               "your data sheet.",
     .trust =
         "Weigh what is left in the cup once and put the loss right. The ratio must be that of your label.",
     .find = "epoxy mix hardener ratio cup batch grams part a part b"},
    {.topic = Topic::resin_time,
     .id = "resin_time",
     .title = "Time of the resin",
     .what = "How long a cup can be brushed at its temperature, and when the next coat may go on.",
     .how = "The times of the label, made longer in the cold and shorter in the warm: ten degrees Celsius "
            "about halve "
            "or double them.",
     .source = "Arrhenius 1889, with an activation energy of 55 kJ/mol for amine-cured epoxy, from memory. "
               "The times "
               "that stand there at first: common practice for a slow clear coat, no source.",
     .trust = "A rule for rates, no promise of a label. A large or deep cup heats itself and sets sooner.",
     .find = "working time pot life recoat next coat cure hours minutes warm cold"},
    {.topic = Topic::tail_pull,
     .id = "tail_pull",
     .title = "What the tail does",
     .what = "What the soft tail weighs in water, and what lure and hang would be without it.",
     .how = "The volume of the drawn tail times the density of its plastic; then the lure is worked out a "
            "second time "
            "with the tail off.",
     .source = "Geometry of the drawn tail. Density of soft plastic: common practice, no source.",
     .trust = "Weigh your first casting: plastics differ, salt makes them much heavier.",
     .find = "soft plastic tail pull hang volume without"},
    {.topic = Topic::tail_pour,
     .id = "tail_pour",
     .title = "Mould and plastic",
     .what = "How much rubber the mould takes, and how much plastic to heat or mix for all tails.",
     .how = "The cavity is the tail, larger by what it shrinks. Sprue, flash and what stays in the cup are "
            "added; the "
            "parts are divided by your blend.",
     .source = "Shrinkage, sprue, loss and wall: common practice, no source. Densities: from memory.",
     .trust = "Weigh the first pour and put the shares right.",
     .find = "plastisol silicone rubber mould pour cast shrink sprue"},
    {.topic = Topic::stages,
     .id = "stages",
     .title = "Stage by stage, on the scale and in the tub",
     .what = "What the scale and the tub should read after each stage of the work, so that you know on the "
             "way whether "
             "the finished lure will be right.",
     .how = "The ledger up to that stage; in the water of your tub, not of the place where you fish. With "
            "hooks and "
            "tail hung on where the row says so.",
     .source = own_bookkeeping,
     .trust = "The ± beside the mass is one standard deviation. A reading farther off than three times that: "
              "look for "
              "the reason before you go on.",
     .find = "time line weigh after sealed painted drilled progress test expected"},
    {.topic = Topic::tub,
     .id = "tub",
     .title = "What the tub should read",
     .what =
         "What the lure should weigh and do in the tub at this stage, if the finished lure is to be right.",
     .how = "The lure at this stage, with the lead put right, in the water of the tub. What is still to come "
            "– coats, "
            "hooks, tail – is counted into the finished lure.",
     .source = "As weight in water and rate of fall.",
     .trust = "Of what comes later, the clear coat is the least known. Test with hooks and tail hung on.",
     .find = "test tub tank bath sealed fall weigh hooks on"},
    {.topic = Topic::tub_seen,
     .id = "tub_seen",
     .title = "From the tub to the finished lure",
     .what = "How fast the finished lure will fall, if it fell so fast in the tub at this stage.",
     .how = "The weight and drag that agree with the fall that you saw, and then all that is still to come, "
            "in your "
            "fishing water.",
     .source = from_the_posterior,
     .trust = "A fall timed by hand is known to about ±2 % and the reaction of your thumb. The range is one "
              "standard "
              "deviation either way.",
     .find = "tub finished fall convert now later"},
    {.topic = Topic::chance_then,
     .id = "chance_then",
     .title = "Chance with the lead put right",
     .what = "How likely the finished lure comes right once the lead is changed as the table says; or, where "
             "the holes "
             "cannot, once it is as near as they allow.",
     .how = "As the chance of a right first lure, with the lure moved to the middle of what is asked. What "
            "is left is "
            "what nobody knows yet: coats, parts and drag.",
     .source = "As the chance of a right first lure.",
     .trust = "Of 1,000 invented lures each with a known truth, about as many came right as were foretold "
              "(README, "
              "What it can and cannot tell).",
     .find = "probability corrected after change likely"},
    {.topic = Topic::spread,
     .id = "spread",
     .title = "± and 80 % bands",
     .what =
         "± is one standard deviation: two lures in three lie within it. In an 80 % band lie eight of ten.",
     .how = "Every uncertain thing – wood, size, lead, parts, coats, drag – has its own ±. They are put "
            "together through "
            "the ledger, and narrowed by the readings.",
     .source = from_the_posterior,
     .trust = "It knows what is usually uncertain, and nothing of mistakes. Where the log disagrees with it, "
              "the Bench "
              "log says so.",
     .find = "uncertainty accuracy error deviation sigma range band sure plus minus"},
    {.topic = Topic::stage_spread,
     .id = "stage_spread",
     .title = "± by stage",
     .what =
         "How well mass and weight in water are known at each stage: solid now, dashed before any reading.",
     .how = "The ± of all that is in the lure by that stage.",
     .source = from_the_posterior,
     .trust = "As ± and 80 % bands.",
     .find = "uncertainty stage plot curve"},
    {.topic = Topic::next_reading,
     .id = "next_reading",
     .title = "What to read next",
     .what = "What each further reading would be worth: the chance of a right lure if you take it and then "
             "put the lead "
             "right.",
     .how = "Each reading that is still possible is taken on trial with its usual ±, and the chance worked "
            "out again.",
     .source = from_the_posterior,
     .trust = "Good for choosing. A reading taken carelessly is worth less than its usual ± says.",
     .find = "advice best reading weigh which measurement helps"},
    {.topic = Topic::reading_fit,
     .id = "reading_fit",
     .title = "What the other readings expect",
     .what = "What this reading should have been by all the others, and how far it lies off.",
     .how = "The lure is fitted to all readings but this one. The difference is divided by what it may be.",
     .source = from_the_posterior,
     .trust = "One in twenty is off by two standard deviations, one in four hundred by three. Beyond that "
              "look for a "
              "slip: decimal point, unit, stage.",
     .find = "fits off outlier wrong reading slip residual"},
    {.topic = Topic::simulation,
     .id = "simulation",
     .title = "Simulation",
     .what = "Ten thousand lures with wood, lead, coats and drag drawn by their ±, each worked out whole.",
     .how = "A generator of random numbers that gives the same lures on every device.",
     .source = "Monte Carlo. Generator: Steele, Lea and Flood 2014; Box and Muller 1958.",
     .trust = "It checks the quick sums of the chance: they agree to a few per cent, or trust this one.",
     .find = "random draws monte carlo chance floats"},
    {.topic = Topic::inputs,
     .id = "inputs",
     .title = "What is known of the parts",
     .what = "By how much each uncertain thing seems to differ from the recipe, and how well that is known "
             "by now.",
     .how = "The fit to all readings.",
     .source = from_the_posterior,
     .trust = "Two that a reading cannot tell apart share the difference: the sum is surer than each.",
     .find = "wood density size coats drag learnt correction factor"},
};

} // namespace evenfall::shell::help
