#include "materials/block.hpp"
#include "base/number_text.hpp"
#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/settings.hpp"
#include "cli/table.hpp"
#include "document/json_text.hpp"
#include "document/own_wood.hpp"
#include "output/trees.hpp"

#include <cmath>
#include <limits>

namespace evenfall::cli {

namespace {

using materials::Block;
using materials::BlockAnswer;
using materials::BlockSays;
using units::number_text;
using units::Unit;

std::string density(double kg_m3) {
    return number_text(kg_m3, Unit::g_per_cm3, 3) + " g/cm³";
}
std::string percent(double value, int decimals = 0) {
    return number_text(value, Unit::one, decimals) + " %";
}

/// "LENGTHxWIDTHxHEIGHT"
Problems take_sides(const std::string& text, Block& block) {
    double* const into[] = {&block.length_m, &block.width_m, &block.height_m};
    std::size_t from = 0;
    for (std::size_t k = 0; k < 3; ++k) {
        const std::size_t end = k < 2 ? text.find_first_of("xX", from) : text.size();
        if (end == std::string::npos) break;
        const Outcome<double> side = units::read_number(text.substr(from, end - from), Unit::mm, "--size");
        if (!side.ok()) return side.problems();
        *into[k] = *side;
        from = end + 1;
    }
    if (from == text.size() + 1) return {};
    return {{ProblemCode::missing_key, "--size", "", "A block has three sides: --size LENGTHxWIDTHxHEIGHT."}};
}

std::string verdict(const BlockAnswer& a, const materials::Wood& wood, const Block& block) {
    std::string text = "Usual for ";
    text += wood.name;
    text += " at " + percent(block.moisture_percent) + ": " + density(a.usual_kg_m3) + " ± " +
            number_text(a.spread, Unit::percent, 0) + " %\n";
    if (a.says == BlockSays::usual)
        return text + "Within what pieces of this wood differ by (" + number_text(a.sigmas, Unit::one, 1) +
               " standard deviations).\n";
    text += (a.says == BlockSays::heavier ? "Heavier" : "Lighter");
    text += " than usual by " + number_text(std::abs(a.sigmas), Unit::one, 1) + " standard deviations: ";
    text += a.says == BlockSays::heavier
                ? "perhaps wetter than said, or measured too small, or another wood.\n"
                : "perhaps measured too large, or another wood, or much drier than said.\n";
    if (a.would_explain_percent)
        text +=
            "An average piece would weigh as much at " + percent(*a.would_explain_percent) + " moisture.\n";
    return text;
}

std::string block_json(const BlockAnswer& a, const materials::Wood& wood, const Block& block,
                       double to_percent) {
    const char* says = a.says == BlockSays::usual     ? "usual"
                       : a.says == BlockSays::heavier ? "heavier"
                                                      : "lighter";
    return document::laid_out_text(
        {{"species", std::string(wood.id)},
         {"moisture_percent", output::number(block.moisture_percent)},
         {"density_kg_m3", output::number(a.density_kg_m3)},
         {"to_percent", output::number(to_percent)},
         {"density_then_kg_m3", output::number(a.at_other_kg_m3)},
         {"usual_kg_m3", output::number(a.usual_kg_m3)},
         {"spread", output::number(a.spread)},
         {"sigmas", output::number(a.sigmas)},
         {"says", says},
         {"would_explain_percent",
          a.would_explain_percent ? output::number(*a.would_explain_percent) : output::Tree(nullptr)}});
}

} // namespace

int block(const Arguments& typed) {
    Arguments numbers = typed;
    std::string species, size, write_to;
    numbers.settings.clear();
    for (const auto& [option, text] : typed.settings) {
        if (option == "--species")
            species = text;
        else if (option == "--size")
            size = text;
        else if (option == "--write")
            write_to = text;
        else
            numbers.settings.emplace_back(option, text);
    }
    Block measured;
    double to_percent = std::numeric_limits<double>::quiet_NaN(); // until it is typed
    const Setting list[] = {{"--mass", Unit::gram, &measured.mass_kg},
                            {"--moisture", Unit::percent, &measured.moisture_percent, 100.0},
                            {"--to", Unit::percent, &to_percent, 100.0}};
    if (const Problems problems = take_settings(numbers, list); !problems.empty()) return report(problems);
    if (const Problems problems = take_sides(size, measured); !problems.empty()) return report(problems);
    Outcome<document::Document> document = load(typed.operand);
    if (!document.ok()) return report(document.problems());
    if (species.empty()) species = document->wood.species;
    if (std::isnan(to_percent)) to_percent = document->wood.moisture_percent;
    const materials::Wood* wood = materials::find_wood(species);
    if (wood == nullptr)
        return report({{ProblemCode::unknown_name, "--species", "",
                        "“" + species + "” is not in the table of woods: “evenfall woods” lists them."}});
    const auto a = materials::weigh_block(measured, *wood, to_percent);
    if (!a.ok()) return report(a.problems());
    if (!write_to.empty()) {
        document->wood.species = species;
        document->wood.moisture_percent = to_percent;
        document::set_weighed_density(*document, a->at_other_kg_m3);
        // What the preset's own reader refuses is not written.
        const std::string text = write_document(*document);
        if (const auto again = read_document(text); !again.ok()) return report(again.problems());
        if (const Problems problems = write_text_file(write_to, text); !problems.empty())
            return report(problems);
    }
    if (typed.json) {
        print(block_json(*a, *wood, measured, to_percent));
        return done;
    }
    print("Block " + density(a->density_kg_m3) + " at " + percent(measured.moisture_percent) + " moisture, " +
          density(a->at_other_kg_m3) + " at " + percent(to_percent) + "\n" + verdict(*a, *wood, measured) +
          (write_to.empty()
               ? "--write FILE puts the density at " + percent(to_percent) + " into the lure's wood.\n"
               : "Written into the lure's wood: " + write_to + "\n"));
    return done;
}

} // namespace evenfall::cli
