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
    for (std::size_t k = from; k < to; ++k) sum += p[k];
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
    for (std::ptrdiff_t k = start; k >= 0 && p[static_cast<std::size_t>(k)] < half; --k) add(k);
    for (std::ptrdiff_t k = start + 1; k < static_cast<std::ptrdiff_t>(p.size()) && p[static_cast<std::size_t>(k)] < half; ++k) add(k);
    return sum > 0.0 ? Mark{step_px * moment / sum, true} : Mark{};
}

/// Steepest place of the rim, by a parabola through the steepest step and its neighbours.
Mark steepest_place(const Profile& p, double clear) {
    const auto middle = static_cast<double>(p.size() / 2);
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
        slip[static_cast<std::size_t>(i)] = std::abs(marks[static_cast<std::size_t>(i)].offset - *middle) > most;
    }
    for (std::size_t i = 0; i < marks.size(); ++i) {
        if (slip[i]) marks[i].clear = false;
    }
}

Ring moved(const Ring& ring, const std::vector<Spot>& normals, const std::vector<Mark>& marks) {
    Ring out(ring.size());
    for (std::size_t i = 0; i < ring.size(); ++i) {
        out[i] = {ring[i].x + marks[i].offset * normals[i].x, ring[i].y + marks[i].offset * normals[i].y};
    }
    return out;
}

}  // namespace

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
            marks[i] = out.drawn_line ? middle_of_line(profiles[i], clear) : steepest_place(profiles[i], clear);
        }
        drop_slips(marks, pass == 0 ? 3.0 : 1.5);
        const auto backed = std::count_if(marks.begin(), marks.end(), [](const Mark& m) { return m.clear; });
        out.backed = static_cast<double>(backed) / static_cast<double>(marks.size());
        if (backed == 0) break;
        bridge(marks);
        ring = moved(ring, normals, marks);
        ring = smoothed_ring(evenly_spaced(ring, static_cast<std::size_t>(std::max(16.0, length_of(ring)))), pass == 2 ? 1.2 : 2.0);
    }
    out.ring = std::move(ring);
    return out;
}

}  // namespace evenfall::picture
