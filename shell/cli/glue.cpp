#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <memory>

namespace evenfall::cli {

namespace {

using units::Unit;

std::string millilitres(double m3) {
    return units::number_text(m3, Unit::cm3, 3);
}

std::string eyes_table(const evenfall::glue::GlueAnswer& answer, const Numbers& in) {
    using enum Table::Side;
    Table table({left, right, right, right, left, right});
    table.row({"where", "eyes", "gap ml each", "gap " + in.length_symbol() + " wide", "glue",
               "in a lure " + in.mass_symbol()});
    for (const evenfall::glue::GluedRow& r : answer.rows) {
        table.row({r.joint ? "joint " + std::to_string(*r.joint + 1) : std::string("hangers"),
                   std::to_string(r.eyes), millilitres(r.gap_m3), in.thickness(r.width_m),
                   output::glue_word(r.sort), in.mass(r.glue_kg, 3)});
    }
    return table.text(in);
}

std::string caps_table(const document::Document& d, const evenfall::glue::GlueAnswer& answer,
                       const Numbers& in) {
    using enum Table::Side;
    Table table({left, right, right, right});
    table.row({"cap of hole", "ml", "soda " + in.mass_symbol(), "thin CA ml"});
    for (const evenfall::glue::CapRow& c : answer.caps) {
        table.row(
            {hole_label(static_cast<std::size_t>(c.hole), d.holes[static_cast<std::size_t>(c.hole)].name),
             millilitres(c.volume_m3), in.mass(c.soda_kg, 3), millilitres(c.ca_m3)});
    }
    return table.text(in);
}

std::string glue_text(const document::Document& d, const evenfall::glue::GlueAnswer& answer, int lures,
                      const Numbers& in) {
    const std::string gram = std::string(1, ' ').append(in.mass_symbol());
    using evenfall::glue::GlueKind;
    const auto takes = [&](GlueKind kind) { return answer.take_m3[static_cast<std::size_t>(kind)] > 0.0; };
    std::string text = d.name + "\n";
    const auto caution = [&](bool due, const char* words) {
        if (due) text += std::string("\n") + words + '\n';
    };
    caution(takes(GlueKind::thin_ca) || takes(GlueKind::thick_ca), cautions::ca);
    caution(answer.soda_kg > 0.0, cautions::ca_on_soda);
    caution(takes(GlueKind::epoxy), cautions::epoxy);
    if (!answer.rows.empty()) text.append("\n").append(eyes_table(answer, in));
    if (!answer.caps.empty()) text.append("\n").append(caps_table(d, answer, in));
    text += "\nTo take for " + std::to_string(lures) + (lures == 1 ? " lure" : " lures") + ", loss included:";
    for (std::size_t k = 0; k < evenfall::glue::glue_kind_count; ++k) {
        if (answer.take_m3[k] <= 0.0) continue;
        text += std::string("\n  ") + output::glue_word(static_cast<evenfall::glue::GlueKind>(k)) + " " +
                units::number_text(answer.take_m3[k], Unit::cm3, 2) + " ml, " + in.mass(answer.take_kg[k]) +
                gram;
    }
    if (answer.soda_kg > 0.0)
        text += "\n  baking soda " + in.mass(answer.soda_kg) + gram + ", nothing lost of it";
    text += "\n\nWhich glue fills which gap is common practice, without a source; densities and the room "
            "between grains of soda are from memory.\n";
    for (const Problem& warning : answer.warnings)
        text += "! " + warning.sentence.text(in.units) + '\n';
    return text;
}

struct GlueOptions : PresetOptions {
    evenfall::glue::GlueRequest request;
};

Ended run(const GlueOptions& o, const Printing& in) {
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    const auto evaluation = evaluate(*document);
    if (!evaluation.ok()) return evaluation.problems();
    const auto answer = evenfall::glue::glue(*document, evaluation->body, o.request);
    if (!answer.ok()) return answer.problems();
    o.json ? print(output::glue_json(*document, *answer, in.json))
           : print(glue_text(*document, *answer, o.request.lures, in), in);
    return done;
}

} // namespace

void glue(Options& options) {
    const auto o =
        declare<GlueOptions>(options, "glue round each twisted eye, and soda and CA for the caps", run);
    auto& r = o->request;
    options.read("--lures", read_whole, r.lures, "N", "how many");
    options.number("--loss", r.loss, Unit::percent, "SHARE", "what is lost: 50%");
    options.number("--fitting", r.fitting_s, Unit::second, "SECONDS",
                   "how long one joint's eyes take to fit");
    options.number("--thin", r.times.thin_ca_s, Unit::second, "SECONDS",
                   "working time of thin CA, by its label");
    options.number("--thick", r.times.thick_ca_s, Unit::second, "SECONDS",
                   "working time of thick CA, by its label");
    options.number("--epoxy", r.times.epoxy_s, Unit::minute, "MINUTES",
                   "working time of the epoxy, by its label");
    options.read("--hangers", read_whole, r.hangers, "N",
                 "twisted wires for hooks; one a hook where not given");
    options.number("--wire", r.hanger.wire_m, Unit::mm, "SIZE", "of a hanger");
    options.number("--bit", r.hanger.bit_m, Unit::mm, "SIZE", "of a hanger's hole");
    options.number("--pitch", r.hanger.pitch_m, Unit::mm, "LENGTH", "of a hanger's twist");
    options.number("--glued", r.hanger.glued_m, Unit::mm, "DEPTH", "of a hanger's twist in the wood");
}

} // namespace evenfall::cli
