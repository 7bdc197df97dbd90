#include "base/number_text.hpp"
#include "body/bore.hpp"
#include "body/fittings.hpp"
#include "body/keep_out.hpp"
#include "materials/cautions.hpp"
#include "output/sheet/view.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::sheet {

namespace {

using shape::Point2;

constexpr int detail = 240;            ///< chords per side: within 0.005 mm of the curve on a palm-sized lure
constexpr double usual_wall_m = 0.003; ///< where no hole of the segment asks for another wall

struct Extent {
    double low_m = 0.0, high_m = 0.0; ///< range of z
    double half_width_m = 0.0;
};

Extent extent(const shape::Lines& lines) {
    Extent out{1.0, -1.0, 0.0};
    for (int k = 0; k <= detail; ++k) {
        const shape::Station s = lines.at(lines.nose_m() + lines.length_m() * k / detail);
        out.low_m = std::min(out.low_m, s.centre_z_m - s.half_height_m);
        out.high_m = std::max(out.high_m, s.centre_z_m + s.half_height_m);
        out.half_width_m = std::max(out.half_width_m, s.half_width_m);
    }
    return out;
}

/// The wood from x0 to x1, between the given heights, seen from the side.
std::vector<Point2> side_band(const shape::Lines& lines, double x0, double x1, double low, double high) {
    constexpr int steps = 24;
    std::vector<Point2> out;
    for (int k = 0; k <= 2 * steps + 1; ++k) {
        const bool back = k <= steps;
        const double x = x0 + (x1 - x0) * (back ? k : 2 * steps + 1 - k) / steps;
        const shape::Station s = lines.at(x);
        out.push_back({x, back ? std::min(high, s.centre_z_m + s.half_height_m)
                               : std::max(low, s.centre_z_m - s.half_height_m)});
    }
    return out;
}

std::vector<Point2> rectangle(double x0, double x1, double a0, double a1) {
    return {{x0, a0}, {x1, a0}, {x1, a1}, {x0, a1}};
}

double wall_of(const SheetInput& job, std::size_t segment) {
    double wall = 0.0;
    for (const document::Hole& hole : job.document.holes) {
        if (shape::nearest_segment(job.evaluation.body, hole.x_m) == static_cast<int>(segment))
            wall = std::max(wall, hole.wall_m);
    }
    return wall > 0.0 ? wall : usual_wall_m;
}

void draw_keep_out(const View& view, const SheetInput& job) {
    const shape::Body& body = job.evaluation.body;
    constexpr double far = 1.0;
    for (std::size_t s = 0; s < body.segments.size(); ++s) {
        const shape::Segment& segment = body.segments[s];
        const double wall = std::min(wall_of(job, s), 0.5 * (segment.x_to_m - segment.x_from_m));
        if (s > 0)
            view.hatched(side_band(*body.lines, segment.x_from_m, segment.x_from_m + wall, -far, far),
                         keep_out_stroke, 1.6);
        if (s + 1 < body.segments.size())
            view.hatched(side_band(*body.lines, segment.x_to_m - wall, segment.x_to_m, -far, far),
                         keep_out_stroke, 1.6);
    }
    for (const fittings::KeepOut& zone : fittings::keep_out(job.document, body)) {
        const shape::Box box = zone.with_wall();
        view.hatched(side_band(*body.lines, box.x_from_m, box.x_to_m, std::max(box.z_from_m, -far),
                               std::min(box.z_to_m, far)),
                     keep_out_stroke, 1.1);
    }
    for (const document::Pocket& pocket : job.document.pockets) {
        view.outline(side_band(*body.lines, pocket.x_from_m, pocket.x_to_m, pocket.z_from_m.value_or(-far),
                               pocket.z_to_m.value_or(far)),
                     hidden_stroke);
    }
    for (std::size_t j = 0; j < job.joints.joints.size(); ++j) {
        if (!fittings::has_hinge(job.document, body, static_cast<int>(j))) continue;
        const joints::JointAnswer& joint = job.joints.joints[j];
        if (joint.pin_length_m > 0.0) {
            view.segment(joint.place.pin.x_m, joint.pin_middle_z_m - 0.5 * joint.pin_length_m,
                         joint.place.pin.x_m, joint.pin_middle_z_m + 0.5 * joint.pin_length_m, centre_stroke);
        }
        for (const joints::EyeAnswer& eye : joint.eyes)
            view.cross(joint.place.pin.x_m, eye.place.z_m, 1.0, keep_out_stroke);
    }
    for (const fittings::Fitting& f : fittings::fittings(job.document, body)) {
        if (f.kind != fittings::FittingKind::hanger) continue;
        const Vec3 end = f.mouth_m + f.into * f.in_wood_m;
        view.segment(f.mouth_m.x, f.mouth_m.z, end.x, end.z, centre_stroke);
    }
    for (const document::Part& part : job.document.parts) {
        if (part.stage == Stage::hardware && part.embedded > 0.0)
            view.cross(part.at_m.x, part.at_m.z, 1.0, keep_out_stroke);
    }
}

void draw_hole_side(const View& view, const SheetInput& job, std::size_t index) {
    const document::Hole& hole = job.document.holes[index];
    const holes::Bore bore = holes::place(hole, job.evaluation.body);
    const double r = 0.5 * hole.diameter_m;
    const double end_z = bore.mouth_z_m + bore.inward * hole.depth_m;
    if (hole.depth_m > 0.0) {
        const holes::HoleContents contents = holes::contents(hole, bore);
        const double fill_z = end_z - bore.inward * contents.fill_column_m;
        if (contents.fill_kg > 0.0)
            view.filled(rectangle(hole.x_m - r, hole.x_m + r, fill_z, end_z), Colour{0xc4, 0xc9, 0xce});
        view.outline(rectangle(hole.x_m - r, hole.x_m + r, bore.mouth_z_m, end_z), hidden_stroke);
        if (hole.end == document::HoleEnd::point_118) {
            const double tip = end_z + bore.inward * bore.cone_height_m;
            view.outline({{hole.x_m - r, end_z}, {hole.x_m, tip}, {hole.x_m + r, end_z}}, hidden_stroke,
                         false);
        }
    }
    const double out = 0.0018; // ends short of the label
    view.segment(hole.x_m, bore.mouth_z_m - bore.inward * out, hole.x_m, end_z + bore.inward * out,
                 centre_stroke);
    const bool belly = hole.from == document::HoleFrom::belly;
    const double y = belly ? view.window().bottom_mm() - 1.2 : view.window().top_mm + 3.2;
    view.label(hole.x_m, y, hole_name(job.document, index), 2.4, Weight::semibold);
}

Length whole(const SheetInput& job) {
    return {job.evaluation.body.lines->nose_m(), job.evaluation.body.lines->length_m()};
}

void draw_datum(const View& view, const shape::Lines& lines) {
    view.segment(lines.nose_m() - 0.002, 0.0, lines.tail_m() + 0.002, 0.0, centre_stroke);
}

std::vector<Point2> whole_outline(const shape::Lines& lines, bool from_side) {
    std::vector<double> x(lines.breakpoints_m().begin(), lines.breakpoints_m().end());
    for (int k = 0; k <= 2 * detail; ++k)
        x.push_back(lines.nose_m() + lines.length_m() * k / (2 * detail));
    std::sort(x.begin(), x.end());
    std::vector<Point2> out;
    for (const double at : x) {
        const shape::Station s = lines.at(at);
        out.push_back({at, from_side ? s.centre_z_m + s.half_height_m : s.half_width_m});
    }
    for (auto at = x.rbegin(); at != x.rend(); ++at) {
        const shape::Station s = lines.at(*at);
        out.push_back({*at, from_side ? s.centre_z_m - s.half_height_m : -s.half_width_m});
    }
    return out;
}

std::string lengths_word(const Numbers& in) {
    return in.units.inches() ? "inches" : "mm";
}

/// Rounded up to the next sixteenth, so that the board is large enough.
std::string inches(double metres) {
    const double up = std::ceil(units::inch_from_m(metres) * 16.0 - 1e-9) / 16.0;
    return units::inch_text(units::m_from_inch(up), units::InchStep::sixteenth) + " in";
}

} // namespace

void add_board(Composer& pages, const SheetInput& job) {
    const shape::Lines& lines = *job.evaluation.body.lines;
    const Extent e = extent(lines);
    pages.new_page("Board: saw lines");
    const double length = lines.length_m(), height = e.high_m - e.low_m, width = 2.0 * e.half_width_m;
    const Numbers& in = pages.numbers();
    const std::string by_inch = inches(length) + " × " + inches(height) + " × " + inches(width);
    const std::string size = in.units.inches() ? by_inch
                                               : in.length(length) + " × " + in.length(height) + " × " +
                                                     in.length(width) + " mm (" + by_inch + ")";
    pages.paragraph(
        "Board at least " + size + ". Saw outside the line, carve to it." +
        (job.document.joints.empty()
             ? std::string()
             : " The joint cuts are marked; saw them when the body is carved. Numbers above them: " +
                   lengths_word(in) + " from the nose to the middle of the gap."));
    pages.caution(cautions::saws);
    if (!job.document.joints.empty()) pages.caution(cautions::burrs);
    const auto draw_joints = [&](const View& view, double low, double high) {
        for (const document::Joint& joint : job.document.joints) {
            for (const double side : {-0.5, 0.5})
                view.segment(joint.at_m + side * joint.gap_m, low, joint.at_m + side * joint.gap_m, high,
                             hidden_stroke);
            view.label(joint.at_m, view.window().top_mm + 3.0, in.length(joint.at_m - lines.nose_m()), 2.4,
                       Weight::semibold);
        }
    };
    add_stretches(pages, whole(job), "From the side", e.low_m, e.high_m, [&](const View& view) {
        draw_datum(view, lines);
        view.outline(rectangle(lines.nose_m(), lines.tail_m(), e.low_m, e.high_m), {0.12, rule_grey, 0.0});
        view.outline(whole_outline(lines, true), outline_stroke);
        draw_joints(view, e.low_m, e.high_m);
    });
    add_stretches(pages, whole(job), "From above", -e.half_width_m, e.half_width_m, [&](const View& view) {
        draw_datum(view, lines);
        view.outline(rectangle(lines.nose_m(), lines.tail_m(), -e.half_width_m, e.half_width_m),
                     {0.12, rule_grey, 0.0});
        view.outline(whole_outline(lines, false), outline_stroke);
        draw_joints(view, -e.half_width_m, e.half_width_m);
    });
}

void add_side(Composer& pages, const SheetInput& job) {
    const shape::Body& body = job.evaluation.body;
    const Extent e = extent(*body.lines);
    pages.new_page("Templates: side and top");
    add_stretches(pages, whole(job), "From the side: nose left, BACK up, BELLY down", e.low_m, e.high_m,
                  [&](const View& view) {
                      draw_datum(view, *body.lines);
                      draw_keep_out(view, job);
                      for (std::size_t s = 0; s < body.segments.size(); ++s)
                          view.outline(shape::side_outline(body, static_cast<int>(s), detail),
                                       outline_stroke);
                      for (std::size_t h = 0; h < job.document.holes.size(); ++h)
                          draw_hole_side(view, job, h);
                  });
    pages.paragraph(
        "Hatched: do not drill. It covers pockets (dashed), hinge pins, the legs of their eyes and hangers, "
        "each with " +
            pages.numbers().length(joints::thin_wall_m) + " " + pages.numbers().length_symbol() +
            " of wood round it, and the wall at each joint face. A cross alone marks the middle of a part "
            "set in the wood: its wire runs on from there. Grey in a hole: its fill. Scale: " +
            lengths_word(pages.numbers()) + " from the nose.",
        2.8, soft_ink);
}

void add_top(Composer& pages, const SheetInput& job) {
    const shape::Body& body = job.evaluation.body;
    const Extent e = extent(*body.lines);
    add_stretches(
        pages, whole(job), "From above: nose left, starboard up", -e.half_width_m, e.half_width_m,
        [&](const View& view) {
            draw_datum(view, *body.lines);
            for (std::size_t s = 0; s < body.segments.size(); ++s)
                view.outline(shape::top_outline(body, static_cast<int>(s), detail), outline_stroke);
            for (const fittings::KeepOut& zone : fittings::keep_out(job.document, body)) {
                const shape::Box box = zone.with_wall();
                view.hatched(rectangle(box.x_from_m, box.x_to_m, box.y_from_m, box.y_to_m), keep_out_stroke,
                             1.1);
            }
            for (const document::Pocket& p : job.document.pockets)
                view.outline(
                    rectangle(p.x_from_m, p.x_to_m, p.y_m - 0.5 * p.width_m, p.y_m + 0.5 * p.width_m),
                    hidden_stroke);
            for (std::size_t h = 0; h < job.document.holes.size(); ++h) {
                const document::Hole& hole = job.document.holes[h];
                const bool belly = hole.from == document::HoleFrom::belly;
                view.circle(hole.x_m, hole.y_m, hole.diameter_m, belly ? hidden_stroke : thin_stroke);
                view.cross(hole.x_m, hole.y_m, 1.2, thin_stroke);
                view.label(hole.x_m, view.window().bottom_mm() - 1.2,
                           hole_name(job.document, h) + (belly ? " ▼" : " ▲"), 2.4, Weight::semibold);
            }
        });
    pages.paragraph("▼ drilled from the BELLY (dashed: on the far side), ▲ from the BACK. Turned belly up, "
                    "starboard and port change sides.",
                    2.8, soft_ink);
}

void add_joint_cuts(Composer& pages, const SheetInput& job) {
    const shape::Body& body = job.evaluation.body;
    if (body.joints.empty()) return;
    const Numbers& in = pages.numbers();
    const double half_m = 0.020;
    const double half_width = extent(*body.lines).half_width_m;
    const double height = units::mm_from_m(2.0 * half_width) + 4.0;
    constexpr double cell = 58.0;
    const auto per_row = static_cast<std::size_t>(pages.width_mm() / cell);
    pages.new_page("Joint cuts and section cards");
    pages.heading("Joint cuts with their relief, from above");
    double top = 0.0;
    for (std::size_t j = 0; j < body.joints.size(); ++j) {
        const document::Joint& joint = body.joints[j];
        if (j % per_row == 0) top = pages.block(height + 15.0);
        const double left = pages.left_mm() + cell * static_cast<double>(j % per_row);
        const Rect window{left, top, units::mm_from_m(2.0 * half_m), height};
        const View view(pages, window, left - units::mm_from_m(joint.at_m - half_m), top + 0.5 * height);
        view.segment(joint.at_m - half_m, 0.0, joint.at_m + half_m, 0.0, centre_stroke);
        for (const std::size_t s : {j, j + 1})
            view.outline(shape::top_outline(body, static_cast<int>(s), detail), outline_stroke);
        pages.box(window, {0.12, rule_grey, 0.0});
        const auto degrees = [](double rad) { return units::number_text(rad, units::Unit::degree, 1) + "°"; };
        double y = top + height + 3.6;
        for (const std::string& words :
             {"Joint " + std::to_string(j + 1) + ": " + in.length(joint.at_m - body.lines->nose_m()) +
                  " from the nose",
              "gap " + in.length(joint.gap_m) + " " + in.length_symbol() + " on the centre line",
              "relief fore " + degrees(joint.relief_fore_rad) + ", aft " + degrees(joint.relief_aft_rad)}) {
            pages.text({left, y}, pages.said(words), 2.7);
            pages.say(words);
            y += 3.6;
        }
    }
    pages.space(2.0);
}

void add_section_cards(Composer& pages, const SheetInput& job) {
    const shape::Body& body = job.evaluation.body;
    const shape::Lines& lines = *body.lines;
    const Numbers& in = pages.numbers();
    if (body.joints.empty()) pages.new_page("Section cards");
    pages.heading("Section cards, seen from the nose");
    pages.paragraph("Cut the card and then the section out of it; hold what is left against the carving at "
                    "its station. Upright line: the "
                    "middle; level line: the datum.",
                    2.8, soft_ink);
    constexpr double border = 4.0, words_mm = 8.0, between = 3.0;
    double x = pages.left_mm(), top = 0.0, row_height = 0.0;
    struct Card {
        double at_m, width, height;
    };
    std::vector<Card> cards;
    const double step_m =
        job.options.station_m.value_or(in.units.inches() ? units::m_from_inch(0.5) : units::m_from_mm(10.0));
    for (double k = 1.0; k * step_m < lines.length_m() - 1e-9; k += 1.0) {
        const double at = lines.nose_m() + k * step_m;
        const bool in_gap =
            std::any_of(body.joints.begin(), body.joints.end(),
                        [&](const document::Joint& j) { return std::abs(at - j.at_m) < 0.5 * j.gap_m; });
        if (in_gap) continue;
        const shape::Station s = lines.at(at);
        cards.push_back({at, std::max(units::mm_from_m(2.0 * s.half_width_m) + 2.0 * border, 27.0),
                         units::mm_from_m(2.0 * s.half_height_m) + 2.0 * border});
    }
    const double right = pages.left_mm() + pages.width_mm();
    for (std::size_t k = 0; k < cards.size(); ++k) {
        const Card& card = cards[k];
        if (k == 0 || x + card.width > right) {
            // The row is as high as its tallest card.
            row_height = 0.0;
            double reach = pages.left_mm();
            for (std::size_t j = k; j < cards.size() && (j == k || reach + cards[j].width <= right); ++j) {
                reach += cards[j].width + between;
                row_height = std::max(row_height, cards[j].height);
            }
            top = pages.block(row_height + words_mm + between);
            x = pages.left_mm();
        }
        const shape::Station s = lines.at(card.at_m);
        const Rect frame{x, top, card.width, card.height};
        const double middle = x + 0.5 * card.width;
        const double zero = top + 0.5 * card.height + units::mm_from_m(s.centre_z_m);
        std::vector<Point> outline;
        for (const Point2& p : shape::section_outline(lines, card.at_m, 96))
            outline.push_back({middle + units::mm_from_m(p.u), zero - units::mm_from_m(p.v)});
        pages.add(Path{{{std::move(outline), true}}, outline_stroke, {}, {}});
        pages.add(
            Path{{{{{middle, frame.top_mm}, {middle, frame.bottom_mm()}}, false}}, centre_stroke, {}, frame});
        pages.add(
            Path{{{{{frame.left_mm, zero}, {frame.right_mm(), zero}}, false}}, centre_stroke, {}, frame});
        pages.box(frame, {0.15, soft_ink, 0.0});
        const std::string station = in.length(card.at_m - lines.nose_m(), 0) + " " + in.length_symbol();
        const std::string size = in.length(2.0 * s.half_width_m) + " × " + in.length(2.0 * s.half_height_m);
        pages.text({x, frame.bottom_mm() + 3.4}, pages.said(station), 2.9, Weight::semibold);
        pages.text({x, frame.bottom_mm() + 6.6}, pages.said(size), 2.5, Weight::regular, Anchor::start,
                   soft_ink);
        pages.say(station + ": " + size);
        x += card.width + between;
    }
}

} // namespace evenfall::sheet
