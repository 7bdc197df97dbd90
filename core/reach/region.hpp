#pragma once

#include "bench/lead/solve.hpp"

#include <optional>
#include <vector>

namespace evenfall::reach {

/// What the lead plan can meet: weight in water against hang. For each set of holes that the plan tries, a
/// convex region: the mass and moments of a filling are sums of what each hole adds. At a given weight, the
/// filling that hangs the most nose-up fills holes in the order of moment over weight, so that at most one is
/// neither empty nor full; the most nose-down in the other order.
class Region {
public:
    explicit Region(const lead::LeadProblem& task);

    struct Weights {
        double least_kg = 0.0;
        double most_kg = 0.0;
    };
    /// In water; absent where no hole may be filled.
    [[nodiscard]] std::optional<Weights> weights() const;
    /// Weights at which the border of a set has a corner, ascending.
    [[nodiscard]] std::vector<double> corners_kg() const;

    enum class Side { nose_up, nose_down };
    /// The finished lure on the border at a weight; absent where none has this weight and hangs at all.
    [[nodiscard]] std::optional<ledger::Sum> border(double in_water_kg, Side side) const;

    [[nodiscard]] bool contains(double in_water_kg, double pitch_rad) const;

private:
    /// What a hole in use adds, by the length h of its fill: empty + h·linear + h²·square. The square is in
    /// the height of the fill's centroid alone.
    struct Hole {
        lead::HoleSums sums;
        double upper_m = 0.0;
        double kg_per_m = 0.0; ///< in water

        [[nodiscard]] double room_kg() const { return upper_m * kg_per_m; }
    };
    struct Set {
        std::vector<std::size_t> holes;
        ledger::Sum empty; ///< the lure with these holes in use and no fill
        Weights weights;
    };

    [[nodiscard]] std::vector<std::size_t> order(const Set& set, double pitch_rad, Side side) const;
    [[nodiscard]] ledger::Sum filled(const Set& set, const std::vector<std::size_t>& order,
                                     double in_water_kg) const;
    [[nodiscard]] std::optional<ledger::Sum> border(const Set& set, double in_water_kg, Side side) const;

    double water_kg_m3_;
    double aim_rad_;
    std::vector<Hole> holes_; ///< by candidate
    std::vector<Set> sets_;
};

} // namespace evenfall::reach
