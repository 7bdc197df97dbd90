#include "bench/lead/box_qp.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::lead {

namespace {

using Pair = std::array<double, 2>;

double inner(const Pair& a, const Pair& b) {
    return a[0] * b[0] + a[1] * b[1];
}

double column_at(const Column& c, double first, double second) {
    return std::clamp((c.row[0] * first + c.row[1] * second - c.slope) / c.bend, 0.0, c.upper);
}

double sum_of(std::span<const Column> columns, std::size_t row, double first, double second) {
    double sum = 0.0;
    for (const Column& c : columns)
        sum += c.row[row] * column_at(c, first, second);
    return sum;
}

/// The first multiplier that meets the first sum, with the second multiplier fixed: the sum is a rising,
/// piecewise linear function of it, so the result between two of its corners is exact.
double first_multiplier(std::span<const Column> columns, double target, double second,
                        std::vector<double>& corners) {
    corners.clear();
    for (const Column& c : columns) {
        if (c.row[0] == 0.0) continue;
        const double empty = (c.slope - c.row[1] * second) / c.row[0];
        corners.push_back(empty);
        corners.push_back(empty + c.bend * c.upper / c.row[0]);
    }
    if (corners.empty()) return 0.0;
    std::sort(corners.begin(), corners.end());
    std::size_t below = 0;
    std::size_t above = corners.size() - 1;
    if (sum_of(columns, 0, corners[below], second) >= target) return corners[below];
    if (sum_of(columns, 0, corners[above], second) <= target) return corners[above];
    while (above - below > 1) {
        const std::size_t mid = (above + below) / 2;
        (sum_of(columns, 0, corners[mid], second) <= target ? below : above) = mid;
    }
    const double low = sum_of(columns, 0, corners[below], second);
    const double high = sum_of(columns, 0, corners[above], second);
    if (high <= low) return corners[below];
    return corners[below] + (corners[above] - corners[below]) * (target - low) / (high - low);
}

double size(const Pair& p) {
    return std::sqrt(inner(p, p));
}

} // namespace

bool reaches(std::span<const Column> columns, const Pair& target, double slack) {
    // A point is in a sum of segments exactly where no direction normal to one of them separates it.
    const auto separated = [&](const Pair& direction) {
        const double norm = size(direction);
        if (norm == 0.0) return false;
        double most = 0.0;
        for (const Column& c : columns)
            most += std::max(inner(direction, c.row), 0.0) * c.upper;
        return inner(direction, target) - most > slack * norm;
    };
    if (columns.empty()) return size(target) <= slack;
    for (const Column& c : columns) {
        const Pair normal{-c.row[1], c.row[0]};
        if (separated(normal) || separated({-normal[0], -normal[1]})) return false;
        // Along the segments too: all of them may be parallel, and then only this direction bounds the sum.
        if (separated(c.row) || separated({-c.row[0], -c.row[1]})) return false;
    }
    return true;
}

std::optional<std::vector<double>> minimise(std::span<const Column> columns, const Pair& target) {
    double scale = size(target);
    for (const Column& c : columns)
        scale = std::max(scale, size(c.row) * c.upper);
    if (!reaches(columns, target, 1e-10 * std::max(scale, 1e-300))) return std::nullopt;

    // With the first multiplier always solved from the first sum, the second sum rises with the second
    // multiplier.
    std::vector<double> corners;
    corners.reserve(2 * columns.size());
    const auto short_of = [&](double second) {
        return sum_of(columns, 1, first_multiplier(columns, target[0], second, corners), second) < target[1];
    };
    double reach = 0.0;
    for (const Column& c : columns) {
        const double steep = std::fabs(c.row[1]);
        if (steep > 0.0) reach = std::max(reach, (c.slope + c.bend * c.upper) / steep);
    }
    double low = -std::max(reach, 1e-300);
    double high = -low;
    for (int i = 0; i < 200 && !short_of(low); ++i)
        low *= 2.0;
    for (int i = 0; i < 200 && short_of(high); ++i)
        high *= 2.0;
    for (int i = 0; i < 1200; ++i) {
        const double mid = 0.5 * (low + high);
        if (mid <= low || mid >= high) break; // neighbouring floating-point numbers
        (short_of(mid) ? low : high) = mid;
    }
    const double first = first_multiplier(columns, target[0], high, corners);
    std::vector<double> h;
    h.reserve(columns.size());
    for (const Column& c : columns)
        h.push_back(column_at(c, first, high));
    // Where no column changes the second sum, the search for its multiplier diverges, and the first with it.
    double sum = 0.0;
    for (std::size_t i = 0; i < h.size(); ++i)
        sum += columns[i].row[0] * h[i];
    if (!(std::fabs(sum - target[0]) <= 1e-6 * scale)) return std::nullopt;
    return h;
}

std::vector<double> extreme(std::span<const Column> columns, double target, bool want_most) {
    std::vector<double> h(columns.size(), 0.0);
    std::vector<std::size_t> order;
    double left = target;
    for (std::size_t i = 0; i < columns.size(); ++i) {
        const Column& c = columns[i];
        if (c.row[0] != 0.0)
            order.push_back(i);
        else if (want_most ? c.row[1] > 0.0 : c.row[1] < 0.0)
            h[i] = c.upper;
        if (c.row[0] < 0.0) left -= c.row[0] * c.upper;
    }
    const auto ratio = [&](std::size_t i) { return columns[i].row[1] / columns[i].row[0]; };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return want_most ? ratio(a) > ratio(b) : ratio(a) < ratio(b);
    });
    for (const std::size_t i : order) {
        const Column& c = columns[i];
        const double per_m = std::fabs(c.row[0]);
        const double taken = std::clamp(left / per_m, 0.0, c.upper);
        h[i] = c.row[0] > 0.0 ? taken : c.upper - taken;
        left -= taken * per_m;
    }
    return h;
}

} // namespace evenfall::lead
