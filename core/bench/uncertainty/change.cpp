#include "bench/uncertainty/change.hpp"

#include "bench/lead/box_qp.hpp"
#include "bench/lead/solve.hpp"
#include "body/bore.hpp"
#include "materials/solids.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <utility>

namespace evenfall::bench {

namespace {

ledger::Sum sum_of_hole(const ledger::LedgerInputs& w, std::size_t index, const document::Hole& hole) {
    ledger::Ledger lines;
    ledger::append_hole(w, index, hole, lines);
    ledger::Sum sum;
    for (const ledger::Line& line : lines)
        sum += line;
    return sum;
}

/// Index into the ranges, kg.
using Changes = std::vector<std::pair<std::size_t, double>>;

/// The finished lure with other fills.
class Changed {
public:
    Changed(const ledger::LedgerInputs& w, const std::vector<HoleRange>& ranges, const ledger::Sum& finished)
        : w_(w), ranges_(ranges), finished_(finished) {
        for (const HoleRange& l : ranges_)
            before_.push_back(sum_of_hole(w_, l.hole, w_.document->holes[l.hole]));
    }

    [[nodiscard]] ledger::Sum with(const Changes& by) const {
        ledger::Sum sum = finished_;
        for (const auto& [which, kg] : by) {
            sum += hole(which, kg);
            sum += less(before_[which]);
        }
        return sum;
    }

    /// Without any of the holes of the ranges: their wood as it grew.
    [[nodiscard]] ledger::Sum without_holes() const {
        ledger::Sum sum = finished_;
        for (const ledger::Sum& hole : before_)
            sum += less(hole);
        return sum;
    }

    /// The same of a sum that has them already, one fill changed by a little more.
    [[nodiscard]] ledger::Sum stepped(ledger::Sum sum, std::size_t which, double kg, double step) const {
        sum += hole(which, kg + step);
        sum += less(hole(which, kg));
        return sum;
    }

private:
    [[nodiscard]] ledger::Sum hole(std::size_t which, double kg) const {
        return sum_of_hole(w_, ranges_[which].hole, changed_hole(w_, ranges_[which], kg));
    }
    static ledger::Sum less(ledger::Sum sum) {
        sum.mass.kg = -sum.mass.kg;
        sum.displaced_m3 = -sum.displaced_m3;
        sum.mass_moment_kg_m *= -1.0;
        sum.displaced_moment_m4 *= -1.0;
        return sum;
    }

    const ledger::LedgerInputs& w_;
    const std::vector<HoleRange>& ranges_;
    ledger::Sum finished_;
    std::vector<ledger::Sum> before_;
};

bool within(const HoleRange& l, double kg) {
    return kg >= l.least_kg - 1e-9 && kg <= l.most_kg + 1e-9;
}

/// Off in weight and in moment about the asked pitch.
std::array<double, 2> off_of(const ledger::Sum& sum, const ChangeAim& aim) {
    return {sum.in_water(aim.water_kg_m3).kg - aim.in_water_kg,
            water::pitch_residual_kg_m(sum, aim.pitch_rad)};
}

double pitch_off(const ledger::Sum& sum, const ChangeAim& aim) {
    const water::Hang hang = water::hang(sum);
    return hang.pitch_rad ? std::abs(*hang.pitch_rad - aim.pitch_rad) : 10.0;
}

constexpr double met_kg = 2e-6;

constexpr double step_kg = 1e-6;
constexpr double settled_kg = 1e-9;

/// Newton's method in the last fill of `by`: the weight is straight but for a fresh hole's cap. Not held to
/// its bounds; beyond an empty hole the weight stands still, and so does the search.
std::optional<double> last_for_weight(const Changed& changed, Changes by, const ChangeAim& aim) {
    auto& [which, kg] = by.back();
    for (int i = 0; i < 6; ++i) {
        const ledger::Sum sum = changed.with(by);
        const double off = off_of(sum, aim)[0];
        const double slope = (off_of(changed.stepped(sum, which, kg, step_kg), aim)[0] - off) / step_kg;
        if (!(std::abs(slope) > 1e-3)) return i > 0 ? std::optional(kg) : std::nullopt;
        kg -= off / slope;
        if (std::abs(off) < 1e-9) break;
    }
    return kg;
}

std::optional<double> single(const Changed& changed, const HoleRange& l, std::size_t which,
                             const ChangeAim& aim) {
    const auto kg = last_for_weight(changed, {{which, l.fresh ? 0.5 * l.most_kg : 0.0}}, aim);
    return kg && within(l, *kg) ? kg : std::nullopt;
}

/// These holes together: of all changes within their bounds that meet weight and pitch, that with the least
/// sum of squares, by the plan's solver, and again with the slopes there. A fresh hole among them is drilled
/// and takes at least so much.
std::optional<Changes> together(const Changed& changed, const std::vector<HoleRange>& ranges,
                                const std::vector<std::size_t>& holes, double least_fresh_kg,
                                const ChangeAim& aim) {
    constexpr double arm_m = 0.05; // over which a moment counts as a weight
    const auto off = [&](const ledger::Sum& sum) {
        std::array<double, 2> two = off_of(sum, aim);
        two[1] /= arm_m;
        return two;
    };
    Changes by;
    for (const std::size_t i : holes)
        by.push_back({i, ranges[i].fresh ? 0.5 * ranges[i].most_kg : 0.0});
    for (int round = 0; round < 25; ++round) {
        const ledger::Sum sum = changed.with(by);
        const std::array<double, 2> now = off(sum);
        if (round > 0 && std::hypot(now[0], now[1]) < 1e-3 * settled_kg) return by;
        std::vector<lead::LeadVariable> columns;
        std::array<double, 2> target{-now[0], -now[1]};
        for (const auto& [which, kg] : by) {
            const HoleRange& l = ranges[which];
            const std::array<double, 2> there = off(changed.stepped(sum, which, kg, step_kg));
            lead::LeadVariable column;
            column.lower = l.fresh ? std::min(least_fresh_kg, l.most_kg) : l.least_kg;
            column.upper = l.most_kg;
            for (std::size_t row = 0; row < 2; ++row) {
                column.row[row] = (there[row] - now[row]) / step_kg;
                target[row] += column.row[row] * kg;
            }
            columns.push_back(column);
        }
        const std::vector<double> kg = lead::nearest(columns, target);
        double moved = 0.0;
        for (std::size_t k = 0; k < by.size(); ++k) {
            moved = std::max(moved, std::abs(kg[k] - by[k].second));
            by[k].second = kg[k];
        }
        if (moved < 1e-3 * settled_kg) break;
    }
    const std::array<double, 2> left = off(changed.with(by));
    return std::hypot(left[0], left[1]) < settled_kg ? std::optional(by) : std::nullopt;
}

/// Three holes or more: as few of those that move most where all move as will do, new ones last; and then
/// without one after the other that the rest can do without.
std::optional<Changes> three_or_more(const Changed& changed, const std::vector<HoleRange>& ranges,
                                     const ChangeAim& aim) {
    constexpr double least_fresh_kg = 5e-5;
    for (const bool fresh : {false, true}) {
        std::vector<std::size_t> holes;
        for (std::size_t i = 0; i < ranges.size(); ++i) {
            if (fresh || !ranges[i].fresh) holes.push_back(i);
        }
        if (holes.size() < 3) continue;
        auto found = together(changed, ranges, holes, least_fresh_kg, aim);
        if (!found) continue;
        Changes order = *found;
        std::sort(order.begin(), order.end(), [&](const auto& a, const auto& b) {
            const bool last = ranges[b.first].fresh;
            return last != ranges[a.first].fresh ? last : std::abs(a.second) > std::abs(b.second);
        });
        for (std::size_t few = 3, enough = order.size(); few < enough;) {
            const std::size_t some = (few + enough) / 2;
            holes.clear();
            for (std::size_t k = 0; k < some; ++k)
                holes.push_back(order[k].first);
            std::sort(holes.begin(), holes.end());
            if (auto fewer = together(changed, ranges, holes, least_fresh_kg, aim)) {
                found = std::move(fewer);
                enough = some;
            } else {
                few = some + 1;
            }
        }
        order.resize(found->size());
        constexpr int tries = 8;
        for (int i = 0; i < tries && found->size() > 3 && !order.empty(); ++i) {
            holes.clear();
            for (const auto& [which, kg] : *found) {
                if (which != order.back().first) holes.push_back(which);
            }
            order.pop_back();
            if (auto fewer = together(changed, ranges, holes, least_fresh_kg, aim)) found = std::move(fewer);
        }
        return found;
    }
    return std::nullopt;
}

/// As near by the bands as all the holes together come: what the lead plan does for holes of that depth.
Changes nearest_change(const ledger::LedgerInputs& w, const Changed& changed,
                       const std::vector<HoleRange>& ranges, const ChangeAim& aim) {
    lead::LeadProblem task;
    task.inputs = &w;
    task.misses = aim.misses;
    task.first = aim.first;
    task.base = changed.without_holes();
    for (const HoleRange& l : ranges) {
        const document::Hole& hole = w.document->holes[l.hole];
        lead::Candidate c = l.candidate;
        if (!l.fresh) {
            c.depth_is_fixed = true;
            c.upper_m = holes::contents(hole, w.bores[l.hole]).room_m;
        }
        task.add(std::move(c));
    }
    const lead::Filling filling = lead::nearest_filling(task);
    Changes by;
    for (std::size_t i = 0; i < ranges.size(); ++i) {
        const lead::Candidate& c = task.candidates[i];
        const document::Hole hole = lead::with_fill(w, c, filling.column_m[i], filling.used[i]);
        const double kg = *hole.fill->mass_kg + ranges[i].least_kg;
        if (std::abs(kg) > 1e-7) by.push_back({i, kg});
    }
    return by;
}

} // namespace

std::vector<HoleRange> hole_ranges(const ledger::LedgerInputs& w) {
    std::vector<HoleRange> out;
    for (const lead::Candidate& c : lead::candidates(w, lead::Which::leaded_too)) {
        const document::Hole& hole = w.document->holes[c.hole];
        HoleRange l;
        l.hole = c.hole;
        l.candidate = c;
        if (hole.depth_m <= 0.0) {
            if (c.depth_is_fixed || c.upper_m < 0.001) continue;
            l.fresh = true;
            l.most_kg = (c.fill_area_m2 * c.upper_m + c.cone_m3) * c.density_kg_m3;
            out.push_back(l);
            continue;
        }
        const holes::HoleContents contents = holes::contents(hole, w.bores[c.hole]);
        l.least_kg = -contents.fill_kg;
        l.most_kg =
            std::max(contents.room_m - contents.fill_column_m, 0.0) * c.fill_area_m2 * c.density_kg_m3;
        if (l.most_kg - l.least_kg > 1e-6) out.push_back(l);
    }
    return out;
}

document::Hole changed_hole(const ledger::LedgerInputs& w, const HoleRange& l, double change_kg) {
    document::Hole hole = w.document->holes[l.hole];
    document::Fill fill = hole.fill.value_or(document::Fill{});
    const holes::HoleContents contents = holes::contents(hole, w.bores[l.hole]);
    fill.length_m.reset();
    fill.mass_kg = std::max((l.fresh ? 0.0 : contents.fill_kg) + change_kg, 0.0);
    hole.fill = fill;
    if (l.fresh) {
        const materials::Solid* solid = materials::find_solid(fill.material);
        const double d = fill.stock_diameter_m.value_or(hole.diameter_m);
        const double cone = fill.stock_diameter_m ? 0.0 : w.bores[l.hole].cone_m3;
        const double volume = solid != nullptr ? *fill.mass_kg / solid->density_kg_m3.value : 0.0;
        const double column = std::max(volume - cone, 0.0) / (0.25 * std::numbers::pi * d * d);
        hole.depth_m = column + holes::fill_free_m(hole, w.bores[l.hole]);
    }
    return hole;
}

Change solve_change(const ledger::LedgerInputs& w, const std::vector<HoleRange>& ranges,
                    const ledger::Sum& finished, const ChangeAim& aim) {
    const Changed changed(w, ranges, finished);
    Change best;
    best.sum = finished;
    const auto take = [&](Changes by) {
        best.by = std::move(by);
        best.sum = changed.with(best.by);
        best.weight_met = std::abs(off_of(best.sum, aim)[0]) < met_kg;
        best.pitch_met = pitch_off(best.sum, aim) <= aim.pitch_slack_rad;
    };

    double nearest = 1e9;
    std::optional<std::pair<std::size_t, double>> one;
    for (std::size_t i = 0; i < ranges.size(); ++i) {
        const auto kg = single(changed, ranges[i], i, aim);
        if (!kg) continue;
        const double off = pitch_off(changed.with({{i, *kg}}), aim);
        if (off < nearest) {
            nearest = off;
            one = {i, *kg};
        }
    }
    if (one && nearest <= aim.pitch_slack_rad) {
        take({*one});
        return best;
    }
    double least = 1e9;
    std::optional<Changes> two;
    for (std::size_t a = 0; a < ranges.size(); ++a) {
        for (std::size_t b = a + 1; b < ranges.size(); ++b) {
            auto both = together(changed, ranges, {a, b}, 0.0, aim);
            if (!both) continue;
            const double moved = std::abs((*both)[0].second) + std::abs((*both)[1].second);
            if (moved >= least - 0.1 * settled_kg) continue; // of equals the first, whatever rounding says
            least = moved;
            two = std::move(both);
        }
    }
    if (two) {
        take(*two);
        return best;
    }
    if (auto more = three_or_more(changed, ranges, aim)) {
        take(std::move(*more));
        return best;
    }
    // The search begins with other fills than lie there, and may end where it is farther off.
    const auto misses = [&](const ledger::Sum& sum) {
        return lead::squares_of(aim.misses.at(sum), aim.first);
    };
    Changes all = nearest_change(w, changed, ranges, aim);
    const bool nearer = misses(changed.with(all)) < misses(finished);
    take(nearer ? std::move(all) : Changes{});
    return best;
}

} // namespace evenfall::bench
