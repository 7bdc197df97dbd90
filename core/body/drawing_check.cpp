#include "body/drawing_check.hpp"

#include "body/curve.hpp"
#include "body/measured.hpp"
#include "document/field_of.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <utility>

namespace evenfall::shape {

namespace {

using document::CurvePoints;

constexpr double mm = 1e-3;
constexpr double same_place_m = 1e-9; ///< far below what can be measured, far above rounding

using units::Quantity;

/// To a hundredth of a millimetre, as a drawing is kept.
double hundredth(double value_mm) {
    return std::round(value_mm * 100.0) / 100.0 + 0.0;
}
Sentence length_of(double value_mm) {
    return plain_text(hundredth(value_mm) * mm, Quantity::length);
}
Sentence lengths_of(double least_mm, double greatest_mm) {
    return range_text(hundredth(least_mm) * mm, hundredth(greatest_mm) * mm, Quantity::length);
}

Sentence least_step() {
    return at_least_text(least_station_step_mm * mm, Quantity::length);
}

struct Line {
    const char* path; ///< in the document
    const char* name; ///< its name in the sentence
    double least_mm;
    double greatest_mm;
};

/// What the three lines draw (body or soft tail): names and limits of length.
struct DrawingNames {
    Line back;
    Line belly;
    Line plan;
    const char* whole;
    const char* front;
    const char* end;
    double least_length_mm;
    double greatest_length_mm;
};

constexpr DrawingNames body{{"/shape/back_mm", "back line", -greatest_height_mm, greatest_height_mm},
                            {"/shape/belly_mm", "belly line", -greatest_height_mm, greatest_height_mm},
                            {"/shape/half_width_mm", "half width", 0.0, greatest_half_width_mm},
                            "body",
                            "nose",
                            "tail",
                            least_length_mm,
                            greatest_length_mm};
constexpr DrawingNames soft_tail{
    {"/tail/back_mm", "tail's back line", -greatest_height_mm, greatest_height_mm},
    {"/tail/belly_mm", "tail's belly line", -greatest_height_mm, greatest_height_mm},
    {"/tail/half_thickness_mm", "tail's half thickness", 0.0, greatest_half_width_mm},
    "soft tail",
    "root",
    "tip",
    least_tail_length_mm,
    greatest_tail_length_mm};

std::string path_of(const Line& line, std::size_t k) {
    std::string path = line.path;
    return path.append("/").append(std::to_string(k));
}

/// Checks common to all curves: number of points, finite numbers, order. Stops at the first problem.
bool is_a_curve(const CurvePoints& points, const std::string& path, const std::string& name,
                std::size_t least_points, Problems& out) {
    if (points.size() < least_points) {
        out.push_back({ProblemCode::out_of_range, path,
                       "at least " + std::to_string(least_points) + " points",
                       "The " + name + " has " + std::to_string(points.size()) +
                           " points and needs at least " + std::to_string(least_points) + "."});
        return false;
    }
    if (points.size() > document::max_curve_points) {
        const std::string cap = std::to_string(document::max_curve_points);
        out.push_back({ProblemCode::too_large, path, "at most " + cap + " points",
                       "The " + name + " has more than " + cap + " points."});
        return false;
    }
    for (std::size_t k = 0; k < points.size(); ++k) {
        const std::string at = path + "/" + std::to_string(k);
        if (!std::isfinite(points[k].x_m) || !std::isfinite(points[k].value)) {
            out.push_back({ProblemCode::not_a_number, at, "a number",
                           "Point " + std::to_string(k + 1) + " of the " + name + " is not a number."});
            return false;
        }
        // Some tolerance: 0.01 mm read from text is not exactly 1e-5 m.
        if (k > 0 && !(points[k].x_m - points[k - 1].x_m > 0.999 * least_station_step_mm * mm)) {
            const Sentence step = least_step();
            out.push_back({ProblemCode::out_of_order, at, "x at least " + step + " behind the point before",
                           "Point " + std::to_string(k + 1) + " of the " + name + " must lie at least " +
                               step + " behind the point before it."});
            return false;
        }
    }
    return true;
}

bool is_a_line(const CurvePoints& points, const Line& line, const DrawingNames& drawn, Problems& out) {
    const std::string name = line.name;
    if (!is_a_curve(points, line.path, name, 2, out)) return false;
    if (std::abs(points.front().x_m) > same_place_m) {
        const Sentence limit = "x = " + length_of(0.0);
        out.push_back({ProblemCode::out_of_range, path_of(line, 0), limit,
                       "The " + name + " must start at the " + drawn.front + ", " + limit + "."});
        return false;
    }
    for (std::size_t k = 0; k < points.size(); ++k) {
        const double value_mm = points[k].value / mm;
        if (value_mm >= line.least_mm - 1e-9 && value_mm <= line.greatest_mm + 1e-9) continue;
        const Sentence limit = lengths_of(line.least_mm, line.greatest_mm);
        out.push_back({ProblemCode::out_of_range, path_of(line, k), limit,
                       "Point " + std::to_string(k + 1) + " of the " + name + " must be " + limit + "."});
        return false;
    }
    return true;
}

void check_lengths(const document::Shape& shape, const DrawingNames& drawn, Problems& out) {
    const double length_m = shape.back.back().x_m;
    if (!(length_m >= drawn.least_length_mm * mm - same_place_m &&
          length_m <= drawn.greatest_length_mm * mm + same_place_m)) {
        const Sentence limit = lengths_of(drawn.least_length_mm, drawn.greatest_length_mm);
        out.push_back({ProblemCode::out_of_range, path_of(drawn.back, shape.back.size() - 1), limit,
                       std::string("The ") + drawn.whole + " is " + length_of(length_m / mm) +
                           " long and must be " + limit + "."});
    }
    const auto compare = [&](const CurvePoints& points, const Line& line) {
        if (std::abs(points.back().x_m - length_m) <= same_place_m) return;
        const Sentence limit = "x = " + length_of(length_m / mm);
        out.push_back({ProblemCode::out_of_range, path_of(line, points.size() - 1), limit,
                       std::string("The ") + line.name + " must end at the " + drawn.end + " like the " +
                           drawn.back.name + ", " + limit + "."});
    };
    compare(shape.belly, drawn.belly);
    compare(shape.half_width, drawn.plan);
}

void check_width(const CurvePoints& points, const DrawingNames& drawn, Problems& out) {
    const std::string name = drawn.plan.name;
    const bool has_width =
        std::any_of(points.begin(), points.end(), [](const auto& p) { return p.value > 0.0; });
    if (!has_width) {
        out.push_back(
            {ProblemCode::crossed_profile, drawn.plan.path, "more than " + length_of(0.0),
             "The " + name + " is " + length_of(0.0) + " everywhere: the " + drawn.whole + " has no width."});
        return;
    }
    for (std::size_t k = 1; k + 1 < points.size(); ++k) {
        if (points[k].value > 0.0) continue;
        out.push_back({ProblemCode::crossed_profile, path_of(drawn.plan, k), "more than " + length_of(0.0),
                       "Point " + std::to_string(k + 1) + " of the " + name + " must be more than " +
                           length_of(0.0) + ": only " + drawn.front + " and " + drawn.end +
                           " may come to a point."});
        return;
    }
}

/// Minimum of a cubic on [0, h].
double least_on(const Cubic& c, double h) {
    double least = std::min(c[0], evaluated(c, h).value);
    const auto try_at = [&](double t) {
        if (t > 0.0 && t < h) least = std::min(least, evaluated(c, t).value);
    };
    const double a = 3.0 * c[3];
    const double b = c[2];
    const double root = b * b - a * c[1];
    if (root >= 0.0) {
        // Both roots of a t² + 2 b t + c₁ without cancellation.
        const double q = -(b + std::copysign(std::sqrt(root), b));
        if (a != 0.0) try_at(q / a);
        if (q != 0.0) try_at(c[1] / q);
    }
    return least;
}

/// Height = back − belly, between the stations too: between neighbouring stations it is one cubic.
void check_height(const document::Shape& shape, const DrawingNames& drawn, Problems& out) {
    const Curve top(shape.back);
    const Curve bottom(shape.belly);
    std::vector<double> x;
    for (const auto& p : shape.back)
        x.push_back(p.x_m);
    for (const auto& p : shape.belly)
        x.push_back(p.x_m);
    std::sort(x.begin(), x.end());
    const double tail_m = shape.back.back().x_m;
    for (std::size_t k = 0; k + 1 < x.size(); ++k) {
        const double step = x[k + 1] - x[k];
        if (step < same_place_m) continue;
        const double middle = 0.5 * (x[k] + x[k + 1]);
        const Cubic over = top.piece_at(middle, x[k]);
        const Cubic under = bottom.piece_at(middle, x[k]);
        const Cubic height{over[0] - under[0], over[1] - under[1], over[2] - under[2], over[3] - under[3]};
        // The lines may meet at nose and tail, so check from just inside.
        const double from = x[k] < same_place_m ? 1e-3 * step : 0.0;
        const double to = x[k + 1] > tail_m - same_place_m ? 0.999 * step : step;
        const bool crossed = least_on(shifted(height, from), to - from) <= 0.0 || height[0] < -same_place_m ||
                             evaluated(height, step).value < -same_place_m;
        if (!crossed) continue;
        std::size_t nearest = 0;
        for (std::size_t i = 0; i < shape.back.size(); ++i) {
            if (std::abs(shape.back[i].x_m - middle) < std::abs(shape.back[nearest].x_m - middle))
                nearest = i;
        }
        out.push_back({ProblemCode::crossed_profile, path_of(drawn.back, nearest),
                       std::string("above the ") + drawn.belly.name,
                       std::string("The ") + drawn.back.name + " must stay above the " + drawn.belly.name +
                           ": they cross between " +
                           Sentence(Amount{hundredth(x[k] / mm) * mm, Quantity::length, units::plain,
                                           units::Rounding::nearest, false}) +
                           " and " + length_of(x[k + 1] / mm) + "."});
        return;
    }
}

void check_corners(const document::Section& section, double length_m, Problems& out) {
    const document::PointsField curve = document::section_field(section.kind);
    const std::string path = "/shape/section/" + std::string(curve.key);
    const std::string name(curve.called);
    if (!is_a_curve(section.curve(), path, name, 1, out)) return;
    const document::NumberField& field = curve.second;
    for (std::size_t k = 0; k < section.curve().size(); ++k) {
        const document::CurvePoint& p = section.curve()[k];
        const std::string at = path + "/" + std::to_string(k);
        if (!(p.value >= field.min && p.value <= field.max)) {
            const Sentence limit = document::limit_text(field);
            out.push_back({ProblemCode::out_of_range, at, limit,
                           "Point " + std::to_string(k + 1) + " of the " + name + " must be " + limit + "."});
            return;
        }
        if (!(p.x_m >= -same_place_m && p.x_m <= length_m + same_place_m)) {
            const Sentence limit = lengths_of(0.0, length_m / mm);
            out.push_back({ProblemCode::out_of_range, at, limit,
                           "Point " + std::to_string(k + 1) + " of the " + name +
                               " must lie on the body, x " + limit + "."});
            return;
        }
    }
}

void check_outline(const std::vector<document::OutlinePoint>& points, Problems& out) {
    const std::string path = "/shape/section/half_outline";
    const auto refuse = [&](ProblemCode code, const std::string& at, const std::string& limit,
                            const std::string& sentence) {
        out.push_back({code, at, limit, sentence});
    };
    if (points.size() < 3) {
        return refuse(ProblemCode::out_of_range, path, "at least 3 points",
                      "The drawn half-section has " + std::to_string(points.size()) +
                          " points and needs at least 3.");
    }
    if (points.size() > document::max_curve_points) {
        const std::string cap = std::to_string(document::max_curve_points);
        return refuse(ProblemCode::too_large, path, "at most " + cap + " points",
                      "The drawn half-section has more than " + cap + " points.");
    }
    for (std::size_t k = 0; k < points.size(); ++k) {
        const std::string at = path + "/" + std::to_string(k);
        const std::string point = "Point " + std::to_string(k + 1) + " of the drawn half-section ";
        const auto& p = points[k];
        if (!std::isfinite(p.y) || !std::isfinite(p.z))
            return refuse(ProblemCode::not_a_number, at, "a number", point + "is not a number.");
        if (p.y < 0.0 || p.y > 1.0 || p.z < -1.0 || p.z > 1.0) {
            return refuse(ProblemCode::out_of_range, at, "y 0 to 1, z -1 to 1",
                          point + "must lie in its box, y 0 to 1 and z -1 to 1.");
        }
        if (k == 0 && (p.y != 0.0 || p.z != -1.0))
            return refuse(ProblemCode::out_of_range, at, "y 0, z -1",
                          point + "must be the belly centre, y 0 and z -1.");
        if (k + 1 == points.size() && (p.y != 0.0 || p.z != 1.0))
            return refuse(ProblemCode::out_of_range, at, "y 0, z 1",
                          point + "must be the back centre, y 0 and z 1.");
        if (k > 0 && p.z < points[k - 1].z)
            return refuse(ProblemCode::out_of_order, at, "z not falling",
                          point + "lies lower than the point before it: draw from belly to back.");
        if (k > 0 && p.z == points[k - 1].z && p.y == points[k - 1].y)
            return refuse(ProblemCode::out_of_order, at, "a new place",
                          point + "lies on the point before it.");
    }
    const auto widest = std::max_element(points.begin(), points.end(),
                                         [](const auto& a, const auto& b) { return a.y < b.y; });
    if (widest->y != 1.0)
        return refuse(ProblemCode::out_of_range, path, "widest y = 1",
                      "The drawn half-section must touch y 1 at its widest, so that the half width drawn is "
                      "the real one.");
    for (auto p = points.begin() + 1; p != points.end(); ++p) {
        const bool outward = p <= widest;
        if (outward ? p->y >= (p - 1)->y : p->y <= (p - 1)->y) continue;
        const std::string at = path + "/" + std::to_string(p - points.begin());
        return refuse(ProblemCode::out_of_order, at, "out once, in once",
                      "The drawn half-section must go out to its widest once and then come in: point " +
                          std::to_string(p - points.begin() + 1) + " turns back.");
    }
    // An edge without thickness: along the middle plane, or out and back along the same level.
    for (const std::size_t k : {std::size_t{1}, points.size() - 2}) {
        if (points[k].y != 0.0) continue;
        return refuse(ProblemCode::out_of_order, path + "/" + std::to_string(k), "y more than 0",
                      "Point " + std::to_string(k + 1) +
                          " of the drawn half-section must lie off the middle: between it and the " +
                          (k == 1 ? "belly" : "back") + " centre there is no wood.");
    }
    for (std::size_t k = 1; k + 1 < points.size(); ++k) {
        if (points[k - 1].z != points[k].z || points[k + 1].z != points[k].z ||
            points[k + 1].y >= points[k].y || points[k - 1].y >= points[k].y)
            continue;
        return refuse(ProblemCode::out_of_order, path + "/" + std::to_string(k), "a side with some height",
                      "Point " + std::to_string(k + 1) +
                          " of the drawn half-section has no height: the line goes out to it and comes back "
                          "over itself.");
    }
}

/// Caliper readings: in order, on the body, no wider than a drawing may be, and wood left between them.
void check_measured(const document::Shape& shape, Problems& out) {
    const double length_mm = shape.back.back().x_m / mm;
    for (std::size_t k = 0; k < shape.measured.size(); ++k) {
        const auto& reading = shape.measured[k];
        const std::string at = "/shape/measured/" + std::to_string(k);
        const std::string name = "Caliper reading " + std::to_string(k + 1);
        if (!reading.width_m && !reading.height_m) {
            out.push_back({ProblemCode::missing_key, at, "a width or a height",
                           name + " gives neither a width nor a height."});
            return;
        }
        for (const double value :
             {reading.x_m, reading.width_m.value_or(1.0), reading.height_m.value_or(1.0)}) {
            if (std::isfinite(value)) continue;
            out.push_back({ProblemCode::not_a_number, at, "a number", name + " is not a number."});
            return;
        }
        if (!(reading.x_m >= 0.0 && reading.x_m / mm <= length_mm + 1e-6)) {
            const Sentence limit = lengths_of(0.0, length_mm);
            out.push_back({ProblemCode::out_of_range, at + "/x_mm", limit,
                           name + " must lie on the body, " + limit + " from the nose."});
            return;
        }
        if (k > 0 && !(reading.x_m - shape.measured[k - 1].x_m > 0.999 * least_station_step_mm * mm)) {
            out.push_back({ProblemCode::out_of_order, at + "/x_mm",
                           "x at least " + least_step() + " behind the reading before",
                           name + " must lie at least " + least_step() + " behind the reading before it."});
            return;
        }
    }
    for (std::size_t k = 0; k < shape.measured.size(); ++k) {
        const double width_mm = shape.measured[k].width_m.value_or(0.0) / mm;
        if (width_mm <= 2.0 * greatest_half_width_mm + 1e-9) continue;
        const Sentence limit = "at most " + at_most_text(2.0 * greatest_half_width_mm * mm, Quantity::length);
        out.push_back({ProblemCode::out_of_range, "/shape/measured/" + std::to_string(k) + "/width_mm", limit,
                       "Caliper reading " + std::to_string(k + 1) + " gives a width of " +
                           length_of(width_mm) + " and must be " + limit + "."});
        return;
    }
    if (shape.measured.empty()) return;
    if (const auto thin = without_wood(shape)) {
        out.push_back({ProblemCode::crossed_profile, "/shape/measured", "more than " + length_of(0.0),
                       "With the caliper readings as they are, no wood is left " + length_of(*thin / mm) +
                           " from the nose: add a reading there, or look at the others."});
    }
}

} // namespace

namespace {

/// Checks the three lines of a drawing. True where they can be used further.
bool check_lines(const document::Shape& shape, const DrawingNames& drawn, Problems& out) {
    const bool has_back = is_a_line(shape.back, drawn.back, drawn, out);
    const bool has_belly = is_a_line(shape.belly, drawn.belly, drawn, out);
    const bool has_plan = is_a_line(shape.half_width, drawn.plan, drawn, out);
    if (has_back && has_belly && has_plan) check_lengths(shape, drawn, out);
    if (has_plan) check_width(shape.half_width, drawn, out);
    if (out.empty()) check_height(shape, drawn, out);
    return has_back;
}

} // namespace

Problems tail_drawing_problems(const document::Shape& lines) {
    Problems out;
    check_lines(lines, soft_tail, out);
    return out;
}

Problems drawing_problems(const document::Shape& shape) {
    Problems out;
    const bool has_back = check_lines(shape, body, out);
    if (out.empty()) check_measured(shape, out);
    if (shape.section.kind == document::SectionKind::drawn) {
        check_outline(shape.section.half_outline, out);
    } else {
        const double length_m = has_back ? shape.back.back().x_m : greatest_length_mm * mm;
        check_corners(shape.section, length_m, out);
    }
    return out;
}

} // namespace evenfall::shape
