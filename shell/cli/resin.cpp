#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <algorithm>
#include <memory>

namespace evenfall::cli {

namespace {

using units::Unit;

std::string minutes(double seconds) {
    return units::number_text(seconds, Unit::minute, 0) + " min";
}
std::string hours(double seconds) {
    return units::number_text(seconds, Unit::hour, 1) + " h";
}

std::string portion(const evenfall::resin::MixAmounts& p, const Numbers& in) {
    const std::string gram = std::string(1, ' ').append(in.mass_symbol());
    return in.mass(p.mixed_kg) + gram + ": resin " + in.mass(p.resin_kg) + gram + " (" +
           units::number_text(p.resin_m3, Unit::cm3, 2) + " ml), hardener " + in.mass(p.hardener_kg) + gram +
           " (" + units::number_text(p.hardener_m3, Unit::cm3, 2) + " ml)\n";
}

std::string resin_text(const document::Document& d, const std::vector<evenfall::resin::CoatGrams>& coats,
                       int coat, const evenfall::resin::Mix& m, const Numbers& in) {
    const std::string gram = std::string(1, ' ').append(in.mass_symbol());
    using enum Table::Side;
    Table table({left, right, right, right, right});
    table.row({"coat", "skin" + gram, "joint faces" + gram, "pockets" + gram, "together" + gram});
    for (const evenfall::resin::CoatGrams& c : coats) {
        table.row({std::to_string(c.coat + 1) + " " + d.coats[static_cast<std::size_t>(c.coat)].name,
                   in.mass(c.skin_kg), in.mass(c.faces_kg), in.mass(c.pockets_kg), in.mass(c.together_kg())});
    }
    std::string text = d.name + "\n\n" + table.text(in) + "\n" + cautions::epoxy + "\n\nMix for coat " +
                       std::to_string(coat + 1) + "\n  together " + portion(m.all, in);
    if (m.mixes > 0) {
        text += "  in " + std::to_string(m.mixes) + (m.mixes == 1 ? " mix" : " mixes") + " of up to " +
                std::to_string(m.lures_a_mix) + (m.lures_a_mix == 1 ? " lure, " : " lures, ") +
                portion(m.cup, in);
    }
    text += "  works for about " + minutes(m.working_s) + ", thickens in the cup after about " +
            minutes(m.pot_life_s) + "\n  next coat " + hours(m.recoat_from_s) + " to " +
            hours(m.recoat_to_s) + " later, later than that after sanding; cured after " + hours(m.cure_s) +
            "\n";
    text += "\nTimes away from the label's temperature are a rate rule, no promise. A larger batch keeps its "
            "heat and thickens sooner.\n"
            "Warm resin flows better and thickens sooner. Warm closed bottles in warm water, never over a "
            "flame.\n"
            "A hot cup goes outdoors on stone. The label comes first.\n";
    for (const Problem& warning : m.warnings)
        text += "! " + warning.sentence.text(in.units) + '\n';
    return text;
}

struct ResinOptions : PresetOptions {
    evenfall::resin::MixRequest mix;
    std::optional<int> coat;
};

Ended run(const ResinOptions& o, const Printing& in) {
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    const auto evaluation = evaluate(*document);
    if (!evaluation.ok()) return evaluation.problems();
    const auto coats = evenfall::resin::schedule(*document, *evaluation);
    const int coat = o.coat ? *o.coat - 1 : evenfall::resin::resin_coat(*document);
    if (coat < 0 || coat >= static_cast<int>(coats.size())) {
        return Problem{
            ProblemCode::unknown_name, "/coat", "",
            !o.coat ? "No coat of this lure is a film of epoxy: name the one that is mixed with --coat."
                    : "The lure has no such coat."};
    }
    auto request = o.mix;
    request.on_lure_kg = coats[static_cast<std::size_t>(coat)].together_kg();
    const auto mixed = evenfall::resin::mix(request);
    if (!mixed.ok()) return mixed.problems();
    o.json ? print(output::resin_json(*document, coats, coat, *mixed, in.json))
           : print(resin_text(*document, coats, coat, *mixed, in), in);
    return done;
}

} // namespace

void resin(Options& options) {
    const auto o = declare<ResinOptions>(
        options, "grams of each coat by surface, and the two-part mix for one of them", run);
    auto& ratio = o->mix.ratio;
    auto& label = o->mix.label;
    options.read("--lures", read_whole, o->mix.lures, "N", "how many");
    options.read("--coat", read_whole, o->coat, "N", "which coat; the first film of epoxy where not given");
    const std::string lost =
        "what is lost: " + units::number_text(evenfall::resin::usual_loss, Unit::percent, 0) + "%";
    options.number("--loss", o->mix.loss, Unit::percent, "SHARE", lost.c_str());
    options.number("--resin", ratio.resin, Unit::one, "PARTS", "parts of resin on the label");
    options.number("--hardener", ratio.hardener, Unit::one, "PARTS", "parts of hardener on the label");
    options.number("--by-volume", ratio.by_volume, Unit::one, "1",
                   "1 for parts by volume, with the densities of both");
    options.number("--resin-density", ratio.resin_kg_m3, Unit::g_per_cm3, "DENSITY", "of the resin");
    options.number("--hardener-density", ratio.hardener_kg_m3, Unit::g_per_cm3, "DENSITY", "of the hardener");
    options.number("--label-temperature", label.temperature_c, Unit::celsius, "T",
                   "at which the label's times hold");
    options.number("--batch", label.batch_kg, Unit::gram, "MASS", "for which the label's pot life holds");
    options.number("--working", label.working_s, Unit::minute, "MINUTES",
                   "working time, as the label has it");
    options.number("--pot-life", label.pot_life_s, Unit::minute, "MINUTES", "as the label has it");
    options.number("--cure", label.cure_s, Unit::hour, "HOURS", "as the label has it");
    options.number("--recoat-from", label.recoat_from_s, Unit::hour, "HOURS",
                   "the label's window for the next coat opens");
    options.number("--recoat-to", label.recoat_to_s, Unit::hour, "HOURS", "and closes");
    options.number("--mix-temperature", o->mix.mix_c, Unit::celsius, "T", "of resin and hardener");
    options.number("--room", o->mix.room_c, Unit::celsius, "T", "of the room");
    options.number("--per-lure", o->mix.per_lure_s, Unit::minute, "MINUTES",
                   "how long one lure takes to coat");
}

} // namespace evenfall::cli
