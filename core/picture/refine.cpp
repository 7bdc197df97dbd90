#include "picture/refine.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::picture {

namespace {

constexpr double step_px = 0.5;

/// Value between the middles of pixels, bilinear; beyond the border that of the border.
double value_at(const Plane& plane, Spot spot) {
    const double x = std::clamp(spot.x - 0.5, 0.0, plane.width - 1.0);
    const double y = std::clamp(spot.y - 0.5, 0.0, plane.height - 1.0);
    const int x0 = std::min(static_cast<int>(x), plane.width - 2);
    const int y0 = std::min(static_cast<int>(y), plane.height - 2);
    const float* above = plane.at.data() + plane.index(x0, y0);
    const float* below = plane.at.data() + plane.index(x0, y0 + 1);
    const double u = x - x0;
    const double v = y - y0;
    return (1.0 - v) * ((1.0 - u) * above[0] + u * above[1]) + v * ((1.0 - u) * below[0] + u * below[1]);
}

/// Brightness across the ring at one spot, from inside to outside, in steps of step_px.
using Across = std::vector<double>;

std::vector<Spot> outward_normals(const Ring& ring) {
    const auto n = static_cast<std::ptrdiff_t>(ring.size());
    const double way = signed_area(ring) >= 0.0 ? 1.0 : -1.0;
    constexpr std::ptrdiff_t apart = 4;
    std::vector<Spot> normals(ring.size());
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        const Spot& a = ring[static_cast<std::size_t>((i - apart + n * apart) % n)];
        const Spot& b = ring[static_cast<std::size_t>((i + apart) % n)];
        const double dx = b.x - a.x;
        const double dy = b.y - a.y;
        const double length = std::hypot(dx, dy);
        if (length > 0.0) normals[static_cast<std::size_t>(i)] = {way * dy / length, -way * dx / length};
    }
    return normals;
}

Across across_at(const Plane& plane, Spot at, Spot normal, int half) {
    Across p(static_cast<std::size_t>(2 * half + 1));
    for (int k = -half; k <= half; ++k) {
        const double t = step_px * k;
        p[static_cast<std::size_t>(k + half)] = value_at(plane, {at.x + t * normal.x, at.y + t * normal.y});
    }
    return p;
}

double mean_of(const Across& p, std::size_t from, std::size_t to) {
    double sum = 0.0;
    for (std::size_t k = from; k < to; ++k)
        sum += p[k];
    return sum / static_cast<double>(to - from);
}

/// Is there a dark line between two brighter sides of much the same brightness?
bool looks_drawn(const Across& p) {
    const std::size_t fifth = std::max<std::size_t>(1, p.size() / 5);
    const double inside = mean_of(p, 0, fifth);
    const double outside = mean_of(p, p.size() - fifth, p.size());
    const double darkest = *std::min_element(p.begin(), p.end());
    const double depth = std::min(inside, outside) - darkest;
    return depth > 1.5 * std::abs(inside - outside);
}

struct Mark {
    double offset = 0.0;
    bool clear = false;
};

/// Middle of the dark line: the mean place of its darkness, weighed by darkness, down to half its depth.
/// Clear is a line whose flanks carry an edge on: at this smoothing they are a third as steep as it is deep.
Mark middle_of_line(const Across& p, double clear) {
    const auto darkest = std::min_element(p.begin(), p.end());
    const auto middle = static_cast<std::ptrdiff_t>(p.size() / 2);
    const std::size_t fifth = std::max<std::size_t>(1, p.size() / 5);
    const double ground = std::max(mean_of(p, 0, fifth), mean_of(p, p.size() - fifth, p.size()));
    const double depth = ground - *darkest;
    if (!(depth > 3.0 * clear)) return {};
    const double half = ground - 0.5 * depth;
    double sum = 0.0;
    double moment = 0.0;
    const auto add = [&](std::ptrdiff_t k) {
        const double weight = half - p[static_cast<std::size_t>(k)];
        sum += weight;
        moment += weight * static_cast<double>(k - middle);
    };
    const std::ptrdiff_t start = darkest - p.begin();
    for (std::ptrdiff_t k = start; k >= 0 && p[static_cast<std::size_t>(k)] < half; --k)
        add(k);
    for (std::ptrdiff_t k = start + 1;
         k < static_cast<std::ptrdiff_t>(p.size()) && p[static_cast<std::size_t>(k)] < half; ++k)
        add(k);
    return sum > 0.0 ? Mark{step_px * moment / sum, true} : Mark{};
}

/// Steepest place of the rim, by a parabola through the steepest step and its neighbours.
Mark steepest_place(const Across& p, double clear) {
    const std::size_t half = p.size() / 2;
    const auto middle = static_cast<double>(half);
    const auto steep = [&](std::size_t k) { return std::abs(p[k + 1] - p[k - 1]) / (2.0 * step_px); };
    std::size_t best = 0;
    double best_weight = 0.0;
    for (std::size_t k = 1; k + 1 < p.size(); ++k) {
        const double off = (static_cast<double>(k) - middle) / middle;
        const double weight = steep(k) * (1.0 - 0.5 * off * off);
        if (weight <= best_weight) continue;
        best_weight = weight;
        best = k;
    }
    if (best < 2 || best + 2 >= p.size() || steep(best) < clear) return {};
    const double before = steep(best - 1);
    const double here = steep(best);
    const double after = steep(best + 1);
    const double bend = before - 2.0 * here + after;
    const double shift = bend < 0.0 ? std::clamp(0.5 * (before - after) / bend, -1.0, 1.0) : 0.0;
    return {step_px * (static_cast<double>(best) - middle + shift), true};
}

/// Drops marks that slipped onto something else, `most` pixels off the middle one of their neighbours, and
/// those right beside a gap, which look partly past the end of the line: more than two of thirteen spots lack
/// one there.
void drop_strays(std::vector<Mark>& marks, double most) {
    constexpr std::ptrdiff_t side = 6;
    const std::vector<Mark> before = marks;
    const auto n = static_cast<std::ptrdiff_t>(marks.size());
    std::vector<double> near;
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        near.clear();
        for (std::ptrdiff_t k = i - side; k <= i + side; ++k) {
            const Mark& m = before[static_cast<std::size_t>((k + n) % n)];
            if (m.clear) near.push_back(m.offset);
        }
        Mark& mark = marks[static_cast<std::size_t>(i)];
        mark.clear = mark.clear && near.size() + 2 > 2 * side;
        if (!mark.clear) continue;
        const auto middle = near.begin() + static_cast<std::ptrdiff_t>(near.size() / 2);
        std::nth_element(near.begin(), middle, near.end());
        mark.clear = std::abs(mark.offset - *middle) <= most;
    }
}

/// Lays the spots without a mark straight between their marked neighbours.
void bridge(Ring& ring, const std::vector<Mark>& marks) {
    const std::size_t n = ring.size();
    const auto first = std::find_if(marks.begin(), marks.end(), [](const Mark& m) { return m.clear; });
    if (first == marks.end()) return;
    const auto start = static_cast<std::size_t>(first - marks.begin());
    std::size_t last = 0; // behind the first mark
    for (std::size_t k = 1; k <= n; ++k) {
        if (!marks[(start + k) % n].clear) continue;
        const Spot a = ring[(start + last) % n];
        const Spot b = ring[(start + k) % n];
        for (std::size_t j = last + 1; j < k; ++j) {
            const double t = static_cast<double>(j - last) / static_cast<double>(k - last);
            ring[(start + j) % n] = {a.x + t * (b.x - a.x), a.y + t * (b.y - a.y)};
        }
        last = k;
    }
}

/// Spots a pixel apart, smoothed along the ring.
Ring spaced_and_smoothed(const Ring& ring, double sigma) {
    return smoothed_ring(evenly_spaced(ring, static_cast<std::size_t>(std::max(16.0, length_of(ring)))),
                         sigma);
}

} // namespace

Refined refined(const Plane& plane, const Ring& rough, double reach, double clear) {
    Refined out;
    if (!(length_of(rough) >= 32.0)) return {rough, false, 0.0};
    Ring ring = spaced_and_smoothed(spaced_and_smoothed(rough, 3.0), 2.0);
    // The first pass finds the mark from afar, the next ones are near it, with the truer normals.
    for (int pass = 0; pass < 3; ++pass) {
        const double look = pass == 0 ? reach : std::min(reach, 6.0);
        const int half = std::max(6, static_cast<int>(std::ceil(look / step_px)));
        const std::vector<Spot> normals = outward_normals(ring);
        std::vector<Across> sections(ring.size());
        for (std::size_t i = 0; i < ring.size(); ++i)
            sections[i] = across_at(plane, ring[i], normals[i], half);
        if (pass == 0) {
            const auto drawn = std::count_if(sections.begin(), sections.end(), looks_drawn);
            out.drawn_line = 2 * drawn > static_cast<std::ptrdiff_t>(ring.size());
        }
        std::vector<Mark> marks(ring.size());
        for (std::size_t i = 0; i < ring.size(); ++i)
            marks[i] =
                out.drawn_line ? middle_of_line(sections[i], clear) : steepest_place(sections[i], clear);
        drop_strays(marks, pass == 0 ? 3.0 : 1.5);
        const auto backed = std::count_if(marks.begin(), marks.end(), [](const Mark& m) { return m.clear; });
        out.backed = static_cast<double>(backed) / static_cast<double>(marks.size());
        for (std::size_t i = 0; i < ring.size(); ++i) {
            ring[i].x += marks[i].offset * normals[i].x;
            ring[i].y += marks[i].offset * normals[i].y;
        }
        bridge(ring, marks);
        ring = spaced_and_smoothed(ring, pass == 2 ? 1.2 : 2.0);
    }
    out.ring = std::move(ring);
    return out;
}

} // namespace evenfall::picture
