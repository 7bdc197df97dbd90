#include "bench/uncertainty/inputs.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::bench {

using ledger::line_factor;

double shared_fraction(const Input& input) {
    switch (input.cause) {
    case document::Cause::wood_density:
    case document::Cause::moisture:
        return 0.8;
    case document::Cause::carved_size:
        return 0.4;
    case document::Cause::wood_gradient:
        return 0.5;
    case document::Cause::part_mass:
    case document::Cause::tail:
    case document::Cause::hinge_mass:
    case document::Cause::hanger_mass:
        return 0.7;
    case document::Cause::fill_mass:
        return 0.0;
    case document::Cause::cap_mass:
        return 0.5;
    case document::Cause::coat_amount:
        return 0.6;
    case document::Cause::drag:
        return 0.9;
    case document::Cause::beats:
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

UncertainSums::UncertainSums(const ledger::Ledger& ledger, std::vector<Input> known)
    : inputs_(std::move(known)) {
    const auto input_of = [&](const ledger::Variation& spread) {
        for (std::size_t i = 0; i < inputs_.size(); ++i) {
            if (inputs_[i].cause == spread.cause && inputs_[i].group == spread.group)
                return static_cast<int>(i);
        }
        inputs_.push_back({spread.cause, spread.group, spread.relative});
        return static_cast<int>(inputs_.size()) - 1;
    };
    for (const ledger::Line& line : ledger) {
        Portion portion;
        portion.stage = line.stage;
        portion.segment = line.segment;
        std::size_t masses = 0;
        std::size_t volumes = 0;
        for (const ledger::Variation& spread : line.spreads) {
            if (spread.cause == document::Cause::none || spread.relative == 0.0) continue;
            const Followed followed{input_of(spread), spread.share};
            if (spread.aft_m != 0.0) {
                portion.within = masses;
                portion.aft_kg_m = spread.aft_m * line.mass_kg;
            }
            if (spread.moves_mass) portion.mass_inputs[masses++] = followed;
            if (spread.moves_volume) portion.volume_inputs[volumes++] = followed;
        }
        const auto same = std::find_if(portions_.begin(), portions_.end(), [&](const Portion& other) {
            return other.stage == portion.stage && other.segment == portion.segment &&
                   other.mass_inputs == portion.mass_inputs && other.volume_inputs == portion.volume_inputs &&
                   !portion.within && !other.within;
        });
        Portion& target = same != portions_.end() ? *same : portions_.emplace_back(portion);
        target.sum += line;
    }
}

ledger::Sum UncertainSums::sum(Stage through, int segment, std::span<const double> factors) const {
    // Of all inputs of a set, or of all but one.
    const auto product = [&](const InputSet& inputs, std::size_t without = ledger::most_variations) {
        double all = 1.0;
        for (std::size_t k = 0; k < inputs.size(); ++k) {
            if (inputs[k].input < 0) break;
            if (k != without)
                all *= line_factor(factors[static_cast<std::size_t>(inputs[k].input)], inputs[k].share);
        }
        return all;
    };
    ledger::Sum total;
    for (const Portion& portion : portions_) {
        if (!portion.is_in(through, segment)) continue;
        total += portion.sum.scaled(product(portion.mass_inputs), product(portion.volume_inputs));
        if (!portion.within) continue;
        const auto input = static_cast<std::size_t>(portion.mass_inputs[*portion.within].input);
        total.mass_moment_kg_m.x +=
            portion.aft_kg_m * (factors[input] - 1.0) * product(portion.mass_inputs, *portion.within);
    }
    return total;
}

ledger::Sum UncertainSums::sum(Stage through, int segment, std::span<const double> factors,
                               std::span<const double> factor_slopes, Slopes& slopes) const {
    slopes.setZero(8, static_cast<Eigen::Index>(factors.size()));
    // The slope of a set's k-th factor times the other ones; those of one more may be left out.
    const auto slope_times_others = [&](const InputSet& inputs, std::size_t k,
                                        std::size_t without = ledger::most_variations) {
        double product = factor_slopes[static_cast<std::size_t>(inputs[k].input)];
        for (std::size_t other = 0; other < inputs.size() && inputs[other].input >= 0; ++other) {
            if (other != k && other != without)
                product *=
                    line_factor(factors[static_cast<std::size_t>(inputs[other].input)], inputs[other].share);
        }
        return product;
    };
    // A quantity in row `row`, its three moments from row `moments` on.
    const auto add = [&](const InputSet& inputs, Eigen::Index row, double quantity, Eigen::Index moments,
                         const Vec3& moment) {
        for (std::size_t k = 0; k < inputs.size() && inputs[k].input >= 0; ++k) {
            const double by = inputs[k].share * slope_times_others(inputs, k);
            auto column = slopes.col(inputs[k].input);
            column(row) += by * quantity;
            column(moments) += by * moment.x;
            column(moments + 1) += by * moment.y;
            column(moments + 2) += by * moment.z;
        }
    };
    for (const Portion& portion : portions_) {
        if (!portion.is_in(through, segment)) continue;
        const ledger::Sum& sum = portion.sum;
        add(portion.mass_inputs, 0, sum.mass.kg, 2, sum.mass_moment_kg_m);
        add(portion.volume_inputs, 1, sum.displaced_m3, 5, sum.displaced_moment_m4);
        if (!portion.within) continue;
        const InputSet& inputs = portion.mass_inputs;
        const double over = factors[static_cast<std::size_t>(inputs[*portion.within].input)] - 1.0;
        for (std::size_t k = 0; k < inputs.size() && inputs[k].input >= 0; ++k) {
            const double by = k == *portion.within
                                  ? slope_times_others(inputs, k)
                                  : over * inputs[k].share * slope_times_others(inputs, k, *portion.within);
            slopes(2, inputs[k].input) += portion.aft_kg_m * by;
        }
    }
    return sum(through, segment, factors);
}

} // namespace evenfall::bench
