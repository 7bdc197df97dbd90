#include "picture/level.hpp"

#include "base/sentence.hpp"
#include "base/trade.hpp"
#include "body/drawing_check.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

namespace evenfall::picture {

namespace {

constexpr std::size_t hull_places = 1501;

bool finite(Spot s) {
    return std::isfinite(s.x) && std::isfinite(s.y);
}

Problem refuse(ProblemCode code, std::string path, std::string limit, std::string sentence) {
    return {code, std::move(path), std::move(limit), std::move(sentence)};
}

/// Direction of the longer axis of the area inside the ring, and its middle.
struct Axis {
    Spot middle;
    Spot along;
};

Axis long_axis(const Ring& ring) {
    // Area moments of a polygon by Green's theorem, about the first spot for the sake of rounding.
    double area = 0.0;
    double mx = 0.0, my = 0.0, xx = 0.0, xy = 0.0, yy = 0.0;
    const Spot o = ring.front();
    for (std::size_t i = 0; i < ring.size(); ++i) {
        const Spot a{ring[i].x - o.x, ring[i].y - o.y};
        const Spot& q = ring[(i + 1) % ring.size()];
        const Spot b{q.x - o.x, q.y - o.y};
        const double cross = a.x * b.y - b.x * a.y;
        area += cross / 2.0;
        mx += cross * (a.x + b.x) / 6.0;
        my += cross * (a.y + b.y) / 6.0;
        xx += cross * (a.x * a.x + a.x * b.x + b.x * b.x) / 12.0;
        yy += cross * (a.y * a.y + a.y * b.y + b.y * b.y) / 12.0;
        xy += cross * (a.x * b.y + 2.0 * a.x * a.y + 2.0 * b.x * b.y + b.x * a.y) / 24.0;
    }
    const double x = mx / area;
    const double y = my / area;
    const double cxx = xx / area - x * x;
    const double cyy = yy / area - y * y;
    const double cxy = xy / area - x * y;
    const double angle = 0.5 * std::atan2(2.0 * cxy, cxx - cyy);
    return {{o.x + x, o.y + y}, {std::cos(angle), std::sin(angle)}};
}

Problems check(const Contour& contour, const Scale& scale) {
    Problems problems;
    const bool sound = contour.points.size() >= 16 &&
                       std::all_of(contour.points.begin(), contour.points.end(), finite) &&
                       std::abs(signed_area(contour.points)) > 1.0;
    if (!sound) {
        problems.push_back(refuse(ProblemCode::out_of_range, "/contour", "at least 16 places",
                                  "The outline holds too little to draw from."));
    }
    if (!(scale.distance_m >= 0.001 && scale.distance_m <= 2.0)) {
        problems.push_back(refuse(ProblemCode::out_of_range, "/scale/distance_mm", "1 to 2000 mm",
                                  "The true distance between the two places must be 1 to 2000 mm."));
    }
    if (!finite(scale.from) || !finite(scale.to) ||
        !(std::hypot(scale.to.x - scale.from.x, scale.to.y - scale.from.y) >= 4.0)) {
        problems.push_back(refuse(
            ProblemCode::out_of_range, "/scale", "at least 4 pixels apart",
            "The two places that set the scale must lie at least 4 pixels apart; far apart is better."));
    }
    if (scale.nose.has_value() != scale.tail.has_value()) {
        problems.push_back(refuse(ProblemCode::missing_key, "/nose", "",
                                  "The datum line needs both the nose and the tail."));
    } else if (scale.nose &&
               (!finite(*scale.nose) || !finite(*scale.tail) ||
                !(std::hypot(scale.tail->x - scale.nose->x, scale.tail->y - scale.nose->y) >= 4.0))) {
        problems.push_back(refuse(ProblemCode::out_of_range, "/nose", "at least 4 pixels apart",
                                  "Nose and tail must lie at least 4 pixels apart."));
    }
    if (!(scale.tolerance_m >= 0.00005 && scale.tolerance_m <= 0.005)) {
        problems.push_back(refuse(ProblemCode::out_of_range, "/tolerance_mm", "0.05 to 5 mm",
                                  "The tolerance must be 0.05 to 5 mm."));
    }
    if (scale.most_points < 4 || scale.most_points > static_cast<int>(document::max_curve_points)) {
        const std::string limit = "4 to " + std::to_string(document::max_curve_points);
        problems.push_back(refuse(ProblemCode::out_of_range, "/most_points", limit,
                                  "Each line may have " + limit + " points."));
    }
    return problems;
}

/// z of the outline's upper (sign +1) or lower (sign −1) side at each x, −infinity where it has none.
std::vector<Place> envelope(const std::vector<Place>& ring, const std::vector<double>& x, double sign) {
    std::vector<Place> line(x.size());
    for (std::size_t k = 0; k < x.size(); ++k)
        line[k] = {x[k], -std::numeric_limits<double>::infinity()};
    for (std::size_t i = 0; i < ring.size(); ++i) {
        Place a = ring[i];
        Place b = ring[(i + 1) % ring.size()];
        if (a.x > b.x) std::swap(a, b);
        auto k = static_cast<std::size_t>(std::lower_bound(x.begin(), x.end(), a.x) - x.begin());
        for (; k < x.size() && x[k] <= b.x; ++k) {
            const double t = b.x > a.x ? (x[k] - a.x) / (b.x - a.x) : 0.0;
            line[k].z = std::max(line[k].z, sign * (a.z + t * (b.z - a.z)));
        }
    }
    for (Place& p : line)
        p.z *= sign;
    return line;
}

double distance_to_piece(Place p, Place a, Place b) {
    const double dx = b.x - a.x;
    const double dz = b.z - a.z;
    const double square = dx * dx + dz * dz;
    const double t =
        square > 0.0 ? std::clamp(((p.x - a.x) * dx + (p.z - a.z) * dz) / square, 0.0, 1.0) : 0.0;
    return std::hypot(a.x + t * dx - p.x, a.z + t * dz - p.z);
}

Hull hull(const Levelled& outline, double face_m, double sign) {
    std::vector<double> x(hull_places);
    for (std::size_t k = 0; k < hull_places; ++k) {
        const double s = static_cast<double>(k) / static_cast<double>(hull_places - 1);
        x[k] = outline.length_m * s * s * (3.0 - 2.0 * s);
    }
    Hull out;
    out.line = envelope(outline.ring, x, sign);
    // The upright faces: from the tip to `face_m` inside it the line keeps the height it has there.
    const auto inside = [&](double at) {
        return std::min_element(
                   out.line.begin(), out.line.end(),
                   [&](const Place& a, const Place& b) { return std::abs(a.x - at) < std::abs(b.x - at); })
            ->z;
    };
    const double nose_z = inside(face_m);
    const double tail_z = inside(outline.length_m - face_m);
    for (Place& p : out.line) {
        if (p.x <= face_m) p.z = nose_z;
        if (p.x >= outline.length_m - face_m) p.z = tail_z;
    }

    // The outline's own side, between its tips: where the ring lies off the hull, a function of x cannot
    // follow it.
    const auto by_x = [](const Place& a, const Place& b) { return a.x < b.x; };
    const auto nose = static_cast<std::size_t>(
        std::min_element(outline.ring.begin(), outline.ring.end(), by_x) - outline.ring.begin());
    const auto tail = static_cast<std::size_t>(
        std::max_element(outline.ring.begin(), outline.ring.end(), by_x) - outline.ring.begin());
    const std::size_t n = outline.ring.size();
    double forward = 0.0; // mean height of the way from nose to tail in the ring's own order
    double count = 0.0;
    for (std::size_t i = nose; i != tail; i = (i + 1) % n) {
        forward += outline.ring[i].z;
        count += 1.0;
    }
    double back = 0.0;
    double back_count = 0.0;
    for (std::size_t i = tail; i != nose; i = (i + 1) % n) {
        back += outline.ring[i].z;
        back_count += 1.0;
    }
    const bool with_order = sign * (forward / std::max(count, 1.0) - back / std::max(back_count, 1.0)) > 0.0;
    const std::size_t first = with_order ? nose : tail;
    const std::size_t last = with_order ? tail : nose;
    for (std::size_t i = first; i != last; i = (i + 1) % n) {
        const Place& p = outline.ring[i];
        if (p.x < face_m || p.x > outline.length_m - face_m) continue;
        const auto above = std::upper_bound(out.line.begin() + 1, out.line.end() - 1, p, by_x);
        const double drop = std::abs((above - 1)->z - p.z);
        if (drop <= out.overhang_m) continue;
        out.overhang_m = std::max(out.overhang_m, std::min(drop, distance_near(out.line, p, drop)));
    }
    return out;
}

} // namespace

double distance_near(const std::vector<Place>& line, Place from, double window_m) {
    double least = std::numeric_limits<double>::infinity();
    const auto before = [](const Place& a, double x) { return a.x < x; };
    auto k = std::lower_bound(line.begin(), line.end(), from.x - window_m, before);
    if (k != line.begin()) --k;
    for (; k + 1 < line.end() && k->x <= from.x + window_m; ++k)
        least = std::min(least, distance_to_piece(from, *k, *(k + 1)));
    return least;
}

Outcome<Levelled> levelled(const Contour& contour, const Scale& scale) {
    if (Problems problems = check(contour, scale); !problems.empty()) return problems;
    Spot along;
    Spot on_line;
    if (scale.nose) {
        along = {scale.tail->x - scale.nose->x, scale.tail->y - scale.nose->y};
        on_line = *scale.nose;
    } else {
        const Axis axis = long_axis(contour.points);
        along = axis.along;
        on_line = axis.middle;
        if ((along.x < 0.0) != scale.nose_right) along = {-along.x, -along.y};
    }
    const double size = std::hypot(along.x, along.y);
    along = {along.x / size, along.y / size};
    Spot up{along.y, -along.x};
    if (up.y > 0.0) up = {-up.x, -up.y};

    Levelled out;
    out.metres_per_pixel =
        scale.distance_m / std::hypot(scale.to.x - scale.from.x, scale.to.y - scale.from.y);
    // How far the picture has to be turned, nose to whichever side it is.
    out.turned_rad = along.x >= 0.0 ? std::atan2(along.y, along.x) : std::atan2(-along.y, -along.x);
    double first = std::numeric_limits<double>::infinity();
    double last = -first;
    double high = 0.0;
    for (const Spot& s : contour.points) {
        const double dx = s.x - on_line.x;
        const double dy = s.y - on_line.y;
        const Place p{out.metres_per_pixel * (dx * along.x + dy * along.y),
                      out.metres_per_pixel * (dx * up.x + dy * up.y)};
        first = std::min(first, p.x);
        last = std::max(last, p.x);
        high = std::max(high, std::abs(p.z));
        out.ring.push_back(p);
    }
    for (Place& p : out.ring)
        p.x -= first;
    out.length_m = last - first;
    const double length_mm = units::mm_from_m(out.length_m);
    if (!(length_mm >= shape::least_length_mm && length_mm <= shape::greatest_length_mm)) {
        return refuse(ProblemCode::out_of_range, "/scale", "20 to 600 mm",
                      "At this scale the outline is " + millimetres_text(out.length_m) +
                          " long; a drawing may be 20 to 600 mm.");
    }
    if (!(units::mm_from_m(high) <= shape::greatest_height_mm)) {
        return refuse(ProblemCode::out_of_range, "/scale", "150 mm either side of the datum line",
                      "At this scale the outline reaches " + millimetres_text(high) +
                          " from the datum line; 150 mm either side is the most.");
    }
    return out;
}

Hull upper_hull(const Levelled& outline, double face_m) {
    return hull(outline, face_m, 1.0);
}
Hull lower_hull(const Levelled& outline, double face_m) {
    return hull(outline, face_m, -1.0);
}

} // namespace evenfall::picture
