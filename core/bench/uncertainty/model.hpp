#pragma once

// A document with its uncertain inputs set free: sums, falls and hangs as functions of them, with slopes.

#include "answers/evaluation.hpp"
#include "bench/uncertainty/inputs.hpp"
#include "water/fall/descent.hpp"

#include <Eigen/Core>
#include <optional>
#include <vector>

namespace evenfall::bench {

/// A figure and its slope in every input.
struct Graded {
    double value = 0.0;
    Eigen::VectorXd slope;
};

/// The pieces of a sum that hang and fall depend on, graded.
struct Trim {
    Graded mass_kg, displaced_m3, in_water_kg;
    Graded aft_m;   ///< G aft of B
    Graded below_m; ///< G below B
    Graded plumb_m; ///< the same once it has rolled as it hangs (balance/hang.hpp)
    std::array<Graded, 3> g_m, b_m;
    ledger::Sum sum;
};

/// How the steady fall answers to small changes.
struct FallSlopes {
    double speed_m_s = 0.0;
    double per_kg = 0.0; ///< of in-water mass
    double per_aft_m = 0.0;
    double per_below_m = 0.0;
    double per_log_drag = 0.0;
};

/// A steady fall as a function of the inputs.
struct GradedFall {
    Graded speed_m_s;
    /// The in-water mass that alone would make the same difference to the speed: where G lies counts in it,
    /// drag does not.
    Graded felt_kg;
    /// The power of drag with which the weight grows that keeps the speed: 1 for a body that falls level,
    /// less where more drag also turns the lure.
    double weight_per_drag = 1.0;
};

/// The fall of the lure at one stage in one water, with whatever weights it is given.
class FallModel {
public:
    FallModel(fall::Hull hull, const fall::Weights& usual, std::vector<fall::DragItem> items,
              const materials::WaterProperties& water);

    /// Steady speed, down positive; absent where it does not sink steadily.
    [[nodiscard]] std::optional<double> speed_m_s(const ledger::Sum& sum, double drag);
    [[nodiscard]] std::optional<FallSlopes> slopes(const ledger::Sum& sum, double drag);
    /// In-water mass for a speed (> 0), B and G of `sum` kept. Absent where none does.
    [[nodiscard]] std::optional<double> in_water_for(const ledger::Sum& sum, double drag, double speed_m_s);
    /// Length over which it gathers way: mass and added mass over drag per speed squared.
    [[nodiscard]] double gathering_m(const ledger::Sum& sum, double in_water_kg, double speed_m_s) const;

    [[nodiscard]] const materials::WaterProperties& water() const { return water_; }

private:
    void set(const ledger::Sum& sum, double in_water_kg, double aft_m, double below_m, double drag);
    [[nodiscard]] std::optional<double> speed() const;

    materials::WaterProperties water_;
    fall::Weights usual_;
    fall::Descent descent_;
    double heave_m3_ = 0.0;
};

class Model {
public:
    [[nodiscard]] static Outcome<Model> of(const document::Document& document);

    [[nodiscard]] const document::Document& document() const { return document_; }
    [[nodiscard]] const Evaluation& evaluation() const { return evaluation_; }
    [[nodiscard]] const Surroundings& water() const { return water_; }
    [[nodiscard]] const std::vector<Input>& inputs() const { return inputs_; } ///< drag last
    [[nodiscard]] Eigen::Index count() const { return static_cast<Eigen::Index>(inputs_.size()); }
    [[nodiscard]] std::string name_of(const Input& input) const;

    [[nodiscard]] std::vector<double> factors(const Eigen::VectorXd& u) const;
    [[nodiscard]] double drag(const Eigen::VectorXd& u) const; ///< the document's own correction in it
    [[nodiscard]] ledger::Sum sum(Stage through, int segment, const Eigen::VectorXd& u) const;
    [[nodiscard]] ledger::Sum sum(Stage through, int segment, std::span<const double> factors) const {
        return lots_.sum(through, segment, factors);
    }
    [[nodiscard]] Trim trim(Stage through, int segment, const Eigen::VectorXd& u, double water_kg_m3) const;
    /// Hang under water, nose-up positive; absent where G is not below B.
    [[nodiscard]] static std::optional<Graded> hang(const Trim& trim);
    [[nodiscard]] FallModel fall_model(Stage stage, const materials::WaterProperties& water) const;
    /// That fall, graded; absent where it does not sink.
    [[nodiscard]] std::optional<GradedFall> fall(FallModel& falls, const Trim& trim,
                                                 const Eigen::VectorXd& u) const;

private:
    Model(document::Document document, Evaluation evaluation, const Surroundings& water);

    document::Document document_;
    Evaluation evaluation_;
    Surroundings water_;
    Lots lots_;
    fall::Hull hull_;
    double drag_correction_ = 1.0;
    std::vector<Input> inputs_;
};

} // namespace evenfall::bench
