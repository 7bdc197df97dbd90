#include "bench/uncertainty/do_now_text.hpp"

#include "base/number_text.hpp"
#include "base/sentence.hpp"
#include "ledger/hung_on.hpp"
#include "materials/bits.hpp"
#include "materials/solids.hpp"

namespace evenfall::bench {

void describe_changes(DoNow& out) {
    bool taken = false, added = false, capped = false;
    for (const HoleStep& step : out.holes) {
        const document::Hole& hole = out.document.holes[static_cast<std::size_t>(step.hole)];
        taken = taken || step.work == HoleWork::take_out;
        added = added || step.work == HoleWork::add;
        capped = capped || hole.cap;
        if (step.is_new) {
            out.steps.push_back(hole_text(static_cast<std::size_t>(step.hole), hole.name) + " is new: at " +
                                length_text(hole.x_m) + " from the nose.");
        }
    }
    if (taken) {
        out.steps.push_back(
            Sentence(
                "Where fill comes out (−): drill until the hole is as deep as the table says, and dry it") +
            (capped ? "; cap it again over the void." : "; it stays open."));
    }
    if (added)
        out.steps.push_back(
            capped ? "Where fill goes in (+): open the cap, lay it on what is there, and cap it again."
                   : "Where fill goes in (+): lay it on what is there.");
}

namespace {

/// "hung below the scale it should read 3.10 g, and …", the end of a sentence.
Sentence tub_text(const TubTest& test, const materials::WaterProperties& tub) {
    if (test.in_water_kg > 0.0) {
        Sentence text = "hung below the scale it should read " + mass_text(test.in_water_kg);
        if (!test.half_metre_s) return text + ".";
        return text + ", and from rest it should go down " +
               Sentence::by_system("half a metre", "19 11/16 in") + " in " +
               units::number_text(*test.half_metre_s, units::Unit::second, 1) + " s.";
    }
    const materials::Solid* lead = materials::find_solid("lead");
    const double clip =
        lead != nullptr ? -test.in_water_kg / (1.0 - tub.density_kg_m3 / lead->density_kg_m3.value) : 0.0;
    return "it should still float, and suspend with " + mass_text(clip) + " of lead clipped on (" +
           mass_text(-test.in_water_kg) + " short of sinking).";
}

} // namespace

void describe_tub(DoNow& out, const materials::WaterProperties& tub) {
    // Bare wood drinks: before it is sealed, the test with all on is the one to wait for.
    if (out.stage >= Stage::sealed || !out.with_all)
        out.steps.push_back("In the tub now " + tub_text(out.tub, tub));
    if (out.with_all) {
        out.steps.push_back("In the tub " + stage_name(out.with_all->stage) + " and with " +
                            ledger::rigging_words(out.document) + " on, " + tub_text(*out.with_all, tub));
    }
}

} // namespace evenfall::bench
