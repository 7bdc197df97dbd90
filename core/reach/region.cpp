#include "reach/region.hpp"

#include "water/hang.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::reach {

Region::Region(const lead::LeadProblem& task)
    : water_kg_m3_(task.aim.water_kg_m3), aim_rad_(task.aim.pitch_rad) {
    for (std::size_t i = 0; i < task.candidates.size(); ++i) {
        Hole hole{task.sums[i], task.candidates[i].upper_m, 0.0};
        const auto kg = [&](double column_m) {
            return hole.sums.at(column_m, true).in_water(water_kg_m3_).kg;
        };
        if (hole.upper_m > 0.0) hole.kg_per_m = (kg(hole.upper_m) - kg(0.0)) / hole.upper_m;
        holes_.push_back(hole);
    }
    for (std::vector<std::size_t>& chosen : lead::hole_sets(task)) {
        Set set{std::move(chosen), task.base, {}};
        for (const std::size_t i : set.holes)
            set.empty += holes_[i].sums.empty;
        set.weights.least_kg = set.weights.most_kg = set.empty.in_water(water_kg_m3_).kg;
        for (const std::size_t i : set.holes)
            (holes_[i].kg_per_m < 0.0 ? set.weights.least_kg : set.weights.most_kg) += holes_[i].room_kg();
        sets_.push_back(std::move(set));
    }
}

std::optional<Region::Weights> Region::weights() const {
    if (sets_.empty()) return std::nullopt;
    Weights all = sets_.front().weights;
    for (const Set& set : sets_) {
        all.least_kg = std::min(all.least_kg, set.weights.least_kg);
        all.most_kg = std::max(all.most_kg, set.weights.most_kg);
    }
    return all;
}

std::vector<double> Region::corners_kg() const {
    std::vector<double> out;
    if (sets_.empty()) return out;
    for (const Set& set : sets_) {
        out.push_back(set.weights.least_kg);
        out.push_back(set.weights.most_kg);
    }
    const Set& all = sets_.front();
    for (const Side side : {Side::nose_up, Side::nose_down}) {
        double kg = all.weights.least_kg;
        for (const std::size_t i : order(all, aim_rad_, side))
            out.push_back(kg += std::abs(holes_[i].room_kg()));
    }
    std::sort(out.begin(), out.end());
    return out;
}

std::vector<std::size_t> Region::order(const Set& set, double pitch_rad, Side side) const {
    std::vector<std::pair<double, std::size_t>> by_slope;
    const double here = water::pitch_residual_kg_m(set.empty, pitch_rad);
    for (const std::size_t i : set.holes) {
        const Hole& hole = holes_[i];
        if (hole.kg_per_m == 0.0) continue;
        ledger::Sum full = set.empty;
        full += hole.sums.fill(hole.upper_m);
        const double slope = (water::pitch_residual_kg_m(full, pitch_rad) - here) / hole.room_kg();
        by_slope.emplace_back(side == Side::nose_up ? slope : -slope, i);
    }
    std::sort(by_slope.begin(), by_slope.end());
    std::vector<std::size_t> out;
    for (const auto& [slope, i] : by_slope)
        out.push_back(i);
    return out;
}

ledger::Sum Region::filled(const Set& set, const std::vector<std::size_t>& order, double in_water_kg) const {
    double missing = in_water_kg - set.weights.least_kg;
    ledger::Sum sum = set.empty;
    for (const std::size_t i : order) {
        // What makes the lure lighter is full at the least weight, and gives way.
        const Hole& hole = holes_[i];
        const double taken = std::clamp(missing / std::abs(hole.kg_per_m), 0.0, hole.upper_m);
        const double h = hole.kg_per_m > 0.0 ? taken : hole.upper_m - taken;
        sum += hole.sums.fill(h);
        missing -= taken * std::abs(hole.kg_per_m);
    }
    return sum;
}

std::optional<ledger::Sum> Region::border(const Set& set, double in_water_kg, Side side) const {
    if (in_water_kg < set.weights.least_kg || in_water_kg > set.weights.most_kg) return std::nullopt;
    // Which order is the best depends a little on the hang that it leads to.
    std::vector<std::size_t> now = order(set, aim_rad_, side);
    ledger::Sum sum = filled(set, now, in_water_kg);
    for (int pass = 0; pass < 8; ++pass) {
        const auto pitch_rad = water::hang(sum).pitch_rad;
        if (!pitch_rad) return std::nullopt;
        std::vector<std::size_t> next = order(set, *pitch_rad, side);
        if (next == now) break;
        now = std::move(next);
        sum = filled(set, now, in_water_kg);
    }
    return water::hang(sum).pitch_rad ? std::optional(sum) : std::nullopt;
}

std::optional<ledger::Sum> Region::border(double in_water_kg, Side side) const {
    std::optional<ledger::Sum> best;
    double best_rad = 0.0;
    for (const Set& set : sets_) {
        const auto sum = border(set, in_water_kg, side);
        if (!sum) continue;
        const double pitch_rad = *water::hang(*sum).pitch_rad;
        if (best && (side == Side::nose_up ? pitch_rad <= best_rad : pitch_rad >= best_rad)) continue;
        best = sum;
        best_rad = pitch_rad;
    }
    return best;
}

bool Region::contains(double in_water_kg, double pitch_rad) const {
    return std::any_of(sets_.begin(), sets_.end(), [&](const Set& set) {
        const auto up = border(set, in_water_kg, Side::nose_up);
        const auto down = border(set, in_water_kg, Side::nose_down);
        return up && down && *water::hang(*down).pitch_rad <= pitch_rad &&
               pitch_rad <= *water::hang(*up).pitch_rad;
    });
}

} // namespace evenfall::reach
