#include "bench/lead/box_qp.hpp"

#include "base/root.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace evenfall::lead {

namespace {

using Pair = std::array<double, 2>;

double inner(const Pair& a, const Pair& b) {
    return a[0] * b[0] + a[1] * b[1];
}

double column_at(const LeadVariable& c, double first, double second) {
    return std::clamp((c.row[0] * first + c.row[1] * second - c.slope) / c.bend, c.lower, c.upper);
}

double sum_of(std::span<const LeadVariable> columns, std::size_t row, double first, double second) {
    double sum = 0.0;
    for (const LeadVariable& c : columns)
        sum += c.row[row] * column_at(c, first, second);
    return sum;
}

/// The first multiplier that meets the first sum, with the second multiplier fixed: the sum is a rising,
/// piecewise linear function of it, so the result between two of its corners is exact.
double first_multiplier(std::span<const LeadVariable> columns, double target, double second,
                        std::vector<double>& corners) {
    corners.clear();
    for (const LeadVariable& c : columns) {
        if (c.row[0] == 0.0) continue;
        for (const double h : {c.lower, c.upper})
            corners.push_back((c.slope + c.bend * h - c.row[1] * second) / c.row[0]);
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

/// The nearest h where it has every variable at an end: there each of them would only come nearer beyond it
/// (Karush, Kuhn and Tucker). Far outside the reach that is found after a look or two.
std::optional<std::vector<double>> nearest_corner(std::span<const LeadVariable> columns, const Pair& target) {
    std::vector<double> h;
    double widest = size(target);
    for (const LeadVariable& c : columns) {
        h.push_back(c.lower);
        widest = std::max(widest, size(c.row) * std::max(-c.lower, c.upper));
    }
    constexpr int most_looks = 4;
    constexpr double clearly = 1e-6; // away from a tie
    for (int look = 0; look < most_looks; ++look) {
        Pair over{-target[0], -target[1]};
        for (std::size_t i = 0; i < h.size(); ++i) {
            over[0] += columns[i].row[0] * h[i];
            over[1] += columns[i].row[1] * h[i];
        }
        if (!(size(over) > clearly * widest)) return std::nullopt;
        bool settled = true;
        for (std::size_t i = 0; i < h.size(); ++i) {
            const double rise = inner(columns[i].row, over);
            if (!(std::abs(rise) > clearly * size(columns[i].row) * size(over))) return std::nullopt;
            const double end = rise > 0.0 ? columns[i].lower : columns[i].upper;
            settled = settled && end == h[i];
            h[i] = end;
        }
        if (settled) return h;
    }
    return std::nullopt;
}

} // namespace

double outside_by(std::span<const LeadVariable> columns, const Pair& target) {
    // A point is in a sum of segments exactly where no direction normal to one of them separates it.
    double most = -std::numeric_limits<double>::infinity();
    const auto ask = [&](const Pair& direction) {
        const double norm = size(direction);
        if (norm == 0.0) return;
        double support = 0.0;
        for (const LeadVariable& c : columns)
            support += std::max(inner(direction, c.row) * c.lower, inner(direction, c.row) * c.upper);
        most = std::max(most, (inner(direction, target) - support) / norm);
    };
    for (const LeadVariable& c : columns) {
        // Along the segments too: all of them may be parallel, and then only this direction bounds the sum.
        for (const Pair& direction : {Pair{-c.row[1], c.row[0]}, c.row}) {
            ask(direction);
            ask({-direction[0], -direction[1]});
        }
    }
    return std::isfinite(most) ? most : size(target);
}

bool reaches(std::span<const LeadVariable> columns, const Pair& target, double slack) {
    return outside_by(columns, target) <= slack;
}

std::optional<std::vector<double>> minimise(std::span<const LeadVariable> columns, const Pair& target) {
    double scale = size(target);
    for (const LeadVariable& c : columns)
        scale = std::max(scale, size(c.row) * std::max(-c.lower, c.upper));
    if (!reaches(columns, target, 1e-10 * std::max(scale, 1e-300))) return std::nullopt;

    // With the first multiplier always solved from the first sum, the second sum rises with the second
    // multiplier.
    std::vector<double> corners;
    corners.reserve(2 * columns.size());
    const auto over = [&](double second) {
        return sum_of(columns, 1, first_multiplier(columns, target[0], second, corners), second) - target[1];
    };
    double reach = 0.0;
    for (const LeadVariable& c : columns) {
        const double steep = std::fabs(c.row[1]);
        const double dearest =
            std::max(std::fabs(c.slope + c.bend * c.lower), std::fabs(c.slope + c.bend * c.upper));
        if (steep > 0.0) reach = std::max(reach, dearest / steep);
    }
    double low = -std::max(reach, 1e-300);
    double high = -low;
    for (int i = 0; i < 200 && over(low) >= 0.0; ++i)
        low *= 2.0;
    for (int i = 0; i < 200 && over(high) < 0.0; ++i)
        high *= 2.0;
    const double second = root_between(over, low, high, {});
    const double first = first_multiplier(columns, target[0], second, corners);
    std::vector<double> h;
    h.reserve(columns.size());
    for (const LeadVariable& c : columns)
        h.push_back(column_at(c, first, second));
    // Where no column changes the second sum, the search for its multiplier diverges, and the first with it.
    double sum = 0.0;
    for (std::size_t i = 0; i < h.size(); ++i)
        sum += columns[i].row[0] * h[i];
    if (!(std::fabs(sum - target[0]) <= 1e-6 * scale)) return std::nullopt;
    return h;
}

std::vector<double> nearest(std::span<const LeadVariable> columns, const Pair& target) {
    if (auto corner = nearest_corner(columns, target)) return std::move(*corner);
    if (auto both = minimise(columns, target)) return std::move(*both);
    // What is missing of each sum is a variable of its own. It has to be dear beside all the others together,
    // but not so much that these drown in rounding: by how much is missing, which the first round tells.
    constexpr double dear = 1e8;
    double cost = 0.0;
    double scale = size(target);
    for (const LeadVariable& c : columns) {
        const double widest = std::max(-c.lower, c.upper);
        cost += (0.5 * c.bend * widest + std::fabs(c.slope)) * widest;
        scale += size(c.row) * widest;
    }
    if (!(scale > 0.0)) scale = 1.0;
    if (!(cost > 0.0)) cost = 1.0;
    std::vector<LeadVariable> all(columns.begin(), columns.end());
    std::vector<double> h;
    double missing = scale;
    for (int round = 0; round < 2; ++round) {
        const double bend = dear * cost / (scale * std::max(missing, 1e-9 * scale));
        all.resize(columns.size());
        all.push_back({scale, bend, 0.0, {1.0, 0.0}, -scale});
        all.push_back({scale, bend, 0.0, {0.0, 1.0}, -scale});
        const auto found = minimise(all, target);
        if (!found) break;
        h = *found;
        missing = std::hypot(h[columns.size()], h[columns.size() + 1]);
    }
    if (h.empty()) { // not finite
        for (const LeadVariable& c : columns)
            h.push_back(c.lower);
    }
    h.resize(columns.size());
    return h;
}

} // namespace evenfall::lead
