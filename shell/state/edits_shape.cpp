#include "state/edits.hpp"

#include "reach.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::state {
Edit on_document(std::function<void(document::Document&)> change) {
    return [change = std::move(change)](document::Document d) {
        change(d);
        return d;
    };
}

document::CurvePoints& curve_points(document::Document& d, CurveKind curve) {
    switch (curve) {
    case CurveKind::back:
        return d.shape.back;
    case CurveKind::belly:
        return d.shape.belly;
    case CurveKind::half_width:
        return d.shape.half_width;
    case CurveKind::corners:
        break;
    }
    return d.shape.section.curve();
}

const document::CurvePoints& curve_points(const document::Document& d, CurveKind curve) {
    return curve_points(const_cast<document::Document&>(d), curve);
}

double drawn_length_m(const document::Document& d) {
    return d.shape.back.empty() ? 0.0 : d.shape.back.back().x_m;
}

double drawn_height_m(const document::Document& d) {
    double top = 0.0;
    double bottom = 0.0;
    for (const auto& point : d.shape.back)
        top = std::max(top, point.value);
    for (const auto& point : d.shape.belly)
        bottom = std::min(bottom, point.value);
    return top - bottom;
}

double drawn_width_m(const document::Document& d) {
    double half = 0.0;
    for (const auto& point : d.shape.half_width)
        half = std::max(half, point.value);
    return 2.0 * half;
}

Edit scale_whole(double length_m) {
    return on_document([length_m](document::Document& d) {
        const double now = drawn_length_m(d);
        if (!(now > 0.0)) return;
        const double k = length_m / now;
        document::stretch_along(d, k);
        document::stretch_across(d, k);
        document::stretch_up(d, k);
    });
}

Edit scale_height(double height_m) {
    return on_document([height_m](document::Document& d) {
        const double now = drawn_height_m(d);
        if (now > 0.0) document::stretch_up(d, height_m / now);
    });
}

Edit scale_width(double width_m) {
    return on_document([width_m](document::Document& d) {
        const double now = drawn_width_m(d);
        if (now > 0.0) document::stretch_across(d, width_m / now);
    });
}

void halve_longest_span(document::CurvePoints& points) {
    if (points.empty()) return;
    std::size_t widest = 1;
    for (std::size_t i = 1; i < points.size(); ++i) {
        if (points[i].x_m - points[i - 1].x_m > points[widest].x_m - points[widest - 1].x_m) widest = i;
    }
    const auto& a = points[widest - 1];
    const auto& b = points[widest];
    points.insert(points.begin() + static_cast<std::ptrdiff_t>(widest),
                  {0.5 * (a.x_m + b.x_m), 0.5 * (a.value + b.value)});
}

Edit add_curve_point(CurveKind curve) {
    return on_document([curve](document::Document& d) {
        auto& points = curve_points(d, curve);
        if (points.size() == 1) {
            // One point means constant; a second one at the tail starts a taper.
            points.push_back({drawn_length_m(d), points.front().value});
            points.front().x_m = 0.0;
            return;
        }
        halve_longest_span(points);
    });
}

Edit remove_curve_point(CurveKind curve, int index) {
    return on_document([curve, index](document::Document& d) {
        auto& points = curve_points(d, curve);
        const int last = static_cast<int>(points.size()) - 1;
        const bool end = index <= 0 || index >= last;
        if (curve == CurveKind::corners && points.size() == 2 && index >= 0 && index <= last) {
            points.erase(points.begin() + index);
            return;
        }
        if (!end && points.size() > 2) points.erase(points.begin() + index);
    });
}

Edit move_curve_point(CurveKind curve, int index, double x_m, double value) {
    return on_document([=](document::Document& d) {
        auto& points = curve_points(d, curve);
        const int last = static_cast<int>(points.size()) - 1;
        if (index < 0 || index > last) return;
        auto& point = points[static_cast<std::size_t>(index)];
        point.value = value;
        if (index == 0 || index == last) return;
        // Half a millimetre between neighbours: closer points cannot be sawn separately.
        constexpr double apart_m = 0.0005;
        const double low = points[static_cast<std::size_t>(index - 1)].x_m + apart_m;
        const double high = points[static_cast<std::size_t>(index + 1)].x_m - apart_m;
        if (low <= high) point.x_m = std::clamp(x_m, low, high);
    });
}

} // namespace evenfall::shell::state
