#include "bench/uncertainty/inputs.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::bench {

double shared_of(const Input& input) {
    switch (input.cause) {
    case document::Cause::wood_density:
    case document::Cause::moisture:
        return 0.8;
    case document::Cause::carved_size:
        return 0.4;
    case document::Cause::part_mass:
    case document::Cause::tail:
        return 0.7;
    case document::Cause::fill_mass:
        return 0.0;
    case document::Cause::cap_mass:
        return 0.5;
    case document::Cause::coat_amount:
        return 0.6;
    case document::Cause::drag:
        return 0.9;
    case document::Cause::none:
        return 0.0;
    }
    return 0.0;
}

double factor_of(const Input& input, double u) {
    if (input.cause == document::Cause::drag) return std::exp(input.relative * u);
    return std::max(least_factor, 1.0 + input.relative * u);
}

double factor_slope_of(const Input& input, double u) {
    if (input.cause == document::Cause::drag) return input.relative * std::exp(input.relative * u);
    return 1.0 + input.relative * u > least_factor ? input.relative : 0.0;
}

Lots::Lots(const ledger::Ledger& ledger) {
    const auto input_of = [&](const ledger::Spread& spread) {
        for (std::size_t i = 0; i < inputs_.size(); ++i) {
            if (inputs_[i].cause == spread.cause && inputs_[i].group == spread.group)
                return static_cast<int>(i);
        }
        inputs_.push_back({spread.cause, spread.group, spread.relative});
        return static_cast<int>(inputs_.size()) - 1;
    };
    for (const ledger::Line& line : ledger) {
        Lot lot;
        lot.stage = line.stage;
        lot.segment = line.segment;
        std::size_t masses = 0;
        std::size_t volumes = 0;
        for (const ledger::Spread& spread : line.spreads) {
            if (spread.cause == document::Cause::none || spread.relative == 0.0) continue;
            const int input = input_of(spread);
            if (spread.moves_mass) lot.mass_input[masses++] = input;
            if (spread.moves_volume) lot.volume_input[volumes++] = input;
        }
        const auto same = std::find_if(lots_.begin(), lots_.end(), [&](const Lot& other) {
            return other.stage == lot.stage && other.segment == lot.segment &&
                   other.mass_input == lot.mass_input && other.volume_input == lot.volume_input;
        });
        Lot& target = same != lots_.end() ? *same : lots_.emplace_back(lot);
        target.sum += line;
    }
}

ledger::Sum Lots::sum(Stage through, int segment, std::span<const double> factors) const {
    ledger::Sum total;
    for (const Lot& lot : lots_) {
        if (lot.stage > through || (segment >= 0 && lot.segment != segment)) continue;
        double mass = 1.0;
        double volume = 1.0;
        for (const int i : lot.mass_input)
            mass *= i < 0 ? 1.0 : factors[static_cast<std::size_t>(i)];
        for (const int i : lot.volume_input)
            volume *= i < 0 ? 1.0 : factors[static_cast<std::size_t>(i)];
        total.mass_kg += mass * lot.sum.mass_kg;
        total.displaced_m3 += volume * lot.sum.displaced_m3;
        total.mass_moment_kg_m += mass * lot.sum.mass_moment_kg_m;
        total.displaced_moment_m4 += volume * lot.sum.displaced_moment_m4;
    }
    return total;
}

ledger::Sum Lots::sum(Stage through, int segment, std::span<const double> factors,
                      std::span<const double> factor_slopes, Slopes& slopes) const {
    slopes.setZero(8, static_cast<Eigen::Index>(factors.size()));
    for (const Lot& lot : lots_) {
        if (lot.stage > through || (segment >= 0 && lot.segment != segment)) continue;
        // The slope of a product: each factor's own slope times the others.
        const auto product_slope = [&](const Lot::Moved& of, std::size_t k) {
            double product = factor_slopes[static_cast<std::size_t>(of[k])];
            for (std::size_t other = 0; other < of.size(); ++other) {
                if (other != k && of[other] >= 0) product *= factors[static_cast<std::size_t>(of[other])];
            }
            return product;
        };
        // A quantity in row `row`, its three moments from row `moments` on.
        const auto add = [&](const Lot::Moved& of, Eigen::Index row, double quantity, Eigen::Index moments,
                             const Vec3& moment) {
            for (std::size_t k = 0; k < of.size(); ++k) {
                if (of[k] < 0) continue;
                const double by = product_slope(of, k);
                auto column = slopes.col(of[k]);
                column(row) += by * quantity;
                column(moments) += by * moment.x;
                column(moments + 1) += by * moment.y;
                column(moments + 2) += by * moment.z;
            }
        };
        add(lot.mass_input, 0, lot.sum.mass_kg, 2, lot.sum.mass_moment_kg_m);
        add(lot.volume_input, 1, lot.sum.displaced_m3, 5, lot.sum.displaced_moment_m4);
    }
    return sum(through, segment, factors);
}

} // namespace evenfall::bench
