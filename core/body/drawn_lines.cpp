#include "body/drawn_lines.hpp"

#include "body/body.hpp"
#include "body/drawing_check.hpp"
#include "body/measured.hpp"
#include "body/polygon.hpp"
#include "body/superellipse.hpp"

#include <algorithm>
#include <optional>

namespace evenfall::shape {

namespace {

/// Stations closer than this are treated as one.
constexpr double same_place_m = 1e-9;

std::vector<double> all_stations(const document::Shape& shape) {
    std::vector<double> x;
    x.reserve(shape.back.size() + shape.belly.size() + shape.half_width.size() +
              shape.section.curve().size());
    for (const auto* curve : {&shape.back, &shape.belly, &shape.half_width}) {
        for (const auto& p : *curve)
            x.push_back(p.x_m);
    }
    const double tail_m = shape.back.back().x_m;
    for (const auto& reading : shape.measured)
        x.push_back(std::clamp(reading.x_m, 0.0, tail_m));
    if (shape.section.kind != document::SectionKind::drawn && shape.section.curve().size() > 1) {
        for (const auto& p : shape.section.curve())
            x.push_back(std::clamp(p.x_m, 0.0, tail_m));
    }
    std::sort(x.begin(), x.end());
    x.erase(std::unique(x.begin(), x.end(), [](double a, double b) { return b - a < same_place_m; }),
            x.end());
    x.front() = 0.0;
    x.back() = tail_m;
    return x;
}

std::unique_ptr<const SectionFamily> make_family(const document::Section& section, const Curve& parameter) {
    switch (section.kind) {
    case document::SectionKind::chamfered:
        return std::make_unique<Chamfered>();
    case document::SectionKind::drawn:
        return std::make_unique<FreeOutline>(section.half_outline);
    case document::SectionKind::rounded:
        break;
    }
    return std::make_unique<Superellipse>(parameter.least(), parameter.greatest());
}

} // namespace

DrawnLines::DrawnLines(const document::Shape& shape) : breakpoints_m_(all_stations(shape)) {
    const Curve top(shape.back);
    const Curve bottom(shape.belly);
    const Curve half_width(shape.half_width);
    const bool has_curve = shape.section.kind != document::SectionKind::drawn;
    const Curve parameter(has_curve ? shape.section.curve() : document::CurvePoints{{0.0, 0.0}});
    family_ = make_family(shape.section, parameter);

    std::optional<Curve> wider;
    std::optional<Curve> higher;
    if (!shape.measured.empty()) {
        wider.emplace(half_width_correction(shape));
        higher.emplace(half_height_correction(shape));
    }
    pieces_.reserve(breakpoints_m_.size() - 1);
    for (std::size_t k = 0; k + 1 < breakpoints_m_.size(); ++k) {
        const double from = breakpoints_m_[k];
        const double middle = 0.5 * (from + breakpoints_m_[k + 1]);
        const Cubic over = top.piece_at(middle, from);
        const Cubic under = bottom.piece_at(middle, from);
        Piece piece{half_width.piece_at(middle, from), {}, {}, parameter.piece_at(middle, from)};
        for (std::size_t i = 0; i < 4; ++i) {
            piece.half_height[i] = 0.5 * (over[i] - under[i]);
            piece.centre[i] = 0.5 * (over[i] + under[i]);
        }
        if (wider) {
            const Cubic more_width = wider->piece_at(middle, from);
            const Cubic more_height = higher->piece_at(middle, from);
            for (std::size_t i = 0; i < 4; ++i) {
                piece.half_width[i] += more_width[i];
                piece.half_height[i] += more_height[i];
            }
        }
        pieces_.push_back(piece);
    }
}

Station DrawnLines::at(double x_m) const {
    const double x = std::clamp(x_m, breakpoints_m_.front(), breakpoints_m_.back());
    const auto after = std::upper_bound(breakpoints_m_.begin() + 1, breakpoints_m_.end() - 1, x);
    const auto k = static_cast<std::size_t>(after - breakpoints_m_.begin()) - 1;
    const Piece& piece = pieces_[k];
    const double t = x - breakpoints_m_[k];
    const CurveValue width = evaluated(piece.half_width, t);
    const CurveValue height = evaluated(piece.half_height, t);
    const CurveValue centre = evaluated(piece.centre, t);
    const CurveValue parameter = evaluated(piece.parameter, t);
    return {width.value, height.value, centre.value, parameter.value,
            width.slope, height.slope, centre.slope, parameter.slope};
}

Outcome<std::shared_ptr<const Lines>> drawn_lines(const document::Shape& shape) {
    Problems problems = drawing_problems(shape);
    if (!problems.empty()) return problems;
    return std::shared_ptr<const Lines>(std::make_shared<DrawnLines>(shape));
}

} // namespace evenfall::shape
