#include "picture/refine.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::picture {

namespace {

constexpr double step_px = 0.5;

/// Brightness along the normal of one spot, from −reach (inside) to +reach (outside).
using Profile = std::vector<double>;

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

Profile profile_at(const Plane& plane, Spot at, Spot normal, int half) {
    Profile p(static_cast<std::size_t>(2 * half + 1));
    for (int k = -half; k <= half; ++k) {
        const double t = step_px * k;
        p[static_cast<std::size_t>(k + half)] = value_at(plane, {at.x + t * normal.x, at.y + t * normal.y});
    }
    return p;
}

double mean_of(const Profile& p, std::size_t from, std::size_t to) {
    double sum = 0.0;
    for (std::size_t k = from; k < to; ++k)
        sum += p[k];
    return sum / static_cast<double>(to - from);
}

/// Is there a dark line between two brighter sides of much the same brightness?
bool looks_drawn(const Profile& p) {
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
Mark middle_of_line(const Profile& p, double clear) {
    const auto darkest = std::min_element(p.begin(), p.end());
    const auto middle = static_cast<std::ptrdiff_t>(p.size() / 2);
    const std::size_t fifth = std::max<std::size_t>(1, p.size() / 5);
    const double ground = std::max(mean_of(p, 0, fifth), mean_of(p, p.size() - fifth, p.size()));
    const double depth = ground - *darkest;
    if (!(depth > 2.0 * clear)) return {};
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
Mark steepest_place(const Profile& p, double clear) {
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

/// Offsets of spots without a mark of their own run straight between their marked neighbours.
void bridge(std::vector<Mark>& marks) {
    const std::size_t n = marks.size();
    const auto first = std::find_if(marks.begin(), marks.end(), [](const Mark& m) { return m.clear; });
    if (first == marks.end()) return;
    const auto start = static_cast<std::size_t>(first - marks.begin());
    std::size_t last = start;
    for (std::size_t k = 1; k <= n; ++k) {
        const std::size_t i = (start + k) % n;
        if (!marks[i].clear) continue;
        const std::size_t apart = (i + n - last) % n == 0 ? n : (i + n - last) % n;
        for (std::size_t j = 1; j < apart; ++j) {
            const double t = static_cast<double>(j) / static_cast<double>(apart);
            marks[(last + j) % n].offset = (1.0 - t) * marks[last].offset + t * marks[i].offset;
        }
        last = i;
    }
}

/// A mark far off the middle one of its neighbours is a slip onto something else.
void drop_slips(std::vector<Mark>& marks, double most) {
    constexpr std::ptrdiff_t side = 7;
    const auto n = static_cast<std::ptrdiff_t>(marks.size());
    std::vector<bool> slip(marks.size(), false);
    std::vector<double> near;
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        near.clear();
        for (std::ptrdiff_t k = -side; k <= side; ++k) {
            const Mark& m = marks[static_cast<std::size_t>((i + k + n * side) % n)];
            if (m.clear) near.push_back(m.offset);
        }
        if (near.empty()) continue;
        const auto middle = near.begin() + static_cast<std::ptrdiff_t>(near.size() / 2);
        std::nth_element(near.begin(), middle, near.end());
        slip[static_cast<std::size_t>(i)] =
            std::abs(marks[static_cast<std::size_t>(i)].offset - *middle) > most;
    }
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (slip[i]) marks[i].clear = false;
    }
}

/// Place and direction at the near end of a parabola laid through the marked spots beside a gap; `way` leads
/// away from it.
struct End {
    Spot at;
    Spot along; ///< per step of one spot, in the ring's order
    bool sure = false;
};

End end_beside(const Ring& ring, const std::vector<Mark>& marks, std::ptrdiff_t first, std::ptrdiff_t way) {
    constexpr std::ptrdiff_t most = 28;
    constexpr std::ptrdiff_t least = 8;
    const auto n = static_cast<std::ptrdiff_t>(ring.size());
    // Normal sums for 1, t, t² over t = 0 … m − 1, and the right sides of x and y.
    double power[5] = {};
    double right_x[3] = {};
    double right_y[3] = {};
    std::ptrdiff_t m = 0;
    for (; m < std::min(most, n / 4); ++m) {
        const auto i = static_cast<std::size_t>(((first + way * m) % n + n) % n);
        if (!marks[i].clear) break;
        double t = 1.0;
        for (int k = 0; k < 5; ++k) {
            power[k] += t;
            if (k < 3) {
                right_x[k] += t * ring[i].x;
                right_y[k] += t * ring[i].y;
            }
            t *= static_cast<double>(m);
        }
    }
    if (m < least) return {};
    // Cramer's rule on the symmetric 3 by 3.
    const double a = power[0], b = power[1], c = power[2], d = power[3], e = power[4];
    const double whole = a * (c * e - d * d) - b * (b * e - c * d) + c * (b * d - c * c);
    const auto level = [&](const double* r) {
        return (r[0] * (c * e - d * d) - b * (r[1] * e - d * r[2]) + c * (r[1] * d - c * r[2])) / whole;
    };
    const auto slope = [&](const double* r) {
        return (a * (r[1] * e - r[2] * d) - r[0] * (b * e - c * d) + c * (b * r[2] - c * r[1])) / whole;
    };
    const auto sign = static_cast<double>(way);
    return {{level(right_x), level(right_y)}, {sign * slope(right_x), sign * slope(right_y)}, true};
}

/// A few marks with gaps on both sides are specks or the ends of the line seen askew: no line to go by.
void drop_islands(std::vector<Mark>& marks, std::ptrdiff_t least) {
    const auto n = static_cast<std::ptrdiff_t>(marks.size());
    const auto clear = [&](std::ptrdiff_t i) {
        return marks[static_cast<std::size_t>((i % n + n) % n)].clear;
    };
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        if (!clear(i) || clear(i - 1)) continue;
        std::ptrdiff_t run = 1;
        while (run < least && clear(i + run))
            ++run;
        for (std::ptrdiff_t k = 0; run < least && k < run; ++k)
            marks[static_cast<std::size_t>((i + k) % n)].clear = false;
    }
}

/// Marks beside a wide gap look partly past the end of the line: they are given up with it.
void widen_gaps(std::vector<Mark>& marks, std::ptrdiff_t wide, std::ptrdiff_t by) {
    const auto n = static_cast<std::ptrdiff_t>(marks.size());
    std::vector<bool> given_up(marks.size(), false);
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        const auto here = static_cast<std::size_t>(i);
        if (marks[here].clear || !marks[static_cast<std::size_t>((i + n - 1) % n)].clear) continue;
        std::ptrdiff_t run = 0;
        while (run < n && !marks[static_cast<std::size_t>((i + run) % n)].clear)
            ++run;
        if (run < wide) continue;
        for (std::ptrdiff_t k = 1; k <= by; ++k) {
            given_up[static_cast<std::size_t>(((i - k) % n + n) % n)] = true;
            given_up[static_cast<std::size_t>((i + run + k - 1) % n)] = true;
        }
    }
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (given_up[i]) marks[i].clear = false;
    }
}

/// A wide gap is crossed by a cubic that leaves and meets the line in the directions that it has on both
/// sides.
void cross_gaps(Ring& ring, const std::vector<Mark>& marks, std::ptrdiff_t wide) {
    const auto n = static_cast<std::ptrdiff_t>(ring.size());
    for (std::ptrdiff_t i = 0; i < n; ++i) {
        if (marks[static_cast<std::size_t>(i)].clear ||
            !marks[static_cast<std::size_t>((i + n - 1) % n)].clear)
            continue;
        std::ptrdiff_t run = 0;
        while (run < n && !marks[static_cast<std::size_t>((i + run) % n)].clear)
            ++run;
        if (run < wide || run > n / 4) continue;
        const End from = end_beside(ring, marks, i - 1, -1);
        const End to = end_beside(ring, marks, i + run, 1);
        if (!from.sure || !to.sure) continue;
        const double chord = std::hypot(to.at.x - from.at.x, to.at.y - from.at.y);
        const double from_size = std::hypot(from.along.x, from.along.y);
        const double to_size = std::hypot(to.along.x, to.along.y);
        if (!(chord > 0.0 && from_size > 0.0 && to_size > 0.0)) continue;
        for (std::ptrdiff_t k = 0; k < run; ++k) {
            const double t = static_cast<double>(k + 1) / static_cast<double>(run + 1);
            const double u = 1.0 - t;
            const double h0 = u * u * (1.0 + 2.0 * t);
            const double h1 = t * t * (3.0 - 2.0 * t);
            const double g0 = chord * t * u * u / from_size;
            const double g1 = -chord * t * t * u / to_size;
            ring[static_cast<std::size_t>((i + k) % n)] = {
                h0 * from.at.x + h1 * to.at.x + g0 * from.along.x + g1 * to.along.x,
                h0 * from.at.y + h1 * to.at.y + g0 * from.along.y + g1 * to.along.y};
        }
    }
}

Ring moved(const Ring& ring, const std::vector<Spot>& normals, const std::vector<Mark>& marks) {
    Ring out(ring.size());
    for (std::size_t i = 0; i < ring.size(); ++i) {
        out[i] = {ring[i].x + marks[i].offset * normals[i].x, ring[i].y + marks[i].offset * normals[i].y};
    }
    return out;
}

} // namespace

Refined refined(const Plane& plane, const Ring& rough, double reach, double clear) {
    Refined out;
    const double length = length_of(rough);
    if (rough.size() < 16 || !(length >= 32.0)) return {rough, false, 0.0};
    Ring ring = smoothed_ring(evenly_spaced(rough, static_cast<std::size_t>(length)), 2.0);

    // The first pass finds the mark from afar, the next ones are near it, with the truer normals.
    for (int pass = 0; pass < 3; ++pass) {
        const double look = pass == 0 ? reach : std::min(reach, 6.0);
        const int half = std::max(6, static_cast<int>(std::ceil(look / step_px)));
        const std::vector<Spot> normals = outward_normals(ring);
        std::vector<Profile> profiles(ring.size());
        std::size_t drawn = 0;
        for (std::size_t i = 0; i < ring.size(); ++i) {
            profiles[i] = profile_at(plane, ring[i], normals[i], half);
            if (looks_drawn(profiles[i])) ++drawn;
        }
        if (pass == 0) out.drawn_line = 2 * drawn > ring.size();
        std::vector<Mark> marks(ring.size());
        for (std::size_t i = 0; i < ring.size(); ++i) {
            marks[i] =
                out.drawn_line ? middle_of_line(profiles[i], clear) : steepest_place(profiles[i], clear);
        }
        drop_slips(marks, pass == 0 ? 3.0 : 1.5);
        const auto backed = std::count_if(marks.begin(), marks.end(), [](const Mark& m) { return m.clear; });
        out.backed = static_cast<double>(backed) / static_cast<double>(marks.size());
        if (backed == 0) break;
        constexpr std::ptrdiff_t wide = 3; // spots, a pixel apart
        drop_islands(marks, 8);
        widen_gaps(marks, wide, 4);
        drop_islands(marks, 8);
        bridge(marks);
        ring = moved(ring, normals, marks);
        cross_gaps(ring, marks, wide);
        ring = smoothed_ring(evenly_spaced(ring, static_cast<std::size_t>(std::max(16.0, length_of(ring)))),
                             pass == 2 ? 1.2 : 2.0);
    }
    out.ring = std::move(ring);
    return out;
}

} // namespace evenfall::picture
