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

constexpr std::size_t side_places = 1501;

bool finite(Spot s) {
    return std::isfinite(s.x) && std::isfinite(s.y);
}

bool far_apart(Spot a, Spot b) {
    return finite(a) && finite(b) && std::hypot(b.x - a.x, b.y - a.y) >= 4.0;
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
    const auto want = [&](bool kept, const char* path, const Sentence& limit, const Sentence& sentence) {
        if (!kept) problems.push_back({ProblemCode::out_of_range, path, limit, sentence});
    };
    want(contour.points.size() >= 16 && std::all_of(contour.points.begin(), contour.points.end(), finite) &&
             std::abs(signed_area(contour.points)) > 1.0,
         "/contour", "at least 16 places", "The outline holds too little to draw from.");
    const Sentence distance = range_text(0.001, 2.0, units::Quantity::length);
    want(scale.distance_m >= 0.001 && scale.distance_m <= 2.0, "/scale/distance_mm", distance,
         "The true distance between the two places must be " + distance + ".");
    want(far_apart(scale.from, scale.to), "/scale", "at least 4 pixels apart",
         "The two places that set the scale must lie at least 4 pixels apart; far apart is better.");
    want(scale.nose.has_value() == scale.tail.has_value(), "/nose", "nose and tail",
         "The datum line needs both the nose and the tail.");
    want(!scale.nose || !scale.tail || far_apart(*scale.nose, *scale.tail), "/nose",
         "at least 4 pixels apart", "Nose and tail must lie at least 4 pixels apart.");
    const Sentence tolerance = range_text(0.00005, 0.005, units::Quantity::thickness);
    want(scale.tolerance_m >= 0.00005 && scale.tolerance_m <= 0.005, "/tolerance_mm", tolerance,
         "The tolerance must be " + tolerance + ".");
    const std::string points = "4 to " + std::to_string(document::max_curve_points);
    want(scale.most_points >= 4 && scale.most_points <= static_cast<int>(document::max_curve_points),
         "/most_points", points, "Each line may have " + points + " points.");
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

/// The upright faces: from either tip to `face_m` inside it the line keeps the height that it has there.
void set_faces(std::vector<Place>& line, double length_m, double face_m) {
    const auto height_at = [&](double x) {
        return std::min_element(
                   line.begin(), line.end(),
                   [x](const Place& a, const Place& b) { return std::abs(a.x - x) < std::abs(b.x - x); })
            ->z;
    };
    const double nose_z = height_at(face_m);
    const double tail_z = height_at(length_m - face_m);
    for (Place& p : line) {
        if (p.x <= face_m) p.z = nose_z;
        if (p.x >= length_m - face_m) p.z = tail_z;
    }
}

/// Distance from a place to a line, at most the height between them.
double distance_under(const std::vector<Place>& line, Place p) {
    const auto behind = std::upper_bound(line.begin() + 1, line.end() - 1, p,
                                         [](const Place& a, const Place& b) { return a.x < b.x; });
    const double drop = std::abs((behind - 1)->z - p.z);
    return std::min(drop, distance_near(line, p, drop));
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
    const double metres_per_pixel =
        scale.distance_m / std::hypot(scale.to.x - scale.from.x, scale.to.y - scale.from.y);
    // How far the picture has to be turned, nose to whichever side it is.
    out.turned_rad = along.x >= 0.0 ? std::atan2(along.y, along.x) : std::atan2(-along.y, -along.x);
    double first = std::numeric_limits<double>::infinity();
    double last = -first;
    double high = 0.0;
    for (const Spot& s : contour.points) {
        const double dx = s.x - on_line.x;
        const double dy = s.y - on_line.y;
        const Place p{metres_per_pixel * (dx * along.x + dy * along.y),
                      metres_per_pixel * (dx * up.x + dy * up.y)};
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
        const Sentence limit =
            range_text(units::m_from_mm(shape::least_length_mm), units::m_from_mm(shape::greatest_length_mm),
                       units::Quantity::length);
        return Problem{ProblemCode::out_of_range, "/scale", limit,
                       "At this scale the outline is " + length_text(out.length_m) +
                           " long; a drawing may be " + limit + "."};
    }
    if (!(units::mm_from_m(high) <= shape::greatest_height_mm)) {
        const Sentence limit =
            at_most_text(units::m_from_mm(shape::greatest_height_mm), units::Quantity::length);
        return Problem{ProblemCode::out_of_range, "/scale", limit + " either side of the datum line",
                       "At this scale the outline reaches " + length_text(high) + " from the datum line; " +
                           limit + " either side is the most."};
    }
    return out;
}

Sides sides_of(const Levelled& outline, double face_m) {
    std::vector<double> x(side_places);
    for (std::size_t k = 0; k < side_places; ++k) {
        const double s = static_cast<double>(k) / static_cast<double>(side_places - 1);
        x[k] = outline.length_m * s * s * (3.0 - 2.0 * s);
    }
    Sides out{envelope(outline.ring, x, 1.0), envelope(outline.ring, x, -1.0), 0.0};
    set_faces(out.upper, outline.length_m, face_m);
    set_faces(out.lower, outline.length_m, face_m);
    for (const Place& p : outline.ring) {
        if (p.x < face_m || p.x > outline.length_m - face_m) continue;
        out.overhang_m =
            std::max(out.overhang_m, std::min(distance_under(out.upper, p), distance_under(out.lower, p)));
    }
    return out;
}

} // namespace evenfall::picture
