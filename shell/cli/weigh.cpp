#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/water_text.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <memory>

namespace evenfall::cli {
namespace {

using Side = Table::Side;
using units::number_text;
using units::Unit;

std::string point_text(const Vec3& at, const Numbers& in) {
    return "x " + in.length(at.x) + "   y " + in.length(at.y) + "   z " + in.length(at.z) + " " +
           in.length_symbol();
}

std::string water_text(const document::Water& water, double density_kg_m3, const Numbers& in) {
    const std::string salt = water.salinity_g_kg > 0.0
                                 ? number_text(water.salinity_g_kg, Unit::g_per_kg, 1) + " g/kg of salt"
                                 : "fresh";
    return in.temperature(water.temperature_c, 1) + " " + in.temperature_symbol() + ", " + salt + ", " +
           number_text(density_kg_m3, Unit::kg_per_m3, 2) + " kg/m³";
}

std::string head_text(const document::Document& document, const Answers& answers, const Numbers& in) {
    const std::string gram = std::string(1, ' ').append(in.mass_symbol());
    constexpr std::size_t label = 12;
    const materials::Wood* wood = materials::find_wood(document.wood.species);
    const std::size_t segments = document.segment_names.size();
    std::string text = document.name + '\n';
    text += (wood != nullptr ? std::string(wood->name) : document.wood.species) + " · " +
            std::to_string(segments) + (segments == 1 ? " segment" : " segments") + " · " +
            water_text(document.water, answers.water_density_kg_m3, in) + "\n\n";
    const auto line = [&](const char* name, const std::string& value) {
        text += padded(in.speech.said(name), label) + in.speech.said(value) + '\n';
    };
    line("Finished", in.mass(answers.mass.kg) + " ± " + in.mass(answers.mass_sigma.kg) + gram +
                         ", displaces " + number_text(answers.displaced_m3, Unit::cm3, 2) + " cm³");
    line("In water", in.signed_mass(answers.in_water.kg) + " ± " + in.mass(answers.in_water_sigma.kg) + gram);
    line("Fall", fall_words(answers, in));
    line("Hang",
         degrees(answers.pitch_rad) + " hang (nose-up positive), " + degrees(answers.roll_rad) + " lean");
    line("B above G", in.thickness(answers.bg_m) + " " + in.length_symbol());
    line("G", point_text(answers.g_m, in));
    line("B", point_text(answers.b_m, in));
    return text;
}

std::string stages_text(const document::Document& document, const Evaluation& evaluation, const Numbers& in) {
    const std::string gram = in.mass_symbol(), speed = in.speed_symbol();
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right, Side::right, Side::right,
                 Side::right, Side::right});
    table.row({"Stage", "mass " + gram, "± " + gram, "in water " + gram, speed, "s/ft", "in tub " + gram,
               speed, "s/ft"});
    const auto row = [&](const StageAnswer& stage, const std::string& name) {
        table.row({name, in.mass(stage.mass.kg), in.mass(stage.mass_sigma.kg),
                   in.signed_mass(stage.in_water.kg), fall_speed(stage.fall, in), fall_s_ft(stage.fall),
                   in.signed_mass(stage.in_tub.kg), fall_speed(stage.tub_fall, in),
                   fall_s_ft(stage.tub_fall)});
    };
    for (const StageAnswer& stage : evaluation.answers.stages)
        row(stage, stage_name(stage.stage));
    for (const StageAnswer& test : stages_with_all(document, evaluation))
        row(test, stage_name(test.stage) + output::with_all_words(document));
    return table.text(in);
}

std::string segments_text(const Answers& answers, const Numbers& in) {
    const std::string gram = in.mass_symbol(), mm = in.length_symbol();
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right, Side::right, Side::right});
    table.row({"Segment", "wood cm³", "displaces cm³", "mass " + gram, "in water " + gram, "G x " + mm,
               "B x " + mm});
    for (const SegmentAnswer& segment : answers.segments) {
        table.row({segment.name, number_text(segment.wood_m3, Unit::cm3, 2),
                   number_text(segment.displaced_m3, Unit::cm3, 2), in.mass(segment.mass.kg),
                   in.signed_mass(segment.in_water.kg), in.length(segment.g_m.x), in.length(segment.b_m.x)});
    }
    return table.text(in);
}

/// What each coat weighs and what of it is felt in the water.
std::string coats_text(const document::Document& document, const Answers& answers, const Numbers& in) {
    if (answers.coats.empty()) return {};
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right});
    table.row({"Coat", "mass " + in.mass_symbol(), "grows by cm³", "felt in water " + in.mass_symbol(),
               "share of it"});
    for (const CoatAnswer& coat : answers.coats) {
        const std::string& name = document.coats[static_cast<std::size_t>(coat.coat)].name;
        table.row({name.empty() ? "Coat " + std::to_string(coat.coat + 1) : name, in.mass(coat.mass.kg),
                   number_text(coat.displaced_m3, Unit::cm3, 2), in.signed_mass(coat.in_water.kg),
                   number_text(coat.in_water_share, Unit::percent, 0) + " %"});
    }
    return table.text(in) +
           "A film makes the lure larger as well as heavier, so the water carries most of it; "
           "what soaks in is felt in full.\n\n";
}

Ended run(const PresetOptions& o, const Printing& in) {
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    const Outcome<Evaluation> evaluation = evaluate(*document);
    if (!evaluation.ok()) return evaluation.problems();
    const Answers& answers = evaluation->answers;
    if (o.json) {
        print(output::answers_json(*document, *evaluation, std::nullopt, in.json));
    } else {
        constexpr double shown_depth_m = 2.0;
        const auto water = output::in_water(*document, *evaluation, shown_depth_m);
        if (!water.ok()) return water.problems();
        print(head_text(*document, answers, in) + near_neutral_text(*document, in) + '\n' +
                  stages_text(*document, *evaluation, in) + '\n' + segments_text(answers, in) + '\n' +
                  coats_text(*document, answers, in) + floating_text(*water, in) +
                  hinges_text(*document, *water, in) + sweep_text(*water, in) + warnings_text(answers, in) +
                  water_warnings_text(*water, in),
              in);
    }
    return done;
}

} // namespace

void weigh(Options& options) {
    declare<PresetOptions>(options, "what the lure weighs, in air and in water, and how it falls and hangs",
                           run);
}

} // namespace evenfall::cli
