#include "base/number_text.hpp"
#include "base/trade.hpp"
#include "cli/commands.hpp"
#include "cli/settings.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "materials/wire_twist.hpp"
#include "output/mix_json.hpp"

#include <cmath>

namespace evenfall::cli {

namespace {

using units::Unit;

std::string stock_text(const document::Document& d, const evenfall::stock::StockList& list,
                       evenfall::stock::Form form) {
    using evenfall::stock::Form;
    using enum Table::Side;
    Table table({left, right, right, left});
    table.row({"hole", "fill g",
               form == Form::rod    ? "cut mm"
               : form == Form::shot ? "shot"
                                    : "sheet cm²",
               ""});
    const auto amount = [form](double length_m, int count, double over_kg, double area_m2) {
        if (form == Form::rod) return millimetres(length_m);
        if (form == Form::shot) return std::to_string(count) + " (" + signed_grams(over_kg) + " g)";
        return units::number_text(units::cm2_from_m2(area_m2), Unit::one, 2);
    };
    for (const auto& h : list.holes) {
        table.row({std::to_string(h.hole + 1) + " " + d.holes[static_cast<std::size_t>(h.hole)].name,
                   grams(h.fill_kg), amount(h.length_m, h.count, h.over_kg, h.area_m2),
                   h.enters && !*h.enters ? "thicker than the hole" : ""});
    }
    table.row(
        {"together", grams(list.fill_kg), amount(list.length_m, list.count, list.over_kg, list.area_m2), ""});
    return d.name + "\n\n" + table.text() +
           "\nShot leaves air between: see that the hole holds the count. Weigh what you cut.\n"
           "Lead is poisonous: gloves, no food on the bench, wash your hands, keep children away. Ask "
           "whether lead is allowed where you fish.\n";
}

} // namespace

int stock(const Arguments& arguments) {
    using evenfall::stock::Form;
    constexpr double none = -1.0;
    double rod = none, awg = none, shot = none, number = none, sheet = none;
    const Setting list[] = {{"--rod", Unit::mm, &rod},
                            {"--awg", Unit::one, &awg},
                            {"--shot", Unit::mm, &shot},
                            {"--shot-number", Unit::one, &number},
                            {"--sheet", Unit::mm, &sheet}};
    Arguments sizes = arguments;
    std::string material;
    std::erase_if(sizes.settings, [&material](const auto& setting) {
        if (setting.first != "--material") return false;
        material = setting.second;
        return true;
    });
    if (sizes.settings.size() != 1) {
        return report({{ProblemCode::missing_key, "/size_mm", "",
                        "Name one stock: --rod, --shot or --sheet with its size, --awg or --shot-number with "
                        "its number."}});
    }
    if (const Problems problems = take_settings(sizes, list); !problems.empty()) return report(problems);
    const std::string& option = sizes.settings.front().first;
    evenfall::stock::Stock s{Form::rod, rod, material};
    if (option == "--shot") s = {Form::shot, shot, material};
    if (option == "--sheet") s = {Form::sheet, sheet, material};
    if (option == "--awg") {
        if (awg != std::floor(awg) || awg < 0.0 || awg > 40.0)
            return report(
                {{ProblemCode::out_of_range, "/awg", "0 to 40", "Wire gauge numbers go from 0 to 40."}});
        s = {Form::rod, wire::awg_m(static_cast<int>(awg)), material};
    }
    if (option == "--shot-number") {
        s = {Form::shot, evenfall::stock::shot_m(number), material};
        if (std::isnan(s.size_m))
            return report(
                {{ProblemCode::out_of_range, "/shot_number", "1 to 12", "Shot numbers go from 1 to 12."}});
    }
    const Outcome<document::Document> document = load(arguments.operand);
    if (!document.ok()) return report(document.problems());
    const auto evaluation = evaluate(*document);
    if (!evaluation.ok()) return report(evaluation.problems());
    const auto answer = evenfall::stock::list(*document, *evaluation, s);
    if (!answer.ok()) return report(answer.problems());
    print(arguments.json ? output::stock_json(*document, *answer) : stock_text(*document, *answer, s.form));
    return done;
}

} // namespace evenfall::cli
