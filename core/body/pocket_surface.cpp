#include "body/pocket_surface.hpp"

#include "base/root.hpp"
#include "body/boxed_wood.hpp"
#include "body/rim_table.hpp"

namespace evenfall::shape {

namespace {

/// A box closer than this share of the section's height to a flat back or belly opens through it.
constexpr double touch = 1e-9;

constexpr std::size_t along_order = 5;
constexpr std::size_t around_order = 5;
constexpr std::size_t across_order = 5;

struct Interval {
    double from = 0.0;
    double to = 0.0;
    [[nodiscard]] double length() const { return std::max(0.0, to - from); }
    [[nodiscard]] double middle() const { return 0.5 * (from + to); }
};

void add(Patch& patch, double area_m2, const Vec3& at_m) {
    patch.area_m2 += area_m2;
    patch.moment_m3 += area_m2 * at_m;
}

/// Sides, edges and skin of one box in one segment.
class Surfaces {
public:
    Surfaces(const Body& body, std::size_t segment, const Box& box)
        : lines_(*body.lines), family_(body.lines->family()), box_(box), wood_(body, segment, box),
          is_nose_(segment == 0), is_tail_(segment + 1 == body.segments.size()) {}

    [[nodiscard]] PocketSurface found() {
        wood_.for_each_interval([&](double from, double to) {
            for (std::size_t k = 0; k < along_order; ++k) {
                const double x = from + (to - from) * gauss_rule<along_order>.node[k];
                add_slice(x, (to - from) * gauss_rule<along_order>.weight[k]);
            }
        });
        for (const double x : {box_.x_from_m, box_.x_to_m}) {
            if (x > wood_.from_m() && x < wood_.to_m()) add_cross_wall(x);
        }
        add_end(wood_.from_m(), wood_.fore_tangent(), 1.0, is_nose_);
        add_end(wood_.to_m(), wood_.aft_tangent(), -1.0, is_tail_);
        return out_;
    }

private:
    [[nodiscard]] static bool is_drawn(const Station& s) {
        return s.half_width_m > 0.0 && s.half_height_m > 0.0;
    }

    /// Overlap of wood and box along z at (x, y).
    [[nodiscard]] Interval upright(const Station& s, double y) const {
        const double share = std::abs(y) / s.half_width_m;
        if (share >= 1.0) return {};
        return {std::max(box_.z_from_m, s.centre_z_m + s.half_height_m * family_.lower_z(s.parameter, share)),
                std::min(box_.z_to_m, s.centre_z_m + s.half_height_m * family_.upper_z(s.parameter, share))};
    }

    /// Overlap of wood and box across at (x, z), within the flanks.
    [[nodiscard]] Interval level(const Station& s, double z, double limit) const {
        const double share = (z - s.centre_z_m) / s.half_height_m;
        if (!(std::abs(share) < 1.0 - touch)) return {};
        const double half = std::min(limit, s.half_width_m * family_.half_width(s.parameter, share));
        return {std::max(-half, box_.y_from_m), std::min(half, box_.y_to_m)};
    }

    void add_slice(double x, double dx) {
        const Station s = lines_.at(x);
        if (!is_drawn(s)) return;
        const double limit = std::min(s.half_width_m, wood_.flank_half_breadth(x));
        for (const double y : {box_.y_from_m, box_.y_to_m}) {
            if (!(std::abs(y) < limit)) continue;
            const Interval z = upright(s, y);
            add(out_.wall, dx * z.length(), {x, y, z.middle()});
            if (!(z.length() > 0.0)) continue;
            for (const double end : {box_.z_from_m, box_.z_to_m}) {
                if (z.from == end || z.to == end) out_.inner_edge_m += dx;
            }
        }
        for (const double z : {box_.z_from_m, box_.z_to_m}) {
            if (!std::isfinite(z)) continue;
            const Interval y = level(s, z, limit);
            add(out_.wall, dx * y.length(), {x, y.middle(), z});
        }
        for (const double side : {1.0, -1.0})
            add_skin(s, x, dx, side, limit);
    }

    /// The box's side at x: a slice of wood, and the edges round it.
    void add_cross_wall(double x) {
        const BoxSums slice = wood_.slice_at(x);
        if (!(slice.volume > 0.0)) return;
        out_.wall.area_m2 += slice.volume;
        out_.wall.moment_m3 += Vec3{slice.volume * x, slice.y, slice.z};
        const Station s = lines_.at(x);
        const double limit = std::min(s.half_width_m, wood_.flank_half_breadth(x));
        for (const double y : {box_.y_from_m, box_.y_to_m}) {
            if (std::abs(y) < limit) out_.inner_edge_m += upright(s, y).length();
        }
        for (const double z : {box_.z_from_m, box_.z_to_m}) {
            if (std::isfinite(z)) out_.inner_edge_m += level(s, z, limit).length();
        }
    }

    /// An end of the segment inside the box: a flat disc of nose or tail, or the flanks of a joint face.
    void add_end(double x_m, double tangent, double side, bool is_skin) {
        Patch& into = is_skin ? out_.skin : out_.faces;
        if (tangent <= 0.0) {
            const bool inside = side > 0.0 ? box_.x_from_m <= x_m && x_m < box_.x_to_m
                                           : box_.x_from_m < x_m && x_m <= box_.x_to_m;
            if (!inside) return;
            const BoxSums slice = wood_.slice_at(x_m);
            into.area_m2 += slice.volume;
            into.moment_m3 += Vec3{slice.volume * x_m, slice.y, slice.z};
            return;
        }
        const double lean = std::hypot(1.0, tangent);
        // Where the flank crosses the box's ends, the part inside begins or ends.
        Breaks kinks(box_.y_from_m, box_.y_to_m);
        kinks.add(0.0);
        for (const double x : {box_.x_from_m, box_.x_to_m}) {
            const double y = side * (x - x_m) / tangent;
            kinks.add(y);
            kinks.add(-y);
        }
        const double parameter = lines_.at(x_m).parameter;
        for (const double tau : family_.rim_breaks()) {
            const double at = flank_reach(x_m, tangent, side, family_.rim(parameter, tau).y);
            kinks.add(at);
            kinks.add(-at);
        }
        const std::span<const double> y = kinks.sorted();
        for (std::size_t k = 0; k + 1 < y.size(); ++k) {
            for (std::size_t i = 0; i < across_order; ++i) {
                const double at = y[k] + (y[k + 1] - y[k]) * gauss_rule<across_order>.node[i];
                const double x = x_m + side * std::abs(at) * tangent;
                if (!(x > box_.x_from_m && x < box_.x_to_m)) continue;
                const Station s = lines_.at(x);
                if (!is_drawn(s)) continue;
                const Interval z = upright(s, at);
                const double width = (y[k + 1] - y[k]) * gauss_rule<across_order>.weight[i];
                add(into, width * lean * z.length(), {x, at, z.middle()});
            }
        }
    }

    /// |y| at which a flank crosses this share of the half width: at 1 it comes out through the skin.
    [[nodiscard]] double flank_reach(double x_m, double tangent, double side, double share) const {
        const auto beyond = [&](double y) {
            const double x = std::clamp(x_m + side * y * tangent, lines_.nose_m(), lines_.tail_m());
            return y - share * lines_.at(x).half_width_m;
        };
        if (share <= 0.0) return 0.0;
        double far = share * lines_.at(x_m).half_width_m;
        for (int k = 0; k < 6 && beyond(far) < 0.0; ++k)
            far *= 1.5;
        return root_between(beyond, 0.0, far, {1e-9, 1e-10});
    }

    /// τ at which a coordinate of the rim, monotone between the two τ, has this value; the nearer end where
    /// it never has.
    template <class Coordinate>
    [[nodiscard]] static double tau_where(Coordinate of, double value, double from, double to) {
        return root_between([&](double tau) { return of(tau) - value; }, from, to, {1e-9, 1e-10});
    }

    /// Skin of one side within box and flanks. Along the rim y and z are monotone from belly to widest point,
    /// and from there to the back, so each of the two branches has at most one part inside.
    void add_skin(const Station& s, double x, double dx, double side, double limit) {
        const double a = s.half_width_m;
        const double b = s.half_height_m;
        const double y_from = std::max(0.0, side > 0.0 ? box_.y_from_m : -box_.y_to_m) / a;
        const double y_to = std::min(limit, side > 0.0 ? box_.y_to_m : -box_.y_from_m) / a;
        const double z_from = (box_.z_from_m - s.centre_z_m) / b - touch;
        const double z_to = (box_.z_to_m - s.centre_z_m) / b + touch;
        if (!(y_to > y_from) || !(z_to > z_from)) return;
        const auto y_of = [&](double tau) { return family_.rim(s.parameter, tau).y; };
        const auto z_of = [&](double tau) { return family_.rim(s.parameter, tau).z; };
        const double widest = widest_tau(s.parameter);
        for (const bool belly : {true, false}) {
            // Early exit: in most pockets the skin is outside the box. A section with vertical sides has its
            // greatest width all along them: there the branch ends at the widest point itself.
            const bool to_widest = y_to >= 1.0;
            const double low = belly       ? family_.lower_z(s.parameter, std::min(1.0, y_from))
                               : to_widest ? z_of(widest)
                                           : family_.upper_z(s.parameter, y_to);
            const double high = !belly      ? family_.upper_z(s.parameter, std::min(1.0, y_from))
                                : to_widest ? z_of(widest)
                                            : family_.lower_z(s.parameter, y_to);
            if (high < z_from || low > z_to) continue;
            const double start = belly ? -1.0 : widest;
            const double end = belly ? widest : 1.0;
            double from = start;
            double to = end;
            const double inner = y_from > 0.0 ? tau_where(y_of, y_from, start, end) : (belly ? -1.0 : 1.0);
            const double outer = y_to < 1.0 ? tau_where(y_of, y_to, start, end) : widest;
            from = std::max(from, std::min(inner, outer));
            to = std::min(to, std::max(inner, outer));
            if (z_from > z_of(from)) from = tau_where(z_of, z_from, start, end);
            if (z_to < z_of(to)) to = tau_where(z_of, z_to, start, end);
            add_arc(s, x, dx, side, from, to);
        }
    }

    /// τ at which the rim is widest: one of the breaks (unit_rim.hpp uses the same rule).
    [[nodiscard]] double widest_tau(double parameter) {
        if (widest_known_ && parameter == widest_parameter_) return widest_;
        widest_ = 0.0;
        double most = -1.0;
        for (const double tau : family_.rim_breaks()) {
            const double y = family_.rim(parameter, tau).y;
            if (y <= most) continue;
            most = y;
            widest_ = tau;
        }
        widest_known_ = true;
        widest_parameter_ = parameter;
        return widest_;
    }

    void add_arc(const Station& s, double x, double dx, double side, double from, double to) {
        if (!(to > from)) return;
        Breaks kinks(from, to);
        for (const double tau : family_.rim_breaks())
            kinks.add(tau);
        const std::span<const double> tau = kinks.sorted();
        for (std::size_t k = 0; k + 1 < tau.size(); ++k) {
            for (std::size_t i = 0; i < around_order; ++i) {
                const double at = tau[k] + (tau[k + 1] - tau[k]) * gauss_rule<around_order>.node[i];
                const SkinPoint p = skin_point(s, family_.rim(s.parameter, at));
                const double cross = p.y_x * p.z_tau - p.z_x * p.y_tau;
                const double area = dx * (tau[k + 1] - tau[k]) * gauss_rule<around_order>.weight[i] *
                                    std::sqrt(p.y_tau * p.y_tau + p.z_tau * p.z_tau + cross * cross);
                add(out_.skin, area, {x, side * p.y, p.z});
            }
        }
    }

    const Lines& lines_;
    const SectionFamily& family_;
    Box box_;
    BoxedWood wood_;
    bool is_nose_;
    bool is_tail_;
    bool widest_known_ = false;
    double widest_parameter_ = 0.0;
    double widest_ = 0.0;
    PocketSurface out_;
};

} // namespace

PocketSurface pocket_surface(const Body& body, int segment, const Box& box) {
    return Surfaces(body, static_cast<std::size_t>(segment), box).found();
}

} // namespace evenfall::shape
