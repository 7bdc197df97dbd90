#include "bench/lead/solve.hpp"

#include "bench/lead/box_qp.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <optional>

namespace evenfall::lead {

namespace {

constexpr double step_m = 1e-6; // for slopes; the ledger is linear in it, except for the height of the fill
constexpr double moment_scale_m = 0.010; // a gram-centimetre of moment counts as much as a gram
constexpr double settled_m = 1e-11;      // lengths that no longer change
constexpr double enough_kg = 1e-8;       // a hundredth of a milligram
constexpr double aft_weight = 2.0;       // cost of a gram at the tail, relative to one at the nose

using Pair = std::array<double, 2>;

Pair residual(const LeadTarget& aim, const ledger::Sum& sum) {
    return {sum.in_water(aim.water_kg_m3).kg - aim.in_water_kg,
            water::pitch_residual_kg_m(sum, aim.pitch_rad) / moment_scale_m};
}

double size(const Pair& r) {
    return std::max(std::fabs(r[0]), std::fabs(r[1]));
}

/// Cost and limits of each used candidate's fill, and what it adds per metre at the present filling.
std::vector<LeadVariable> columns_at(const LeadProblem& task, const LeadTarget& aim, const Filling& filling,
                                     const ledger::Sum& sum) {
    const Pair here = residual(aim, sum);
    double lowest = std::numeric_limits<double>::infinity();
    for (const Candidate& c : task.candidates)
        lowest = std::min(lowest, task.inputs->bores[c.hole].mouth_z_m);
    const double length = task.inputs->body->lines->length_m();

    std::vector<LeadVariable> out;
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        if (!filling.used[i]) continue;
        const Candidate& c = task.candidates[i];
        const holes::Bore& bore = task.inputs->bores[c.hole];
        const double h = filling.column_m[i];
        ledger::Sum moved = sum;
        const ledger::Sum at = contribution(*task.inputs, c, h, true);
        const ledger::Sum beyond = contribution(*task.inputs, c, h + step_m, true);
        moved.mass.kg += beyond.mass.kg - at.mass.kg;
        moved.displaced_m3 += beyond.displaced_m3 - at.displaced_m3;
        moved.mass_moment_kg_m += beyond.mass_moment_kg_m - at.mass_moment_kg_m;
        moved.displaced_moment_m4 += beyond.displaced_moment_m4 - at.displaced_moment_m4;
        const Pair there = residual(aim, moved);

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

/// How far a filling is from the targets: the weight first, and the pitch where the weight is met.
struct TargetError {
    double weight_kg = 0.0; ///< 0 within a milligram
    double pitch_rad = 0.0; ///< half a turn where the lure would roll over

    [[nodiscard]] bool less_than(const TargetError& other) const {
        return weight_kg != other.weight_kg ? weight_kg < other.weight_kg
                                            : pitch_rad < other.pitch_rad - 1e-9;
    }
};

TargetError target_error(const LeadProblem& task, const ledger::Sum& sum) {
    const double weight = std::fabs(sum.in_water(task.aim.water_kg_m3).kg - task.aim.in_water_kg);
    const auto pitch_rad = water::hang(sum).pitch_rad;
    return {weight < 1e-6 ? 0.0 : weight,
            pitch_rad ? std::fabs(*pitch_rad - task.aim.pitch_rad) : std::numbers::pi};
}

/// The least moment about the target is not the nearest pitch, because the righting arm changes too. So this
/// repeatedly takes, from the present pitch, the lengths that turn it most towards the target (Dinkelbach
/// 1967, on nonlinear fractional programming; from memory).
void turn_to_pitch(const LeadProblem& task, Filling& filling) {
    for (int pass = 0; pass < 10; ++pass) {
        const ledger::Sum sum = total(task, filling);
        const auto hangs_rad = water::hang(sum).pitch_rad;
        if (!hangs_rad) return;
        LeadTarget here = task.aim;
        here.pitch_rad = *hangs_rad;
        const std::vector<LeadVariable> columns = columns_at(task, here, filling, sum);
        const Pair target = target_of(columns, filling, residual(here, sum));
        Filling next = filling;
        put(next, extreme(columns, target[0], residual(task.aim, sum)[1] < 0.0));
        if (!target_error(task, total(task, next)).less_than(target_error(task, sum))) return;
        filling = std::move(next);
    }
}

/// Newton steps towards both targets with the holes in use; where a step cannot reach both, it goes as near
/// as it can and tries again from there. True where both are met; otherwise the filling is the nearest found.
bool approach(const LeadProblem& task, Filling& filling) {
    for (int pass = 0; pass < 40; ++pass) {
        const ledger::Sum sum = total(task, filling);
        const Pair off = residual(task.aim, sum);
        const std::vector<LeadVariable> columns = columns_at(task, task.aim, filling, sum);
        const Pair target = target_of(columns, filling, off);
        Filling next = filling;
        put(next, nearest(columns, target));
        double moved = 0.0;
        for (std::size_t i = 0; i < next.column_m.size(); ++i) {
            moved = std::max(moved, std::fabs(next.column_m[i] - filling.column_m[i]));
        }
        filling = std::move(next);
        if (moved < settled_m) break;
    }
    if (size(residual(task.aim, total(task, filling))) < enough_kg) return true;
    turn_to_pitch(task, filling);
    return false;
}

bool is_scrap(const Filling& filling, std::size_t i) {
    return filling.used[i] && filling.column_m[i] < least_fill_length_m;
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
            const bool scrap = is_scrap(filling, i) && !keep[i];
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

/// Where the targets cannot be met together: removes short fills one after the other, each time the one
/// without which the pitch comes nearest, as long as the weight does not get worse.
void drop_short_fills_unmet(const LeadProblem& task, Filling& filling) {
    for (;;) {
        const double weight_kg = target_error(task, total(task, filling)).weight_kg;
        std::optional<Filling> best;
        TargetError nearest;
        for (std::size_t i = 0; i < filling.used.size(); ++i) {
            if (!is_scrap(filling, i)) continue;
            Filling trial = filling;
            leave(trial, i);
            approach(task, trial);
            const TargetError here = target_error(task, total(task, trial));
            if (here.weight_kg > weight_kg || (best && !here.less_than(nearest))) continue;
            best = std::move(trial);
            nearest = here;
        }
        if (!best) return;
        filling = std::move(*best);
    }
}

/// Chooses the holes to use: tries sets of them until one meets both targets, and keeps the nearest.
class Search {
public:
    explicit Search(const LeadProblem& task)
        : task_(task), best_{std::vector<double>(task.candidates.size(), 0.0),
                             std::vector<bool>(task.candidates.size(), false)} {
        for (std::size_t i = 0; i < task.candidates.size(); ++i) {
            if (task.candidates[i].upper_m > 0.0) holes_.push_back(i);
        }
        std::stable_sort(holes_.begin(), holes_.end(),
                         [&](std::size_t a, std::size_t b) { return x_of(a) < x_of(b); });
        const ledger::Sum bare = total(task, best_);
        nearest_ = target_error(task, bare);
        too_heavy_ = residual(task.aim, bare)[0] >= 0.0;
    }

    /// Every hole costs its cap and its wood even when almost empty. Where all of them together are too much,
    /// the rearmost are left out first; then each single hole and each pair is tried.
    Filling found() {
        std::vector<std::size_t> set = holes_;
        for (; !set.empty(); set.pop_back()) {
            if (meets(set)) return best_;
        }
        for (const std::size_t a : holes_) {
            if (meets({a})) return best_;
        }
        for (std::size_t a = 0; a < holes_.size(); ++a) {
            for (std::size_t b = a + 1; b < holes_.size(); ++b) {
                const std::vector<std::size_t> two{holes_[a], holes_[b]};
                if (may_weigh(two) && meets(two)) return best_;
            }
        }
        return best_;
    }

private:
    [[nodiscard]] double x_of(std::size_t i) const {
        return task_.inputs->bores[task_.candidates[i].hole].x_m;
    }

    /// True where this set can reach the weight at all. The weight in water is linear in the length of a
    /// fill.
    [[nodiscard]] bool may_weigh(const std::vector<std::size_t>& set) const {
        double least = task_.base.in_water(task_.aim.water_kg_m3).kg;
        double most = least;
        for (const std::size_t i : set) {
            const Candidate& c = task_.candidates[i];
            const auto at = [&](double column_m) {
                return contribution(*task_.inputs, c, column_m, true).in_water(task_.aim.water_kg_m3).kg;
            };
            const double empty = at(0.0);
            const double full = at(c.upper_m);
            least += std::min(empty, full);
            most += std::max(empty, full);
        }
        return least - enough_kg <= task_.aim.in_water_kg && task_.aim.in_water_kg <= most + enough_kg;
    }

    bool meets(const std::vector<std::size_t>& set) {
        Filling trial{std::vector<double>(task_.candidates.size(), 0.0),
                      std::vector<bool>(task_.candidates.size(), false)};
        for (const std::size_t i : set)
            trial.used[i] = true;
        if (approach(task_, trial)) {
            drop_short_fills(task_, trial);
            best_ = std::move(trial);
            return true;
        }
        if (too_heavy_) return false; // nothing to fill then
        if (target_error(task_, total(task_, trial)).less_than(nearest_)) {
            drop_short_fills_unmet(task_, trial);
            const TargetError here = target_error(task_, total(task_, trial));
            if (here.less_than(nearest_)) {
                best_ = std::move(trial);
                nearest_ = here;
            }
        }
        return false;
    }

    const LeadProblem& task_;
    std::vector<std::size_t> holes_; // holes with room for fill, foremost first
    Filling best_;
    TargetError nearest_;
    bool too_heavy_ = false; // even without lead
};

} // namespace

ledger::Sum total(const LeadProblem& task, const Filling& filling) {
    ledger::Sum sum = task.base;
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        sum += contribution(*task.inputs, task.candidates[i], filling.column_m[i], filling.used[i]);
    }
    return sum;
}

Filling solve(const LeadProblem& task) {
    return Search(task).found();
}

} // namespace evenfall::lead
