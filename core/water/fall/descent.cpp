#include "water/fall/descent.hpp"

#include "ledger/fold.hpp"
#include "water/hang.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::fall {

MassProperties mass_properties_of(const ledger::Ledger& ledger, Stage stage) {
    ledger::Sum sum;
    for (const ledger::Line& line : ledger) {
        if (line.stage <= stage) sum += line;
    }
    MassProperties w;
    w.mass_kg = sum.mass.kg;
    w.displaced_m3 = sum.displaced_m3;
    w.b_m = sum.b_m();
    // It falls with the roll in which it hangs: G below the long axis through B.
    const Vec3 arm = w.b_m - sum.g_m();
    const double plumb = water::bg_across_m(arm);
    w.g_m = {sum.g_m().x, w.b_m.y, w.b_m.z - plumb};
    // With this roll it pitches about the axis that is then level: (0, up.z, −up.y) in its own axes.
    const Inertia mass = ledger::inertia_about(ledger, stage, w.b_m);
    const Vec3 up = arm.z > 0.0 ? Vec3{0.0, arm.y / plumb, arm.z / plumb} : Vec3{0.0, 0.0, 1.0};
    w.pitch_inertia_kg_m2 = mass.yy * up.z * up.z + mass.zz * up.y * up.y + 2.0 * mass.yz * up.y * up.z;
    return w;
}

double drag_correction(const document::Document& document) {
    double factor = 1.0;
    for (const document::Correction& c : document.corrections) {
        if (c.of == document::Cause::drag) factor *= c.factor;
    }
    return factor;
}

FallingLure::FallingLure(const shape::Body& body, const ledger::Ledger& ledger,
                         const document::Document& document, const materials::WaterProperties& water,
                         Stage stage)
    : FallingLure(std::make_shared<const HydroBody>(fall::hull(body)), body, ledger, document, water, stage) {
}

FallingLure::FallingLure(std::shared_ptr<const HydroBody> hull, const shape::Body& body,
                         const ledger::Ledger& ledger, const document::Document& document,
                         const materials::WaterProperties& water, Stage stage)
    : hull_(std::move(hull)), weights_(mass_properties_of(ledger, stage)),
      items_(drag_items(*body.lines, document, ledger, stage)), water_(water) {
    closure_.drag = drag_correction(document);
}

void FallingLure::set(const MassProperties& weights, double drag) {
    weights_ = weights;
    closure_.drag = drag;
}

FallingLure::FallingLure(std::shared_ptr<const HydroBody> hull, const MassProperties& weights,
                         std::vector<DragItem> items, const materials::WaterProperties& water,
                         const ModelFactors& closure)
    : hull_(std::move(hull)), weights_(weights), items_(std::move(items)), water_(water), closure_(closure) {}

double FallingLure::in_water_kg() const {
    return weights_.mass_kg - water_.density_kg_m3 * weights_.displaced_m3;
}

std::optional<double> FallingLure::hang_pitch_rad() const {
    const double below = weights_.b_m.z - weights_.g_m.z;
    if (!(below > 0.0)) return std::nullopt;
    return std::atan2(weights_.g_m.x - weights_.b_m.x, below);
}

FallingLure FallingLure::with_in_water(double in_water_kg) const {
    FallingLure other = *this;
    other.weights_.mass_kg = water_.density_kg_m3 * weights_.displaced_m3 + in_water_kg;
    other.weights_.pitch_inertia_kg_m2 *= other.weights_.mass_kg / weights_.mass_kg;
    return other;
}

FallingLure FallingLure::in(const materials::WaterProperties& water) const {
    FallingLure other = *this;
    other.water_ = water;
    return other;
}

const char* fall_attitude_text(const SteadyFall& fall) {
    const bool rises = fall.vertical_m_s < 0.0;
    switch (fall.manner) {
    case FallAttitude::level:
        return "level";
    case FallAttitude::nose_down:
        return rises ? "nose-down slide" : "nose-down glide";
    case FallAttitude::nose_first:
        return "nose first";
    case FallAttitude::tail_down:
        return rises ? "tail-down glide" : "tail-down slide";
    case FallAttitude::tail_first:
        return "tail first";
    }
    return "";
}

} // namespace evenfall::fall
