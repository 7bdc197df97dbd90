#include "evenfall.hpp"

#include "cli/commands.hpp"

#include <nlohmann/json.hpp>

#include <cstdio>
#include <memory>

namespace evenfall::cli {
namespace {

int tell(const Outcome<std::vector<compare::Option>>& options, bool json, bool woods) {
    if (!options.ok()) return report(options.problems());
    if (json) {
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
            row["why"] = o.why;
            rows.push_back(std::move(row));
        }
        print(rows.dump(1) + '\n');
        return done;
    }
    char line[256];
    std::snprintf(line, sizeof line, "%-26s %8s %7s %10s %8s %9s\n", woods ? "Wood" : "Metal", "kg/m3",
                  woods ? "hard N" : "", "bare g", "fill g", "deepest");
    std::string text = line;
    for (const auto& o : *options) {
        const std::string hard = o.hardness_n ? units::number_text(*o.hardness_n, units::Unit::one, 0) : "";
        const std::string fill = o.fill_kg ? units::number_text(*o.fill_kg, units::Unit::gram, 2) : "-";
        std::snprintf(line, sizeof line, "%-26s %8.0f %7s %+10.2f %8s %6.1f mm", o.name.c_str(),
                      o.density_kg_m3, hard.c_str(), units::g_from_kg(o.bare_in_water_kg), fill.c_str(),
                      units::mm_from_m(o.deepest_m));
        text += line;
        if (!o.met) text += "  short: " + o.why;
        text += '\n';
    }
    print(text + "Bare: the finished lure in water with nothing in its holes; below nothing it floats.\n");
    return done;
}

int compare_woods(const PresetOptions& o) {
    const Outcome<document::Document> document = load(o.preset);
    return document.ok() ? tell(compare::woods(*document), o.json, true) : report(document.problems());
}

int compare_metals(const PresetOptions& o) {
    const Outcome<document::Document> document = load(o.preset);
    return document.ok() ? tell(compare::metals(*document), o.json, false) : report(document.problems());
}

} // namespace

void woods(Options& options) {
    declare(options, "the same lure in every wood of the table, its lead planned anew", compare_woods);
}

void metals(Options& options) {
    declare(options, "the same plan in lead, tungsten, bismuth, tin, steel, brass …", compare_metals);
}

} // namespace evenfall::cli
