#include "body/segment_sums.hpp"

#include "base/quadrature.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::shape {

namespace {

// Gauss points along x per interval. Drawn lines are cubics: seven points integrate every moment of a section
// of constant parameter exactly (a³b has degree 12). Skin is smooth but no polynomial; three points stay
// within 1e-5 (by test).
constexpr std::size_t wood_order = 7;
constexpr std::size_t skin_order = 3;

/// Calls visit(interval) for each smooth interval of the lines between two planes.
template <class Visit>
void for_each_interval(const Lines& lines, double from_m, double to_m, Visit visit) {
    const std::span<const double> breaks = lines.breakpoints_m();
    for (std::size_t k = 0; k + 1 < breaks.size(); ++k) {
        const double from = std::max(from_m, breaks[k]);
        const double to = std::min(to_m, breaks[k + 1]);
        if (!(to > from)) continue;
        visit(SoftInterval{from, to, lines.blunt_nose() && from == breaks.front(),
                           lines.blunt_tail() && to == breaks.back()});
    }
}

} // namespace

WoodSums& WoodSums::operator-=(const WoodSums& o) {
    volume -= o.volume;
    x -= o.x;
    z -= o.z;
    xx -= o.xx;
    yy -= o.yy;
    zz -= o.zz;
    xz -= o.xz;
    return *this;
}

Inertia own_inertia(const WoodSums& w, const Vec3& c) {
    const double xx = w.xx - w.volume * c.x * c.x;
    const double zz = w.zz - w.volume * c.z * c.z;
    return {w.yy + zz, xx + zz, xx + w.yy, 0.0, w.xz - w.volume * c.x * c.z, 0.0};
}

SkinSums& SkinSums::operator+=(const SkinSums& o) {
    area += o.area;
    x += o.x;
    z += o.z;
    bend += o.bend;
    return *this;
}

SkinSums& SkinSums::operator-=(const SkinSums& o) {
    area -= o.area;
    x -= o.x;
    z -= o.z;
    bend -= o.bend;
    return *this;
}

WoodSums wood_between(const Lines& lines, double from_m, double to_m) {
    WoodSums sums;
    const SectionFamily& family = lines.family();
    for_each_interval(lines, from_m, to_m, [&](const SoftInterval& interval) {
        for (std::size_t k = 0; k < wood_order; ++k) {
            const double s = gauss_rule<wood_order>.node[k];
            const double x = interval.at(s);
            const double dx = gauss_rule<wood_order>.weight[k] * interval.stretch(s);
            const Station st = lines.at(x);
            const UnitMoments m = family.moments(st.parameter);
            const double a = st.half_width_m;
            const double b = st.half_height_m;
            const double c = st.centre_z_m;
            const double slice = dx * a * b;
            const double volume = slice * m.area;
            const double rise = slice * b * m.z; // ∬(z − c)
            sums.volume += volume;
            sums.x += volume * x;
            sums.z += volume * c + rise;
            sums.xx += volume * x * x;
            sums.yy += slice * a * a * m.yy;
            sums.zz += slice * b * b * m.zz + 2.0 * c * rise + volume * c * c;
            sums.xz += x * (volume * c + rise);
        }
    });
    return sums;
}

namespace {

/// The skin at one section, starboard half.
struct Ring {
    double area = 0.0; ///< per metre of x
    double z = 0.0;    ///< ∫z dA per metre of x
};

Ring ring_at(const Station& station, const RimTable& rim) {
    Ring ring;
    for (std::size_t i = 0; i < rim.size(); ++i) {
        const SkinPoint p = skin_point(station, rim.point(i));
        const double cross = p.y_x * p.z_tau - p.z_x * p.y_tau;
        const double ds = rim.weight(i) * std::sqrt(p.y_tau * p.y_tau + p.z_tau * p.z_tau + cross * cross);
        ring.area += ds;
        ring.z += ds * p.z;
    }
    return ring;
}

/// ∫h·atan h dφ over the starboard half of one section.
double lean_around(const Station& station, const RimTable& rim) {
    double sum = 0.0;
    double before = 0.0;
    bool is_first = true;
    RimTurn turn;
    for (std::size_t i = 0; i < rim.size(); ++i) {
        const SkinPoint p = skin_point(station, rim.point(i));
        const double along = std::sqrt(p.y_tau * p.y_tau + p.z_tau * p.z_tau);
        if (!(along > 0.0)) continue;
        const double lean = lean_term((p.y_x * p.z_tau - p.z_x * p.y_tau) / along);
        sum += turn.to(p.y_tau / along, p.z_tau / along) * (is_first ? lean : 0.5 * (before + lean));
        before = lean;
        is_first = false;
    }
    return sum + turn.to(-1.0, 0.0) * before;
}

} // namespace

SkinSums skin_between(const Lines& lines, RimTable& rim, double from_m, double to_m) {
    SkinSums sums;
    for_each_interval(lines, from_m, to_m, [&](const SoftInterval& interval) {
        const bool is_end = interval.from == lines.nose_m() || interval.to == lines.tail_m();
        for (std::size_t k = 0; k < skin_order; ++k) {
            const double s = gauss_rule<skin_order>.node[k];
            const double x = interval.at(s);
            const double dx = 2.0 * gauss_rule<skin_order>.weight[k] * interval.stretch(s); // both sides
            const Station station = lines.at(x);
            rim.set_parameter(station.parameter);
            const Ring ring = ring_at(station, rim);
            sums.area += dx * ring.area;
            sums.x += dx * ring.area * x;
            sums.z += dx * ring.z;
            // The slope's part in the curvature is small except near nose and tail; elsewhere the middle
            // point is enough.
            if (is_end) {
                sums.bend += dx * lean_around(station, rim);
            } else if (k == skin_order / 2) {
                sums.bend += 2.0 * (interval.to - interval.from) * lean_around(station, rim);
            }
        }
        sums.bend += 2.0 * std::numbers::pi * (interval.to - interval.from);
    });
    return sums;
}

SectionDisc section_disc(const Lines& lines, RimTable& rim, double x_m) {
    const Station st = lines.at(x_m);
    const UnitMoments m = lines.family().moments(st.parameter);
    rim.set_parameter(st.parameter);
    SectionDisc disc;
    disc.area_m2 = m.area * st.half_width_m * st.half_height_m;
    disc.centroid_z_m = st.centre_z_m + (m.area > 0.0 ? st.half_height_m * m.z / m.area : 0.0);
    for (std::size_t i = 0; i < rim.size(); ++i) {
        const RimPoint& r = rim.point(i);
        disc.rim_m += 2.0 * rim.weight(i) * std::hypot(st.half_width_m * r.y_tau, st.half_height_m * r.z_tau);
    }
    return disc;
}

} // namespace evenfall::shape
