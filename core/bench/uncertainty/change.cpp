#include "bench/uncertainty/change.hpp"

#include "bench/lead/candidates.hpp"
#include "body/bore.hpp"
#include "materials/solids.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <array>
#include <cmath>
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

std::optional<std::array<double, 2>> pair(const Changed& changed, const HoleRange& a, std::size_t at_a,
                                          const HoleRange& b, std::size_t at_b, const ChangeAim& aim) {
    std::array<double, 2> kg{a.fresh ? 0.5 * a.most_kg : 0.0, b.fresh ? 0.5 * b.most_kg : 0.0};
    const auto off = [&](double first, double second) {
        return off_of(changed.with({{at_a, first}, {at_b, second}}), aim);
    };
    for (int i = 0; i < 8; ++i) {
        constexpr double step = step_kg;
        const auto now = off(kg[0], kg[1]);
        const auto first = off(kg[0] + step, kg[1]);
        const auto second = off(kg[0], kg[1] + step);
        const double j00 = (first[0] - now[0]) / step, j01 = (second[0] - now[0]) / step;
        const double j10 = (first[1] - now[1]) / step, j11 = (second[1] - now[1]) / step;
        const double det = j00 * j11 - j01 * j10;
        if (!(std::abs(det) > 1e-5)) return std::nullopt; // the two holes stand at one place
        const double by0 = -(now[0] * j11 - now[1] * j01) / det;
        const double by1 = -(now[1] * j00 - now[0] * j10) / det;
        kg[0] += by0;
        kg[1] += by1;
        if (!(std::abs(kg[0]) < 1.0 && std::abs(kg[1]) < 1.0)) return std::nullopt;
        if (std::abs(by0) < 1e-9 && std::abs(by1) < 1e-9) break;
    }
    if (!within(a, kg[0]) || !within(b, kg[1])) return std::nullopt;
    return kg;
}

/// These holes together: of all changes within their bounds that meet weight and pitch, that with the least
/// sum of squares. Its fills change by two multipliers over their slopes, cut at their bounds (Lagrange; Kuhn
/// and Tucker), and the multipliers are found by Newton's method, each step halved until it gains. A fresh
/// hole among them is drilled.
std::optional<Changes> together(const Changed& changed, const std::vector<HoleRange>& ranges,
                                const std::vector<std::size_t>& holes, const ChangeAim& aim) {
    using Two = std::array<double, 2>;
    constexpr double arm_m = 0.05; // over which a moment counts as a weight
    constexpr double least_fresh_kg = 5e-5;
    constexpr double at_bound =
        1e-3; // what a hole at its bound still counts for: so the multipliers find back from there
    constexpr double settled_kg = 1e-8;
    const auto off = [&](const ledger::Sum& sum) {
        Two two = off_of(sum, aim);
        two[1] /= arm_m;
        return two;
    };
    Changes by;
    for (const std::size_t i : holes)
        by.push_back({i, ranges[i].fresh ? 0.5 * ranges[i].most_kg : 0.0});
    std::vector<Two> slopes(holes.size());
    const auto wanted = [&](const Two& multiplier, std::size_t k) {
        return multiplier[0] * slopes[k][0] + multiplier[1] * slopes[k][1];
    };
    const auto least = [&](const HoleRange& l) {
        return l.fresh ? std::min(least_fresh_kg, l.most_kg) : l.least_kg;
    };
    const auto set = [&](const Two& multiplier) {
        for (std::size_t k = 0; k < by.size(); ++k) {
            const HoleRange& l = ranges[by[k].first];
            by[k].second = std::clamp(wanted(multiplier, k), least(l), l.most_kg);
        }
        return off(changed.with(by));
    };
    Two at{};
    for (int round = 0; round < 25; ++round) {
        const ledger::Sum sum = changed.with(by);
        const Two before = off(sum);
        for (std::size_t k = 0; k < by.size(); ++k) {
            const Two there = off(changed.stepped(sum, by[k].first, by[k].second, step_kg));
            slopes[k] = {(there[0] - before[0]) / step_kg, (there[1] - before[1]) / step_kg};
        }
        const Two now = set(at);
        const double far = std::hypot(now[0], now[1]);
        if (far < settled_kg) return by;
        double a00 = 0.0, a01 = 0.0, a11 = 0.0;
        for (std::size_t k = 0; k < by.size(); ++k) {
            const HoleRange& l = ranges[by[k].first];
            const double kg = wanted(at, k);
            const double counts = kg >= least(l) && kg <= l.most_kg ? 1.0 : at_bound;
            a00 += counts * slopes[k][0] * slopes[k][0];
            a01 += counts * slopes[k][0] * slopes[k][1];
            a11 += counts * slopes[k][1] * slopes[k][1];
        }
        const double det = a00 * a11 - a01 * a01;
        if (!(det > 0.0)) return std::nullopt; // all stand at one place
        const Two by_much{-(now[0] * a11 - now[1] * a01) / det, -(now[1] * a00 - now[0] * a01) / det};
        for (double part = 1.0; part > 0.01; part *= 0.5) {
            const Two there{at[0] + part * by_much[0], at[1] + part * by_much[1]};
            const Two then = set(there);
            const bool gains = std::hypot(then[0], then[1]) < far;
            if (!gains && part > 0.02) continue;
            at = there;
            break;
        }
    }
    return std::nullopt;
}

/// Three holes or more: as few of those that move most where all move as will do, new ones last; and then
/// without one after the other that the rest can do without.
std::optional<Changes> three_or_more(const Changed& changed, const std::vector<HoleRange>& ranges,
                                     const ChangeAim& aim) {
    for (const bool fresh : {false, true}) {
        std::vector<std::size_t> holes;
        for (std::size_t i = 0; i < ranges.size(); ++i) {
            if (fresh || !ranges[i].fresh) holes.push_back(i);
        }
        if (holes.size() < 3) continue;
        auto found = together(changed, ranges, holes, aim);
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
            if (auto fewer = together(changed, ranges, holes, aim)) {
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
            if (auto fewer = together(changed, ranges, holes, aim)) found = std::move(fewer);
        }
        return found;
    }
    return std::nullopt;
}

/// As near to the weight as all holes in turn come, those that harm the pitch least first.
Changes in_turn(const ledger::LedgerInputs& w, const Changed& changed, const std::vector<HoleRange>& ranges,
                double b_x_m, const ChangeAim& aim) {
    std::vector<std::size_t> order(ranges.size());
    for (std::size_t i = 0; i < order.size(); ++i)
        order[i] = i;
    std::sort(order.begin(), order.end(), [&](std::size_t i, std::size_t k) {
        return std::abs(w.bores[ranges[i].hole].x_m - b_x_m) <
               std::abs(w.bores[ranges[k].hole].x_m - b_x_m);
    });
    Changes by;
    for (const std::size_t i : order) {
        const HoleRange& l = ranges[i];
        if (std::abs(off_of(changed.with(by), aim)[0]) < met_kg) break;
        by.push_back({i, l.fresh ? 0.5 * l.most_kg : 0.0});
        const double kg = std::clamp(last_for_weight(changed, by, aim).value_or(0.0), l.least_kg, l.most_kg);
        if (std::abs(kg) < 1e-7)
            by.pop_back();
        else
            by.back().second = kg;
    }
    return by;
}

} // namespace

std::vector<HoleRange> hole_ranges(const ledger::LedgerInputs& w) {
    std::vector<HoleRange> out;
    for (const lead::Candidate& c : lead::candidates(w)) {
        const document::Hole& hole = w.document->holes[c.hole];
        HoleRange l;
        l.hole = c.hole;
        if (hole.depth_m <= 0.0) {
            if (c.depth_is_cut || c.upper_m < 0.001) continue;
            l.fresh = true;
            l.most_kg = (c.fill_area_m2 * c.upper_m + c.cone_m3) * c.density_kg_m3;
            out.push_back(l);
            continue;
        }
        const holes::Contents contents = holes::contents(hole, w.bores[c.hole]);
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
    const holes::Contents contents = holes::contents(hole, w.bores[l.hole]);
    fill.length_m.reset();
    fill.mass_kg = std::max((l.fresh ? 0.0 : contents.fill_kg) + change_kg, 0.0);
    hole.fill = fill;
    if (l.fresh) {
        const materials::Solid* solid = materials::find_solid(fill.material);
        const double d = fill.stock_diameter_m.value_or(hole.diameter_m);
        const double cone = fill.stock_diameter_m ? 0.0 : w.bores[l.hole].cone_m3;
        const double volume = solid != nullptr ? *fill.mass_kg / solid->density_kg_m3.value : 0.0;
        const double column = std::max(volume - cone, 0.0) / (0.25 * 3.14159265358979323846 * d * d);
        hole.depth_m = column + holes::covered_m(hole, w.bores[l.hole]);
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
            const auto kg = pair(changed, ranges[a], a, ranges[b], b, aim);
            if (!kg) continue;
            const double moved = std::abs((*kg)[0]) + std::abs((*kg)[1]);
            if (moved >= least) continue;
            least = moved;
            two = {{a, (*kg)[0]}, {b, (*kg)[1]}};
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
    if (one) {
        take({*one});
        return best;
    }
    Changes all = in_turn(w, changed, ranges, finished.b_m().x, aim);
    if (!all.empty()) take(std::move(all));
    return best;
}

} // namespace evenfall::bench
