#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <algorithm>
#include <cmath>
#include <memory>

namespace evenfall::cli {

namespace {

using units::Unit;

std::string stock_text(const document::Document& d, const evenfall::stock::StockList& list,
                       evenfall::stock::Form form, const std::string& material, const Numbers& in) {
    const std::string gram = std::string(1, ' ').append(in.mass_symbol());
    using evenfall::stock::Form;
    using enum Table::Side;
    Table table({left, right, right, left});
    table.row({"hole", "fill" + gram,
               form == Form::rod    ? "cut " + in.length_symbol()
               : form == Form::shot ? "shot"
                                    : "sheet cm²",
               ""});
    const auto amount = [form, &in, &gram](double length_m, int count, double over_kg, double area_m2) {
        if (form == Form::rod) return in.length(length_m);
        if (form == Form::shot) return std::to_string(count) + " (" + in.signed_mass(over_kg) + gram + ")";
        return units::number_text(units::cm2_from_m2(area_m2), Unit::one, 2);
    };
    for (const auto& h : list.holes) {
        table.row(
            {hole_label(static_cast<std::size_t>(h.hole), d.holes[static_cast<std::size_t>(h.hole)].name),
             in.mass(h.fill_kg), amount(h.length_m, h.count, h.over_kg, h.area_m2),
             h.enters && !*h.enters ? "thicker than the hole" : ""});
    }
    table.row({"together", in.mass(list.fill_kg),
               amount(list.length_m, list.count, list.over_kg, list.area_m2), ""});
    const bool with_lead = std::any_of(list.holes.begin(), list.holes.end(), [&](const auto& h) {
        const auto& fill = d.holes[static_cast<std::size_t>(h.hole)].fill;
        return cautions::is_lead(material.empty() && fill ? fill->material : material);
    });
    return d.name + "\n\n" + (with_lead ? std::string(cautions::lead) + "\n\n" : std::string()) +
           table.text(in) +
           "\nShot leaves air between: see that the hole holds the count. Weigh what you cut.\n";
}

struct StockOptions : PresetOptions {
    std::string material;
    std::optional<double> rod_m, awg, shot_m, shot_number, sheet_m;
};

/// What was named, as form and size; exactly one has to be.
Outcome<evenfall::stock::Stock> stock_of(const StockOptions& o) {
    using evenfall::stock::Form;
    int named = 0;
    for (const auto* size : {&o.rod_m, &o.awg, &o.shot_m, &o.shot_number, &o.sheet_m})
        named += size->has_value() ? 1 : 0;
    if (named != 1) {
        return Problem{ProblemCode::missing_key, "/size_mm", "",
                       "Name one stock: --rod, --shot or --sheet with its size, --awg or --shot-number with "
                       "its number."};
    }
    if (o.rod_m) return evenfall::stock::Stock{Form::rod, *o.rod_m, o.material};
    if (o.shot_m) return evenfall::stock::Stock{Form::shot, *o.shot_m, o.material};
    if (o.sheet_m) return evenfall::stock::Stock{Form::sheet, *o.sheet_m, o.material};
    if (o.awg) {
        if (*o.awg != std::floor(*o.awg) || *o.awg < 0.0 || *o.awg > 40.0)
            return Problem{ProblemCode::out_of_range, "/awg", "0 to 40",
                           "Wire gauge numbers go from 0 to 40."};
        return evenfall::stock::Stock{Form::rod, wire::awg_m(static_cast<int>(*o.awg)), o.material};
    }
    const double shot_m = evenfall::stock::shot_m(*o.shot_number);
    if (std::isnan(shot_m))
        return Problem{ProblemCode::out_of_range, "/shot_number", "1 to 12",
                       "American birdshot numbers go from 1 to 12."};
    return evenfall::stock::Stock{Form::shot, shot_m, o.material};
}

Ended run(const StockOptions& o, const Printing& in) {
    const auto stock = stock_of(o);
    if (!stock.ok()) return stock.problems();
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    const auto evaluation = evaluate(*document);
    if (!evaluation.ok()) return evaluation.problems();
    const auto answer = evenfall::stock::list(*document, *evaluation, *stock);
    if (!answer.ok()) return answer.problems();
    o.json ? print(output::stock_json(*document, *answer))
           : print(stock_text(*document, *answer, stock->form, stock->material, in), in);
    return done;
}

} // namespace

void stock(Options& options) {
    const auto o = declare<StockOptions>(options, "each hole's fill as one stock", run);
    options.number("--rod", o->rod_m, Unit::mm, "SIZE", "rod or wire by diameter");
    options.number("--awg", o->awg, Unit::one, "N",
                   "copper and the like by American Wire Gauge, 0 to 40 (steel wire goes by other gauges: "
                   "measure it)");
    options.number("--shot", o->shot_m, Unit::mm, "SIZE", "shot by diameter");
    options.number("--shot-number", o->shot_number, Unit::one, "N",
                   "American birdshot by its number, 1 to 12 (other countries count otherwise: measure it)");
    options.number("--sheet", o->sheet_m, Unit::mm, "THICKNESS", "sheet");
    options.text("--material", o->material, "ID", "of the stock; that of each hole's fill where not given");
}

} // namespace evenfall::cli
