#include "bench/uncertainty/posterior.hpp"

#include <cmath>
#include <numbers>

namespace evenfall {

double chi_square_above(double chi_square, int readings) {
    if (!(chi_square > 0.0) || readings < 1) return 1.0;
    // Abramowitz and Stegun 1964, 26.4.4 and 26.4.5: a sum of e^(−h)·h^k/Γ(k + 1), h half of chi-square, over
    // k up to half the readings less one, from 0 or, with an odd number, from ½ besides erfc(√h).
    const double h = 0.5 * chi_square;
    const bool odd = readings % 2 != 0;
    double k = odd ? 0.5 : 0.0;
    double term = std::exp(-h) * (odd ? std::sqrt(h) * 2.0 / std::sqrt(std::numbers::pi) : 1.0);
    double above = odd ? std::erfc(std::sqrt(h)) : 0.0;
    for (int left = readings / 2; left > 0; --left) {
        above += term;
        k += 1.0;
        term *= h / k;
    }
    return above;
}

namespace bench {

Agreement agreement(const Posterior& p) {
    Agreement a;
    a.readings = static_cast<int>(p.fit.used.size());
    a.chi_square = p.fit.posterior.chi_square();
    a.chance = chi_square_above(a.chi_square, a.readings);
    if (a.chance < disagrees) {
        a.warning = "Together the readings lie farther off than the spreads believed of wood, carving and "
                    "weights allow: the chances told here are too hopeful. See that wood, moisture, carving "
                    "and parts are entered as they are, and read again.";
    }
    return a;
}

} // namespace bench

} // namespace evenfall
