#include "water/afloat/unit_rim.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::afloat {

namespace {

using shape::RimPoint;

constexpr std::size_t most_arcs = 32; ///< of a curved rim, divided among the pieces between its breaks

struct Point {
    double y;
    double z;
};

RimArc straight(Point from, Point to) {
    RimArc arc;
    arc.y = from.y;
    arc.z = from.z;
    arc.y1 = to.y - from.y;
    arc.z1 = to.z - from.z;
    return arc;
}

/// The parabola with the rim's ends and end tangents: its control point is where the tangents meet, kept
/// within the box of the ends so that y and z stay monotone.
RimArc parabola(const RimPoint& from, const RimPoint& to) {
    const double cross = from.y_tau * to.z_tau - from.z_tau * to.y_tau;
    const double size2 =
        (from.y_tau * from.y_tau + from.z_tau * from.z_tau) * (to.y_tau * to.y_tau + to.z_tau * to.z_tau);
    if (!(cross * cross > 1e-18 * size2)) return straight({from.y, from.z}, {to.y, to.z});
    const double run = ((to.y - from.y) * to.z_tau - (to.z - from.z) * to.y_tau) / cross;
    const double cy = std::clamp(from.y + run * from.y_tau, std::min(from.y, to.y), std::max(from.y, to.y));
    const double cz = std::clamp(from.z + run * from.z_tau, std::min(from.z, to.z), std::max(from.z, to.z));
    RimArc arc;
    arc.y = from.y;
    arc.z = from.z;
    arc.y1 = 2.0 * (cy - from.y);
    arc.z1 = 2.0 * (cz - from.z);
    arc.y2 = from.y - 2.0 * cy + to.y;
    arc.z2 = from.z - 2.0 * cz + to.z;
    return arc;
}

/// Coefficients of ½∫u² dv from 0 to t for u = u0 + u1·t + u2·t² and v likewise: products, integrated term by
/// term.
std::array<double, 6> half_square(double u0, double u1, double u2, double v1, double v2) {
    const double s0 = 0.5 * u0 * u0; // ½u²
    const double s1 = u0 * u1;
    const double s2 = 0.5 * u1 * u1 + u0 * u2;
    const double s3 = u1 * u2;
    const double s4 = 0.5 * u2 * u2;
    const double w = 2.0 * v2;
    constexpr double third = 1.0 / 3.0;
    return {s0 * v1,
            0.5 * (s1 * v1 + s0 * w),
            third * (s2 * v1 + s1 * w),
            0.25 * (s3 * v1 + s2 * w),
            0.2 * (s4 * v1 + s3 * w),
            0.5 * third * s4 * w};
}

void prepare(RimArc& a) {
    const double w = 2.0 * a.z2;
    constexpr double third = 1.0 / 3.0;
    a.area = {a.y * a.z1, 0.5 * (a.y1 * a.z1 + a.y * w), third * (a.y2 * a.z1 + a.y1 * w), 0.25 * a.y2 * w};
    a.moment_y = half_square(a.y, a.y1, a.y2, a.z1, a.z2);
    a.moment_z = half_square(a.z, a.z1, a.z2, -a.y1, -a.y2);
}

double area_of(const std::vector<RimArc>& arcs) {
    double half = 0.0;
    for (const RimArc& a : arcs)
        half += a.y * (a.z1 + a.z2) + a.y1 * (0.5 * a.z1 + a.z2 / 1.5) + a.y2 * (a.z1 / 3.0 + 0.5 * a.z2);
    return 2.0 * half;
}

/// Root of f0 + f1·t + f2·t² where it rises (or falls) through zero, kept within [from, to].
double root(double f0, double f1, double f2, bool rising, double from, double to) {
    const double turn = std::sqrt(std::max(0.0, f1 * f1 - 4.0 * f2 * f0));
    const double slope = rising ? turn : -turn;
    const bool same_way = rising ? f1 >= 0.0 : f1 <= 0.0;
    const double above = same_way ? -2.0 * f0 : slope - f1;
    const double below = same_way ? f1 + slope : 2.0 * f2;
    return below != 0.0 ? std::clamp(above / below, from, to) : from;
}

/// Follows the rim and sums the wet part. The waterline between two crossings of the rim adds an integral
/// along a straight line, hence a difference of a potential: each crossing adds its own share and no pairing
/// is needed, however often the rim crosses.
class Cutter {
public:
    Cutter(const std::vector<RimArc>& arcs, const UnitLine& line) : arcs_(arcs.data()), line_(line) {}

    void whole(std::size_t widest, std::size_t end) {
        for (const double side : {1.0, -1.0}) {
            take_side(side);
            walk(0, widest, true);
            walk(widest, end, false);
            if (is_level()) return;
        }
    }

    void limited(std::size_t widest, std::size_t end, const RimLimit& limit) {
        for (const double side : {1.0, -1.0}) {
            take_side(side);
            const bool low_wet = is_wet(limit.y, limit.z_low);
            const bool high_wet = is_wet(limit.y, limit.z_high);
            walk(0, std::min(limit.arc_low, widest), true);
            arc(limit.arc_low, 0.0, limit.t_low, is_wet(arcs_[limit.arc_low].y, arcs_[limit.arc_low].z),
                low_wet);
            RimArc edge = straight({limit.y, limit.z_low}, {limit.y, limit.z_high});
            prepare(edge);
            stretch(edge, 0.0, 1.0, low_wet, high_wet);
            const RimArc& after = arcs_[limit.arc_high + 1];
            arc(limit.arc_high, limit.t_high, 1.0, high_wet, is_wet(after.y, after.z));
            walk(limit.arc_high + 1, end, false);
            if (is_level()) return;
        }
    }

    [[nodiscard]] UnitCut result() const {
        UnitCut c = cut_;
        if (!is_level()) return c;
        c.area *= 2.0;
        c.moment_y = 0.0;
        c.moment_z *= 2.0;
        c.chord[0] *= 2.0;
        c.chord[1] = 0.0;
        c.chord[2] *= 2.0;
        return c;
    }

private:
    /// The waterline is level across the section: port is the mirror image of starboard, and the line ends in
    /// the middle.
    [[nodiscard]] bool is_level() const { return line_.p == 0.0 && line_.q != 0.0 && line_.ruler_z == 0.0; }

    void take_side(double side) {
        side_ = side;
        p_ = side * line_.p;
    }

    [[nodiscard]] bool is_wet(double y, double z) const { return p_ * y + line_.q * z <= line_.c; }

    /// Arcs [from, to) of one branch, along which z rises and y is monotone.
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
        const bool first_wet = is_wet(arcs_[from].y, arcs_[from].z);
        if (first_wet == is_wet(arcs_[to].y, arcs_[to].z)) {
            if (first_wet) add_arcs(from, to);
            return;
        }
        std::size_t low = from;
        std::size_t high = to;
        while (high - low > 1) {
            const std::size_t middle = (low + high) / 2;
            (is_wet(arcs_[middle].y, arcs_[middle].z) == first_wet ? low : high) = middle;
        }
        if (first_wet) {
            add_arcs(from, low);
        } else {
            add_arcs(high, to);
        }
        arc(low, 0.0, 1.0, first_wet, !first_wet);
    }

    /// All arcs between two vertices lie in the box of the two.
    void walk_box(std::size_t from, std::size_t to, bool widening) {
        const RimArc& a = arcs_[from];
        const RimArc& b = arcs_[to];
        const double narrow = p_ * (widening ? a.y : b.y);
        const double wide = p_ * (widening ? b.y : a.y);
        const double low = line_.q * a.z;
        const double high = line_.q * b.z;
        if (std::max(narrow, wide) + std::max(low, high) <= line_.c) {
            add_arcs(from, to);
            return;
        }
        if (std::min(narrow, wide) + std::min(low, high) > line_.c) return;
        if (to - from == 1) {
            arc(from, 0.0, 1.0, is_wet(a.y, a.z), is_wet(b.y, b.z));
            return;
        }
        const std::size_t middle = (from + to) / 2;
        walk_box(from, middle, widening);
        walk_box(middle, to, widening);
    }

    void add_arcs(std::size_t from, std::size_t to) {
        const RimSums& a = arcs_[from].before;
        const RimSums& b = arcs_[to].before;
        add({b.area - a.area, b.moment_y - a.moment_y, b.moment_z - a.moment_z}, 1.0);
    }

    void arc(std::size_t k, double from, double to, bool from_wet, bool to_wet) {
        stretch(arcs_[k], from, to, from_wet, to_wet);
    }

    /// A part of one arc whose ends are known to be wet or dry.
    void stretch(const RimArc& a, double from, double to, bool from_wet, bool to_wet) {
        const double f0 = p_ * a.y + line_.q * a.z - line_.c;
        const double f1 = p_ * a.y1 + line_.q * a.z1;
        const double f2 = p_ * a.y2 + line_.q * a.z2;
        if (from_wet != to_wet) {
            const double t = root(f0, f1, f2, from_wet, from, to);
            add(a, from_wet ? from : t, from_wet ? t : to);
            cross(a, t, from_wet);
            return;
        }
        const double turn = f2 != 0.0 ? -0.5 * f1 / f2 : from;
        const bool bulges = turn > from && turn < to && (f0 + turn * (f1 + turn * f2) <= 0.0) != from_wet;
        if (!bulges) {
            if (from_wet) add(a, from, to);
            return;
        }
        const double first = root(f0, f1, f2, from_wet, from, turn);
        const double second = root(f0, f1, f2, !from_wet, turn, to);
        if (from_wet) {
            add(a, from, first);
            add(a, second, to);
        } else {
            add(a, first, second);
        }
        cross(a, first, from_wet);
        cross(a, second, !from_wet);
    }

    void add(const RimArc& a, double from, double to) {
        add(a.until(to), 1.0);
        if (from > 0.0) add(a.until(from), -1.0);
    }

    void add(const RimSums& s, double sign) {
        cut_.area += sign * s.area;
        cut_.moment_y += sign * side_ * s.moment_y;
        cut_.moment_z += sign * s.moment_z;
    }

    /// The rim crosses the waterline; `leaving` the water when followed from belly to back. On the port side
    /// the rim runs from back to belly, so leaving and entering are exchanged.
    void cross(const RimArc& a, double t, bool leaving) {
        const double y = side_ * (a.y + t * (a.y1 + t * a.y2));
        const double z = a.z + t * (a.z1 + t * a.z2);
        if (!cut_.crossed) {
            cut_.crossed = true;
            base_y_ = is_level() ? 0.0 : y;
            base_z_ = is_level() ? line_.c / line_.q : z;
        }
        const double sign = (side_ > 0.0) == leaving ? 1.0 : -1.0;
        const double dy = y - base_y_;
        const double dz = z - base_z_;
        cut_.area -= sign * 0.5 * (y + base_y_) * dz;
        cut_.moment_y -= sign * (y * y + y * base_y_ + base_y_ * base_y_) * dz / 6.0;
        cut_.moment_z += sign * (z * z + z * base_z_ + base_z_ * base_z_) * dy / 6.0;
        const double rho = line_.ruler_y * y + line_.ruler_z * z;
        cut_.chord[0] += sign * rho;
        cut_.chord[1] += sign * 0.5 * rho * rho;
        cut_.chord[2] += sign * rho * rho * rho / 3.0;
    }

    const RimArc* arcs_;
    UnitLine line_;
    UnitCut cut_;
    double side_ = 1.0;
    double p_ = 0.0;
    double base_y_ = 0.0;
    double base_z_ = 0.0;
};

/// The arcs of a polygon: straight from corner to corner.
void append_corners(const shape::SectionFamily& family, double fullness, std::vector<RimArc>& arcs) {
    Point before{};
    const auto corner = [&](double tau, bool first) {
        const RimPoint r = family.rim(fullness, tau);
        const Point now{r.y, r.z};
        if (!first) arcs.push_back(straight(before, now));
        before = now;
    };
    corner(-1.0, true);
    for (const double tau : family.rim_breaks())
        corner(tau, false);
    corner(1.0, false);
    arcs.push_back(straight(before, before));
}

void append_curves(const shape::SectionFamily& family, double fullness, std::vector<RimArc>& arcs) {
    const auto breaks = family.rim_breaks();
    const std::size_t pieces = breaks.size() + 1;
    const std::size_t each = std::max<std::size_t>(2, most_arcs / pieces);
    // The inner vertices of every piece, and a point just inside either end: at a corner of the rim the
    // tangent is that of this piece. All in one call, since a family may mirror points.
    constexpr double aside = 1e-7;
    const auto break_at = [&](std::size_t k) { return k == 0 ? -1.0 : k == pieces ? 1.0 : breaks[k - 1]; };
    std::vector<double> tau;
    tau.reserve(pieces * (each + 1));
    for (std::size_t k = 0; k < pieces; ++k) {
        const double from = break_at(k);
        const double to = break_at(k + 1);
        tau.push_back(from + aside);
        for (std::size_t i = 1; i < each; ++i) {
            tau.push_back(from + (to - from) * static_cast<double>(i) / static_cast<double>(each));
        }
        tau.push_back(to - aside);
    }
    std::vector<RimPoint> points(tau.size());
    family.rims(fullness, tau, points);

    RimPoint corner = family.rim(fullness, -1.0);
    for (std::size_t k = 0; k < pieces; ++k) {
        RimPoint* const piece = points.data() + k * (each + 1);
        piece[0].y = corner.y;
        piece[0].z = corner.z;
        corner = family.rim(fullness, break_at(k + 1));
        piece[each].y = corner.y;
        piece[each].z = corner.z;
        for (std::size_t i = 0; i < each; ++i)
            arcs.push_back(parabola(piece[i], piece[i + 1]));
    }
    arcs.push_back(straight({corner.y, corner.z}, {corner.y, corner.z}));
}

void scale(std::vector<RimArc>& arcs, double by) {
    for (RimArc& a : arcs) {
        for (double* v : {&a.y, &a.z, &a.y1, &a.z1, &a.y2, &a.z2})
            *v *= by;
    }
}

/// Every chord turns left of the one before.
bool is_convex(const std::vector<RimArc>& arcs) {
    for (std::size_t k = 0; k + 2 < arcs.size(); ++k) {
        const double y1 = arcs[k + 1].y - arcs[k].y;
        const double z1 = arcs[k + 1].z - arcs[k].z;
        const double y2 = arcs[k + 2].y - arcs[k + 1].y;
        const double z2 = arcs[k + 2].z - arcs[k + 1].z;
        if (!(y1 * z2 - z1 * y2 > 0.0)) return false;
    }
    return true;
}

void sum_up(std::vector<RimArc>& arcs) {
    for (std::size_t k = 0; k + 1 < arcs.size(); ++k) {
        prepare(arcs[k]);
        const RimSums s = arcs[k].until(1.0);
        const RimSums& b = arcs[k].before;
        arcs[k + 1].before = {b.area + s.area, b.moment_y + s.moment_y, b.moment_z + s.moment_z};
    }
}

} // namespace

RimSums RimArc::until(double t) const {
    const auto power5 = [t](const std::array<double, 6>& c) {
        return t * (c[0] + t * (c[1] + t * (c[2] + t * (c[3] + t * (c[4] + t * c[5])))));
    };
    return {t * (area[0] + t * (area[1] + t * (area[2] + t * area[3]))), power5(moment_y), power5(moment_z)};
}

UnitRim::UnitRim(const shape::SectionFamily& family, double fullness) : fullness_(fullness) {
    arcs_.reserve(most_arcs + 1);
    if (family.is_polygon()) {
        append_corners(family, fullness, arcs_);
    } else {
        append_curves(family, fullness, arcs_);
    }
    const double true_area = family.moments(fullness).area;
    const double drawn_area = area_of(arcs_);
    if (drawn_area > 0.0 && true_area > 0.0) scale(arcs_, std::sqrt(true_area / drawn_area));
    sum_up(arcs_);
    for (std::size_t k = 1; k < arcs_.size(); ++k) {
        if (arcs_[k].y > arcs_[widest_].y) widest_ = k;
    }
    convex_ = !family.is_polygon() && is_convex(arcs_);
}

RimLimit UnitRim::limit(double y) const {
    RimLimit l;
    l.y = std::max(0.0, y);
    const auto end = arcs_.size() - 1;
    while (l.arc_low + 1 < widest_ && arcs_[l.arc_low + 1].y <= l.y)
        ++l.arc_low;
    l.arc_high = end - 1;
    while (l.arc_high > widest_ && arcs_[l.arc_high].y <= l.y)
        --l.arc_high;
    const RimArc& low = arcs_[l.arc_low];
    const RimArc& high = arcs_[l.arc_high];
    l.t_low = root(low.y - l.y, low.y1, low.y2, true, 0.0, 1.0);
    l.t_high = root(high.y - l.y, high.y1, high.y2, false, 0.0, 1.0);
    l.z_low = low.z + l.t_low * (low.z1 + l.t_low * low.z2);
    l.z_high = high.z + l.t_high * (high.z1 + l.t_high * high.z2);
    const RimSums below = low.until(l.t_low);
    const RimSums over = high.until(l.t_high);
    const RimSums& all = arcs_[end].before;
    l.area = 2.0 * (low.before.area + below.area + l.y * (l.z_high - l.z_low) + all.area - high.before.area -
                    over.area);
    l.moment_z =
        2.0 * (low.before.moment_z + below.moment_z + all.moment_z - high.before.moment_z - over.moment_z);
    return l;
}

double UnitRim::reach_of_arcs(std::size_t from, std::size_t to, double p, double q) const {
    const auto at = [&](std::size_t k) { return p * arcs_[k].y + q * arcs_[k].z; };
    std::size_t best = from;
    double greatest = at(from);
    if (convex_) {
        // Rises to its maximum and falls again: the first step down is found by bisection.
        std::size_t low = from;
        std::size_t high = to;
        while (low < high) {
            const std::size_t middle = (low + high) / 2;
            if (at(middle + 1) > at(middle))
                low = middle + 1;
            else
                high = middle;
        }
        best = low;
        greatest = at(low);
    } else {
        for (std::size_t k = from + 1; k <= to; ++k) {
            const double f = at(k);
            if (f <= greatest) continue;
            greatest = f;
            best = k;
        }
    }
    for (std::size_t k = best > from ? best - 1 : best; k <= best && k < to; ++k) {
        const RimArc& a = arcs_[k];
        const double f1 = p * a.y1 + q * a.z1;
        const double f2 = p * a.y2 + q * a.z2;
        if (!(f2 < 0.0)) continue;
        const double t = std::clamp(-0.5 * f1 / f2, 0.0, 1.0);
        greatest = std::max(greatest, p * a.y + q * a.z + t * (f1 + t * f2));
    }
    return greatest;
}

double UnitRim::reach(double p, double q, const RimLimit* limit) const {
    // For q ≥ 0, Y and Z both grow up to the widest point, so the maximum is between there and the back; for
    // q < 0 mirrored, towards the belly.
    const bool up = q >= 0.0;
    if (limit == nullptr)
        return up ? reach_of_arcs(widest_, arcs_.size() - 1, p, q) : reach_of_arcs(0, widest_, p, q);
    const double corner = p * limit->y + q * (up ? limit->z_high : limit->z_low);
    const double rest = up ? reach_of_arcs(limit->arc_high + 1, arcs_.size() - 1, p, q)
                           : reach_of_arcs(0, limit->arc_low, p, q);
    return std::max(corner, rest);
}

UnitCut UnitRim::cut(const UnitLine& line, const RimLimit* limit) const {
    Cutter cutter(arcs_, line);
    if (limit == nullptr) {
        cutter.whole(widest_, arcs_.size() - 1);
    } else {
        cutter.limited(widest_, arcs_.size() - 1, *limit);
    }
    return cutter.result();
}

} // namespace evenfall::afloat
