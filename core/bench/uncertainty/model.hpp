#pragma once

// A document with its uncertain inputs variable: sums, hang and fall as functions of them, with derivatives.

#include "answers/answers.hpp"
#include "bench/uncertainty/fall_model.hpp"
#include "bench/uncertainty/inputs.hpp"

#include <Eigen/Core>
#include <memory>
#include <optional>
#include <vector>

namespace evenfall::bench {

/// A figure and its derivative with respect to each input.
struct Linearised {
    double value = 0.0;
    Eigen::VectorXd slope;
};
inline Linearised operator*(double factor, const Linearised& x) {
    return {factor * x.value, factor * x.slope};
}
inline Linearised operator-(const Linearised& a, const Linearised& b) {
    return {a.value - b.value, a.slope - b.slope};
}

/// What hang and fall depend on.
struct Balance {
    Linearised mass_kg, displaced_m3, in_water_kg;
    Linearised aft_m;       ///< G aft of B
    Linearised below_m;     ///< G below B
    Linearised bg_across_m; ///< G below B once it has rolled as it hangs (water/hang.hpp)
    std::array<Linearised, 3> g_m, b_m;
    ledger::Sum sum;
};

/// A steady fall as a function of the inputs.
struct LinearisedFall {
    Linearised speed_m_s;
    /// In-water mass plus the mass that would change the speed as much as the shift of G does. Drag is not in
    /// it.
    Linearised equivalent_kg;
    /// d log(weight)/d log(drag) at constant speed: 1 for a body that falls level, less where more drag also
    /// turns the lure.
    double weight_per_drag = 1.0;
};

class Model {
public:
    [[nodiscard]] static Outcome<Model> of(const document::Document& document, const Kept* before = nullptr);
    /// The same lure as it was for a reading of its log, over the same inputs: with its holes as they were
    /// before a later change, and with what hung on it. Itself where neither; nullptr where it cannot have
    /// been so.
    [[nodiscard]] const Model* as_read(const document::Reading& reading) const;
    /// The same lure with all that it has once it is rigged, at any stage.
    [[nodiscard]] const Model& with_all() const;

    [[nodiscard]] const document::Document& document() const { return document_; }
    [[nodiscard]] const Evaluation& evaluation() const { return *evaluation_; }
    [[nodiscard]] const ledger::Ledger& ledger() const { return ledger_; }
    [[nodiscard]] const Waters& water() const { return water_; }
    [[nodiscard]] const std::vector<Input>& inputs() const { return inputs_; } ///< drag last
    [[nodiscard]] const Input& input(Eigen::Index i) const { return inputs_[static_cast<std::size_t>(i)]; }
    [[nodiscard]] Eigen::Index count() const { return static_cast<Eigen::Index>(inputs_.size()); }
    [[nodiscard]] Eigen::Index drag_index() const { return count() - 1; }
    [[nodiscard]] std::string name_of(const Input& input) const;

    [[nodiscard]] std::vector<double> factors(const Eigen::VectorXd& u) const;
    [[nodiscard]] double drag(const Eigen::VectorXd& u) const; ///< with the document's own correction
    [[nodiscard]] ledger::Sum sum(Stage through, int segment, const Eigen::VectorXd& u) const;
    [[nodiscard]] ledger::Sum sum(Stage through, int segment, std::span<const double> factors) const {
        return sums_.sum(through, segment, factors);
    }
    [[nodiscard]] Balance balance(Stage through, int segment, const Eigen::VectorXd& u,
                                  double water_kg_m3) const;
    /// Hang under water, nose-up positive; absent where G is not below B.
    [[nodiscard]] static std::optional<Linearised> hang(const Balance& balance);
    [[nodiscard]] FallModel fall_model(Stage stage, const materials::WaterProperties& water) const;
    /// The steady fall in that model's water; absent where it does not sink.
    [[nodiscard]] std::optional<LinearisedFall> fall(FallModel& falls, const Balance& balance,
                                                     const Eigen::VectorXd& u) const;

private:
    Model(document::Document document, Evaluation evaluation, const Waters& water);
    void add_earlier();
    void add_hung();
    [[nodiscard]] const Model* find(std::optional<int> before_change, const document::HungList& with) const;

    /// The lure as it was, or is, for some readings.
    struct AsRead {
        std::optional<int> before_change;
        document::HungList with;
        std::shared_ptr<const Model> model;
    };

    document::Document document_;
    std::shared_ptr<const Evaluation> evaluation_; ///< of the lure with nothing hung on
    ledger::Ledger ledger_;                        ///< with what hangs on
    Waters water_;
    UncertainSums sums_;
    double drag_correction_ = 1.0;
    std::vector<Input> inputs_;
    std::vector<AsRead> as_read_;
};

} // namespace evenfall::bench
