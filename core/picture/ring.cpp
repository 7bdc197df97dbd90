#include "picture/ring.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::picture {

Ring border_of(const Mask& patch) {
    // Ways: 0 right, 1 down, 2 left, 3 up. The patch stays on the right hand.
    constexpr std::array<int, 4> step_x{1, 0, -1, 0};
    constexpr std::array<int, 4> step_y{0, 1, 0, -1};
    // The pixel ahead on the right hand of a corner; ahead on the left is that of the way before.
    constexpr std::array<int, 4> ahead_x{0, -1, -1, 0};
    constexpr std::array<int, 4> ahead_y{0, 0, -1, -1};
    const auto first = std::find(patch.at.begin(), patch.at.end(), 1);
    if (first == patch.at.end()) return {};
    const auto start = static_cast<int>(first - patch.at.begin());
    int x = start % patch.width;
    int y = start / patch.width;
    std::size_t way = 0;
    const auto inside = [&](std::size_t k) {
        const int at_x = x + ahead_x[k];
        const int at_y = y + ahead_y[k];
        return patch.holds(at_x, at_y) && patch.at[patch.index(at_x, at_y)] != 0;
    };
    Ring ring;
    do {
        ring.push_back({static_cast<double>(x), static_cast<double>(y)});
        x += step_x[way];
        y += step_y[way];
        if (!inside(way))
            way = (way + 1) % 4;
        else if (inside((way + 3) % 4))
            way = (way + 3) % 4;
    } while (x != start % patch.width || y != start / patch.width || way != 0);
    return ring;
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
        const Spot& b = ring[(i + 1) % ring.size()];
        length += std::hypot(b.x - ring[i].x, b.y - ring[i].y);
    }
    return length;
}

Ring evenly_spaced(const Ring& ring, std::size_t count) {
    Ring out;
    const double step = length_of(ring) / static_cast<double>(count);
    if (!(step > 0.0)) return out;
    double gone = 0.0; // up to spot i
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Spot& a = ring[i];
        const Spot& b = ring[(i + 1) % ring.size()];
        const double piece = std::hypot(b.x - a.x, b.y - a.y);
        for (; out.size() < count && step * static_cast<double>(out.size()) < gone + piece;) {
            const double t = (step * static_cast<double>(out.size()) - gone) / piece;
            out.push_back({a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)});
        }
        gone += piece;
    }
    return out;
}

Ring smoothed_ring(const Ring& ring, double sigma) {
    const auto n = static_cast<std::ptrdiff_t>(ring.size());
    const auto reach = static_cast<std::ptrdiff_t>(std::lround(4.0 * sigma));
    Ring out(ring.size());
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        Spot sum;
        double weights = 0.0;
        for (std::ptrdiff_t k = -reach; k <= reach; ++k) {
            const double off = static_cast<double>(k) / sigma;
            const double weight = std::exp(-0.5 * off * off);
            const Spot& s = ring[static_cast<std::size_t>(((i + k) % n + n) % n)];
            sum.x += weight * s.x;
            sum.y += weight * s.y;
            weights += weight;
        }
        out[static_cast<std::size_t>(i)] = {sum.x / weights, sum.y / weights};
    }
    return out;
}

} // namespace evenfall::picture
