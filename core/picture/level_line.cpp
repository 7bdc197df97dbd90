#include "picture/level_line.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::picture {

namespace {

/// Corners of a cell count 0 upper left, 1 upper right, 2 lower right, 3 lower left; side k runs from corner
/// k to the next.
constexpr std::array<int, 4> corner_x{0, 1, 1, 0};
constexpr std::array<int, 4> corner_y{0, 0, 1, 1};
constexpr std::array<int, 4> step_x{0, 1, 0, -1}; ///< over side k into the next cell
constexpr std::array<int, 4> step_y{-1, 0, 1, 0};

class Walker {
public:
    Walker(const Plane& plane, double level) : plane_(plane), level_(level), used_(plane.at.size(), 0) {}

    Ring longest() {
        Ring best;
        double best_length = 0.0;
        for (int y = 0; y + 1 < plane_.height; ++y) {
            for (int x = 0; x + 1 < plane_.width; ++x) {
                for (int side = 0; side < 4; ++side) {
                    if (!starts(x, y, side) || used(x, y, side)) continue;
                    Ring ring;
                    if (!follow(x, y, side, ring)) continue;
                    const double length = length_of(ring);
                    if (length <= best_length) continue;
                    best_length = length;
                    best = std::move(ring);
                }
            }
        }
        return best;
    }

private:
    double value(int x, int y, int corner) const {
        return static_cast<double>(plane_.at[plane_.index(x + corner_x[static_cast<std::size_t>(corner)],
                                                          y + corner_y[static_cast<std::size_t>(corner)])]) -
               level_;
    }
    bool above(int x, int y, int corner) const { return value(x, y, corner) >= 0.0; }

    /// A line enters the cell over this side where its first corner is above and its second is not: above
    /// stays on one hand.
    bool starts(int x, int y, int side) const { return above(x, y, side) && !above(x, y, (side + 1) % 4); }

    bool used(int x, int y, int side) const { return (used_[plane_.index(x, y)] >> side & 1) != 0; }

    Spot place(int x, int y, int side) const {
        const int next = (side + 1) % 4;
        const double a = value(x, y, side);
        const double b = value(x, y, next);
        const double t = a / (a - b);
        const auto s = static_cast<std::size_t>(side);
        const auto n = static_cast<std::size_t>(next);
        return {x + 0.5 + corner_x[s] + t * (corner_x[n] - corner_x[s]),
                y + 0.5 + corner_y[s] + t * (corner_y[n] - corner_y[s])};
    }

    /// Where the line that came in over `side` goes out. Sides where it may leave run from below to above.
    int way_out(int x, int y, int side) const {
        const auto leaves = [&](int k) { return !above(x, y, k) && above(x, y, (k + 1) % 4); };
        const int left = (side + 3) % 4;
        const int right = (side + 1) % 4;
        if (leaves(left) && leaves(right)) {
            double mean = 0.0;
            for (int k = 0; k < 4; ++k)
                mean += value(x, y, k);
            // Mean above: the two corners above hang together, the line turns round the corner below, which
            // lies behind side's end.
            return mean >= 0.0 ? right : left;
        }
        for (int k = 1; k < 4; ++k) {
            if (leaves((side + k) % 4)) return (side + k) % 4;
        }
        return -1;
    }

    bool follow(int x, int y, int side, Ring& ring) {
        const int x0 = x;
        const int y0 = y;
        const int side0 = side;
        do {
            if (used(x, y, side)) return false;
            used_[plane_.index(x, y)] = static_cast<std::uint8_t>(used_[plane_.index(x, y)] | 1U << side);
            ring.push_back(place(x, y, side));
            const int out = way_out(x, y, side);
            if (out < 0) return false;
            x += step_x[static_cast<std::size_t>(out)];
            y += step_y[static_cast<std::size_t>(out)];
            if (x < 0 || y < 0 || x + 1 >= plane_.width || y + 1 >= plane_.height) return false;
            side = (out + 2) % 4;
        } while (x != x0 || y != y0 || side != side0);
        return true;
    }

    const Plane& plane_;
    double level_;
    std::vector<std::uint8_t> used_;
};

} // namespace

Ring level_line(const Plane& plane, double level) {
    if (plane.width < 2 || plane.height < 2) return {};
    return Walker(plane, level).longest();
}

double signed_area(const Ring& ring) {
    double twice = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Spot& a = ring[i];
        const Spot& b = ring[(i + 1) % ring.size()];
        twice += a.x * b.y - b.x * a.y;
    }
    return 0.5 * twice;
}

double length_of(const Ring& ring) {
    double length = 0.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Spot& a = ring[i];
        const Spot& b = ring[(i + 1) % ring.size()];
        length += std::hypot(b.x - a.x, b.y - a.y);
    }
    return length;
}

Ring evenly_spaced(const Ring& ring, std::size_t count) {
    Ring out;
    const double length = length_of(ring);
    if (ring.size() < 2 || count == 0 || !(length > 0.0)) return out;
    out.reserve(count);
    const double step = length / static_cast<double>(count);
    double gone = 0.0; // up to spot i
    std::size_t i = 0;
    for (std::size_t k = 0; k < count; ++k) {
        const double want = step * static_cast<double>(k);
        for (;;) {
            const Spot& a = ring[i];
            const Spot& b = ring[(i + 1) % ring.size()];
            const double piece = std::hypot(b.x - a.x, b.y - a.y);
            if (gone + piece > want || i + 1 == ring.size()) {
                const double t = piece > 0.0 ? std::clamp((want - gone) / piece, 0.0, 1.0) : 0.0;
                out.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
                break;
            }
            gone += piece;
            ++i;
        }
    }
    return out;
}

Ring smoothed_ring(const Ring& ring, double sigma) {
    const auto n = static_cast<std::ptrdiff_t>(ring.size());
    const auto reach = static_cast<std::ptrdiff_t>(std::lround(4.0 * sigma));
    if (n < 3 || reach < 1) return ring;
    std::vector<double> kernel;
    double sum = 0.0;
    for (std::ptrdiff_t k = -reach; k <= reach; ++k) {
        const auto off = static_cast<double>(k);
        kernel.push_back(std::exp(-0.5 * off * off / (sigma * sigma)));
        sum += kernel.back();
    }
    Ring out(ring.size());
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        Spot mean;
        for (std::ptrdiff_t k = -reach; k <= reach; ++k) {
            const double w = kernel[static_cast<std::size_t>(k + reach)] / sum;
            const Spot& s = ring[static_cast<std::size_t>(((i + k) % n + n) % n)];
            mean.x += w * s.x;
            mean.y += w * s.y;
        }
        out[static_cast<std::size_t>(i)] = mean;
    }
    return out;
}

} // namespace evenfall::picture
