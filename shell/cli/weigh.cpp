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

std::string point_text(const Vec3& at) {
    return "x " + millimetres(at.x) + "   y " + millimetres(at.y) + "   z " + millimetres(at.z) + " mm";
}

std::string water_text(const document::Water& water, double density_kg_m3) {
    const std::string salt = water.salinity_g_kg > 0.0
                                 ? number_text(water.salinity_g_kg, Unit::g_per_kg, 1) + " g/kg of salt"
                                 : "fresh";
    return number_text(water.temperature_c, Unit::celsius, 1) + " °C, " + salt + ", " +
           number_text(density_kg_m3, Unit::kg_per_m3, 2) + " kg/m³";
}

std::string head_text(const document::Document& document, const Answers& answers) {
    constexpr std::size_t label = 12;
    const materials::Wood* wood = materials::find_wood(document.wood.species);
    const std::size_t segments = document.segment_names.size();
    std::string text = document.name + '\n';
    text += (wood != nullptr ? std::string(wood->name) : document.wood.species) + " · " +
            std::to_string(segments) + (segments == 1 ? " segment" : " segments") + " · " +
            water_text(document.water, answers.water_density_kg_m3) + "\n\n";
    text += padded("Finished", label) + grams(answers.mass.kg) + " ± " + grams(answers.mass_sigma.kg) +
            " g, displaces " + number_text(answers.displaced_m3, Unit::cm3, 2) + " cm³\n";
    text += padded("In water", label) + signed_grams(answers.in_water.kg) + " ± " +
            grams(answers.in_water_sigma.kg) + " g\n";
    text += padded("Fall", label) + fall_words(answers) + '\n';
    text += padded("Hang", label) + degrees(answers.pitch_rad) + " pitch (nose-up positive), " +
            degrees(answers.roll_rad) + " roll\n";
    text += padded("B above G", label) + millimetres(answers.bg_m, 2) + " mm\n";
    text += padded("G", label) + point_text(answers.g_m) + '\n';
    text += padded("B", label) + point_text(answers.b_m) + '\n';
    return text;
}

std::string stages_text(const Answers& answers) {
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right, Side::right, Side::right,
                 Side::right, Side::right});
    table.row({"Stage", "mass g", "± g", "in water g", "mm/s", "s/ft", "in tub g", "mm/s", "s/ft"});
    for (const StageAnswer& stage : answers.stages) {
        table.row({output::stage_name(stage.stage), grams(stage.mass.kg), grams(stage.mass_sigma.kg),
                   signed_grams(stage.in_water.kg), fall_mm_s(stage.fall), fall_s_ft(stage.fall),
                   signed_grams(stage.in_tub.kg), fall_mm_s(stage.tub_fall), fall_s_ft(stage.tub_fall)});
    }
    return table.text();
}

std::string segments_text(const Answers& answers) {
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right, Side::right, Side::right});
    table.row({"Segment", "wood cm³", "displaces cm³", "mass g", "in water g", "G x mm", "B x mm"});
    for (const SegmentAnswer& segment : answers.segments) {
        table.row({segment.name, number_text(segment.wood_m3, Unit::cm3, 2),
                   number_text(segment.displaced_m3, Unit::cm3, 2), grams(segment.mass.kg),
                   signed_grams(segment.in_water.kg), millimetres(segment.g_m.x),
                   millimetres(segment.b_m.x)});
    }
    return table.text();
}

/// What each coat weighs and what of it is felt in the water.
std::string coats_text(const document::Document& document, const Answers& answers) {
    if (answers.coats.empty()) return {};
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right});
    table.row({"Coat", "mass g", "grows by cm³", "felt in water g", "share of it"});
    for (const CoatAnswer& coat : answers.coats) {
        const std::string& name = document.coats[static_cast<std::size_t>(coat.coat)].name;
        table.row({name.empty() ? "Coat " + std::to_string(coat.coat + 1) : name, grams(coat.mass.kg),
                   number_text(coat.displaced_m3, Unit::cm3, 2), signed_grams(coat.in_water.kg),
                   number_text(coat.in_water_share, Unit::percent, 0) + " %"});
    }
    return table.text() + "A film makes the lure larger as well as heavier, so the water carries most of it; "
                          "what soaks in is felt in full.\n\n";
}

int run(const PresetOptions& o) {
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return report(document.problems());
    const Outcome<Evaluation> evaluation = evaluate(*document);
    if (!evaluation.ok()) return report(evaluation.problems());
    const Answers& answers = evaluation->answers;
    if (o.json) {
        print(output::answers_json(*document, answers));
    } else {
        constexpr double shown_depth_m = 2.0;
        const auto water = output::in_water(*document, *evaluation, shown_depth_m);
        if (!water.ok()) return report(water.problems());
        print(head_text(*document, answers) + '\n' + stages_text(answers) + '\n' + segments_text(answers) +
              '\n' + coats_text(*document, answers) + floating_text(*water) + hinges_text(*document, *water) +
              sweep_text(*water) + warnings_text(answers) + water_warnings_text(*water));
    }
    return done;
}

} // namespace

void weigh(Options& options) {
    declare<PresetOptions>(options, "what the lure weighs, in air and in water, and how it falls and hangs",
                           run);
}

} // namespace evenfall::cli
