#include "body/measured.hpp"

#include "body/curve.hpp"

#include <algorithm>
#include <vector>

namespace evenfall::shape {
namespace {

constexpr double same_place_m = 1e-9;

/// `read` gives a reading's half thickness, `drawn` the drawing's half thickness at x.
template <class Read, class Drawn>
document::CurvePoints correction(const document::Shape& shape, const Read& read, const Drawn& drawn) {
    const double tail_m = shape.back.back().x_m;
    document::CurvePoints points;
    for (const auto& reading : shape.measured) {
        const auto half = read(reading);
        if (!half) continue;
        const double x = std::clamp(reading.x_m, 0.0, tail_m);
        if (points.empty() && x > same_place_m) points.push_back({0.0, 0.0});
        points.push_back({x, *half - drawn(x)});
    }
    if (points.empty()) return {{0.0, 0.0}};
    if (points.back().x_m < tail_m - same_place_m) points.push_back({tail_m, 0.0});
    return points;
}

std::optional<double> halved(const std::optional<double>& whole) {
    if (!whole) return std::nullopt;
    return 0.5 * *whole;
}

} // namespace

document::CurvePoints half_width_correction(const document::Shape& shape) {
    const Curve plan(shape.half_width);
    return correction(
        shape, [](const document::Measured& reading) { return halved(reading.width_m); },
        [&](double x) { return plan.at(x).value; });
}

document::CurvePoints half_height_correction(const document::Shape& shape) {
    const Curve top(shape.back);
    const Curve bottom(shape.belly);
    return correction(
        shape, [](const document::Measured& reading) { return halved(reading.height_m); },
        [&](double x) { return 0.5 * (top.at(x).value - bottom.at(x).value); });
}

std::optional<double> without_wood(const document::Shape& shape) {
    const Curve top(shape.back);
    const Curve bottom(shape.belly);
    const Curve plan(shape.half_width);
    const Curve wider(half_width_correction(shape));
    const Curve higher(half_height_correction(shape));
    std::vector<double> stations;
    for (const auto* points : {&shape.back, &shape.belly, &shape.half_width}) {
        for (const auto& point : *points)
            stations.push_back(point.x_m);
    }
    for (const auto& reading : shape.measured)
        stations.push_back(reading.x_m);
    std::sort(stations.begin(), stations.end());
    const double tail_m = shape.back.back().x_m;
    constexpr int places = 32;
    for (std::size_t k = 0; k + 1 < stations.size(); ++k) {
        for (int i = 0; i <= places; ++i) {
            const double x = stations[k] + (stations[k + 1] - stations[k]) * i / places;
            // Nose and tail may come to a point.
            if (x < same_place_m || x > tail_m - same_place_m) continue;
            const double width = plan.at(x).value + wider.at(x).value;
            const double height = 0.5 * (top.at(x).value - bottom.at(x).value) + higher.at(x).value;
            if (width <= 0.0 || height <= 0.0) return x;
        }
    }
    return std::nullopt;
}

} // namespace evenfall::shape
