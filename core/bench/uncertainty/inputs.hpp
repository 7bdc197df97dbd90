#pragma once

#include "ledger/fold.hpp"
#include "ledger/line.hpp"

#include <Eigen/Core>
#include <array>
#include <optional>
#include <span>
#include <vector>

namespace evenfall::bench {

/// One uncertain input: a cause and group of the ledger's spreads, or drag.
struct Input {
    document::Cause cause = document::Cause::none;
    int group = 0;
    double relative = 0.0; ///< standard deviation over value, before any reading
};

/// The fraction of an input's variance that all lures of one recipe share (1: the same in all of them). Own
/// estimates: lures are sawn from one board and coated by one hand; a scale's error at a fill is new each
/// time.
[[nodiscard]] double shared_fraction(const Input& input);

using ledger::least_factor;

/// The factor that an input at u puts on its lines (on all drag for drag), and its derivative.
[[nodiscard]] double factor_of(const Input& input, double u);
[[nodiscard]] double factor_slope_of(const Input& input, double u);

/// A ledger's sums as functions of its uncertain inputs. Lines with the same inputs are added up once into a
/// portion, which the inputs' factors then multiply.
class UncertainSums {
public:
    /// `known`: inputs that others found, which keep their indices.
    explicit UncertainSums(const ledger::Ledger& ledger, std::vector<Input> known = {});

    /// Those known, then those found in the ledger, in its order. Drag is not among them.
    [[nodiscard]] const std::vector<Input>& inputs() const { return inputs_; }

    /// Everything up to and with a stage; one segment alone, or all (segment < 0). `factors` by input.
    [[nodiscard]] ledger::Sum sum(Stage through, int segment, std::span<const double> factors) const;

    /// The same with its derivatives: mass, displaced volume, the three mass moments, the three moments of
    /// displacement (rows) by input (columns), each per unit of u.
    using Slopes = Eigen::Matrix<double, 8, Eigen::Dynamic>;
    [[nodiscard]] ledger::Sum sum(Stage through, int segment, std::span<const double> factors,
                                  std::span<const double> factor_slopes, Slopes& slopes) const;

private:
    /// An input (−1 none) and how far a line follows it (ledger::Variation).
    struct Followed {
        int input = -1;
        double share = 1.0;
        bool operator==(const Followed&) const = default;
    };
    using InputSet = std::array<Followed, ledger::most_variations>;
    struct Portion {
        Stage stage = Stage::carved;
        int segment = 0;
        InputSet mass_inputs;              ///< that multiply its mass
        InputSet volume_inputs;            ///< that multiply its displacement
        std::optional<std::size_t> within; ///< index into mass_inputs of the one that acts within its lines
        double aft_kg_m = 0.0;             ///< mass moment of that one, per factor − 1
        ledger::Sum sum;

        [[nodiscard]] bool is_in(Stage through, int of_segment) const {
            return stage <= through && (of_segment < 0 || segment == of_segment);
        }
    };
    std::vector<Input> inputs_;
    std::vector<Portion> portions_;
};

} // namespace evenfall::bench
