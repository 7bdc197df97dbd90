#include "body/relief.hpp"

#include "base/quadrature.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <numbers>

namespace evenfall::shape {

namespace {

constexpr std::size_t depth_order = 3; ///< points along x between skin and plane, per smooth interval

/// A line of constant τ on the skin, with its weight in τ. Over the few millimetres of a relief the parameter
/// changes little: a parabola through the rims at three parameter values gives the rim between them (exact
/// where parameter is constant).
struct RimLine {
    double weight;
    double middle; ///< parameter
    double half_range;
    RimPoint low, mid, high;

    [[nodiscard]] RimPoint at(double parameter) const {
        if (half_range == 0.0) return mid;
        const double t = (parameter - middle) / half_range;
        const double l = 0.5 * t * (t - 1.0);
        const double m = 1.0 - t * t;
        const double h = 0.5 * t * (t + 1.0);
        const auto mix = [&](double RimPoint::*q) { return l * low.*q + m * mid.*q + h * high.*q; };
        return {mix(&RimPoint::y),     mix(&RimPoint::z),           mix(&RimPoint::y_tau),
                mix(&RimPoint::z_tau), mix(&RimPoint::y_parameter), mix(&RimPoint::z_parameter)};
    }
};

/// The lines of constant τ in the zone between a face's plane and its reach.
class RimLines {
public:
    RimLines(const Lines& lines, RimTable& rim, const FacePlane& plane, double reach_m) {
        double least = lines.at(plane.x_m).parameter;
        double greatest = least;
        const auto include = [&](double x) {
            const double parameter = lines.at(x).parameter;
            least = std::min(least, parameter);
            greatest = std::max(greatest, parameter);
        };
        const double low = std::min(plane.x_m, plane.x_m - plane.side * reach_m);
        include(low);
        include(low + reach_m);
        for (const double x : lines.breakpoints_m()) {
            if (x > low && x < low + reach_m) include(x);
        }
        const double middle = 0.5 * (least + greatest);
        const double half_range = 0.5 * (greatest - least);
        const auto take = [&](double parameter, RimPoint RimLine::*which) {
            rim.set_parameter(parameter);
            for (std::size_t i = 0; i < rim.size(); ++i)
                line_[i].*which = rim.point(i);
        };
        if (half_range > 0.0) {
            take(least, &RimLine::low);
            take(greatest, &RimLine::high);
        }
        take(middle, &RimLine::mid);
        for (std::size_t i = 0; i < rim.size(); ++i) {
            line_[i].weight = rim.weight(i);
            line_[i].middle = middle;
            line_[i].half_range = half_range;
        }
    }

    [[nodiscard]] const RimLine& operator[](std::size_t i) const { return line_[i]; }

private:
    std::array<RimLine, RimTable::most_points> line_;
};

/// Where a line of constant τ on the skin meets the flank.
struct FlankContact {
    double depth = 0.0; ///< distance from the plane
    SkinPoint skin{};
    bool clean = false;
};

/// The root of depth − tanα·y(plane − side·depth) between 0 and `farthest`, by Newton's method, bisecting
/// where a step would leave the bracket. RimAt gives the rim point at a parameter.
template <class RimAt>
FlankContact flank_contact(const Lines& lines, const FacePlane& plane, RimAt rim_at, double farthest) {
    FlankContact m;
    double low = 0.0;
    double high = farthest;
    double depth = 0.0;
    for (int round = 0; round < 80; ++round) {
        const Station station = lines.at(plane.x_m - plane.side * depth);
        m.skin = skin_point(station, rim_at(station.parameter));
        const double short_by = plane.tangent * m.skin.y - depth;
        (short_by > 0.0 ? low : high) = depth;
        const double opening = 1.0 + plane.side * plane.tangent * m.skin.y_x;
        double next = depth + short_by / opening;
        const bool is_newton = opening > least_opening && next >= low && next <= high;
        if (!is_newton) next = 0.5 * (low + high);
        const double step = std::abs(next - depth);
        depth = next;
        // The error after this Newton step is far below 1e-15 m.
        if (step < (is_newton ? 1e-10 : 1e-15)) {
            m.depth = depth;
            m.clean = opening > least_opening && depth < farthest;
            return m;
        }
    }
    return m;
}

/// Adds the wood and skin between flank and plane along one line of constant τ. Returns ∫(1 + h·atan h)dx
/// along it, h the skin's slope along x (SkinSums::bend).
double add_line(const Lines& lines, const RimLine& line, const FacePlane& plane, double depth, Relief& out) {
    const std::span<const double> breaks = lines.breakpoints_m();
    const double low = plane.side > 0.0 ? plane.x_m - depth : plane.x_m;
    const double high = low + depth;
    auto next = std::upper_bound(breaks.begin(), breaks.end(), low);
    double bend = 0.0;
    for (double from = low; from < high;) {
        const double to = next == breaks.end() ? high : std::min(high, *next++);
        for (std::size_t k = 0; k < depth_order; ++k) {
            const double x = from + (to - from) * gauss_rule<depth_order>.node[k];
            const double dx = (to - from) * gauss_rule<depth_order>.weight[k];
            const double w = 2.0 * line.weight * dx;
            const Station st = lines.at(x);
            const SkinPoint p = skin_point(st, line.at(st.parameter));
            const double strip = -w * p.z * p.y_tau;
            out.wood.volume += strip;
            out.wood.x += strip * x;
            out.wood.xx += strip * x * x;
            out.wood.yy += strip * p.y * p.y;
            out.wood.z += 0.5 * strip * p.z;
            out.wood.xz += 0.5 * strip * p.z * x;
            out.wood.zz += strip * p.z * p.z / 3.0;
            const double cross = p.y_x * p.z_tau - p.z_x * p.y_tau;
            const double along2 = p.y_tau * p.y_tau + p.z_tau * p.z_tau;
            const double ds = w * std::sqrt(along2 + cross * cross);
            bend += dx * (1.0 + (along2 > 0.0 ? lean_term(cross / std::sqrt(along2)) : 0.0));
            out.skin.area += ds;
            out.skin.x += ds * x;
            out.skin.z += ds * p.z;
        }
        from = to;
    }
    return bend;
}

Relief flat_face(const Lines& lines, RimTable& rim, const FacePlane& plane) {
    const SectionDisc disc = section_disc(lines, rim, plane.x_m);
    Relief out;
    out.face = {disc.area_m2, {plane.x_m, 0.0, disc.centroid_z_m}, disc.rim_m};
    out.edge_m = 0.25 * std::numbers::pi * disc.rim_m;
    return out;
}

} // namespace

double FacePlane::x_at(double y_m) const {
    return x_m - side * tangent * std::abs(y_m);
}

double relief_depth(const Lines& lines, const FacePlane& plane, double share) {
    if (plane.tangent == 0.0) return 0.0;
    const double to_end = plane.side > 0.0 ? plane.x_m - lines.nose_m() : lines.tail_m() - plane.x_m;
    const FlankContact m = flank_contact(
        lines, plane, [share](double) { return RimPoint{share, 0.0, 0.0, 0.0, 0.0, 0.0}; }, to_end);
    return m.clean ? m.depth : std::numeric_limits<double>::quiet_NaN();
}

Relief relief_at(const Lines& lines, RimTable& rim, const FacePlane& plane) {
    if (plane.tangent == 0.0) return flat_face(lines, rim, plane);

    Relief out;
    const Station at_plane = lines.at(plane.x_m);
    const double reach_m = relief_depth(lines, plane, 1.0);
    const RimLines rim_lines(lines, rim, plane, reach_m);
    const double sine = plane.tangent / std::hypot(1.0, plane.tangent);
    const double cosine = sine / plane.tangent;
    double area = 0.0;
    double area_y = 0.0;
    double area_z = 0.0;
    double rim_angle = 0.0;
    double before = 0.0;
    RimTurn turn;
    for (std::size_t i = 0; i < rim.size(); ++i) {
        const RimLine& line = rim_lines[i];
        const FlankContact m = flank_contact(
            lines, plane, [&line](double parameter) { return line.at(parameter); }, 1.001 * reach_m);
        out.is_clean = out.is_clean && m.clean;
        const SkinPoint& p = m.skin;
        const double lost = add_line(lines, line, plane, m.depth, out);

        // The rim of the face: along it x follows the flank.
        const double depth_tau = plane.tangent * p.y_tau / (1.0 + plane.side * plane.tangent * p.y_x);
        const double x_tau = -plane.side * depth_tau;
        const double y_tau = p.y_tau + p.y_x * x_tau;
        const double z_tau = p.z_tau + p.z_x * x_tau;
        const double dl = 2.0 * line.weight * std::sqrt(x_tau * x_tau + y_tau * y_tau + z_tau * z_tau);
        const double strip = -2.0 * line.weight * p.z * y_tau;
        area += strip;
        area_y += strip * p.y;
        area_z += 0.5 * strip * p.z;
        out.face.rim_m += dl;

        const double along = std::hypot(p.y_tau, p.z_tau);
        if (!(along > 0.0)) continue;
        rim_angle += 0.5 * dl * std::acos(sine * std::clamp(p.z_tau / along, -1.0, 1.0));
        out.skin.bend +=
            turn.to(p.y_tau / along, p.z_tau / along) * (before + lost); // ½ for the mean, 2 for both sides
        before = lost;
    }
    out.skin.bend += turn.to(-1.0, 0.0) * before;
    out.face.area_m2 = area / cosine;
    out.face.centroid_m = {plane.x_at(area_y / area), 0.0, area_z / area};
    out.edge_m = rim_angle + std::atan(plane.tangent) * 2.0 * at_plane.half_height_m;
    return out;
}

} // namespace evenfall::shape
