#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <cmath>
#include <memory>

namespace evenfall::cli {

namespace {

using materials::Board;
using materials::BoardAnswer;
using materials::BoardComparison;
using units::number_text;
using units::Unit;

std::string density(double kg_m3) {
    return number_text(kg_m3, Unit::g_per_cm3, 3) + " g/cm³";
}
std::string percent(double value, int decimals = 0) {
    return number_text(value, Unit::one, decimals) + " %";
}

std::string verdict(const BoardAnswer& a, const materials::Wood& wood, const Board& board) {
    std::string text = "Usual for ";
    text += wood.name;
    text += " at " + percent(board.moisture_percent) + ": " + density(a.usual_kg_m3) + " ± " +
            number_text(a.spread, Unit::percent, 0) + " %\n";
    if (a.says == BoardComparison::usual)
        return text + "Within what boards of this wood differ by (" + number_text(a.sigmas, Unit::one, 1) +
               " standard deviations).\n";
    text += (a.says == BoardComparison::heavier ? "Heavier" : "Lighter");
    text += " than usual by " + number_text(std::abs(a.sigmas), Unit::one, 1) + " standard deviations: ";
    text += a.says == BoardComparison::heavier
                ? "perhaps wetter than said, or measured too small, or another wood.\n"
                : "perhaps measured too large, or another wood, or much drier than said.\n";
    if (a.would_explain_percent)
        text +=
            "An average board would weigh as much at " + percent(*a.would_explain_percent) + " moisture.\n";
    return text;
}

std::string board_json(const BoardAnswer& a, const materials::Wood& wood, const Board& board,
                       double to_percent) {
    const char* says = a.says == BoardComparison::usual     ? "usual"
                       : a.says == BoardComparison::heavier ? "heavier"
                                                            : "lighter";
    return document::laid_out_text(
        {{"species", std::string(wood.id)},
         {"moisture_percent", output::number(board.moisture_percent)},
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

struct BoardOptions : PresetOptions {
    Board measured;
    std::optional<Sides> size;
    std::optional<double> moisture, to; ///< shares
    std::optional<std::string> species, write_to;
};

Ended run(const BoardOptions& o, const Printing& in) {
    if (!o.size) return misuse("--size", "A board needs its size: --size LENGTHxWIDTHxHEIGHT.");
    Board measured = o.measured;
    const auto [length_m, width_m, height_m] = *o.size;
    measured.length_m = length_m;
    measured.width_m = width_m;
    measured.height_m = height_m;
    if (o.moisture) measured.moisture_percent = 100.0 * *o.moisture;
    Outcome<HeldFile> file = HeldFile::hold(o.write_to.value_or("-"));
    if (!file.ok()) return file.problems();
    Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    const std::string species = o.species.value_or(document->wood.species);
    const double to_percent = o.to ? 100.0 * *o.to : document->wood.moisture_percent;
    const materials::Wood* wood = materials::find_wood(species);
    if (wood == nullptr)
        return Problem{ProblemCode::unknown_name, "--species", "",
                       "“" + species + "” is not in the table of woods: “evenfall woods” lists them."};
    const auto a = materials::weigh_board(measured, *wood, to_percent);
    if (!a.ok()) return a.problems();
    if (o.write_to) {
        document->wood.species = species;
        document->wood.moisture_percent = to_percent;
        document::set_weighed_density(*document, a->at_other_kg_m3);
        if (const Problems problems = keep(*file, *document); !problems.empty()) return problems;
    }
    if (o.json) {
        print(board_json(*a, *wood, measured, to_percent));
        return done;
    }
    print("Board " + density(a->density_kg_m3) + " at " + percent(measured.moisture_percent) + " moisture, " +
              density(a->at_other_kg_m3) + " at " + percent(to_percent) + "\n" +
              verdict(*a, *wood, measured) +
              (o.write_to
                   ? "Written into the lure's wood: " + for_terminal(*o.write_to) + "\n"
                   : "--write FILE puts the density at " + percent(to_percent) + " into the lure's wood.\n"),
          in);
    return done;
}

} // namespace

void board(Options& options) {
    const auto o = declare<BoardOptions>(
        options, "a measured board's density, against its species and at another moisture", run);
    options.read("--size", read_sides, o->size, "LxWxH", "as it was measured, mm");
    options.number("--mass", o->measured.mass_kg, Unit::gram, "MASS", "as it was weighed");
    options.number("--moisture", o->moisture, Unit::percent, "PERCENT", "as it was weighed");
    options.number("--to", o->to, Unit::percent, "PERCENT",
                   "moisture to work it out for; that of the preset where not given");
    options.text("--species", o->species, "ID", "that of the preset where not given");
    options.text("--write", o->write_to, "FILE", "the preset with this density as its wood's");
}

} // namespace evenfall::cli
