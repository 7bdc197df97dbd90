#include "evenfall.hpp"

#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"

#include <nlohmann/json.hpp>

#include <memory>

namespace evenfall::cli {
namespace {

Ended tell(const Outcome<std::vector<compare::Option>>& options, const PresetOptions& asked,
           const Printing& in, bool woods) {
    if (!options.ok()) return options.problems();
    if (asked.json) {
        nlohmann::ordered_json rows = nlohmann::ordered_json::array();
        for (const auto& o : *options) {
            nlohmann::ordered_json row{{"id", o.id}, {"name", o.name}, {"density_kg_m3", o.density_kg_m3}};
            if (woods) {
                row["density_spread"] = o.spread;
                row["side_hardness_n"] =
                    o.hardness_n ? nlohmann::ordered_json(*o.hardness_n) : nlohmann::ordered_json(nullptr);
            }
            row["bare_in_water_g"] = units::g_from_kg(o.bare_in_water_kg);
            row["met"] = o.met;
            row["fill_g"] = o.fill_kg ? nlohmann::ordered_json(units::g_from_kg(*o.fill_kg))
                                      : nlohmann::ordered_json(nullptr);
            row["deepest_mm"] = units::mm_from_m(o.deepest_m);
            row["why"] = o.why.text(in.json);
            rows.push_back(std::move(row));
        }
        print(rows.dump(1) + '\n');
        return done;
    }
    using enum Table::Side;
    Table table({left, right, right, right, right, right, left});
    const std::string gram = in.mass_symbol();
    table.row({woods ? "Wood" : "Metal", "kg/m³", woods ? "hard N" : "", "bare " + gram, "fill " + gram,
               "deepest " + in.length_symbol(), ""});
    for (const auto& o : *options) {
        table.row({o.name, units::number_text(o.density_kg_m3, units::Unit::one, 0),
                   o.hardness_n ? units::number_text(*o.hardness_n, units::Unit::one, 0) : "",
                   in.signed_mass(o.bare_in_water_kg), o.fill_kg ? in.mass(*o.fill_kg) : "–",
                   in.length(o.deepest_m), o.met ? "" : "short: " + o.why.text(in.units)});
    }
    print(table.text(in) +
              "Bare: the finished lure in water with nothing in its holes; below nothing it floats.\n",
          in);
    return done;
}

Ended compare_woods(const PresetOptions& o, const Printing& in) {
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    return tell(compare::woods(*document), o, in, true);
}

Ended compare_metals(const PresetOptions& o, const Printing& in) {
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    return tell(compare::metals(*document), o, in, false);
}

} // namespace

void woods(Options& options) {
    declare(options, "the same lure in every wood of the table, its lead planned anew", compare_woods);
}

void metals(Options& options) {
    declare(options, "the same lure in lead, tungsten, bismuth, tin, steel, brass …", compare_metals);
}

} // namespace evenfall::cli
