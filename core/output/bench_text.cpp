#include "output/bench_text.hpp"

#include "base/number_text.hpp"
#include "base/trade.hpp"
#include "ledger/hung_on.hpp"
#include "materials/cautions.hpp"
#include "materials/solids.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <utility>

namespace evenfall::output {

using document::ReadingKind;

std::string missing_coats_text(const document::Document& document) {
    std::string missing;
    for (const auto& [stage, name] : {std::pair{Stage::sealed, "sealer"},
                                      {Stage::painted, "paint"},
                                      {Stage::clear_coated, "clear coat"}}) {
        if (std::any_of(document.coats.begin(), document.coats.end(),
                        [wanted = stage](const document::Coat& coat) { return coat.stage == wanted; }))
            continue;
        missing += (missing.empty() ? "No " : ", no ") + std::string(name);
    }
    return missing.empty() ? "" : missing + " yet: the lead plan does not count what is still to come.";
}

bool works_lead(const DoNow& now) {
    return std::any_of(now.holes.begin(), now.holes.end(),
                       [](const HoleStep& step) { return cautions::is_lead(step.material); });
}

std::string with_all_words(const document::Document& document) {
    return ", " + ledger::rigging_words(document) + " on";
}

Sentence hung_words(const document::Document& document, const document::HungList& with) {
    Sentence text;
    for (const document::HungOn& on : with) {
        if (!text.empty()) text += ", ";
        switch (on.what) {
        case document::HungKind::all:
            text += ledger::rigging_words(document);
            break;
        case document::HungKind::tail:
            text += "the tail";
            break;
        case document::HungKind::part: {
            const auto index = static_cast<std::size_t>(on.part.value_or(0));
            const bool named = index < document.parts.size() && !document.parts[index].name.empty();
            text += named ? document.parts[index].name : "part " + std::to_string(index + 1);
            break;
        }
        case document::HungKind::weight:
            text += mass_text(on.mass_kg.value_or(0.0)) + " of " + materials::name_of(on.material);
            break;
        }
    }
    return with.empty() ? text : text + " on";
}

std::string bit_inch_text(double diameter_m) {
    const double nearest_m = units::m_from_inch(std::round(units::inch_from_m(diameter_m) * 64.0) / 64.0);
    const std::string text = units::inch_text(diameter_m) + " in";
    return std::abs(nearest_m - diameter_m) < 5e-5 ? text : "near " + text;
}

std::string reading_name(ReadingKind kind) {
    switch (kind) {
    case ReadingKind::dry_weight:
        return "Dry, on the scale";
    case ReadingKind::held_under:
        return "Held under water, on the scale";
    case ReadingKind::hung_in_water:
        return "Hung in water, below the scale";
    case ReadingKind::board:
        return "Board, weighed and measured";
    case ReadingKind::tub_fall:
        return "Timed fall in the tub";
    case ReadingKind::suspends:
        return "Suspends with a clip on";
    case ReadingKind::freeboard:
        return "Freeboard afloat";
    case ReadingKind::hang_angle:
        return "Angle it hangs at";
    case ReadingKind::caliper:
        return "Width or height, by caliper";
    case ReadingKind::beats:
        return "Beats counted on the retrieve";
    }
    return {};
}

std::string next_reading_name(const NextReading& next) {
    const bool measured = next.kind == ReadingKind::caliper && next.with_dry_weight;
    std::string text = measured ? "Scale and caliper" : reading_name(next.kind);
    if (next.with_dry_weight && !measured) text += ", and dry";
    return next.each_segment ? text + ", each segment" : text;
}

std::vector<Sentence> reading_steps(ReadingKind kind) {
    switch (kind) {
    case ReadingKind::dry_weight:
        return {"Let the lure come to room temperature: wood that has just been near water or heat still "
                "changes.",
                "Set the empty scale to zero, lay the lure on, wait until the figure stands. Twice, and "
                "take the middle.",
                "Say at which stage it was: everything up to that stage is on the scale, nothing after it.",
                "The air that the lure pushes aside, about " + mass_text(7e-5) +
                    " for 60 cm³, is allowed for; do not take it off yourself."};
    case ReadingKind::held_under:
        return {
            "Only a sealed lure, or one that may get wet: bare wood soaks up water, so be quick. Dry it well "
            "before the next coat.",
            "Put a cup of tub water on the scale, wide enough that the lure will touch neither wall nor "
            "floor. Set the scale to zero.",
            "Bend a stiff thin wire into a fork. Dip the fork alone as deep as it will be when it holds "
            "the lure; note what the "
            "scale shows. That is the holder.",
            "Push the lure just under with the fork, wipe off the bubbles, touch nothing, read. What "
            "the scale gains is the weight of "
            "the water that lure and fork push aside.",
            "Enter both figures; the holder is taken off. In grams the rest is the volume in cm³, by "
            "the density of the water.",
            "With a dry weight of the same stage this gives the weight in water without any guess at "
            "wood or size: on a body of " +
                mass_text(0.060, 0) + " the ± falls from about " + mass_text(0.003, 0) +
                " by the species alone to about " + mass_text(0.002, 0) +
                " by the dry weight, and to about " + mass_text(0.0004, 1) + " by both."};
    case ReadingKind::hung_in_water:
        return {"Stand the scale on two blocks over the tub, or hang it up, with a thread from its hook or "
                "from a bridge over its plate.",
                "Hang the thread with its empty hook into the water as deep as it will be; note what the "
                "scale shows, or set it to zero. "
                "That is the holder.",
                "Hang the lure on, all of it under, no bubbles, touching nothing. Wait until it is still and "
                "read.",
                "This is the weight in water itself, whatever the wood. A lure that floats is pulled under "
                "by a weight first: hang "
                "the weight alone with the thread and enter that as the holder."};
    case ReadingKind::board:
        return {
            "Plane the board square before you saw the shape. Weigh it.",
            "Measure length, width and height with a caliper, each in two places, and enter the middle.",
            "That is this board's density, moisture and all. The wood within a board still differs by about "
            "1 %.",
            "Planing and sawing: keep hands behind the blade, wear a dust mask."};
    case ReadingKind::tub_fall:
        return {
            "Fill the tub deep enough for " +
                Sentence::by_system("half a metre of way; a metre is better",
                                    "20 inches of way; 40 are better") +
                ". Let the water come to rest.",
            "Hold the lure just under, level, bubbles wiped off. Let go without a push and start the watch.",
            "Stop when its middle has gone down by the depth you enter, before it touches the floor. "
            "Three times, and take the middle.",
            "Give the time from rest as it is. It gathers way at first, which over " +
                Sentence::by_system("half a metre", "20 inches") +
                " is about 15 % of the time; that is allowed for."};
    case ReadingKind::suspends:
        return {"Clip on weights until the lure neither rises nor sinks in the tub when you let it go.",
                "Take the clip off, dry it, weigh it. Enter that weight and what it is made of: its own "
                "lift is allowed for.",
                "A lure that suspends by itself is entered with " + mass_text(0.0, 0) + ".",
                "Lead clips: wash your hands, keep them from children and food."};
    case ReadingKind::freeboard:
        return {"Let the lure lie still in the tub, upright; steady it by a thread from above if it leans.",
                "Measure from the water up to the highest wood of its back."};
    case ReadingKind::hang_angle:
        return {"Under water, at rest: hang a lure that sinks from a thread or a float, pull one that floats "
                "under "
                "by a thread or a clipped weight. Tie it at B, where the drawing has it: " +
                    Sentence::by_system("3 mm", "an eighth of an inch") + " off turns the lure by a degree.",
                "Take a photo from the side, level with it, and measure its long axis against the water's "
                "surface on the photo; nose up is positive. By eye it is accurate to ±2° only: enter that as "
                "its ±."};
    case ReadingKind::caliper:
        return {
            "Mark a place along the body, away from joints, eyes and ends, and measure how far from the "
            "nose it is.",
            "Lay the jaws square across the widest wood there, side to side for the width or belly to back "
            "for the height, without pressing. Twice, and take the middle.",
            "Say at which stage it was: the coats on the skin by then are allowed for.",
            "It tells how far the carved skin stands off the drawing, which no scale can tell of bare wood. "
            "Measure every segment once: each has its own part in it."};
    case ReadingKind::beats:
        return {
            "Mark " + Sentence::by_system("3 m", "10 ft") +
                " of a pool, a dock or a bank. Pull the finished lure past both marks on a steady line, "
                "level, "
                "at one speed, well under the surface.",
            "Film it from above with a phone. Count the beats between the marks: the tail there and back to "
            "the same side is one. Ten or more are best.",
            "Or count over some seconds at a known speed: that of the retrieve, handle turns a second times "
            "the line that one turn takes up.",
            "It narrows the range of this lure's beats, and less that of the next one of this recipe. "
            "Weight, hang and fall are untouched by it. Mind the hooks."};
    }
    return {};
}

Sentence near_neutral_sentence(const UnderWater& under_water) {
    constexpr double certain = 0.99;
    if (std::max({under_water.rises, under_water.hangs, under_water.sinks}) > certain) return {};
    const auto percent = [](double chance) {
        return units::number_text(chance, units::Unit::percent, 0) + " %";
    };
    // As a way in time: a time per length has no sign.
    const auto speed = [](double m_s) {
        const auto in = [&](units::Unit unit, int decimals) {
            const std::string number = units::with_plus(m_s, units::number_text(m_s, unit, decimals));
            return units::with_symbol(number, unit);
        };
        return Sentence::by_system(in(units::Unit::mm_per_s, 0), in(units::Unit::inch_per_s, 2));
    };
    return "Near neutral. Chances: rises " + percent(under_water.rises) + ", hangs " +
           percent(under_water.hangs) + ", sinks " + percent(under_water.sinks) +
           ". Two in three such lures lie from " + speed(under_water.speed_m_s.low) + " to " +
           speed(under_water.speed_m_s.high) + ", down positive.";
}

} // namespace evenfall::output
