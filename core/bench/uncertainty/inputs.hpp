#pragma once

#include "ledger/fold.hpp"
#include "ledger/line.hpp"

#include <Eigen/Core>
#include <array>
#include <span>
#include <vector>

namespace evenfall::bench {

/// One uncertain input: a cause and group of the ledger's spreads, or drag.
struct Input {
    document::Cause cause = document::Cause::none;
    int group = 0;
    double relative = 0.0; ///< standard deviation over value, before any reading
};

/// What share of an input's variance the lures of one recipe have in common (1: the same in all of them). Own
/// estimates: lures are sawn from one board and coated by one hand; a scale's error at a fill is new each
/// time.
[[nodiscard]] double shared_of(const Input& input);

/// No line is ever multiplied by less.
inline constexpr double least_factor = 0.05;

/// The factor that an input's number puts on its lines (on all drag for drag), and its slope in u.
[[nodiscard]] double factor_of(const Input& input, double u);
[[nodiscard]] double factor_slope_of(const Input& input, double u);

/// A ledger's sums as functions of its uncertain inputs: lines that move alike are one lot.
class Lots {
public:
    explicit Lots(const ledger::Ledger& ledger);

    /// The inputs found in the ledger, in its order. Drag is not among them.
    [[nodiscard]] const std::vector<Input>& inputs() const { return inputs_; }

    /// Everything up to and with a stage; one segment alone, or all (segment < 0). `factors` by input.
    [[nodiscard]] ledger::Sum sum(Stage through, int segment, std::span<const double> factors) const;

    /// The same with its slopes: mass, displaced volume, the three mass moments, the three moments of
    /// displacement (rows) by input (columns), each per unit of u.
    using Slopes = Eigen::Matrix<double, 8, Eigen::Dynamic>;
    [[nodiscard]] ledger::Sum sum(Stage through, int segment, std::span<const double> factors,
                                  std::span<const double> factor_slopes, Slopes& slopes) const;

private:
    struct Lot {
        Stage stage = Stage::carved;
        int segment = 0;
        using Moved = std::array<int, 4>; ///< inputs that move it, as many as a line has spreads; −1 none
        Moved mass_input{-1, -1, -1, -1};
        Moved volume_input{-1, -1, -1, -1};
        ledger::Sum sum;
    };
    std::vector<Input> inputs_;
    std::vector<Lot> lots_;
};

} // namespace evenfall::bench
