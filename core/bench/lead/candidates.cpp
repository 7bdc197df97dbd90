#include "bench/lead/candidates.hpp"

#include "materials/solids.hpp"

#include <algorithm>
#include <numbers>
#include <utility>

namespace evenfall::lead {

std::vector<Candidate> candidates(const ledger::LedgerInputs& w, Which which) {
    std::vector<Candidate> out;
    std::vector<std::pair<std::size_t, double>> planned;
    for (std::size_t i = 0; i < w.document->holes.size(); ++i) {
        const document::Hole& hole = w.document->holes[i];
        const bool leaded = hole.use == document::HoleUse::leaded;
        if (hole.use == document::HoleUse::fixed || w.bores[i].segment < 0) continue;
        if (leaded && which != Which::leaded_too) continue;
        Candidate c;
        c.hole = i;
        c.material = hole.fill ? hole.fill->material : document::Fill{}.material;
        const materials::Solid* solid = materials::find_solid(c.material);
        if (solid == nullptr) continue; // the ledger refuses such a document before a plan is made
        c.density_kg_m3 = solid->density_kg_m3.value;
        const bool rod = hole.fill && hole.fill->stock_diameter_m;
        const double d = rod ? *hole.fill->stock_diameter_m : hole.diameter_m;
        c.fill_area_m2 = 0.25 * std::numbers::pi * d * d;
        c.cone_m3 = rod ? 0.0 : w.bores[i].cone_m3;
        c.fill_free_m = holes::fill_free_m(hole, w.bores[i]);
        c.depth_is_fixed = leaded || hole.use == document::HoleUse::drilled;
        c.limit = holes::free_depth(*w.document, i, *w.body, w.bores, planned);
        const double depth = c.depth_is_fixed ? hole.depth_m : c.limit.depth_m;
        c.upper_m = std::max(depth - c.fill_free_m, 0.0);
        if (!c.depth_is_fixed && c.upper_m > 0.0) planned.emplace_back(i, depth);
        out.push_back(std::move(c));
    }
    return out;
}

document::Hole with_fill(const ledger::LedgerInputs& w, const Candidate& c, double column_m, bool used) {
    document::Hole hole = w.document->holes[c.hole];
    document::Fill fill = hole.fill.value_or(document::Fill{});
    fill.length_m.reset();
    fill.mass_kg = used ? (c.fill_area_m2 * column_m + c.cone_m3) * c.density_kg_m3 : 0.0;
    hole.fill = std::move(fill);
    if (!c.depth_is_fixed) hole.depth_m = used ? column_m + c.fill_free_m : 0.0;
    return hole;
}

ledger::Sum contribution(const ledger::LedgerInputs& w, const Candidate& c, double column_m, bool used) {
    ledger::Ledger lines;
    ledger::append_hole(w, c.hole, with_fill(w, c, column_m, used), lines);
    ledger::Sum sum;
    for (const ledger::Line& line : lines)
        sum += line;
    return sum;
}

namespace {

ledger::Sum times(double factor, const ledger::Sum& sum) {
    return sum.scaled(factor, factor);
}

ledger::Sum plus(ledger::Sum sum, const ledger::Sum& more) {
    return sum += more;
}

} // namespace

HoleSums HoleSums::of(const ledger::LedgerInputs& w, const Candidate& c) {
    HoleSums sums;
    sums.unused = contribution(w, c, 0.0, false);
    sums.empty = contribution(w, c, 0.0, true);
    if (!(c.upper_m > 0.0)) return sums;
    // Three lengths make the parabola. A hole of no depth has no lines, not even its drill point: then none
    // of them is nothing.
    const double from = with_fill(w, c, 0.0, true).depth_m > 0.0 ? 0.0 : 0.25 * c.upper_m;
    const double half = 0.5 * (c.upper_m - from);
    const ledger::Sum low = contribution(w, c, from, true);
    const ledger::Sum middle = contribution(w, c, from + half, true);
    const ledger::Sum high = contribution(w, c, c.upper_m, true);
    sums.square = times(0.5 / (half * half), plus(plus(low, high), times(-2.0, middle)));
    sums.linear =
        plus(times(0.5 / half, plus(high, times(-1.0, low))), times(-(from + c.upper_m), sums.square));
    sums.empty = plus(low, plus(times(-from, sums.linear), times(-from * from, sums.square)));
    return sums;
}

ledger::Sum HoleSums::fill(double column_m) const {
    return plus(times(column_m, linear), times(column_m * column_m, square));
}

ledger::Sum HoleSums::at(double column_m, bool used) const {
    return used ? plus(empty, fill(column_m)) : unused;
}

ledger::Sum HoleSums::slope_at(double column_m) const {
    return plus(linear, times(2.0 * column_m, square));
}

} // namespace evenfall::lead
