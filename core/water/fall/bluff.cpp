#include "water/fall/bluff.hpp"

#include <cmath>

namespace evenfall::fall {

double sphere_drag_coefficient(double reynolds) {
    return 24.0 / reynolds * (1.0 + 0.150 * std::pow(reynolds, 0.681)) + 0.407 / (1.0 + 8710.0 / reynolds);
}

double wire_drag_coefficient(double reynolds) {
    return 6.8 * std::pow(reynolds, -0.89) + 1.96 / std::sqrt(reynolds) -
           4e-4 * reynolds / (1.0 + 3.64e-7 * reynolds * reynolds) + 1.18;
}

} // namespace evenfall::fall
