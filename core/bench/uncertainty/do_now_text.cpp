#include "bench/uncertainty/do_now_text.hpp"
#include "base/number_text.hpp"
#include "base/sentence.hpp"
#include "materials/bits.hpp"
#include "materials/solids.hpp"

namespace evenfall::bench {

namespace {

Sentence bit(double diameter_m) {
    return "bit " + bits::bit_text(diameter_m);
}

Sentence change_sentence(const HoleChange& c, const document::Hole& hole, bool is_new) {
    const std::string name = hole_text(static_cast<std::size_t>(c.hole), hole.name);
    const Sentence close =
        hole.cap ? " and close it with " + length_text(hole.cap->length_m) + " of cap" : Sentence();
    if (c.change_kg < 0.0) {
        return name + ": drill out " + mass_text(-c.change_kg) + ", " + bit(c.diameter_m) +
               ", until it stands " + length_text(c.depth_m) + " deep from the skin (" +
               length_text(c.column_m) + " of fill). Weigh the chips' worth off the piece, dry the hole" +
               (hole.cap ? close + " over the void." : Sentence("; it stays open."));
    }
    const Sentence fill = mass_text(c.change_kg) + " of " + materials::name_of(c.material);
    if (is_new) {
        return name + ", new: " + bit(c.diameter_m) + ", " + length_text(c.depth_m) + " deep at " +
               length_text(hole.x_m) + " from the nose; put in " + fill + close + ".";
    }
    return name + (hole.cap ? ": open the cap, lay " : ": lay ") + fill + " on what is there (" +
           length_text(c.column_m) + ")" + close + ".";
}

} // namespace

void describe_changes(DoNow& out, const document::Document& before) {
    bool lead = false;
    for (const HoleChange& c : out.changes) {
        const auto index = static_cast<std::size_t>(c.hole);
        const bool is_new = index >= before.holes.size() || before.holes[index].depth_m <= 0.0;
        out.steps.push_back(change_sentence(c, out.document.holes[index], is_new));
        lead = lead || c.material.rfind("lead", 0) == 0;
    }
    if (lead) {
        out.steps.push_back("Lead chips: hold the piece in a clamp, drill slowly with a wet cloth under it, "
                            "no dust, wash your hands; keep chips from children and food.");
    }
}

void describe_plan(DoNow& out, const LeadPlan& plan) {
    for (const HolePlan& h : plan.holes) {
        const auto index = static_cast<std::size_t>(h.hole);
        const std::string name = hole_text(index, plan.document.holes[index].name);
        if (h.mass_kg <= 0.0) {
            out.steps.push_back(
                name + (h.depth_m > 0.0 ? ": leave it empty and cap it." : ": leave the wood whole."));
            continue;
        }
        out.steps.push_back(name + ": " + bit(plan.document.holes[index].diameter_m) + ", " +
                            length_text(h.depth_m) + " deep, " + mass_text(h.mass_kg) + " of " +
                            materials::name_of(h.material) + ".");
    }
}

void describe_tub(DoNow& out, const materials::WaterProperties& tub) {
    if (out.tub_in_water_kg > 0.0) {
        Sentence text =
            "In the tub now, hung below the scale, it should read " + mass_text(out.tub_in_water_kg);
        if (out.tub_half_metre_s) {
            text += ", and from rest it should go down " +
                    Sentence::by_system("half a metre", "19 11/16 in") + " in " +
                    units::number_text(*out.tub_half_metre_s, units::Unit::second, 1) + " s";
        }
        out.steps.push_back(text + ".");
        return;
    }
    const materials::Solid* lead = materials::find_solid("lead");
    const double clip =
        lead != nullptr ? -out.tub_in_water_kg / (1.0 - tub.density_kg_m3 / lead->density_kg_m3.value) : 0.0;
    out.steps.push_back("In the tub now it should still float: it should just hang with " + mass_text(clip) +
                        " of lead clipped on (" + mass_text(-out.tub_in_water_kg) + " short of sinking).");
}

} // namespace evenfall::bench
