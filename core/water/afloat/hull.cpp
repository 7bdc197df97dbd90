#include "water/afloat/hull.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace evenfall::afloat {

namespace {

/// A sphere cut by the plane: cap volume, its centroid on the line through the centre, and the disc of the
/// waterplane.
void add_ball_cut(const Ball& ball, const WaterPlane& plane, Sums& out) {
    const double r = ball.radius_m;
    const double s = plane.depth_m - dot(plane.up, ball.centre_m); // height of the water above the centre
    if (s <= -r) return;
    const bool covered = s >= r;
    const double h = covered ? 2.0 * r : r + s;
    const double volume = ball.factor * std::numbers::pi * h * h * (r - h / 3.0);
    const double off =
        covered ? 0.0
                : -ball.factor * 0.25 * std::numbers::pi * (r * r - s * s) * (r * r - s * s); // ∫ along up
    out.volume += volume;
    out.x += volume * ball.centre_m.x + off * plane.up.x;
    out.y += volume * ball.centre_m.y + off * plane.up.y;
    out.z += volume * ball.centre_m.z + off * plane.up.z;
    if (covered) return;
    const Vec3 centre = ball.centre_m + s * plane.up;
    const double disc = std::numbers::pi * (r * r - s * s);
    const double area = ball.factor * disc;
    const double own = area * disc / (4.0 * std::numbers::pi);
    const double l = dot(centre, plane.level.along);
    const double t = dot(centre, plane.level.across);
    out.area += area;
    out.l += area * l;
    out.t += area * t;
    out.ll += area * l * l + own;
    out.tt += area * t * t + own;
    out.lt += area * l * t;
}

/// `up`, or a direction 1e-6 rad from it where the lure stands exactly on nose or tail and `along` would be
/// undefined. Changes no result by more than 1e-6 of its size.
Vec3 off_vertical(const Vec3& up) {
    constexpr double least = 1e-6;
    const double tilt = std::hypot(up.y, up.z);
    if (tilt >= least) return up;
    const double y = tilt > 0.0 ? up.y * least / tilt : 0.0;
    const double z = tilt > 0.0 ? up.z * least / tilt : least;
    return {std::copysign(std::sqrt(1.0 - least * least), up.x), y, z};
}

void include(const Panel& panel, const Vec3& up, Span& all) {
    const auto one = [&](const Section& section) {
        const Span s = span_of(section, up);
        all.low_m = std::min(all.low_m, s.low_m);
        all.high_m = std::max(all.high_m, s.high_m);
    };
    one(panel.end(0));
    for (std::size_t i = 0; i < panel.size(); ++i)
        one(panel.section(i));
    one(panel.end(1));
}

} // namespace

FloatingHull::FloatingHull(const shape::Body& body, std::span<const ledger::Line> lines,
                           const document::Document& document)
    : lines_(body.lines), rims_(std::make_unique<UnitRims>(body.lines->family())),
      length_m_(body.lines->length_m()) {
    skins_.resize(body.segments.size());
    panels_.reserve(12 * body.segments.size() + body.lines->breakpoints_m().size() + document.holes.size() +
                    document.pockets.size());
    for (std::size_t s = 0; s < body.segments.size(); ++s)
        add_segment(body, s, lines, document);
    wood_panels_ = panels_.size();
    add_openings(body, lines, document);
    for (const Panel& panel : panels_)
        whole_.add(panel.whole(), panel.factor());
    for (const Ball& ball : balls_) {
        const double volume =
            ball.factor * 4.0 / 3.0 * std::numbers::pi * ball.radius_m * ball.radius_m * ball.radius_m;
        whole_.volume += volume;
        whole_.x += volume * ball.centre_m.x;
        whole_.y += volume * ball.centre_m.y;
        whole_.z += volume * ball.centre_m.z;
    }

    mirrored_ = is_each_mirrored();
}

bool FloatingHull::is_each_mirrored() const {
    // Segments are symmetric by construction. Each box and sphere must be in the middle plane or have a twin.
    struct Item {
        Vec3 at;
        double size;
    };
    std::vector<Item> items;
    for (std::size_t k = wood_panels_; k < panels_.size(); ++k) {
        const Section& s = panels_[k].end(0);
        items.push_back(
            {{s.x_m, s.centre_y_m, s.centre_z_m}, panels_[k].factor() * panels_[k].whole().volume});
    }
    for (const Ball& ball : balls_)
        items.push_back({ball.centre_m, ball.factor * ball.radius_m});
    constexpr double same_m = 1e-9;
    return std::all_of(items.begin(), items.end(), [&](const Item& a) {
        return std::any_of(items.begin(), items.end(), [&](const Item& b) {
            return length(b.at - Vec3{a.at.x, -a.at.y, a.at.z}) < same_m &&
                   std::abs(b.size - a.size) <= 1e-9 * std::abs(a.size);
        });
    });
}

Vec3 FloatingHull::centroid_m() const {
    return Vec3{whole_.x, whole_.y, whole_.z} / whole_.volume;
}

Immersion FloatingHull::immersed(const Vec3& up, double depth_m) const {
    const WaterPlane plane(off_vertical(up), depth_m);
    Sums s;
    std::optional<Wetness> fore;
    const Panel* before = nullptr;
    for (const Panel& panel : panels_) {
        if (before == nullptr || before->to_m() != panel.from_m() || before->factor() != panel.factor())
            fore.reset();
        panel.add_wet(plane, s, fore);
        before = &panel;
    }
    for (const Ball& ball : balls_)
        add_ball_cut(ball, plane, s);
    Immersion i;
    i.volume_m3 = s.volume;
    i.moment_m4 = {s.x, s.y, s.z};
    i.level = plane.level;
    i.area_m2 = s.area;
    i.along_m3 = s.l;
    i.across_m3 = s.t;
    i.along_m4 = s.ll;
    i.across_m4 = s.tt;
    i.mixed_m4 = s.lt;
    return i;
}

double FloatingHull::depth_for(const Vec3& up, double volume_m3, double start_m) const {
    Span bracket = span(up);
    double depth = std::clamp(start_m, bracket.low_m, bracket.high_m);
    for (int round = 0; round < 60; ++round) {
        const Immersion i = immersed(up, depth);
        const double over = i.volume_m3 - volume_m3;
        if (std::abs(over) <= 1e-12 * whole_.volume) break;
        (over > 0.0 ? bracket.high_m : bracket.low_m) = depth;
        const double newton =
            i.area_m2 > 0.0 ? depth - over / i.area_m2 : std::numeric_limits<double>::quiet_NaN();
        const bool inside = newton > bracket.low_m && newton < bracket.high_m;
        depth = inside ? newton : 0.5 * (bracket.low_m + bracket.high_m);
        if (bracket.high_m - bracket.low_m < 1e-15) break;
    }
    return depth;
}

Span FloatingHull::wood_span(const Vec3& up) const {
    Span all{std::numeric_limits<double>::infinity(), -std::numeric_limits<double>::infinity()};
    for (std::size_t k = 0; k < wood_panels_; ++k)
        include(panels_[k], up, all);
    return all;
}

Span FloatingHull::span(const Vec3& up) const {
    Span all = wood_span(up);
    // After the wood: the tail, and displacement that is subtracted.
    for (std::size_t k = wood_panels_; k < panels_.size(); ++k) {
        if (panels_[k].factor() > 0.0) include(panels_[k], up, all);
    }
    for (const Ball& ball : balls_) {
        const double middle = dot(up, ball.centre_m);
        all.low_m = std::min(all.low_m, middle - ball.radius_m);
        all.high_m = std::max(all.high_m, middle + ball.radius_m);
    }
    return all;
}

Span FloatingHull::end_span(const Vec3& up, std::size_t which) const {
    return span_of(which == 0 ? panels_.front().end(0) : panels_[wood_panels_ - 1].end(1), up);
}

double FloatingHull::back_line_out(const Vec3& up, double depth_m) const {
    const auto height = [&](const Section& s) {
        return up.x * s.x_m + up.z * (s.centre_z_m + s.half_height_m * s.rim->back_z()) - depth_m;
    };
    double out = 0.0;
    double all = 0.0;
    for (std::size_t k = 0; k < wood_panels_; ++k) {
        const Panel& panel = panels_[k];
        const Section* before = &panel.end(0);
        for (std::size_t i = 0; i <= panel.size(); ++i) {
            const Section* now = i < panel.size() ? &panel.section(i) : &panel.end(1);
            const double step = now->x_m - before->x_m;
            const double h0 = height(*before);
            const double h1 = height(*now);
            all += step;
            if (h0 > 0.0 && h1 > 0.0)
                out += step;
            else if ((h0 > 0.0) != (h1 > 0.0))
                out += step * std::max(h0, h1) / std::abs(h1 - h0);
            before = now;
        }
    }
    return out / all;
}

} // namespace evenfall::afloat
