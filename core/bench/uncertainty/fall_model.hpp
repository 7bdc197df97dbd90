#pragma once

// The fall of one lure with variable weights: what readings, targets and chances ask again and again.

#include "ledger/fold.hpp"
#include "water/fall/descent.hpp"

#include <memory>
#include <optional>
#include <vector>

namespace evenfall::bench {

/// The speed of the steady fall and its derivatives.
struct FallSlopes {
    double speed_m_s = 0.0;
    double per_kg = 0.0; ///< of in-water mass
    double per_aft_m = 0.0;
    double per_below_m = 0.0;
    double per_log_drag = 0.0;
};

/// The fall of the lure at one stage in one water, with variable weights.
class FallModel {
public:
    FallModel(std::shared_ptr<const fall::HydroBody> hull, const fall::MassProperties& usual,
              std::vector<fall::DragItem> items, const materials::WaterProperties& water);

    /// Steady speed, down positive; absent where it does not sink steadily.
    [[nodiscard]] std::optional<double> speed_m_s(const ledger::Sum& sum, double drag);
    [[nodiscard]] std::optional<FallSlopes> slopes(const ledger::Sum& sum, double drag);
    /// In-water mass for a speed (> 0), with B and G of `sum`: with several, the one nearest to the present.
    /// Absent where there is none.
    [[nodiscard]] std::optional<double> in_water_for(const ledger::Sum& sum, double drag, double speed_m_s);
    /// The same for a time from rest over a depth.
    [[nodiscard]] std::optional<double> in_water_for_time(const ledger::Sum& sum, double drag, double depth_m,
                                                          double time_s);
    /// Mass and added mass over drag per speed squared: the length over which a fall from rest reaches its
    /// terminal speed.
    [[nodiscard]] double acceleration_length_m(const ledger::Sum& sum, double in_water_kg,
                                               double speed_m_s) const;

    [[nodiscard]] const materials::WaterProperties& water() const { return water_; }

private:
    struct WeightAndSpeed {
        double in_water_kg, speed_m_s;
    };
    /// With `weight_for(speed, near_kg)` for the weight that falls so fast.
    template <class Weight>
    [[nodiscard]] std::optional<WeightAndSpeed> fall_in_time(const Weight& weight_for, const ledger::Sum& sum,
                                                             double depth_m, double time_s) const;
    [[nodiscard]] double present_kg(const ledger::Sum& sum) const; ///< in water, at least a tenth of a gram
    /// In water, with B and G of `sum`.
    void set_weight(const ledger::Sum& sum, double in_water_kg, double drag);
    void set(const ledger::Sum& sum, double in_water_kg, double aft_m, double below_m, double drag);
    [[nodiscard]] std::optional<double> speed() const; ///< of the main fall

    materials::WaterProperties water_;
    fall::MassProperties usual_;
    fall::FallingLure descent_;
    double heave_m3_ = 0.0;
};

} // namespace evenfall::bench
