#pragma once

#include "body/section.hpp"

#include <array>

namespace evenfall::shape {

/// Sections |Y|ⁿ + |Z|ⁿ = 1. Fullness is the exponent n: 1 a diamond, 2 an ellipse, large a box. Valid for n
/// > 1.
///
/// Moments by Dirichlet's integral, closed in Gamma functions. Where n varies along the body, they are
/// polynomials in 1/n fitted over the range in use (within 1e-9 of the closed form over 1.2 to 12, by test).
/// The rim runs by t = Z/Y from the widest point to the diagonal and by t = Y/Z from there to the crest: Y =
/// (1 + tⁿ)^(−1/n), Z = t·Y, and the same with Y and Z exchanged. Smooth and regular on each eighth. The
/// usual form with cosθ^(2/n) has infinite slopes for n > 2, and the polar angle without a break at the
/// diagonal misses the corners of large n.
class Superellipse final : public SectionFamily {
public:
    /// The range of exponents in use; others are valid too, only slower.
    Superellipse(double smallest_exponent, double largest_exponent);

    [[nodiscard]] UnitMoments moments(double exponent) const override;
    [[nodiscard]] RimPoint rim(double exponent, double tau) const override;
    void rims(double exponent, std::span<const double> tau, std::span<RimPoint> points) const override;
    [[nodiscard]] std::span<const double> rim_breaks() const override;
    [[nodiscard]] double upper_z(double exponent, double y) const override;
    [[nodiscard]] double lower_z(double exponent, double y) const override;
    [[nodiscard]] double half_width(double exponent, double z) const override;

    /// The closed form.
    [[nodiscard]] static UnitMoments exact_moments(double exponent);

private:
    static constexpr std::size_t fit_size = 16;

    double smallest_ = 2.0;
    double largest_ = 2.0;
    UnitMoments constant_;                    ///< used where smallest = largest
    std::array<double, fit_size> area_fit_{}; ///< Chebyshev coefficients in 1/n over the range
    std::array<double, fit_size> second_fit_{};
};

} // namespace evenfall::shape
