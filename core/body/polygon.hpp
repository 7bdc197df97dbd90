#pragma once

#include "body/section.hpp"
#include "document/document.hpp"

#include <array>
#include <vector>

namespace evenfall::shape {

/// A rectangle whose four corners are cut at 45° in the unit square. Fullness is the cut c: 0 the full
/// rectangle, 1 a diamond. Rim pieces: belly, chamfer, side, chamfer, back, each a fifth of τ's range.
/// Moments are exact.
class Chamfered final : public SectionFamily {
public:
    [[nodiscard]] UnitMoments moments(double cut) const override;
    [[nodiscard]] RimPoint rim(double cut, double tau) const override;
    [[nodiscard]] std::span<const double> rim_breaks() const override;
    [[nodiscard]] bool is_polygon() const override { return true; }
    [[nodiscard]] double upper_z(double cut, double y) const override;
    [[nodiscard]] double lower_z(double cut, double y) const override;
    [[nodiscard]] double half_width(double cut, double z) const override;
};

/// A half outline drawn by the builder, straight between its points and the same along the whole body;
/// parameter has no effect. Needs at least three points, (0, −1) first and (0, 1) last, Z never falling, Y
/// rising to 1 and then falling. Each piece has an equal share of τ's range. Moments are exact.
class FreeOutline final : public SectionFamily {
public:
    explicit FreeOutline(std::vector<document::OutlinePoint> points);

    [[nodiscard]] UnitMoments moments(double parameter) const override;
    [[nodiscard]] RimPoint rim(double parameter, double tau) const override;
    [[nodiscard]] std::span<const double> rim_breaks() const override;
    [[nodiscard]] bool is_polygon() const override { return true; }
    [[nodiscard]] double upper_z(double parameter, double y) const override;
    [[nodiscard]] double lower_z(double parameter, double y) const override;
    [[nodiscard]] double half_width(double parameter, double z) const override;

private:
    std::vector<document::OutlinePoint> points_;
    std::vector<double> breaks_;
    UnitMoments moments_;
};

} // namespace evenfall::shape
