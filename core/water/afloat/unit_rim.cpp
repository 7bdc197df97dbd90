#include "water/afloat/unit_rim.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::afloat {

namespace {

constexpr std::size_t most_edges = 112; ///< of a curved rim, divided among the pieces between its breaks

RimSums operator+(const RimSums& a, const RimSums& b) {
    return {a.area + b.area, a.moment_y + b.moment_y, a.moment_z + b.moment_z};
}
RimSums operator-(const RimSums& a, const RimSums& b) {
    return {a.area - b.area, a.moment_y - b.moment_y, a.moment_z - b.moment_z};
}

/// Along a straight edge.
RimSums along(UnitPoint a, UnitPoint b) {
    const double dy = b.y - a.y;
    const double dz = b.z - a.z;
    return {0.5 * (a.y + b.y) * dz, (a.y * a.y + a.y * b.y + b.y * b.y) * dz / 6.0,
            -(a.z * a.z + a.z * b.z + b.z * b.z) * dy / 6.0};
}

/// Where an edge has this y; its second end where it lies upright.
UnitPoint at_y(UnitPoint a, UnitPoint b, double y) {
    const double share = b.y != a.y ? std::clamp((y - a.y) / (b.y - a.y), 0.0, 1.0) : 1.0;
    return {y, a.z + share * (b.z - a.z)};
}

/// Follows the rim and sums the wet part. The waterline between two crossings of the rim adds an integral
/// along a straight line, hence a difference of a potential: each crossing adds its own share and no pairing
/// is needed, however often the rim crosses.
class Cutter {
public:
    Cutter(const std::vector<RimVertex>& rim, std::size_t widest, const UnitLine& line)
        : rim_(rim.data()), widest_(widest), end_(rim.size() - 1), line_(line) {}

    UnitCut cut(const RimLimit* limit) {
        for (const double side : {1.0, -1.0}) {
            side_ = side;
            p_ = side * line_.p;
            if (limit == nullptr) {
                walk(0, widest_, true);
                walk(widest_, end_, false);
            } else {
                const UnitPoint low{limit->y, limit->z_low};
                const UnitPoint high{limit->y, limit->z_high};
                walk(0, limit->edge_low, true);
                edge(rim_[limit->edge_low].at, low);
                edge(low, high);
                edge(high, rim_[limit->edge_high + 1].at);
                walk(limit->edge_high + 1, end_, false);
            }
            if (is_level()) return doubled();
        }
        return cut_;
    }

private:
    /// The waterline is level across the section: port is the mirror image of starboard, and the line ends in
    /// the middle.
    [[nodiscard]] bool is_level() const { return line_.p == 0.0 && line_.q != 0.0 && line_.ruler_z == 0.0; }

    [[nodiscard]] UnitCut doubled() const {
        UnitCut c = cut_;
        c.area *= 2.0;
        c.moment_y = 0.0;
        c.moment_z *= 2.0;
        c.chord[0] *= 2.0;
        c.chord[1] = 0.0;
        c.chord[2] *= 2.0;
        return c;
    }

    [[nodiscard]] double over(UnitPoint at) const { return p_ * at.y + line_.q * at.z - line_.c; }
    [[nodiscard]] bool is_wet(UnitPoint at) const { return over(at) <= 0.0; }

    /// From vertex to vertex of one branch, along which z rises and y does not turn.
    void walk(std::size_t from, std::size_t to, bool widening) {
        if (from >= to) return;
        if (line_.q * (widening ? p_ : -p_) >= 0.0) {
            walk_one_way(from, to);
        } else {
            walk_box(from, to, widening);
        }
    }

    /// Height above the line is monotone: at most one crossing, found by bisection.
    void walk_one_way(std::size_t from, std::size_t to) {
        const bool first_wet = is_wet(rim_[from].at);
        if (first_wet == is_wet(rim_[to].at)) {
            if (first_wet) add(rim_[to].before - rim_[from].before);
            return;
        }
        std::size_t low = from;
        std::size_t high = to;
        while (high - low > 1) {
            const std::size_t middle = (low + high) / 2;
            (is_wet(rim_[middle].at) == first_wet ? low : high) = middle;
        }
        add(first_wet ? rim_[low].before - rim_[from].before : rim_[to].before - rim_[high].before);
        edge(rim_[low].at, rim_[high].at);
    }

    /// All edges between two vertices lie in the box of the two.
    void walk_box(std::size_t from, std::size_t to, bool widening) {
        const UnitPoint a = rim_[from].at;
        const UnitPoint b = rim_[to].at;
        const double narrow = p_ * (widening ? a.y : b.y);
        const double wide = p_ * (widening ? b.y : a.y);
        const double low = line_.q * a.z;
        const double high = line_.q * b.z;
        if (std::max(narrow, wide) + std::max(low, high) <= line_.c) {
            add(rim_[to].before - rim_[from].before);
        } else if (std::min(narrow, wide) + std::min(low, high) > line_.c) {
            return;
        } else if (to - from == 1) {
            edge(a, b);
        } else {
            const std::size_t middle = (from + to) / 2;
            walk_box(from, middle, widening);
            walk_box(middle, to, widening);
        }
    }

    /// One straight edge, cut where it goes through the waterline.
    void edge(UnitPoint from, UnitPoint to) {
        const double over_from = over(from);
        const double over_to = over(to);
        const bool from_wet = over_from <= 0.0;
        const bool to_wet = over_to <= 0.0;
        if (from_wet == to_wet) {
            if (from_wet) add(along(from, to));
            return;
        }
        const double share = over_from / (over_from - over_to);
        const UnitPoint at{from.y + share * (to.y - from.y), from.z + share * (to.z - from.z)};
        add(from_wet ? along(from, at) : along(at, to));
        cross(at, from_wet);
    }

    void add(const RimSums& s) {
        cut_.area += s.area;
        cut_.moment_y += side_ * s.moment_y;
        cut_.moment_z += s.moment_z;
    }

    /// The rim crosses the waterline; `leaving` the water when followed from belly to back. On the port side
    /// the rim runs from back to belly, so leaving and entering are exchanged.
    void cross(UnitPoint at, bool leaving) {
        at.y *= side_;
        if (!cut_.crossed) {
            cut_.crossed = true;
            base_ = is_level() ? UnitPoint{0.0, line_.c / line_.q} : at;
        }
        const double sign = (side_ > 0.0) == leaving ? 1.0 : -1.0;
        const RimSums s = along(base_, at);
        cut_.area -= sign * s.area;
        cut_.moment_y -= sign * s.moment_y;
        cut_.moment_z -= sign * s.moment_z;
        const double rho = line_.ruler_y * at.y + line_.ruler_z * at.z;
        cut_.chord[0] += sign * rho;
        cut_.chord[1] += sign * 0.5 * rho * rho;
        cut_.chord[2] += sign * rho * rho * rho / 3.0;
    }

    const RimVertex* rim_;
    std::size_t widest_;
    std::size_t end_;
    UnitLine line_;
    UnitCut cut_;
    double side_ = 1.0;
    double p_ = 0.0;
    UnitPoint base_;
};

/// From the belly centre to the back centre: the corners of a polygon; of a curved rim many points, its
/// corners among them. All in one call, since a family may tell mirrored points from one another.
std::vector<UnitPoint> rim_points(const shape::SectionFamily& family, double parameter) {
    const auto breaks = family.rim_breaks();
    const std::size_t pieces = breaks.size() + 1;
    const std::size_t each = family.is_polygon() ? 1 : most_edges / pieces;
    std::vector<double> tau;
    tau.reserve(pieces * (each + 1));
    for (std::size_t k = 0; k < pieces; ++k) {
        const double from = k == 0 ? -1.0 : breaks[k - 1];
        const double to = k + 1 == pieces ? 1.0 : breaks[k];
        for (std::size_t i = 0; i <= each; ++i)
            tau.push_back(from + (to - from) * static_cast<double>(i) / static_cast<double>(each));
    }
    std::vector<shape::RimPoint> found(tau.size());
    family.rims(parameter, tau, found);
    std::vector<UnitPoint> points;
    points.reserve(tau.size());
    for (std::size_t i = 0; i < found.size(); ++i) {
        if (i == 0 || tau[i] != tau[i - 1]) points.push_back({found[i].y, found[i].z});
    }
    return points;
}

double area_of(const std::vector<UnitPoint>& half) {
    double area = 0.0;
    for (std::size_t k = 0; k + 1 < half.size(); ++k)
        area += half[k].y * half[k + 1].z - half[k + 1].y * half[k].z;
    return area;
}

/// Every edge turns left of the one before.
bool is_convex(const std::vector<RimVertex>& rim) {
    for (std::size_t k = 0; k + 2 < rim.size(); ++k) {
        const UnitPoint a = rim[k].at;
        const UnitPoint b = rim[k + 1].at;
        const UnitPoint c = rim[k + 2].at;
        if (!((b.y - a.y) * (c.z - b.z) - (b.z - a.z) * (c.y - b.y) > 0.0)) return false;
    }
    return true;
}

} // namespace

UnitRim::UnitRim(const shape::SectionFamily& family, double parameter) : parameter_(parameter) {
    const std::vector<UnitPoint> points = rim_points(family, parameter);
    const double scale = std::sqrt(family.moments(parameter).area / area_of(points));
    rim_.reserve(points.size());
    for (const UnitPoint& p : points) {
        RimVertex v{{scale * p.y, scale * p.z}, {}};
        if (!rim_.empty()) v.before = rim_.back().before + along(rim_.back().at, v.at);
        if (!rim_.empty() && v.at.y > rim_[widest_].at.y) widest_ = rim_.size();
        rim_.push_back(v);
    }
    convex_ = !family.is_polygon() && is_convex(rim_);
}

RimLimit UnitRim::limit(double y) const {
    RimLimit l;
    l.y = std::max(0.0, y);
    const std::size_t end = rim_.size() - 1;
    while (l.edge_low + 1 < widest_ && rim_[l.edge_low + 1].at.y <= l.y)
        ++l.edge_low;
    l.edge_high = end - 1;
    while (l.edge_high > widest_ && rim_[l.edge_high].at.y <= l.y)
        --l.edge_high;
    const UnitPoint low = at_y(rim_[l.edge_low].at, rim_[l.edge_low + 1].at, l.y);
    const UnitPoint high = at_y(rim_[l.edge_high + 1].at, rim_[l.edge_high].at, l.y);
    l.z_low = low.z;
    l.z_high = high.z;
    const RimSums half = rim_[l.edge_low].before + along(rim_[l.edge_low].at, low) + along(low, high) +
                         along(high, rim_[l.edge_high + 1].at) + rim_[end].before -
                         rim_[l.edge_high + 1].before;
    l.area = 2.0 * half.area;
    l.moment_z = 2.0 * half.moment_z;
    return l;
}

double UnitRim::greatest(std::size_t from, std::size_t to, double p, double q) const {
    const auto at = [&](std::size_t k) { return p * rim_[k].at.y + q * rim_[k].at.z; };
    if (!convex_) {
        double most = at(from);
        for (std::size_t k = from + 1; k <= to; ++k)
            most = std::max(most, at(k));
        return most;
    }
    // Rises to its maximum and falls again: the first step down is found by bisection.
    while (from < to) {
        const std::size_t middle = (from + to) / 2;
        if (at(middle + 1) > at(middle))
            from = middle + 1;
        else
            to = middle;
    }
    return at(from);
}

double UnitRim::reach(double p, double q, const RimLimit* limit) const {
    // For q ≥ 0, Y and Z both grow up to the widest point, so the maximum is between there and the back; for
    // q < 0 mirrored, towards the belly.
    const bool up = q >= 0.0;
    if (limit == nullptr) return up ? greatest(widest_, rim_.size() - 1, p, q) : greatest(0, widest_, p, q);
    const double corner = p * limit->y + q * (up ? limit->z_high : limit->z_low);
    const double rest =
        up ? greatest(limit->edge_high + 1, rim_.size() - 1, p, q) : greatest(0, limit->edge_low, p, q);
    return std::max(corner, rest);
}

UnitCut UnitRim::cut(const UnitLine& line, const RimLimit* limit) const {
    return Cutter(rim_, widest_, line).cut(limit);
}

} // namespace evenfall::afloat
