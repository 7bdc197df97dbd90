#include "water/hang.hpp"

namespace evenfall::water {

Hang hang(const ledger::Sum& sum) {
    const Vec3 arm = sum.b_m() - sum.g_m();
    Hang h;
    h.bg_m = arm.z;
    if (h.bg_m > 0.0) {
        h.pitch_rad = std::atan2(-arm.x, bg_across_m(arm));
        h.roll_rad = std::atan2(-arm.y, h.bg_m);
    }
    return h;
}

double pitch_residual_kg_m(const ledger::Sum& sum, double pitch_rad) {
    const Vec3 arm = sum.mass.kg * sum.b_m() - sum.mass_moment_kg_m;
    return arm.x * std::cos(pitch_rad) + bg_across_m(arm) * std::sin(pitch_rad);
}

} // namespace evenfall::water
