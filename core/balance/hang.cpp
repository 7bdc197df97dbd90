#include "balance/hang.hpp"

#include <cmath>

namespace evenfall::balance {

Hang hang(const ledger::Sum& sum) {
    const Vec3 arm = sum.b_m() - sum.g_m();
    Hang h;
    h.bg_m = arm.z;
    if (h.bg_m > 0.0) {
        h.pitch_rad = std::atan2(-arm.x, h.bg_m);
        h.roll_rad = std::atan2(-arm.y, h.bg_m);
    }
    return h;
}

double pitch_residual_kg_m(const ledger::Sum& sum, double pitch_rad) {
    const Vec3 b = sum.b_m();
    const double forward = sum.mass_kg * b.x - sum.mass_moment_kg_m.x;  // G forward of B
    const double below = sum.mass_kg * b.z - sum.mass_moment_kg_m.z;    // G below B
    return forward * std::cos(pitch_rad) + below * std::sin(pitch_rad);
}

}  // namespace evenfall::balance
