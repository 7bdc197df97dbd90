#pragma once

#include "ledger/fold.hpp"

#include <cmath>
#include <optional>

namespace evenfall::water {

/// How a body hangs under water when the only other force acts at its centre of buoyancy (held there, or
/// neutral).
struct Hang {
    double bg_m = 0.0; ///< height of B over G in the body's axes; stays upright only where positive
    std::optional<double>
        pitch_rad; ///< of the long axis, nose-up positive: tan θ = (x_G − x_B)/plumb_m; absent where bg ≤ 0
    std::optional<double>
        roll_rad; ///< starboard side down positive: tan φ = (y_G − y_B)/(z_B − z_G); absent where bg ≤ 0
};

/// From G to B [m], square to the long axis, once it has rolled until G lies under that axis through B: √(y²
/// + z²) of the arm, and its z where B is not over G, from where it rolls over.
[[nodiscard]] inline double plumb_m(const Vec3& g_to_b_m) {
    return g_to_b_m.z > 0.0 ? std::hypot(g_to_b_m.y, g_to_b_m.z) : g_to_b_m.z;
}

/// Moment equilibrium about B under water: G comes to lie plumb below B. No limit on the angle but the sign
/// of BG.
[[nodiscard]] Hang hang(const ledger::Sum& sum);

/// The moment that keeps a lure from hanging at `pitch_rad`, per g, about B along y [kg·m]; zero where it
/// hangs there, positive where its nose goes down. Linear in the mass moments of what lies in the middle
/// plane, and nearly so of the rest: the lead plan solves for it.
[[nodiscard]] double pitch_residual_kg_m(const ledger::Sum& sum, double pitch_rad);

} // namespace evenfall::water
