#pragma once

// The wood of one segment inside one box, integrated slice by slice. Private to box_cut.cpp and
// pocket_surface.cpp.

#include "base/quadrature.hpp"
#include "base/root.hpp"
#include "body/body.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <span>

namespace evenfall::shape {

/// Ascending places where an integrand is not smooth, between fixed ends.
class Breaks {
public:
    Breaks(double from, double to) : from_(from), to_(to) {
        place_[0] = from;
        place_[1] = to;
    }

    void add(double at) {
        if (at > from_ && at < to_ && size_ < place_.size()) place_[size_++] = at;
    }

    /// Call once, after the last add.
    std::span<const double> sorted() {
        std::sort(place_.begin(), place_.begin() + static_cast<std::ptrdiff_t>(size_));
        return {place_.data(), size_};
    }

private:
    double from_;
    double to_;
    std::size_t size_ = 2;
    std::array<double, 320>
        place_; // room for every station of four full curves, or both sides of a full outline
};

/// Area or volume and its first moments.
struct BoxSums {
    double volume = 0.0;
    double x = 0.0, y = 0.0, z = 0.0;
};

/// The wood of one segment inside one box.
class BoxedWood {
    static constexpr std::size_t along_order = 5;
    static constexpr std::size_t across_order = 5;

public:
    BoxedWood(const Body& body, std::size_t segment, const Box& box) : lines_(*body.lines), box_(box) {
        const Segment& s = body.segments[segment];
        from_m_ = s.x_from_m;
        to_m_ = s.x_to_m;
        if (segment > 0) fore_tangent_ = std::tan(body.joints[segment - 1].relief_aft_rad);
        if (segment < body.joints.size()) aft_tangent_ = std::tan(body.joints[segment].relief_fore_rad);
    }

    [[nodiscard]] BoxSums sums() const {
        BoxSums total;
        for_each_interval([&](double a, double b) { add_interval(a, b, total); });
        return total;
    }

    /// Calls visit(from, to) for each interval of x in which the wood inside the box is smooth.
    template <class Visit>
    void for_each_interval(Visit visit) const {
        const double from = std::max(from_m_, box_.x_from_m);
        const double to = std::min(to_m_, box_.x_to_m);
        if (!(to > from) || !(box_.y_to_m > box_.y_from_m) || !(box_.z_to_m > box_.z_from_m)) return;
        Breaks kinks(from, to);
        for (const double x : lines_.breakpoints_m())
            kinks.add(x);
        for (const double y : {std::abs(box_.y_from_m), std::abs(box_.y_to_m)}) {
            kinks.add(from_m_ + fore_tangent_ * y);
            kinks.add(to_m_ - aft_tangent_ * y);
        }
        // Where the skin crosses a side of the box, or a flank.
        const std::array<double, 4> crossings = crossings_between(from, to);
        for (const double x : crossings)
            kinks.add(x);
        const std::span<const double> x = kinks.sorted();
        for (std::size_t k = 0; k + 1 < x.size(); ++k)
            visit(x[k], x[k + 1]);
    }

    [[nodiscard]] double from_m() const { return from_m_; }
    [[nodiscard]] double to_m() const { return to_m_; }
    [[nodiscard]] double fore_tangent() const { return fore_tangent_; } ///< 0: flat, or an end of the lure
    [[nodiscard]] double aft_tangent() const { return aft_tangent_; }

    /// Half breadth of wood between the flanks.
    [[nodiscard]] double flank_half_breadth(double x) const {
        double half = std::numeric_limits<double>::infinity();
        if (fore_tangent_ > 0.0) half = std::min(half, (x - from_m_) / fore_tangent_);
        if (aft_tangent_ > 0.0) half = std::min(half, (to_m_ - x) / aft_tangent_);
        return half;
    }

    /// Area and its first moments at one x.
    [[nodiscard]] BoxSums slice_at(double x) const {
        BoxSums slice;
        const Station s = lines_.at(x);
        if (!(s.half_width_m > 0.0 && s.half_height_m > 0.0)) return slice;
        const double half = std::min(s.half_width_m, flank_half_breadth(x));
        const double from = std::max(-half, box_.y_from_m);
        const double to = std::min(half, box_.y_to_m);
        if (!(to > from)) return slice;

        const double farthest = std::max(std::abs(from), std::abs(to)) / s.half_width_m;
        const Sides narrowest = sides_at(s, farthest);
        if (narrowest.back >= box_.z_to_m && narrowest.belly <= box_.z_from_m) {
            // The skin is outside the box even at the far corner, hence everywhere.
            add_column(box_.z_to_m, box_.z_from_m, 0.5 * (from + to), to - from, slice);
            return slice;
        }
        Breaks kinks(from, to);
        const auto add_both = [&](double y) {
            kinks.add(y);
            kinks.add(-y);
        };
        kinks.add(0.0);
        for (const double z : {box_.z_from_m, box_.z_to_m}) {
            const double share = (z - s.centre_z_m) / s.half_height_m;
            if (std::abs(share) < 1.0)
                add_both(s.half_width_m * lines_.family().half_width(s.parameter, share));
        }
        if (lines_.family().is_polygon()) {
            for (const double tau : lines_.family().rim_breaks())
                add_both(s.half_width_m * lines_.family().rim(s.parameter, tau).y);
        }
        const std::span<const double> y = kinks.sorted();
        for (std::size_t k = 0; k + 1 < y.size(); ++k) {
            // The skin is vertical at the widest point, and steep well before it.
            const double upright = 0.7 * s.half_width_m;
            const SoftInterval interval{y[k], y[k + 1], y[k]<-upright, y[k + 1]> upright};
            for (std::size_t i = 0; i < across_order; ++i) {
                const double at = interval.at(gauss_rule<across_order>.node[i]);
                const double w =
                    gauss_rule<across_order>.weight[i] * interval.stretch(gauss_rule<across_order>.node[i]);
                const Sides sides = sides_at(s, std::abs(at) / s.half_width_m);
                add_column(std::min(sides.back, box_.z_to_m), std::max(sides.belly, box_.z_from_m), at, w,
                           slice);
            }
        }
        return slice;
    }

private:
    /// One root of f between two ends of opposite sign, else NaN.
    template <class F>
    static double crossing(double from, double to, F f) {
        const double at_from = f(from);
        const double at_to = f(to);
        if ((at_from > 0.0) == (at_to > 0.0)) return std::numeric_limits<double>::quiet_NaN();
        return root_between(f, from, to, at_from, at_to, {1e-13});
    }

    /// A box is short, so at most one crossing of each kind is expected.
    [[nodiscard]] std::array<double, 4> crossings_between(double from, double to) const {
        const auto width = [&](double x) { return lines_.at(x).half_width_m; };
        const auto against = [&](double y) {
            return crossing(from, to, [&](double x) { return width(x) - std::abs(y); });
        };
        const double nothing = std::numeric_limits<double>::quiet_NaN();
        std::array<double, 4> found{against(box_.y_from_m), against(box_.y_to_m), nothing, nothing};
        if (fore_tangent_ > 0.0)
            found[2] = crossing(from, to, [&](double x) { return width(x) - (x - from_m_) / fore_tangent_; });
        if (aft_tangent_ > 0.0)
            found[3] = crossing(from, to, [&](double x) { return width(x) - (to_m_ - x) / aft_tangent_; });
        return found;
    }

    void add_interval(double from, double to, BoxSums& total) const {
        for (std::size_t k = 0; k < along_order; ++k) {
            const double x = from + (to - from) * gauss_rule<along_order>.node[k];
            const double w = (to - from) * gauss_rule<along_order>.weight[k];
            const BoxSums slice = slice_at(x);
            total.volume += w * slice.volume;
            total.x += w * slice.volume * x;
            total.y += w * slice.y;
            total.z += w * slice.z;
        }
    }

    struct Sides {
        double back;
        double belly;
    };
    [[nodiscard]] Sides sides_at(const Station& s, double share) const {
        const double y = std::min(1.0, share);
        return {s.centre_z_m + s.half_height_m * lines_.family().upper_z(s.parameter, y),
                s.centre_z_m + s.half_height_m * lines_.family().lower_z(s.parameter, y)};
    }

    static void add_column(double top, double bottom, double y, double width, BoxSums& slice) {
        if (!(top > bottom)) return;
        const double area = width * (top - bottom);
        slice.volume += area;
        slice.y += area * y;
        slice.z += area * 0.5 * (top + bottom);
    }

    const Lines& lines_;
    Box box_;
    double from_m_ = 0.0;
    double to_m_ = 0.0;
    double fore_tangent_ = 0.0;
    double aft_tangent_ = 0.0;
};

} // namespace evenfall::shape
