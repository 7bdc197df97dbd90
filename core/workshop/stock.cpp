#include "workshop/stock.hpp"

#include "base/limits.hpp"
#include "base/trade.hpp"
#include "materials/solids.hpp"

#include <cmath>
#include <limits>
#include <numbers>

namespace evenfall::stock {

double shot_m(double number) {
    if (!(number >= 1.0 && number <= 12.0)) return std::numeric_limits<double>::quiet_NaN();
    return units::m_from_inch((17.0 - number) / 100.0);
}

Outcome<StockList> list(const document::Document& document, const Evaluation& evaluation,
                        const Stock& stock) {
    Problems problems;
    units::check_limit({"/size_mm", "The stock's size", stock.size_m, 0.0001, 0.05, units::Unit::mm, 1},
                       problems);
    const auto ballast = [](const std::string& id) -> const materials::Solid* {
        const materials::Solid* solid = materials::find_solid(id);
        return solid != nullptr && solid->serves(materials::Use::ballast) ? solid : nullptr;
    };
    if (!stock.material.empty() && ballast(stock.material) == nullptr) {
        std::string sentence = "“";
        sentence += stock.material;
        sentence += "” is not in the table as ballast.";
        problems.push_back({ProblemCode::unknown_name, "/material", "", std::move(sentence)});
    }
    if (!problems.empty()) return problems;

    StockList out;
    const double d = stock.size_m;
    for (const ledger::Line& line : evaluation.ledger) {
        if (line.kind != ledger::Kind::fill || line.mass_kg <= 0.0) continue;
        const document::Hole& hole = document.holes[static_cast<std::size_t>(line.item)];
        const materials::Solid* solid = ballast(!stock.material.empty() ? stock.material
                                                : hole.fill             ? hole.fill->material
                                                                        : document::Fill{}.material);
        if (solid == nullptr) continue; // the ledger has no fill of an unknown material
        const double density = solid->density_kg_m3.value;
        HoleStock h;
        h.hole = line.item;
        h.fill_kg = line.mass_kg;
        if (stock.form == Form::sheet) {
            h.area_m2 = h.fill_kg / (density * d);
        } else {
            h.enters = d <= hole.diameter_m;
        }
        if (stock.form == Form::rod) h.length_m = h.fill_kg / (density * std::numbers::pi / 4.0 * d * d);
        if (stock.form == Form::shot) {
            const double one_kg = density * std::numbers::pi / 6.0 * d * d * d;
            h.count = static_cast<int>(std::lround(h.fill_kg / one_kg));
            h.over_kg = h.count * one_kg - h.fill_kg;
        }
        out.fill_kg += h.fill_kg;
        out.length_m += h.length_m;
        out.count += h.count;
        out.over_kg += h.over_kg;
        out.area_m2 += h.area_m2;
        out.holes.push_back(h);
    }
    return out;
}

} // namespace evenfall::stock
