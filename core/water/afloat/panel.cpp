#include "water/afloat/panel.hpp"

#include "base/quadrature.hpp"
#include "base/root.hpp"
#include "body/polygon.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace evenfall::afloat {

namespace {

/// Step between the rims of one body, in the logarithm of parameter. The nearest rim is at most a quarter of
/// a percent off; with its area corrected, the rim of a superellipse is then within 4e-4 of its half width.
constexpr double ladder_step = 0.005;

/// The whole section: area and moment of the unit rim, within a limit.
struct UnitWhole {
    double area;
    double moment_z;
};
UnitWhole whole_of(const Section& s) {
    if (s.limit) return {s.limit->area, s.limit->moment_z};
    return {s.rim->area(), s.rim->moment_z()};
}

void add_whole(const Section& s, Sums& out) {
    const UnitWhole w = whole_of(s);
    const double slice = s.dx_m * s.half_width_m * s.half_height_m;
    const double volume = slice * w.area;
    out.volume += volume;
    out.x += volume * s.x_m;
    out.y += volume * s.centre_y_m;
    out.z += volume * s.centre_z_m + slice * s.half_height_m * w.moment_z;
}

/// Adds the wet part of a section; returns whether the waterline crosses it.
bool add_cut(const Section& s, const WaterPlane& plane, Sums& out) {
    const Vec3& up = plane.up;
    const Vec3& across = plane.level.across;
    const double a = s.half_width_m;
    const double b = s.half_height_m;
    const UnitLine line{up.y * a, up.z * b,
                        plane.depth_m - up.x * s.x_m - up.y * s.centre_y_m - up.z * s.centre_z_m,
                        across.y * a, across.z * b};
    const UnitCut cut = s.rim->cut(line, s.limit_or_null());
    const double slice = s.dx_m * a * b;
    const double volume = slice * cut.area;
    out.volume += volume;
    out.x += volume * s.x_m;
    out.y += volume * s.centre_y_m + slice * a * cut.moment_y;
    out.z += volume * s.centre_z_m + slice * b * cut.moment_z;
    if (!cut.crossed) return false;
    const double t0 = across.y * s.centre_y_m + across.z * s.centre_z_m;
    const double l = (s.x_m - plane.x_origin_m) / plane.level.tilt + plane.x_offset_m;
    const double w = s.dx_m / plane.level.tilt;
    const double strip = w * cut.chord[0];
    const double strip_t = w * cut.chord[1] + t0 * strip;
    out.area += strip;
    out.l += strip * l;
    out.ll += strip * l * l;
    out.t += strip_t;
    out.lt += strip_t * l;
    out.tt += w * (cut.chord[2] + 2.0 * t0 * cut.chord[1]) + t0 * t0 * strip;
    return true;
}

Wetness wetness_of(const Section& s, const WaterPlane& plane) {
    const Span span = span_of(s, plane.up);
    if (span.high_m <= plane.depth_m) return Wetness::wet;
    return span.low_m >= plane.depth_m ? Wetness::dry : Wetness::cut;
}

template <std::size_t N>
void set_points(const SoftInterval& interval, std::array<double, Panel::most_sections>& x,
                std::array<double, Panel::most_sections>& dx) {
    for (std::size_t k = 0; k < N; ++k) {
        x[k] = interval.at(gauss_rule<N>.node[k]);
        dx[k] = gauss_rule<N>.weight[k] * interval.stretch(gauss_rule<N>.node[k]);
    }
}

} // namespace

const UnitRim& UnitRims::of(double parameter) {
    if (last_ != nullptr && last_->parameter() == parameter) return *last_;
    double key = parameter;
    if (last_ != nullptr && !family_->is_polygon() && parameter > 0.0) {
        key = std::exp(ladder_step * std::round(std::log(parameter) / ladder_step));
    }
    const auto found = rims_.find(key);
    last_ = &(found != rims_.end() ? found : rims_.emplace(key, UnitRim(*family_, key)).first)->second;
    return *last_;
}

const UnitRim& UnitRims::box() {
    if (!box_) box_.emplace(shape::Chamfered{}, 0.0);
    return *box_;
}

WaterPlane::WaterPlane(const Vec3& up_, double depth_) : up(up_), depth_m(depth_), level(level_axes(up_)) {
    if (level.tilt < 0.5) {
        // Near vertical, x hardly varies over the waterplane but r·along does: measured from where the plane
        // meets the x axis.
        x_origin_m = depth_m / up.x;
        x_offset_m = depth_m * level.tilt / up.x;
    } else {
        x_offset_m = -up.x * depth_m / level.tilt;
    }
}

void Sums::add(const Sums& o, double factor) {
    volume += factor * o.volume;
    x += factor * o.x;
    y += factor * o.y;
    z += factor * o.z;
    area += factor * o.area;
    l += factor * o.l;
    t += factor * o.t;
    ll += factor * o.ll;
    lt += factor * o.lt;
    tt += factor * o.tt;
}

Span span_of(const Section& s, const Vec3& up) {
    const double middle = up.x * s.x_m + up.y * s.centre_y_m + up.z * s.centre_z_m;
    const double p = std::abs(up.y) * s.half_width_m;
    const double q = up.z * s.half_height_m;
    return {middle - s.rim->reach(p, -q, s.limit_or_null()), middle + s.rim->reach(p, q, s.limit_or_null())};
}

shape::Station station_at(const Skin& skin, double line_x_m) {
    return skin.lines->at(std::clamp(line_x_m, skin.lines->nose_m(), skin.lines->tail_m()));
}

Section skin_section(const Skin& skin, double line_x_m, const shape::Station& st, const UnitRim& rim) {
    Section s;
    s.rim = &rim;
    s.half_width_m = st.half_width_m + skin.film_m;
    s.half_height_m = st.half_height_m + skin.film_m;
    if (st.parameter != rim.parameter()) {
        const double fit = std::sqrt(skin.lines->family().moments(st.parameter).area / rim.area());
        s.half_width_m *= fit;
        s.half_height_m *= fit;
    }
    double limit_m = std::numeric_limits<double>::infinity();
    for (const Flank& f : {skin.fore, skin.aft}) {
        if (f.tangent > 0.0)
            limit_m = std::min(limit_m, std::max(0.0, f.side * (line_x_m - f.x_m) / f.tangent));
    }
    if (limit_m < s.half_width_m * rim.widest_y()) s.limit = rim.limit(limit_m / s.half_width_m);
    s.half_width_m *= skin.grow;
    s.half_height_m *= skin.grow;
    s.x_m = line_x_m + skin.shift_x_m;
    s.centre_z_m = st.centre_z_m + skin.shift_z_m;
    return s;
}

Panel::Panel(const Skin& skin, double from_m, double to_m, bool soft_from, bool soft_to, std::size_t order,
             UnitRims& rims)
    : skin_(&skin), size_(order), soft_from_(soft_from), soft_to_(soft_to) {
    const SoftInterval interval{from_m, to_m, soft_from, soft_to};
    std::array<double, most_sections> x{};
    std::array<double, most_sections> dx{};
    switch (order) {
    case 2:
        set_points<2>(interval, x, dx);
        break;
    case 3:
        set_points<3>(interval, x, dx);
        break;
    default:
        set_points<4>(interval, x, dx);
    }
    for (std::size_t k = 0; k < size_; ++k) {
        const shape::Station station = station_at(skin, x[k]);
        sections_[k] = skin_section(skin, x[k], station, rims.of(station.parameter));
        sections_[k].dx_m = dx[k];
    }
    ends_[0] = skin_section(skin, from_m, station_at(skin, from_m), *sections_[0].rim);
    ends_[1] = skin_section(skin, to_m, station_at(skin, to_m), *sections_[size_ - 1].rim);
    take_stock();
}

Panel::Panel(const UnitRim& square, const Vec3& centre, const Vec3& half_size, double factor)
    : factor_(factor), size_(3) {
    Section s;
    s.rim = &square;
    s.half_width_m = half_size.y;
    s.half_height_m = half_size.z;
    s.centre_y_m = centre.y;
    s.centre_z_m = centre.z;
    ends_ = {s, s};
    ends_[0].x_m = centre.x - half_size.x;
    ends_[1].x_m = centre.x + half_size.x;
    for (std::size_t k = 0; k < size_; ++k) {
        s.x_m = centre.x + half_size.x * (2.0 * gauss_rule<3>.node[k] - 1.0);
        s.dx_m = 2.0 * half_size.x * gauss_rule<3>.weight[k];
        sections_[k] = s;
    }
    take_stock();
}

void Panel::grow(double factor) {
    const auto scale = [factor](Section& s) {
        s.half_width_m *= factor;
        s.half_height_m *= factor;
    };
    for (std::size_t k = 0; k < size_; ++k)
        scale(sections_[k]);
    for (Section& s : ends_)
        scale(s);
    take_stock();
}

void Panel::shift(double x_m, double z_m) {
    const auto move = [x_m, z_m](Section& s) {
        s.x_m += x_m;
        s.centre_z_m += z_m;
    };
    for (std::size_t k = 0; k < size_; ++k)
        move(sections_[k]);
    for (Section& s : ends_)
        move(s);
    take_stock();
}

void Panel::take_stock() {
    whole_ = {};
    Vec3 low{ends_[0].x_m, 1e9, 1e9};
    Vec3 high{ends_[1].x_m, -1e9, -1e9};
    const auto include = [&](const Section& s) {
        constexpr double room = 1.001; // tolerance for a rim scaled to its area
        low.y = std::min(low.y, s.centre_y_m - room * s.half_width_m);
        high.y = std::max(high.y, s.centre_y_m + room * s.half_width_m);
        low.z = std::min(low.z, s.centre_z_m - room * s.half_height_m);
        high.z = std::max(high.z, s.centre_z_m + room * s.half_height_m);
    };
    for (std::size_t k = 0; k < size_; ++k) {
        add_whole(sections_[k], whole_);
        include(sections_[k]);
    }
    for (const Section& s : ends_)
        include(s);
    middle_ = 0.5 * (low + high);
    half_size_ = 0.5 * (high - low);
}

Section Panel::section_at(double x_m) const {
    if (skin_ == nullptr) {
        Section s = sections_[0];
        s.x_m = x_m;
        return s;
    }
    // Uses the nearest rim of the panel: parameter hardly changes within one.
    std::size_t nearest = 0;
    for (std::size_t k = 1; k < size_; ++k) {
        if (std::abs(sections_[k].x_m - x_m) < std::abs(sections_[nearest].x_m - x_m)) nearest = k;
    }
    const double line_x_m = x_m - skin_->shift_x_m;
    return skin_section(*skin_, line_x_m, station_at(*skin_, line_x_m), *sections_[nearest].rim);
}

void Panel::add_wet(const WaterPlane& plane, Sums& out, std::optional<Wetness>& fore_known) const {
    const double middle = dot(plane.up, middle_) - plane.depth_m;
    const double reach = std::abs(plane.up.x) * half_size_.x + std::abs(plane.up.y) * half_size_.y +
                         std::abs(plane.up.z) * half_size_.z;
    const std::optional<Wetness> known = std::exchange(fore_known, std::nullopt);
    if (middle >= reach) return;
    if (middle <= -reach) {
        out.add(whole_, factor_);
        return;
    }
    const Wetness fore = known ? *known : wetness_of(ends_[0], plane);
    const Wetness aft = wetness_of(ends_[1], plane);
    fore_known = aft;
    Sums sums;
    if (fore == aft && add_alike(plane, fore, sums)) {
        out.add(sums, factor_);
        return;
    }
    sums = {};
    add_split(plane, sums);
    out.add(sums, factor_);
}

/// Adds the stored sections if all of them are dry, or cut, or wet; false where they differ.
bool Panel::add_alike(const WaterPlane& plane, Wetness wetness, Sums& out) const {
    for (std::size_t k = 0; k < size_; ++k) {
        const bool alike = wetness == Wetness::cut ? add_cut(sections_[k], plane, out)
                                                   : wetness_of(sections_[k], plane) == wetness;
        if (!alike) return false;
    }
    if (wetness == Wetness::wet) out = whole_;
    return true;
}

/// The waterline begins or ends within this panel: splits it there, so that each part is smooth.
void Panel::add_split(const WaterPlane& plane, Sums& out) const {
    struct Mark {
        double x_m;
        bool is_soft;
    };
    std::array<Mark, 2 * (most_sections + 1) + 2> marks{};
    std::size_t count = 0;
    marks[count++] = {ends_[0].x_m, soft_from_};
    const Section* before = &ends_[0];
    Span span_before = span_of(*before, plane.up);
    for (std::size_t k = 0; k <= size_; ++k) {
        const Section* now = k < size_ ? &sections_[k] : &ends_[1];
        const Span span = span_of(*now, plane.up);
        const std::size_t first = count;
        if ((span.high_m > plane.depth_m) != (span_before.high_m > plane.depth_m)) {
            marks[count++] = {crossing(plane, before->x_m, now->x_m, true), true};
        }
        if ((span.low_m >= plane.depth_m) != (span_before.low_m >= plane.depth_m)) {
            marks[count++] = {crossing(plane, before->x_m, now->x_m, false), true};
        }
        if (count == first + 2 && marks[first].x_m > marks[first + 1].x_m)
            std::swap(marks[first], marks[first + 1]);
        before = now;
        span_before = span;
    }
    marks[count++] = {ends_[1].x_m, soft_to_};
    for (std::size_t k = 0; k + 1 < count; ++k) {
        const Mark& from = marks[k];
        const Mark& to = marks[k + 1];
        if (!(to.x_m > from.x_m)) continue;
        const Wetness wetness = wetness_of(section_at(0.5 * (from.x_m + to.x_m)), plane);
        if (wetness == Wetness::dry) continue;
        const bool cut = wetness == Wetness::cut;
        const bool first = k == 0;
        const bool last = k + 2 == count;
        const bool soft_from = from.is_soft && (cut || first);
        const bool soft_to = to.is_soft && (cut || last);
        // Near vertical one short part contains the whole waterplane, with a kink where each corner of a
        // section goes under.
        const int parts = cut && plane.level.tilt < 0.6 ? 4 : 1;
        for (int i = 0; i < parts; ++i) {
            const double step = (to.x_m - from.x_m) / parts;
            add_stretch(plane,
                        {from.x_m + i * step, from.x_m + (i + 1) * step, soft_from && i == 0,
                         soft_to && i + 1 == parts},
                        wetness, out);
        }
    }
}

void Panel::add_stretch(const WaterPlane& plane, const SoftInterval& interval, Wetness wetness,
                        Sums& out) const {
    constexpr std::size_t order = 6;
    for (std::size_t k = 0; k < order; ++k) {
        const double s = gauss_rule<order>.node[k];
        Section section = section_at(interval.at(s));
        section.dx_m = gauss_rule<order>.weight[k] * interval.stretch(s);
        if (wetness == Wetness::wet) {
            add_whole(section, out);
        } else {
            add_cut(section, plane, out);
        }
    }
}

/// x at which the highest (or lowest) point of the section lies in the water surface; the signs must differ
/// at the two ends.
double Panel::crossing(const WaterPlane& plane, double from_m, double to_m, bool of_high) const {
    const auto over = [&](double x) {
        const Span span = span_of(section_at(x), plane.up);
        return (of_high ? span.high_m : span.low_m) - plane.depth_m;
    };
    return root_between(over, from_m, to_m, {1e-9, 1e-10});
}

} // namespace evenfall::afloat
