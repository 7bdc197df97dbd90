#include "sheet/parts.hpp"
#include "units/number_text.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace evenfall::sheet {

namespace {

std::string name_or_number(const std::string& name, std::size_t index) { return name.empty() ? std::to_string(index + 1) : name; }

}  // namespace

void add_batch(Composer& pages, const std::vector<Job>& jobs) {
    std::map<std::string, double> fills, coats, mixes;
    std::map<std::tuple<std::string, std::string, std::string>, int> pieces;  // name, material, grams as read → how many
    std::vector<Composer::Row> recipes;
    int lures = 0;
    for (const Job& job : jobs) {
        const preset::Document& d = job.document;
        const int n = job.options.lures;
        lures += n;
        double hours = 0.0;
        for (const double wait : job.coat_hours) hours += wait;
        recipes.push_back({{d.name, std::to_string(n), g_text(job.evaluation.answers.mass_kg), "", fall_text(job.evaluation.answers.fall),
                            units::number_text(hours, units::Unit::one, 1)}});
        for (std::size_t h = 0; h < d.holes.size(); ++h) {
            if (const double mass = ledger_kg(job, ledger::Kind::fill, h); mass > 0.0) fills[d.holes[h].fill->material] += n * mass;
        }
        for (std::size_t p = 0; p < d.parts.size(); ++p) {
            const preset::Part& part = d.parts[p];
            pieces[{name_or_number(part.name, p), part.material, g_text(ledger_kg(job, ledger::Kind::part, p))}] += n;
        }
        for (std::size_t c = 0; c < d.coats.size(); ++c) {
            const double mass = n * ledger_kg(job, ledger::Kind::coat, c);
            coats[d.coats[c].material] += mass;
            mixes[d.coats[c].material] += d.coats[c].kind == preset::CoatKind::film ? mass * (1.0 + left_in_cup) : mass;
        }
    }
    pages.new_page("Batch of " + std::to_string(lures) + " lures");
    pages.table({{"Recipe", 2.4}, {"Lures", 0.7, Anchor::end}, {"Finished g", 1.0, Anchor::end}, {"", 0.2}, {"Fall", 1.6}, {"Waits h", 0.8, Anchor::end}}, recipes);
    if (std::any_of(fills.begin(), fills.end(), [](const auto& fill) { return fill.first.rfind("lead", 0) == 0; })) {
        pages.caution("Lead: wash your hands, make no dust, keep it from children and food; melt it only in strong moving air, never near "
                      "water. Some waters forbid it. Local rules decide.");
    }
    std::vector<Composer::Row> rows;
    for (const auto& [material, mass] : fills)
        rows.push_back({{material_text(material), g_text(mass, 1), units::number_text(mass, units::Unit::ounce, 2)}});
    if (!rows.empty()) {
        pages.heading("Fills, all lures together");
        pages.table({{"Material", 2.0}, {"g", 1.0, Anchor::end}, {"oz", 1.0, Anchor::end}}, rows);
    }
    rows.clear();
    for (const auto& [part, count] : pieces)
        rows.push_back({{std::get<0>(part), material_text(std::get<1>(part)), std::get<2>(part), std::to_string(count)}});
    if (!rows.empty()) {
        pages.heading("Parts, all lures together");
        pages.table({{"Part", 2.4}, {"Material", 1.6}, {"g each", 0.8, Anchor::end}, {"Pieces", 0.8, Anchor::end}}, rows);
    }
    rows.clear();
    for (const auto& [material, mass] : coats)
        rows.push_back({{material_text(material), g_text(mass, 1), g_text(mixes[material], 1)}});
    if (rows.empty()) return;
    pages.heading("Coats, all lures together");
    pages.caution("Never mix the whole at once: a full cup of epoxy heats by itself. One coat of a few lures at a time; the label decides.");
    pages.table({{"Material", 2.0}, {"g on the lures", 1.0, Anchor::end}, {"g to have", 1.0, Anchor::end}}, rows);
    double longest = 0.0;
    for (const Job& job : jobs) {
        double hours = 0.0;
        for (const double wait : job.coat_hours) hours += wait;
        longest = std::max(longest, hours);
    }
    pages.paragraph("To have: films with half as much again for cup and brush (common practice, no source). Recipes coated side by side wait " +
                    units::number_text(longest, units::Unit::one, 1) + " h in all, one after another of them as long as their waits together.", 2.8, soft_ink);
}

}  // namespace evenfall::sheet
