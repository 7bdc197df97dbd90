#include "body/body.hpp"

#include "body/relief.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shape {

namespace {

/// Evenly spaced places plus every station between them, ascending.
std::vector<double> places(const Lines& lines, double from_m, double to_m, int detail) {
    const int steps = std::max(2, detail);
    std::vector<double> x;
    for (int k = 0; k <= steps; ++k)
        x.push_back(from_m + (to_m - from_m) * static_cast<double>(k) / static_cast<double>(steps));
    for (const double station : lines.breakpoints_m()) {
        if (station > from_m && station < to_m) x.push_back(station);
    }
    std::sort(x.begin(), x.end());
    return x;
}

/// Where the flank of a face meets the skin at its greatest width.
double skin_end(const Lines& lines, const FacePlane& plane) {
    return plane.x_m - plane.side * relief_depth(lines, plane, 1.0);
}

} // namespace

std::vector<Point2> side_outline(const Body& body, int segment, int detail) {
    const Segment& s = body.segments[static_cast<std::size_t>(segment)];
    const std::vector<double> x = places(*body.lines, s.x_from_m, s.x_to_m, detail);
    std::vector<Point2> outline;
    outline.reserve(2 * x.size());
    for (const double at : x) {
        const Station st = body.lines->at(at);
        outline.push_back({at, st.centre_z_m + st.half_height_m});
    }
    for (auto at = x.rbegin(); at != x.rend(); ++at) {
        const Station st = body.lines->at(*at);
        outline.push_back({*at, st.centre_z_m - st.half_height_m});
    }
    return outline;
}

std::vector<Point2> top_outline(const Body& body, int segment, int detail) {
    const auto k = static_cast<std::size_t>(segment);
    const Segment& s = body.segments[k];
    const bool has_fore = k > 0;
    const bool has_aft = k < body.joints.size();
    const FacePlane fore{s.x_from_m, has_fore ? std::tan(body.joints[k - 1].relief_aft_rad) : 0.0, -1.0};
    const FacePlane aft{s.x_to_m, has_aft ? std::tan(body.joints[k].relief_fore_rad) : 0.0, 1.0};
    const std::vector<double> x =
        places(*body.lines, skin_end(*body.lines, fore), skin_end(*body.lines, aft), detail);
    std::vector<Point2> outline;
    outline.reserve(2 * x.size() + 2);
    outline.push_back({s.x_from_m, 0.0});
    for (const double at : x)
        outline.push_back({at, body.lines->at(at).half_width_m});
    outline.push_back({s.x_to_m, 0.0});
    for (auto at = x.rbegin(); at != x.rend(); ++at)
        outline.push_back({*at, -body.lines->at(*at).half_width_m});
    return outline;
}

std::vector<Point2> section_outline(const Lines& lines, double x_m, int detail) {
    const Station s = lines.at(x_m);
    const int steps = std::max(4, detail);
    std::vector<double> tau(lines.family().rim_breaks().begin(), lines.family().rim_breaks().end());
    for (int k = 0; k <= steps; ++k)
        tau.push_back(-1.0 + 2.0 * static_cast<double>(k) / static_cast<double>(steps));
    std::sort(tau.begin(), tau.end());
    tau.erase(std::unique(tau.begin(), tau.end(), [](double a, double b) { return b - a < 1e-12; }),
              tau.end());
    std::vector<Point2> outline;
    outline.reserve(2 * tau.size());
    for (const double t : tau) {
        const RimPoint p = lines.family().rim(s.parameter, t);
        outline.push_back({s.half_width_m * p.y, s.centre_z_m + s.half_height_m * p.z});
    }
    // Port side: the same points in reverse order, without the two on the middle plane.
    for (std::size_t k = outline.size() - 1; k-- > 1;)
        outline.push_back({-outline[k].u, outline[k].v});
    return outline;
}

} // namespace evenfall::shape
