#include "base/number_text.hpp"
#include "document/coat_traits.hpp"
#include "materials/cautions.hpp"
#include "materials/solids.hpp"
#include "output/sheet/parts.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace evenfall::sheet {

namespace {

std::string name_or_number(const std::string& name, std::size_t index) {
    return name.empty() ? std::to_string(index + 1) : name;
}

/// Pieces that are equal in the printed digits share one row.
void add_cuts(Composer& pages, const std::vector<SheetInput>& jobs) {
    // In the printed digits, so that they sort as numbers: hundredths of a millimetre across, tenths along →
    // number of pieces, total metres.
    std::map<std::tuple<std::string, long, long, long>, std::pair<int, double>> cuts;
    const auto in = [](double metres, double parts) { return std::lround(units::mm_from_m(metres) * parts); };
    for (const SheetInput& job : jobs) {
        for (const auto& list : {fill_pieces(job), hinge_pieces(job), hanger_pieces(job)}) {
            for (const CutPiece& piece : list) {
                auto& [count, metres] = cuts[{piece.what, in(piece.diameter_m, 100.0), in(piece.cut_m, 10.0),
                                              in(piece.finished_m, 10.0)}];
                count += piece.count * job.options.lures;
                metres += piece.cut_m * piece.count * job.options.lures;
            }
        }
    }
    if (cuts.empty()) return;
    const Numbers& print = pages.numbers();
    const std::string unit = print.length_symbol();
    std::vector<Composer::Row> rows;
    for (const auto& [piece, sum] : cuts) {
        const auto& [what, diameter, cut, finished] = piece;
        const auto out = [](long parts, double of) {
            return units::m_from_mm(static_cast<double>(parts) / of);
        };
        rows.push_back(
            {{what, print.thickness(out(diameter, 100.0)), print.length(out(cut, 10.0)),
              print.length(out(finished, 10.0)), std::to_string(sum.first), print.length(sum.second, 0)}});
    }
    pages.heading("Cut list, all lures together");
    pages.table({{"Piece", 2.2},
                 {"ø " + unit, 0.7, Anchor::end},
                 {"Cut " + unit, 0.8, Anchor::end},
                 {"Finished " + unit, 1.0, Anchor::end},
                 {"Pieces", 0.7, Anchor::end},
                 {unit + " together", 1.0, Anchor::end}},
                rows);
    pages.paragraph("Fills of lead, rod or shot as lengths of stock of that width; nothing is added for the "
                    "saw, for holding and for waste.",
                    2.8, soft_ink);
}

} // namespace

void add_batch(Composer& pages, const std::vector<SheetInput>& jobs) {
    const Numbers& print = pages.numbers();
    const std::string gram = print.mass_symbol();
    std::map<std::string, double> fills, coats, mixes;
    std::map<std::tuple<std::string, std::string, std::string>, int>
        pieces; // name, material, grams as printed → number
    std::vector<Composer::Row> recipes;
    int lures = 0;
    for (const SheetInput& job : jobs) {
        const document::Document& d = job.document;
        const int n = job.options.lures;
        lures += n;
        double hours = 0.0;
        for (const double wait : job.coat_hours)
            hours += wait;
        const Answers& a = job.evaluation.answers;
        recipes.push_back(
            {{d.name, std::to_string(n), print.mass(a.mass.kg), "",
              fall_text(a.fall, a.behaviour, print.units), units::number_text(hours, units::Unit::one, 1)}});
        for (std::size_t h = 0; h < d.holes.size(); ++h) {
            if (const double mass = ledger_kg(job, ledger::Kind::fill, h); mass > 0.0)
                fills[d.holes[h].fill->material] += n * mass;
        }
        for (std::size_t p = 0; p < d.parts.size(); ++p) {
            const document::Part& part = d.parts[p];
            pieces[{name_or_number(part.name, p), part.material,
                    print.mass(ledger_kg(job, ledger::Kind::part, p))}] += n;
        }
        if (d.tail) pieces[{"Soft tail, cast", d.tail->material, print.mass(tail_kg(job))}] += n;
        for (std::size_t c = 0; c < d.coats.size(); ++c) {
            const double mass = n * ledger_kg(job, ledger::Kind::coat, c);
            coats[d.coats[c].material] += mass;
            mixes[d.coats[c].material] += traits_of(d.coats[c].kind).is_mixed ? to_mix_kg(mass) : mass;
        }
    }
    pages.new_page("Batch of " + std::to_string(lures) + " lures");
    if (!jobs.front().lacking.empty()) pages.caution(jobs.front().lacking);
    pages.table({{"Recipe", 2.4},
                 {"Lures", 0.7, Anchor::end},
                 {"Finished " + gram, 1.0, Anchor::end},
                 {"", 0.2},
                 {"Fall", 1.6},
                 {"Waits h", 0.8, Anchor::end}},
                recipes);
    if (std::any_of(fills.begin(), fills.end(),
                    [](const auto& fill) { return cautions::is_lead(fill.first); })) {
        pages.caution(cautions::lead);
    }
    std::vector<Composer::Row> rows;
    for (const auto& [material, mass] : fills)
        rows.push_back({{materials::name_of(material), print.mass(mass, 1),
                         units::number_text(mass, units::Unit::ounce, 2)}});
    if (!rows.empty()) {
        pages.heading("Fills, all lures together");
        pages.table({{"Material", 2.0}, {gram, 1.0, Anchor::end}, {"oz", 1.0, Anchor::end}}, rows);
    }
    add_cuts(pages, jobs);
    rows.clear();
    for (const auto& [part, count] : pieces)
        rows.push_back({{std::get<0>(part), materials::name_of(std::get<1>(part)), std::get<2>(part),
                         std::to_string(count)}});
    if (!rows.empty()) {
        pages.heading("Parts, all lures together");
        pages.table({{"Part", 2.4},
                     {"Material", 1.6},
                     {gram + " each", 0.8, Anchor::end},
                     {"Pieces", 0.8, Anchor::end}},
                    rows);
    }
    rows.clear();
    for (const auto& [material, mass] : coats)
        rows.push_back({{materials::name_of(material), print.mass(mass, 1), print.mass(mixes[material], 1)}});
    if (rows.empty()) return;
    pages.heading("Coats, all lures together");
    pages.caution(cautions::epoxy);
    pages.table({{"Material", 2.0},
                 {gram + " on the lures", 1.0, Anchor::end},
                 {gram + " to have", 1.0, Anchor::end}},
                rows);
    double longest = 0.0;
    std::vector<Wait> waits;
    for (const SheetInput& job : jobs) {
        double hours = 0.0;
        for (std::size_t c = 0; c < job.coat_hours.size(); ++c) {
            waits.push_back({job.document.name + ": " + name_or_number(job.document.coats[c].name, c), hours,
                             job.coat_hours[c]});
            hours += job.coat_hours[c];
        }
        longest = std::max(longest, hours);
    }
    pages.paragraph("To have: films with what stays in cup and brush, " + percent(resin::usual_loss) +
                        " of the mix (common practice, no source). Recipes coated side by side wait " +
                        units::number_text(longest, units::Unit::one, 1) +
                        " h in all, one after another of them as long as their waits together.",
                    2.8, soft_ink);
    pages.heading("Time line, recipes coated side by side, waits only");
    add_time_line(pages, waits);
}

} // namespace evenfall::sheet
