#include "body/tail_loft.hpp"

#include "base/sentence.hpp"
#include "body/curve.hpp"
#include "body/drawing_check.hpp"
#include "body/drawn_lines.hpp"
#include "body/segment_sums.hpp"
#include "materials/solids.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace evenfall::tail {

namespace {

/// One micrometre: far below what can be measured, far above rounding in a written document.
constexpr double slack_m = 1e-6;

document::Shape lines_of(const document::Tail& tail) {
    document::Shape shape;
    shape.back = tail.back;
    shape.belly = tail.belly;
    shape.half_width = tail.half_thickness;
    shape.section.curve() = {{0.0, tail.exponent}};
    return shape;
}

double area_under(const document::CurvePoints& points) {
    const shape::Curve curve(points);
    double area = 0.0;
    for (std::size_t k = 0; k + 1 < points.size(); ++k) {
        const double h = points[k + 1].x_m - points[k].x_m;
        const shape::Cubic c = curve.piece_at(points[k].x_m + 0.5 * h, points[k].x_m);
        area += h * (c[0] + h * (c[1] / 2.0 + h * (c[2] / 3.0 + h * c[3] / 4.0)));
    }
    return area;
}

shape::Box box_of(const document::Tail& tail, const document::Tenon& t) {
    return {tail.x_m - t.length_m,       tail.x_m,
            -0.5 * t.thickness_m,        0.5 * t.thickness_m,
            tail.z_m - 0.5 * t.height_m, tail.z_m + 0.5 * t.height_m};
}

/// The pocket that contains the middle of the tenon where it leaves the wood; −1 where there is none.
int slot_of(const document::Document& document, const shape::Box& tenon, double wood_end_m) {
    const double x = std::max(0.5 * (tenon.x_from_m + wood_end_m), wood_end_m - 1e-3);
    for (std::size_t i = 0; i < document.pockets.size(); ++i) {
        const shape::Box slot = shape::box_of(document.pockets[i]);
        const double z = 0.5 * (tenon.z_from_m + tenon.z_to_m);
        if (slot.x_from_m <= x && x <= slot.x_to_m && slot.y_from_m < 0.0 && slot.y_to_m > 0.0 &&
            slot.z_from_m <= z && z <= slot.z_to_m)
            return static_cast<int>(i);
    }
    return -1;
}

void refuse(Problems& out, ProblemCode code, const char* path, Sentence limit, Sentence sentence) {
    out.push_back({code, path, std::move(limit), std::move(sentence)});
}

/// Checks a tenon against its slot; reports each dimension that exceeds its limit.
void check_tenon(const document::Tail& tail, const document::Tenon& t, const document::Document& document,
                 int slot_index, double wood_end_m, Problems& out) {
    if (!(t.length_m > tail.x_m - wood_end_m + slack_m)) {
        return refuse(out, ProblemCode::outside_segment, "/tail/tenon/length_mm",
                      "more than " + length_text(tail.x_m - wood_end_m),
                      "The tenon of the tail ends before it reaches the wood.");
    }
    if (slot_index < 0) {
        return refuse(out, ProblemCode::missing_key, "/tail/tenon", "a pocket there",
                      "The tenon of the tail meets no slot: cut a pocket at the end of the wood, at the "
                      "tail's height.");
    }
    const auto i = static_cast<std::size_t>(slot_index);
    const shape::Box slot = shape::box_of(document.pockets[i]);
    const std::string name = "pocket " + std::to_string(i + 1);
    if (slot.x_to_m < wood_end_m - slack_m) {
        refuse(out, ProblemCode::overlap, "/tail/tenon", "",
               "Wood stands between " + name + " and the tail: its slot must reach the end of the wood.");
    }
    const auto room = [&](const char* path, const char* what, double size_m, double most_m) {
        if (size_m <= most_m + slack_m) return;
        refuse(out, ProblemCode::out_of_range, path, "at most " + length_text(most_m),
               std::string("The tenon of the tail is ") + length_text(size_m) + what + length_text(most_m) +
                   " in " + name + ".");
    };
    room("/tail/tenon/length_mm", " long; there is room for ", t.length_m, tail.x_m - slot.x_from_m);
    room("/tail/tenon/thickness_mm", " thick; there is room for ", t.thickness_m,
         2.0 * std::min(slot.y_to_m, -slot.y_from_m));
    room("/tail/tenon/height_mm", " high; there is room for ", t.height_m,
         2.0 * std::min(slot.z_to_m - tail.z_m, tail.z_m - slot.z_from_m));
}

} // namespace

double density_kg_m3(const document::Tail& tail) {
    return tail.density_kg_m3 ? *tail.density_kg_m3
                              : materials::find_solid(tail.material)->density_kg_m3.value;
}

int slot_of(const document::Document& document) {
    if (!document.tail || !document.tail->tenon || document.shape.half_width.empty()) return -1;
    return slot_of(document, box_of(*document.tail, *document.tail->tenon),
                   document.shape.half_width.back().x_m);
}

double tenon_m3(const document::Tail& tail) {
    return tail.tenon ? tail.tenon->length_m * tail.tenon->thickness_m * tail.tenon->height_m : 0.0;
}

ProjectedAreas shadow(const document::Tail& tail) {
    return {area_under(tail.back) - area_under(tail.belly), 2.0 * area_under(tail.half_thickness)};
}

Vec3 extent(const document::Tail& tail) {
    double high = shape::Curve(tail.back).greatest();
    double low = shape::Curve(tail.belly).least();
    Vec3 e{tail.back.back().x_m, 2.0 * shape::Curve(tail.half_thickness).greatest(), 0.0};
    if (tail.tenon) {
        e.x += tail.tenon->length_m;
        e.y = std::max(e.y, tail.tenon->thickness_m);
        high = std::max(high, 0.5 * tail.tenon->height_m);
        low = std::min(low, -0.5 * tail.tenon->height_m);
    }
    e.z = high - low;
    return e;
}

Outcome<shape::Body> shaped(const document::Tail& tail) {
    const document::Shape drawn = lines_of(tail);
    if (Problems problems = shape::tail_drawing_problems(drawn); !problems.empty()) return problems;
    shape::Body body{std::make_shared<const shape::DrawnLines>(drawn), {}, {}};
    shape::Segment s;
    s.x_to_m = body.lines->tail_m();
    const shape::WoodSums w = shape::wood_between(*body.lines, 0.0, s.x_to_m);
    s.volume_m3 = w.volume;
    s.centroid_m = {w.x / w.volume, 0.0, w.z / w.volume};
    s.inertia_m5 = shape::own_inertia(w, s.centroid_m);
    body.segments.push_back(std::move(s));
    return body;
}

Outcome<TailGeometry> tail_geometry(const document::Document& document, const shape::Body& body) {
    const document::Tail& tail = *document.tail;
    const double end = body.lines->tail_m();
    Problems problems;
    if (!(tail.x_m >= end - slack_m)) {
        refuse(problems, ProblemCode::overlap, "/tail/x_mm", "at least " + length_text(end),
               "The root of the tail lies " + length_text(tail.x_m) +
                   " from the nose, in the wood; it starts at its end, " + length_text(end) +
                   ", or behind it.");
    }
    auto shape_of_it = shaped(tail);
    if (!shape_of_it) return shape_of_it.problems();
    TailGeometry result{std::move(shape_of_it).value(), 0.0};
    if (tail.tenon) {
        const shape::Box box = box_of(tail, *tail.tenon);
        const int slot = slot_of(document, box, end);
        check_tenon(tail, *tail.tenon, document, slot, end, problems);
        if (problems.empty() && !document.pockets[static_cast<std::size_t>(slot)].floods)
            result.dry_m3 = std::min(
                tenon_m3(tail),
                shape::box_in_segment(body, static_cast<int>(body.segments.size()) - 1, box).volume_m3);
    }
    if (!problems.empty()) return problems;
    return result;
}

} // namespace evenfall::tail
