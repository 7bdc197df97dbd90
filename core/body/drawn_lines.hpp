#pragma once

#include "body/curve.hpp"
#include "body/lines.hpp"
#include "document/document.hpp"

#include <memory>
#include <vector>

namespace evenfall::shape {

/// The lines of a document: back, belly, plan and parameter, each drawn through its own stations. Between
/// neighbouring stations of all curves together each of them is a single cubic; these cubics are stored
/// together. Caliper readings of the carved body are added to half width and half height (measured.hpp).
class DrawnLines final : public Lines {
public:
    /// The shape must have no drawing problems (drawing_check.hpp).
    explicit DrawnLines(const document::Shape& shape);

    [[nodiscard]] Station at(double x_m) const override;
    [[nodiscard]] std::span<const double> breakpoints_m() const override { return breakpoints_m_; }
    [[nodiscard]] const SectionFamily& family() const override { return *family_; }

private:
    struct Piece {
        Cubic half_width;
        Cubic half_height;
        Cubic centre;
        Cubic parameter;
    };
    std::vector<double> breakpoints_m_;
    std::vector<Piece> pieces_;
    std::unique_ptr<const SectionFamily> family_;
};

} // namespace evenfall::shape
