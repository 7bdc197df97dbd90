#include "base/number_text.hpp"
#include "base/trade.hpp"
#include "cli/commands.hpp"
#include "cli/settings.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "output/mix_json.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::cli {

Problems take_setting(const std::string& option, const std::string& text, const Setting* list,
                      std::size_t count) {
    for (std::size_t k = 0; k < count; ++k) {
        if (option != list[k].option) continue;
        const Outcome<double> value = units::read_number(text, list[k].usual, option);
        if (!value.ok()) return value.problems();
        *list[k].into = *value * list[k].factor;
        return {};
    }
    std::string sentence = "There is no option ";
    sentence += option;
    sentence += " here. See “evenfall --help”.";
    return {{ProblemCode::unknown_name, option, "", std::move(sentence)}};
}

namespace {

using units::Unit;

std::string minutes(double seconds) {
    return units::number_text(seconds / 60.0, Unit::one, 0) + " min";
}
std::string hours(double seconds) {
    return units::number_text(seconds / 3600.0, Unit::one, 1) + " h";
}

std::string portion(const evenfall::resin::Portion& p) {
    return grams(p.mixed_kg) + " g: resin " + grams(p.resin_kg) + " g (" +
           units::number_text(p.resin_m3, Unit::cm3, 2) + " ml), hardener " + grams(p.hardener_kg) + " g (" +
           units::number_text(p.hardener_m3, Unit::cm3, 2) + " ml)\n";
}

std::string resin_text(const document::Document& d, const std::vector<evenfall::resin::CoatGrams>& coats,
                       int coat, const evenfall::resin::Mix& m) {
    using enum Table::Side;
    Table table({left, right, right, right, right});
    table.row({"coat", "skin g", "joint faces g", "pockets g", "together g"});
    for (const evenfall::resin::CoatGrams& c : coats) {
        table.row({std::to_string(c.coat + 1) + " " + d.coats[static_cast<std::size_t>(c.coat)].name,
                   grams(c.skin_kg), grams(c.faces_kg), grams(c.pockets_kg), grams(c.together_kg())});
    }
    std::string text = d.name + "\n\n" + table.text() + "\nMix for coat " + std::to_string(coat + 1) +
                       "\n  together " + portion(m.all);
    if (m.mixes > 0) {
        text += "  in " + std::to_string(m.mixes) + (m.mixes == 1 ? " mix" : " mixes") + " of up to " +
                std::to_string(m.lures_a_mix) + (m.lures_a_mix == 1 ? " lure, " : " lures, ") +
                portion(m.cup);
    }
    text += "  works for about " + minutes(m.working_s) + ", thickens in the cup after about " +
            minutes(m.pot_life_s) + "\n  next coat " + hours(m.recoat_from_s) + " to " +
            hours(m.recoat_to_s) + " later, later than that after sanding; cured after " + hours(m.cure_s) +
            "\n";
    text += "\nTimes away from the label's temperature are a rate rule, no promise. A larger batch keeps its "
            "heat and thickens sooner.\n"
            "Warm resin flows better and thickens sooner. Warm closed bottles in warm water, never over a "
            "flame.\n"
            "Gloves and fresh air; a hot cup goes outdoors on stone. The label comes first.\n";
    for (const Problem& warning : m.warnings)
        text += "! " + warning.sentence + '\n';
    return text;
}

} // namespace

int resin(const Arguments& arguments) {
    evenfall::resin::MixRequest r;
    double lures = 1.0, coat = 0.0, by_volume = 0.0;
    const Setting list[] = {{"--lures", Unit::one, &lures},
                            {"--coat", Unit::one, &coat},
                            {"--loss", Unit::percent, &r.loss},
                            {"--by-volume", Unit::one, &by_volume},
                            {"--resin", Unit::one, &r.ratio.resin},
                            {"--hardener", Unit::one, &r.ratio.hardener},
                            {"--resin-density", Unit::g_per_cm3, &r.ratio.resin_kg_m3},
                            {"--hardener-density", Unit::g_per_cm3, &r.ratio.hardener_kg_m3},
                            {"--label-temperature", Unit::celsius, &r.label.temperature_c},
                            {"--batch", Unit::gram, &r.label.batch_kg},
                            {"--working", Unit::one, &r.label.working_s, 60.0},
                            {"--pot-life", Unit::one, &r.label.pot_life_s, 60.0},
                            {"--mix-temperature", Unit::celsius, &r.mix_c},
                            {"--room", Unit::celsius, &r.room_c},
                            {"--recoat-from", Unit::one, &r.label.recoat_from_s, 3600.0},
                            {"--recoat-to", Unit::one, &r.label.recoat_to_s, 3600.0},
                            {"--per-lure", Unit::one, &r.per_lure_s, 60.0},
                            {"--cure", Unit::one, &r.label.cure_s, 3600.0}};
    if (const Problems problems = take_settings(arguments, list); !problems.empty()) return report(problems);
    if (lures != std::floor(lures) || std::abs(lures) > 1e6)
        return report(
            {{ProblemCode::out_of_range, "/lures", "1 to 1000", "Lures come whole, 1 to 1000 of them."}});
    r.lures = static_cast<int>(lures);
    r.ratio.by_volume = by_volume != 0.0;
    const Outcome<document::Document> document = load(arguments.operand);
    if (!document.ok()) return report(document.problems());
    const auto evaluation = evaluate(*document);
    if (!evaluation.ok()) return report(evaluation.problems());
    const auto coats = evenfall::resin::schedule(*document, *evaluation);
    const auto count = static_cast<double>(coats.size());
    const bool is_named = std::any_of(arguments.settings.begin(), arguments.settings.end(),
                                      [](const auto& s) { return s.first == "--coat"; });
    const double index = is_named ? coat - 1.0 : evenfall::resin::resin_coat(*document);
    if (!(index >= 0.0 && index < count) || index != std::floor(index)) {
        return report(
            {{ProblemCode::unknown_name, "/coat", "",
              !is_named ? "No coat of this lure is a film of epoxy: name the one that is mixed with --coat."
                        : "The lure has no such coat."}});
    }
    r.on_lure_kg = coats[static_cast<std::size_t>(index)].together_kg();
    const auto mixed = evenfall::resin::mix(r);
    if (!mixed.ok()) return report(mixed.problems());
    print(arguments.json ? output::resin_json(*document, coats, static_cast<int>(index), *mixed)
                         : resin_text(*document, coats, static_cast<int>(index), *mixed));
    return done;
}

} // namespace evenfall::cli
