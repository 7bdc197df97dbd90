#pragma once

#include "ledger/fold.hpp"

#include <cmath>
#include <optional>

namespace evenfall::water {

/// How a body hangs under water when the only other force acts at its centre of buoyancy (held there, or
/// neutral).
struct Hang {
    double bg_m = 0.0; ///< height of B above G in the body's axes; stays upright only where positive
    std::optional<double> pitch_rad; ///< of the long axis, nose-up positive: tan θ = (x_G − x_B)/bg_across_m;
                                     ///< absent where bg ≤ 0
    std::optional<double>
        roll_rad; ///< starboard side down positive: tan φ = (y_G − y_B)/(z_B − z_G); absent where bg ≤ 0
};

/// Distance from G to B perpendicular to the long axis [m] once it has rolled until G is below that axis
/// through B: √(y² + z²) of the arm; its (negative) z where B is not above G and it rolls over.
[[nodiscard]] inline double bg_across_m(const Vec3& g_to_b_m) {
    return g_to_b_m.z > 0.0 ? std::hypot(g_to_b_m.y, g_to_b_m.z) : g_to_b_m.z;
}

/// Moment equilibrium about B under water: G comes vertically below B. Any angle, provided that B is above G.
[[nodiscard]] Hang hang(const ledger::Sum& sum);

/// Moment about B along y, per g [kg·m], that acts on a lure held at `pitch_rad`; zero where it hangs at that
/// pitch, positive where its nose goes down. Linear in the mass moments of what lies in the middle plane, and
/// nearly so of the rest: the lead plan solves for it.
[[nodiscard]] double pitch_residual_kg_m(const ledger::Sum& sum, double pitch_rad);

} // namespace evenfall::water
