#include "bench/lead/solve.hpp"

#include "bench/lead/box_qp.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>
#include <utility>

namespace evenfall::lead {

namespace {

constexpr double step_m = 1e-6;     // for slopes
constexpr double settled_m = 1e-11; // lengths that no longer change
constexpr double enough_kg = 1e-8;  // a hundredth of a milligram
constexpr double aft_weight = 2.0;  // cost of a gram at the tail, relative to one at the nose
constexpr double first_counts = 1000.0;

using Pair = std::array<double, 2>;

double size(const Pair& r) {
    return std::max(std::fabs(r[0]), std::fabs(r[1]));
}

/// Cost and limits of each used candidate's fill, and what it adds per metre, at the present filling, to the
/// two figures that `figures` makes of a sum.
template <class Figures>
std::vector<LeadVariable> columns_at(const LeadProblem& task, const Filling& filling, const ledger::Sum& sum,
                                     const Figures& figures) {
    const Pair here = figures(sum);
    double lowest = std::numeric_limits<double>::infinity();
    for (const Candidate& c : task.candidates)
        lowest = std::min(lowest, task.inputs->bores[c.hole].mouth_z_m);
    const double length = task.inputs->body->lines->length_m();

    std::vector<LeadVariable> out;
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        if (!filling.used[i]) continue;
        const Candidate& c = task.candidates[i];
        const holes::Bore& bore = task.inputs->bores[c.hole];
        ledger::Sum moved = sum;
        moved += task.sums[i].slope_at(filling.column_m[i]).scaled(step_m, step_m);
        const Pair there = figures(moved);

        const double per_m = c.fill_area_m2 * c.density_kg_m3;
        const double dear = per_m * (1.0 + aft_weight * bore.x_m / length);
        LeadVariable column;
        column.upper = c.upper_m;
        column.row = {(there[0] - here[0]) / step_m, (there[1] - here[1]) / step_m};
        // Drilled from the belly, the fill's centroid rises with its length; from the back it falls, and the
        // cost would not be convex: there the height of a half-full hole is used throughout.
        const double mouth = bore.mouth_z_m - lowest;
        column.bend = dear;
        column.slope = bore.inward > 0.0 ? dear * (mouth + c.fill_free_m)
                                         : dear * std::max(mouth - c.fill_free_m - 0.5 * c.upper_m, 0.0);
        out.push_back(column);
    }
    return out;
}

void put(Filling& filling, const std::vector<double>& used_columns) {
    std::size_t k = 0;
    for (std::size_t i = 0; i < filling.used.size(); ++i)
        filling.column_m[i] = filling.used[i] ? used_columns[k++] : 0.0;
}

double furthest_moved(const Filling& from, const Filling& to) {
    double moved_m = 0.0;
    for (std::size_t i = 0; i < to.column_m.size(); ++i)
        moved_m = std::max(moved_m, std::abs(to.column_m[i] - from.column_m[i]));
    return moved_m;
}

Pair target_of(const std::vector<LeadVariable>& columns, const Filling& filling, const Pair& off) {
    Pair target{-off[0], -off[1]};
    std::size_t k = 0;
    for (std::size_t i = 0; i < filling.used.size(); ++i) {
        if (!filling.used[i]) continue;
        target[0] += columns[k].row[0] * filling.column_m[i];
        target[1] += columns[k].row[1] * filling.column_m[i];
        ++k;
    }
    return target;
}

/// Newton steps towards both targets with the holes in use; where a step cannot reach both, it goes as near
/// as it can and tries again from there. True where both are met.
bool approach(const LeadProblem& task, Filling& filling) {
    const auto figures = [&](const ledger::Sum& sum) { return residual(task.aim, sum); };
    for (int pass = 0; pass < 40; ++pass) {
        const ledger::Sum sum = total(task, filling);
        const std::vector<LeadVariable> columns = columns_at(task, filling, sum, figures);
        const Pair target = target_of(columns, filling, figures(sum));
        Filling next = filling;
        put(next, nearest(columns, target));
        const double moved_m = furthest_moved(filling, next);
        filling = std::move(next);
        if (moved_m < settled_m) break;
    }
    return size(figures(total(task, filling))) < enough_kg;
}

void leave(Filling& filling, std::size_t i) {
    filling.used[i] = false;
    filling.column_m[i] = 0.0;
}

/// Removes, one at a time, the shortest fill below the worthwhile length, as long as the targets stay met.
void drop_short_fills(const LeadProblem& task, Filling& filling) {
    std::vector<bool> keep(filling.used.size(), false);
    for (;;) {
        std::size_t least = filling.used.size();
        for (std::size_t i = 0; i < filling.used.size(); ++i) {
            const bool scrap = filling.used[i] && filling.column_m[i] < least_fill_length_m && !keep[i];
            if (scrap && (least == filling.used.size() || filling.column_m[i] < filling.column_m[least]))
                least = i;
        }
        if (least == filling.used.size()) return;
        Filling trial = filling;
        leave(trial, least);
        if (approach(task, trial))
            filling = std::move(trial);
        else
            keep[least] = true;
    }
}

/// A filling with the sum of squares of its misses.
struct Near {
    Filling filling;
    double squares = 0.0;
};

/// Misses of a sum in bands, times how much each counts.
struct Weighed {
    const LeadProblem& task;
    BandMisses counts{1.0, 1.0};

    [[nodiscard]] BandMisses operator()(const ledger::Sum& sum) const { return counted(task.misses.at(sum)); }
    /// The same close to a sum, for slopes.
    [[nodiscard]] auto near(const ledger::Sum& sum) const {
        return [this, law = task.misses.near(sum)](const ledger::Sum& moved) { return counted(law(moved)); };
    }
    [[nodiscard]] BandMisses counted(const BandMisses& off) const {
        return {counts[0] * off[0], counts[1] * off[1]};
    }
    [[nodiscard]] double squares(const Filling& filling) const {
        const BandMisses off = (*this)(total(task, filling));
        return off[0] * off[0] + off[1] * off[1];
    }
};

/// The nearest with the holes in use, from a filling of them: Gauss-Newton steps, each shortened until it
/// comes nearer.
Near nearer_from(const Weighed& misses, Filling filling) {
    Near best{std::move(filling), 0.0};
    best.squares = misses.squares(best.filling);
    for (int pass = 0; pass < 100; ++pass) {
        const Near from = best;
        const ledger::Sum sum = total(misses.task, from.filling);
        const auto near = misses.near(sum);
        std::vector<LeadVariable> columns = columns_at(misses.task, from.filling, sum, near);
        for (LeadVariable& c : columns)
            c.lower = least_fill_length_m;
        Filling there = from.filling;
        put(there, nearest(columns, target_of(columns, from.filling, near(sum))));
        if (furthest_moved(from.filling, there) < settled_m) break;
        for (double share = 1.0; share > 1e-4 && !(best.squares < from.squares); share *= 0.5) {
            Filling trial = from.filling;
            for (std::size_t i = 0; i < trial.column_m.size(); ++i)
                trial.column_m[i] += share * (there.column_m[i] - trial.column_m[i]);
            const double squares = misses.squares(trial);
            if (squares < from.squares) best = {std::move(trial), squares};
        }
        if (!(best.squares < from.squares * (1.0 - 1e-9))) break;
    }
    return best;
}

/// The same with what comes first counted ever more: from where both count alike, step by step, so that no
/// step has a narrow valley to follow.
Near nearest_with(const LeadProblem& task, Filling filling) {
    Near best = nearer_from({task}, std::move(filling));
    if (!task.first) return best;
    for (const double times : {30.0, first_counts}) {
        Weighed misses{task};
        misses.counts[*task.first] = times;
        best = nearer_from(misses, std::move(best.filling));
    }
    return best;
}

/// Holes with room for a fill of this length, foremost first.
std::vector<std::size_t> holes_with_room(const LeadProblem& task, double length_m) {
    std::vector<std::size_t> out;
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        if (task.candidates[i].upper_m > length_m) out.push_back(i);
    }
    const auto x_of = [&](std::size_t i) { return task.inputs->bores[task.candidates[i].hole].x_m; };
    std::stable_sort(out.begin(), out.end(), [&](std::size_t a, std::size_t b) { return x_of(a) < x_of(b); });
    return out;
}

/// These holes in use, each with a fill of this length.
Filling in_use(const LeadProblem& task, const std::vector<std::size_t>& set, double column_m) {
    Filling filling{std::vector<double>(task.candidates.size(), 0.0),
                    std::vector<bool>(task.candidates.size(), false)};
    for (const std::size_t i : set) {
        filling.used[i] = true;
        filling.column_m[i] = column_m;
    }
    return filling;
}

/// True where this set can reach the weight at all. The weight in water is linear in the length of a fill.
bool may_weigh(const LeadProblem& task, const std::vector<std::size_t>& set) {
    double least = task.base.in_water(task.aim.water_kg_m3).kg;
    double most = least;
    for (const std::size_t i : set) {
        const auto at = [&](double column_m) {
            return task.sums[i].at(column_m, true).in_water(task.aim.water_kg_m3).kg;
        };
        const double empty = at(0.0);
        const double full = at(task.candidates[i].upper_m);
        least += std::min(empty, full);
        most += std::max(empty, full);
    }
    return least - enough_kg <= task.aim.in_water_kg && task.aim.in_water_kg <= most + enough_kg;
}

} // namespace

void LeadProblem::add(Candidate candidate) {
    sums.push_back(HoleSums::of(*inputs, candidate));
    candidates.push_back(std::move(candidate));
}

std::array<double, 2> residual(const LeadTarget& aim, const ledger::Sum& sum) {
    return {sum.in_water(aim.water_kg_m3).kg - aim.in_water_kg,
            water::pitch_residual_kg_m(sum, aim.pitch_rad) / moment_scale_m};
}

ledger::Sum total(const LeadProblem& task, const Filling& filling) {
    ledger::Sum sum = task.base;
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        sum += task.sums[i].at(filling.column_m[i], filling.used[i]);
    }
    return sum;
}

std::vector<std::vector<std::size_t>> hole_sets(const LeadProblem& task) {
    const std::vector<std::size_t> holes = holes_with_room(task, 0.0);
    std::vector<std::vector<std::size_t>> out;
    for (std::vector<std::size_t> set = holes; !set.empty(); set.pop_back())
        out.push_back(set);
    for (const std::size_t a : holes)
        out.push_back({a});
    for (std::size_t a = 0; a < holes.size(); ++a) {
        for (std::size_t b = a + 1; b < holes.size(); ++b)
            out.push_back({holes[a], holes[b]});
    }
    return out;
}

std::optional<Filling> solve(const LeadProblem& task) {
    const auto with = [&](const std::vector<std::size_t>& set) -> std::optional<Filling> {
        Filling trial = in_use(task, set, 0.0);
        if (!approach(task, trial)) return std::nullopt;
        drop_short_fills(task, trial);
        return trial;
    };
    for (const std::vector<std::size_t>& set : hole_sets(task)) {
        if (!may_weigh(task, set)) continue;
        if (auto found = with(set)) return found;
    }
    return std::nullopt;
}

double squares_of(BandMisses off, std::optional<std::size_t> first) {
    if (first) off[*first] *= first_counts;
    return off[0] * off[0] + off[1] * off[1];
}

Filling nearest_filling(const LeadProblem& task) {
    const std::vector<std::size_t> holes = holes_with_room(task, least_fill_length_m);
    Near best = nearest_with(task, in_use(task, holes, least_fill_length_m));
    // A hole costs its cap and its wood even where it takes next to no lead: without one after the other.
    for (bool nearer = true; nearer;) {
        nearer = false;
        const Filling from = best.filling;
        for (const std::size_t i : holes) {
            if (!from.used[i] || from.column_m[i] > 1.001 * least_fill_length_m) continue;
            Filling trial = from;
            leave(trial, i);
            Near without = nearest_with(task, std::move(trial));
            if (!(without.squares < best.squares)) continue;
            best = std::move(without);
            nearer = true;
        }
    }
    // Where few are left, it may have left the wrong ones: each single hole and each pair.
    if (std::count(best.filling.used.begin(), best.filling.used.end(), true) > 2) return best.filling;
    const auto try_set = [&](const std::vector<std::size_t>& set) {
        Near near = nearest_with(task, in_use(task, set, least_fill_length_m));
        if (near.squares < best.squares) best = std::move(near);
    };
    for (std::size_t a = 0; a < holes.size(); ++a) {
        try_set({holes[a]});
        for (std::size_t b = a + 1; b < holes.size(); ++b)
            try_set({holes[a], holes[b]});
    }
    return best.filling;
}

} // namespace evenfall::lead
