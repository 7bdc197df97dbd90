#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <cmath>
#include <memory>

namespace evenfall::cli {
namespace {

using units::number_text;
using units::Unit;
using Side = Table::Side;

std::string mass(const Estimate& e, const Numbers& in) {
    return in.mass(e.value) + " ± " + in.mass(e.sigma);
}
std::string speed(const Estimate& e, const Numbers& in) {
    return in.speed(e.value) + " ± " + in.speed(e.sigma);
}

std::string percent(double share) {
    return number_text(share, Unit::percent, 0) + " %";
}

std::string answers_text(const Uncertainty& s, const Numbers& in) {
    const std::string gram = in.mass_symbol();
    Table table({Side::left, Side::right, Side::right});
    table.row({"finished", "now", "± before any reading"});
    table.row({"mass " + gram, mass(s.mass_kg, in), in.mass(s.mass_kg.sigma_before)});
    table.row({"in water " + gram, mass(s.in_water_kg, in), in.mass(s.in_water_kg.sigma_before)});
    if (s.fall_m_s) {
        table.row({"fall " + in.speed_symbol(), speed(*s.fall_m_s, in), in.speed(s.fall_m_s->sigma_before)});
    }
    table.row({"hang °",
               number_text(s.pitch_rad.value, Unit::degree, 1) + " ± " +
                   number_text(s.pitch_rad.sigma, Unit::degree, 1),
               number_text(s.pitch_rad.sigma_before, Unit::degree, 1)});
    const Interval& most = s.fall_50_80_95_m_s[1];
    std::string text = table.text(in) + "Four in five such lures ";
    std::string near = output::near_neutral_sentence(s.under_water).text(in.units);
    if (!near.empty()) near += '\n';
    if (!(most.high > 0.0)) return text + "or more float.\n" + near;
    text +=
        most.low > 0.0 ? "fall at " + in.speed(most.low) + " to " : std::string("float, or fall at up to ");
    return text + in.speed(most.high) + " " + in.speed_symbol() + ".\n" + near;
}

std::string stages_text(const document::Document& document, const Uncertainty& s, const Numbers& in) {
    const std::string gram = std::string(1, ' ').append(in.mass_symbol());
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right});
    table.row(
        {"Stage", "dry" + gram, "held under" + gram, "hung in tub" + gram, "tub fall " + in.speed_symbol()});
    const auto row = [&](const StagePrediction& b, const std::string& stage) {
        table.row({stage, mass(b.mass_kg, in), mass(b.displaced_kg, in), mass(b.in_tub_kg, in),
                   b.tub_fall_m_s ? speed(*b.tub_fall_m_s, in)
                                  : no_fall_words(behaviour_of(std::nullopt, {b.in_tub_kg.value}))});
    };
    for (const StagePrediction& b : s.stages)
        row(b, stage_name(b.stage));
    for (const StagePrediction& b : s.stages_with_all)
        row(b, stage_name(b.stage) + output::with_all_words(document));
    return table.text(in);
}

/// Without chances where the lead cannot be put right: they are those of a lure that is.
std::string next_text(const document::Document& document, const Uncertainty& s, bool can_be_met,
                      const Numbers& in) {
    Table table({Side::left, Side::left, Side::right, Side::right, Side::right});
    table.row({"Next reading", "stage", "accuracy ±", "in water ± " + in.mass_symbol(), "chance, put right"});
    std::size_t shown = 0;
    for (const NextReading& n : s.next) {
        if (++shown > 6) break;
        table.row(
            {output::next_reading_name(n),
             stage_name(n.stage) + (n.with_all ? output::with_all_words(document) : ""),
             reading_text(n.sigma, units::quantity_of(document::number_of(n.kind).judged_in)).text(in.units),
             in.mass(n.in_water_sigma_kg), can_be_met ? percent(n.chance) : "–"});
    }
    return table.text(in);
}

/// What is asked besides the hang.
const char* asked_word(const document::Document& document) {
    return document.targets.by == document::TargetBy::in_water ? "weight in water" : "first fall";
}

std::string draws_text(const document::Document& document, const Draws& d, const Numbers& in) {
    Table table({Side::left, Side::right, Side::right, Side::right});
    table.row(
        {"of " + std::to_string(d.count) + " drawn", "middle", "half lie from – to", "95 % lie from – to"});
    const auto row = [&](const std::string& what, const Quantiles& x, const auto& t) {
        table.row(
            {what, t(x.median), t(x.low_50) + " – " + t(x.high_50), t(x.low_95) + " – " + t(x.high_95)});
    };
    const auto mass = [&](double kg) { return in.mass(kg); };
    row("mass " + in.mass_symbol(), d.mass_kg, mass);
    row("in water " + in.mass_symbol(), d.in_water_kg, mass);
    if (d.floats < 1.0) {
        row("fall " + in.speed_symbol() + (d.floats > 0.0 ? ", where it sinks" : ""), d.fall_m_s,
            [&](double m_s) { return in.speed(m_s); });
    }
    row("hang °", d.pitch_rad, [](double rad) { return number_text(rad, Unit::degree, 1); });
    return table.text(in) + "Float: " + percent(d.floats) + ". Right " + asked_word(document) + ": " +
           percent(d.chances.fall) + ", hang: " + percent(d.chances.pitch) +
           ", both: " + percent(d.chances.both) + ".\n";
}

/// What is to be done at the holes: bit, depth and fill; a sign where lead that is in is changed.
std::string work_text(const DoNow& now, const Numbers& in) {
    Table table(
        {Table::Side::left, Table::Side::right, Table::Side::right, Table::Side::right, Table::Side::left});
    table.row({"  Hole", "bit " + in.length_symbol(), "deep " + in.length_symbol(),
               "fill " + in.mass_symbol(), "material"});
    for (const HoleStep& step : now.holes) {
        const auto index = static_cast<std::size_t>(step.hole);
        const std::string& name = now.document.holes[index].name;
        const std::string number = std::to_string(index + 1);
        const std::string fill = step.work == HoleWork::leave_whole   ? "leave"
                                 : step.work == HoleWork::leave_empty ? "empty"
                                 : step.work == HoleWork::take_out    ? in.signed_mass(-step.fill_kg)
                                 : step.work == HoleWork::add         ? in.signed_mass(step.fill_kg)
                                                                      : in.mass(step.fill_kg);
        const std::string title = name.empty()                 ? number
                                  : name.rfind(number, 0) == 0 ? name
                                                               : number + ' ' + name;
        table.row({"  " + title,
                   step.drills
                       ? in.units.inches() ? bits::inch_name(step.diameter_m) : in.thickness(step.diameter_m)
                       : "–",
                   step.drills ? in.length(step.depth_m) : "–", fill, materials::name_of(step.material)});
    }
    return table.text(in);
}

struct ChanceOptions : PresetOptions {
    std::optional<int> draws;
};

Ended run(const ChanceOptions& o, const Printing& in) {
    if (o.draws && (*o.draws < 1 || *o.draws > 1000000))
        return misuse("--draws", "Draw from 1 to 1000000 lures.");
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    const Outcome<Uncertainty> s = evenfall::uncertainty(*document);
    if (!s.ok()) return s.problems();
    const Outcome<DoNow> now = do_now(*document);
    if (!now.ok()) return now.problems();
    std::optional<Draws> draws;
    if (o.draws) {
        const Outcome<Draws> drawn = uncertainty_by_draws(*document, static_cast<std::size_t>(*o.draws));
        if (!drawn.ok()) return drawn.problems();
        draws = *drawn;
    }
    if (o.json) {
        print(output::uncertainty_json(*document, *s, *now, draws, in.json));
        return done;
    }
    std::string text = document->name + (s->lure > 0 ? ", lure " + std::to_string(s->lure + 1) : "") +
                       "\n\n" + answers_text(*s, in) + '\n';
    const bool by_weight = document->targets.by == document::TargetBy::in_water;
    const std::string band = by_weight ? in.mass(s->weight_band_kg) + " " + in.mass_symbol()
                                       : percent(document->targets.fall_band);
    text += std::string("Chance that the ") + asked_word(*document) + " is right (band ±" + band +
            ") and the hang (±" + degrees(document->targets.pitch_band_rad) +
            "): " + percent(s->chances_now.both) + " as it stands, " + percent(now->chances.both) +
            (now->met ? " with the lead put right for what is known now.\n\n"
                      : " with the nearest that the holes allow: what is asked is out of their reach.\n\n");
    text += stages_text(*document, *s, in) + '\n';
    for (const ReadingFit& v : s->readings) {
        if (v.warning.empty()) continue;
        text += "! " + v.warning.text(in.units) + '\n';
        for (const Sentence& why : v.explanations)
            text += "    " + why.text(in.units) + '\n';
    }
    if (!s->agreement.warning.empty()) text += "! " + s->agreement.warning.text(in.units) + '\n';
    text += "Do now:\n";
    const auto caution = [&](bool due, const char* words) {
        if (due) text += std::string("  ") + words + '\n';
    };
    caution(!now->nothing_to_do && output::works_lead(*now), cautions::lead_chips);
    caution(now->with_all.has_value(), cautions::hooks);
    if (!now->nothing_to_do) text += work_text(*now, in) + '\n';
    for (const Sentence& step : now->steps)
        text += "  " + step.text(in.units) + '\n';
    for (const Problem& p : now->shortfalls)
        text += "  ! " + p.sentence.text(in.units) + '\n';
    text += '\n';
    if (!s->trim.sentence.empty()) text += s->trim.sentence.text(in.units) + "\n\n";
    text += next_text(*document, *s, now->met, in);
    if (draws) text += '\n' + draws_text(*document, *draws, in);
    print(text, in);
    return done;
}

} // namespace

void chance(Options& options) {
    const auto o =
        declare<ChanceOptions>(options, "how sure the answers are, what to do now, what to read next", run);
    options.read("--draws", read_whole, o->draws, "N", "and by N lures drawn by chance");
}

} // namespace evenfall::cli
