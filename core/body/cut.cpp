#include "body/body.hpp"
#include "body/cut_check.hpp"
#include "body/relief.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <utility>

namespace evenfall::shape {

namespace {

class SegmentMaker {
public:
    SegmentMaker(const Lines& lines, RimTable& rim, double from_m, double to_m)
        : lines_(lines), rim_(rim), wood_(wood_between(lines, from_m, to_m)),
          skin_(skin_between(lines, rim, from_m, to_m)) {
        segment_.x_from_m = from_m;
        segment_.x_to_m = to_m;
    }

    /// A blunt nose or tail ends in a disc of skin.
    void end_at(double x_m) {
        const SectionDisc disc = section_disc(lines_, rim_, x_m);
        skin_ += {disc.area_m2, disc.area_m2 * x_m, disc.area_m2 * disc.centroid_z_m, 0.0};
        edge_m_ += 0.25 * std::numbers::pi * disc.rim_m;
    }

    /// False where the relief does not cut cleanly; the segment must not be used then.
    [[nodiscard]] bool face_at(const FacePlane& plane) {
        const Relief relief = relief_at(lines_, rim_, plane);
        wood_ -= relief.wood;
        skin_ -= relief.skin;
        edge_m_ += relief.edge_m;
        segment_.faces.push_back(relief.face);
        return relief.is_clean;
    }

    [[nodiscard]] Segment made() && {
        segment_.volume_m3 = wood_.volume;
        segment_.centroid_m = {wood_.x / wood_.volume, 0.0, wood_.z / wood_.volume};
        segment_.inertia_m5 = own_inertia(wood_, segment_.centroid_m);
        segment_.skin_m2 = skin_.area;
        segment_.skin_centroid_m = {skin_.x / skin_.area, 0.0, skin_.z / skin_.area};
        segment_.curvature_m = 0.5 * skin_.bend + edge_m_;
        return std::move(segment_);
    }

private:
    const Lines& lines_;
    RimTable& rim_;
    WoodSums wood_;
    SkinSums skin_;
    double edge_m_ = 0.0;
    Segment segment_;
};

} // namespace

Outcome<Body> cut(std::shared_ptr<const Lines> lines, const std::vector<document::Joint>& joints) {
    Problems problems = cut_problems(*lines, joints);
    if (!problems.empty()) return problems;

    Body body{std::move(lines), joints, {}};
    body.segments.reserve(joints.size() + 1);
    RimTable rim(body.lines->family());
    double from_m = body.lines->nose_m();
    for (std::size_t k = 0; k <= joints.size(); ++k) {
        const bool is_last = k == joints.size();
        const double to_m = is_last ? body.lines->tail_m() : joints[k].at_m - 0.5 * joints[k].gap_m;
        SegmentMaker maker(*body.lines, rim, from_m, to_m);
        if (k == 0) {
            maker.end_at(from_m);
        } else if (!maker.face_at({from_m, std::tan(joints[k - 1].relief_aft_rad), -1.0})) {
            return flank_problem(k - 1, "relief_aft_deg", k);
        }
        if (is_last) {
            maker.end_at(to_m);
        } else {
            if (!maker.face_at({to_m, std::tan(joints[k].relief_fore_rad), 1.0}))
                return flank_problem(k, "relief_fore_deg", k);
            from_m = joints[k].at_m + 0.5 * joints[k].gap_m;
        }
        body.segments.push_back(std::move(maker).made());
    }
    return body;
}

int segment_at(const Body& body, double x_m) {
    for (std::size_t k = 0; k < body.segments.size(); ++k) {
        if (x_m >= body.segments[k].x_from_m && x_m <= body.segments[k].x_to_m) return static_cast<int>(k);
    }
    return -1;
}

int nearest_segment(const Body& body, double x_m) {
    std::size_t nearest = 0;
    double least = std::numeric_limits<double>::infinity();
    for (std::size_t k = 0; k < body.segments.size(); ++k) {
        const Segment& s = body.segments[k];
        const double distance = std::max({0.0, s.x_from_m - x_m, x_m - s.x_to_m});
        if (distance < least) {
            least = distance;
            nearest = k;
        }
    }
    return static_cast<int>(nearest);
}

} // namespace evenfall::shape
