#include "base/number_text.hpp"
#include "cli/commands.hpp"
#include "cli/settings.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "output/glue_json.hpp"

#include <cmath>

namespace evenfall::cli {

namespace {

using units::Unit;

std::string millilitres(double m3) {
    return units::number_text(m3, Unit::cm3, 3);
}

std::string eyes_table(const evenfall::glue::GlueAnswer& answer) {
    using enum Table::Side;
    Table table({left, right, right, right, left, right});
    table.row({"where", "eyes", "gap ml each", "gap mm wide", "glue", "in a lure g"});
    for (const evenfall::glue::GluedRow& r : answer.rows) {
        table.row({r.joint ? "joint " + std::to_string(*r.joint + 1) : std::string("hangers"),
                   std::to_string(r.eyes), millilitres(r.gap_m3), millimetres(r.width_m, 2),
                   output::glue_word(r.sort), grams(r.glue_kg, 3)});
    }
    return table.text();
}

std::string caps_table(const document::Document& d, const evenfall::glue::GlueAnswer& answer) {
    using enum Table::Side;
    Table table({left, right, right, right});
    table.row({"cap of hole", "ml", "soda g", "thin CA ml"});
    for (const evenfall::glue::CapRow& c : answer.caps) {
        table.row({std::to_string(c.hole + 1) + " " + d.holes[static_cast<std::size_t>(c.hole)].name,
                   millilitres(c.volume_m3), grams(c.soda_kg, 3), millilitres(c.ca_m3)});
    }
    return table.text();
}

std::string glue_text(const document::Document& d, const evenfall::glue::GlueAnswer& answer, int lures) {
    std::string text = d.name + "\n";
    if (!answer.rows.empty()) text.append("\n").append(eyes_table(answer));
    if (!answer.caps.empty()) text.append("\n").append(caps_table(d, answer));
    text += "\nTo take for " + std::to_string(lures) + (lures == 1 ? " lure" : " lures") + ", loss included:";
    for (std::size_t k = 0; k < evenfall::glue::sort_count; ++k) {
        if (answer.take_m3[k] <= 0.0) continue;
        text += std::string("\n  ") + output::glue_word(static_cast<evenfall::glue::Sort>(k)) + " " +
                units::number_text(answer.take_m3[k], Unit::cm3, 2) + " ml, " + grams(answer.take_kg[k]) +
                " g";
    }
    if (answer.soda_kg > 0.0) text += "\n  baking soda " + grams(answer.soda_kg) + " g, nothing lost of it";
    text += "\n\nWhich glue fills which gap is common practice, without a source; densities and the room "
            "between grains of soda are from memory.\n"
            "CA bonds skin and eyelids in a second; soaked into soda it turns hot and fumes at once: eye "
            "protection, fresh air, a few drops at a time,\n"
            "never cotton gloves, solvent at hand. Uncured epoxy can make the skin allergic: gloves. The "
            "products' labels come first.\n";
    for (const Problem& warning : answer.warnings)
        text += "! " + warning.sentence + '\n';
    return text;
}

} // namespace

int glue(const Arguments& arguments) {
    evenfall::glue::GlueRequest r;
    double lures = 1.0, hangers = -1.0;
    const Setting list[] = {{"--lures", Unit::one, &lures},
                            {"--loss", Unit::percent, &r.loss},
                            {"--fitting", Unit::one, &r.fitting_s},
                            {"--thin", Unit::one, &r.times.thin_ca_s},
                            {"--thick", Unit::one, &r.times.thick_ca_s},
                            {"--epoxy", Unit::one, &r.times.epoxy_s, 60.0},
                            {"--hangers", Unit::one, &hangers},
                            {"--wire", Unit::mm, &r.hanger.wire_m},
                            {"--bit", Unit::mm, &r.hanger.bit_m},
                            {"--pitch", Unit::mm, &r.hanger.pitch_m},
                            {"--glued", Unit::mm, &r.hanger.glued_m}};
    if (const Problems problems = take_settings(arguments, list); !problems.empty()) return report(problems);
    for (const auto& [path, value] : {std::pair{"/lures", lures}, std::pair{"/hangers", hangers}}) {
        if (value != std::floor(value) || std::abs(value) > 1e6)
            return report({{ProblemCode::out_of_range, path, "", "Lures and hangers come whole."}});
    }
    r.lures = static_cast<int>(lures);
    for (const auto& [option, text] : arguments.settings) {
        if (option == "--hangers") r.hangers = static_cast<int>(hangers);
    }
    const Outcome<document::Document> document = load(arguments.operand);
    if (!document.ok()) return report(document.problems());
    const auto evaluation = evaluate(*document);
    if (!evaluation.ok()) return report(evaluation.problems());
    const auto answer = evenfall::glue::glue(*document, evaluation->body, r);
    if (!answer.ok()) return report(answer.problems());
    print(arguments.json ? output::glue_json(*document, *answer) : glue_text(*document, *answer, r.lures));
    return done;
}

} // namespace evenfall::cli
