#include "plan/solve.hpp"

#include "balance/hang.hpp"
#include "plan/box_qp.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::plan {

namespace {

constexpr double step_m = 1e-6;           // for slopes; lines are linear in it, but for the column's height
constexpr double moment_scale_m = 0.010;  // a gram-centimetre of moment counts like a gram
constexpr double settled_m = 1e-11;       // columns no longer move
constexpr double enough_kg = 1e-8;        // a hundredth of a milligram
constexpr double aft_weight = 2.0;        // how much dearer a gram at the tail is than one at the nose

using Pair = std::array<double, 2>;

Pair residual(const Task& task, const ledger::Sum& sum) {
    return {sum.in_water_kg(task.aim.water_kg_m3) - task.aim.in_water_kg,
            balance::pitch_residual_kg_m(sum, task.aim.pitch_rad) / moment_scale_m};
}

double size(const Pair& r) { return std::max(std::fabs(r[0]), std::fabs(r[1])); }

/// Cost and limits of each used candidate's column, and what it adds per metre at the present filling.
std::vector<Column> columns_at(const Task& task, const Filling& filling, const ledger::Sum& sum) {
    const Pair here = residual(task, sum);
    double lowest = 0.0;
    for (const Candidate& c : task.candidates) lowest = std::min(lowest, task.woodwork->bores[c.hole].mouth_z_m);
    const double length = task.woodwork->body->lines->length_m();

    std::vector<Column> out;
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        if (!filling.used[i]) continue;
        const Candidate& c = task.candidates[i];
        const holes::Bore& bore = task.woodwork->bores[c.hole];
        const double h = filling.column_m[i];
        ledger::Sum moved = sum;
        const ledger::Sum at = contribution(*task.woodwork, c, h, true);
        const ledger::Sum beyond = contribution(*task.woodwork, c, h + step_m, true);
        moved.mass_kg += beyond.mass_kg - at.mass_kg;
        moved.displaced_m3 += beyond.displaced_m3 - at.displaced_m3;
        moved.mass_moment_kg_m += beyond.mass_moment_kg_m - at.mass_moment_kg_m;
        moved.displaced_moment_m4 += beyond.displaced_moment_m4 - at.displaced_moment_m4;
        const Pair there = residual(task, moved);

        const double per_m = c.fill_area_m2 * c.density_kg_m3;
        const double dear = per_m * (1.0 + aft_weight * bore.x_m / length);
        Column column;
        column.upper = c.upper_m;
        column.row = {(there[0] - here[0]) / step_m, (there[1] - here[1]) / step_m};
        // Bored from the belly the column's middle rises with its length; from the back it sinks, which a convex cost
        // cannot say: there the height of a half-full hole is charged throughout.
        const double mouth = bore.mouth_z_m - lowest;
        column.bend = dear;
        column.slope = bore.inward > 0.0 ? dear * (mouth + c.covered_m) : dear * std::max(mouth - c.covered_m - 0.5 * c.upper_m, 0.0);
        out.push_back(column);
    }
    return out;
}

void put(Filling& filling, const std::vector<double>& used_columns) {
    std::size_t k = 0;
    for (std::size_t i = 0; i < filling.used.size(); ++i) filling.column_m[i] = filling.used[i] ? used_columns[k++] : 0.0;
}

Pair target_of(const std::vector<Column>& columns, const Filling& filling, const Pair& off) {
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

/// The columns that come nearest to the second sum with the first met, or clipped where even that is out of reach.
std::vector<double> nearest(const std::vector<Column>& columns, const Pair& target) {
    const auto second = [&](const std::vector<double>& h) {
        double sum = 0.0;
        for (std::size_t k = 0; k < h.size(); ++k) sum += columns[k].row[1] * h[k];
        return sum;
    };
    std::vector<double> least = extreme(columns, target[0], false);
    std::vector<double> most = extreme(columns, target[0], true);
    return std::fabs(second(least) - target[1]) < std::fabs(second(most) - target[1]) ? least : most;
}

/// Newton steps towards both aims with the holes in use; where a step cannot reach both, it goes as near as it can and
/// tries again from there. True where both are met; otherwise the filling is left at the nearest.
bool approach(const Task& task, Filling& filling) {
    bool reached = false;
    for (int pass = 0; pass < 40; ++pass) {
        const ledger::Sum sum = total(task, filling);
        const Pair off = residual(task, sum);
        const std::vector<Column> columns = columns_at(task, filling, sum);
        const Pair target = target_of(columns, filling, off);
        const auto both = minimise(columns, target);
        reached = both.has_value();
        Filling next = filling;
        put(next, reached ? *both : nearest(columns, target));
        double moved = 0.0;
        for (std::size_t i = 0; i < next.column_m.size(); ++i) {
            moved = std::max(moved, std::fabs(next.column_m[i] - filling.column_m[i]));
        }
        filling = std::move(next);
        if (moved < settled_m) break;
    }
    return reached && size(residual(task, total(task, filling))) < enough_kg;
}

/// Leaves out, one at a time, the shortest column that is not worth its hole, as long as the aims stay met.
void drop_scraps(const Task& task, Filling& filling) {
    std::vector<bool> keep(filling.used.size(), false);
    for (;;) {
        std::size_t least = filling.used.size();
        for (std::size_t i = 0; i < filling.used.size(); ++i) {
            const bool scrap = filling.used[i] && !keep[i] && filling.column_m[i] < worthwhile_column_m;
            if (scrap && (least == filling.used.size() || filling.column_m[i] < filling.column_m[least])) least = i;
        }
        if (least == filling.used.size()) return;
        Filling trial = filling;
        trial.used[least] = false;
        trial.column_m[least] = 0.0;
        if (approach(task, trial)) filling = std::move(trial);
        else keep[least] = true;
    }
}

}  // namespace

ledger::Sum total(const Task& task, const Filling& filling) {
    ledger::Sum sum = task.base;
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        sum += contribution(*task.woodwork, task.candidates[i], filling.column_m[i], filling.used[i]);
    }
    return sum;
}

Filling solve(const Task& task) {
    const std::size_t n = task.candidates.size();
    Filling none{std::vector<double>(n, 0.0), std::vector<bool>(n, false), false, false};
    Filling filling = none;
    for (std::size_t i = 0; i < n; ++i) filling.used[i] = task.candidates[i].upper_m > 0.0;

    // Every hole costs its cap and its wood even when almost empty. Where all of them together are too much, the
    // hindmost are left out first.
    Filling trial = filling;
    bool met = approach(task, trial);
    Filling fewer = filling;
    for (std::size_t i = n; !met && i-- > 0;) {
        if (!fewer.used[i]) continue;
        fewer.used[i] = false;
        trial = fewer;
        met = std::find(fewer.used.begin(), fewer.used.end(), true) != fewer.used.end() && approach(task, trial);
    }
    if (met) {
        drop_scraps(task, trial);
        trial.in_water_met = trial.pitch_met = true;
        return trial;
    }
    if (residual(task, total(task, none))[0] >= 0.0) {  // too heavy without any: nothing to fill
        filling = none;
    } else {
        approach(task, filling);
        for (std::size_t i = 0; i < n; ++i) {
            if (!filling.used[i] || filling.column_m[i] >= worthwhile_column_m) continue;
            filling.used[i] = false;
            filling.column_m[i] = 0.0;
        }
        if (std::find(filling.used.begin(), filling.used.end(), true) != filling.used.end()) approach(task, filling);
    }
    const Pair off = residual(task, total(task, filling));
    filling.in_water_met = std::fabs(off[0]) < 1e-6;
    filling.pitch_met = std::fabs(off[1]) < 1e-6;
    return filling;
}

}  // namespace evenfall::plan
