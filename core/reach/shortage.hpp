#pragma once

#include "bench/lead/lead_plan.hpp"
#include "body/lines.hpp"
#include "reach/goal.hpp"

namespace evenfall::reach {

/// The document with nothing in the holes that the plan may fill, and those not drilled whose depth it may
/// choose: how deep they were must not forbid another shape.
[[nodiscard]] document::Document cleared(document::Document document);

/// How much is missing to a goal, quickly: what a search goes by, never what is offered.
class Shortage {
public:
    /// `plan`: of the lure as it is, not met or not sure enough.
    Shortage(const document::Document& document, const LeadPlan& plan, const Goal& goal);

    /// 0 or less where lead should do; infinite where the document cannot be built. In kilograms of lead, a
    /// hundredth of a metre of its place as much as its weight (moment_scale_m); for a lure that rolls over,
    /// of what its moments lack; for a chance that is too low, in hundredths of it.
    [[nodiscard]] double of(const document::Document& document) const;

    /// The changed document with its lead planned, where that meets the targets.
    [[nodiscard]] std::optional<document::Document> met(const document::Document& document) const;
    [[nodiscard]] bool unsure() const { return unsure_; }

private:
    [[nodiscard]] double aim_kg(const document::Document& document, const shape::Lines& lines,
                                const materials::WaterProperties& water) const;

    Goal goal_;
    double aim_share_ = 1.0; ///< weight in water for the fall asked, over that of a level fall without parts
    bool unsure_ = false;    ///< lead does it, but not surely enough
};

} // namespace evenfall::reach
