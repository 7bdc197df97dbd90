#include "output/sheet/view.hpp"

#include "output/sheet/hatch.hpp"

#include <cmath>
#include <numbers>

namespace evenfall::sheet {

namespace {

constexpr double label_room_mm = 5.0;
constexpr double scale_room_mm = 8.0;
constexpr double overlap_mm = 16.0;
constexpr double side_room_mm = 3.0; ///< room for half a number of the scale

std::vector<Point> on_paper(const View& view, const std::vector<shape::Point2>& points) {
    std::vector<Point> out;
    out.reserve(points.size());
    for (const shape::Point2& p : points)
        out.push_back(view.at(p.u, p.v));
    return out;
}

void add_scale(const View& view, double nose_m, double from_mm, double to_mm) {
    const double y = view.window().bottom_mm();
    Composer& pages = view.pages();
    pages.line({view.window().left_mm, y}, {view.window().right_mm(), y}, {0.15, soft_ink, 0.0});
    // A mark each 5 mm and a number each 10, or a mark each quarter of an inch and a number each half.
    const bool inches = pages.numbers().units.inches();
    const double step_mm = inches ? units::mm_from_m(units::m_from_inch(0.25)) : 5.0;
    for (long long k = std::llround(std::ceil(from_mm / step_mm - 1e-9));
         static_cast<double>(k) * step_mm <= to_mm + 1e-9; ++k) {
        const double mm = static_cast<double>(k) * step_mm;
        const bool whole = k % 2 == 0;
        const double x = view.at(nose_m + units::m_from_mm(mm), 0.0).x_mm;
        pages.line({x, y}, {x, y + (whole ? 2.2 : 1.2)}, {0.15, soft_ink, 0.0});
        if (whole)
            pages.text({x, y + 4.6}, pages.said(pages.numbers().length(units::m_from_mm(mm), 0)), 2.2,
                       Weight::regular, Anchor::middle, soft_ink);
    }
}

void add_register_mark(const View& view, double x_m) {
    // Over the drawing's own height only: the rows of labels stay free.
    const double x = view.at(x_m, 0.0).x_mm;
    const double top = view.window().top_mm + label_room_mm,
                 bottom = view.window().bottom_mm() - label_room_mm;
    view.pages().line({x, top}, {x, bottom}, {0.15, mark, 2.0});
    for (const double y : {top, view.at(0.0, 0.0).y_mm, bottom})
        view.pages().line({x - 2.0, y}, {x + 2.0, y}, {0.2, mark, 0.0});
}

} // namespace

Point View::at(double x_m, double across_m) const {
    return {left_x_mm_ + units::mm_from_m(x_m), zero_y_mm_ - units::mm_from_m(across_m)};
}

bool View::shows(double x_m) const {
    const double x = at(x_m, 0.0).x_mm;
    return x >= window_.left_mm && x <= window_.right_mm();
}

void View::outline(const std::vector<shape::Point2>& points, Stroke stroke, bool closed) const {
    pages_.add(Path{{{on_paper(*this, points), closed}}, stroke, {}, window_});
}

void View::segment(double x0_m, double a0_m, double x1_m, double a1_m, Stroke stroke) const {
    pages_.add(Path{{{{at(x0_m, a0_m), at(x1_m, a1_m)}, false}}, stroke, {}, window_});
}

void View::circle(double x_m, double across_m, double diameter_m, Stroke stroke) const {
    // 72 chords are within 0.1 % of the radius of the circle.
    std::vector<shape::Point2> points;
    for (int k = 0; k < 72; ++k) {
        const double angle = 2.0 * std::numbers::pi * k / 72.0;
        points.push_back(
            {x_m + 0.5 * diameter_m * std::cos(angle), across_m + 0.5 * diameter_m * std::sin(angle)});
    }
    outline(points, stroke);
}

void View::cross(double x_m, double across_m, double arm_mm, Stroke stroke) const {
    const double arm = units::m_from_mm(arm_mm);
    segment(x_m - arm, across_m, x_m + arm, across_m, stroke);
    segment(x_m, across_m - arm, x_m, across_m + arm, stroke);
}

void View::hatched(const std::vector<shape::Point2>& points, Stroke stroke, double spacing_mm) const {
    pages_.add(Path{hatch(on_paper(*this, points), spacing_mm), stroke, {}, window_});
}

void View::filled(const std::vector<shape::Point2>& points, Colour colour) const {
    pages_.add(Path{{{on_paper(*this, points), true}}, {}, colour, window_});
}

void View::label(double x_m, double y_mm, const std::string& words, double size_mm, Weight weight,
                 Colour colour) const {
    if (!shows(x_m)) return;
    // Moved inwards where it would cross the edge of the window, and cut to the width of the page.
    const std::string seen = pages_.lines_of(pages_.said(words), pages_.width_mm(), size_mm, weight).front();
    const double half = 0.5 * pages_.text_width_mm(seen, size_mm, weight);
    const double least = pages_.left_mm() + half;
    const double most = pages_.left_mm() + pages_.width_mm() - half;
    const double x = std::fmax(least, std::fmin(at(x_m, 0.0).x_mm, most));
    pages_.text({x, y_mm}, seen, size_mm, weight, Anchor::middle, colour);
}

void add_stretches(Composer& pages, const Length& whole, const std::string& heading, double low_m,
                   double high_m, const std::function<void(const View&)>& draw) {
    const double nose_m = whole.from_m;
    const double length_mm = units::mm_from_m(whole.length_m);
    const double height = units::mm_from_m(high_m - low_m) + 2.0 * label_room_mm;
    const std::vector<Tile> stretches =
        tiles(-2.0, length_mm + 2.0, pages.width_mm() - 2.0 * side_room_mm, overlap_mm);
    // All parts of a drawing on one page where they fit.
    const double all = static_cast<double>(stretches.size()) * (height + scale_room_mm) +
                       (stretches.size() > 1 ? 10.0 : 0.0);
    pages.heading(heading, all + 7.5 <= pages.whole_room_mm() ? all : height + scale_room_mm);
    for (std::size_t k = 0; k < stretches.size(); ++k) {
        const Tile& tile = stretches[k];
        const double top = pages.block(height + scale_room_mm);
        const double width = tile.to_mm - tile.from_mm;
        const double left = pages.left_mm() + 0.5 * (pages.width_mm() - width);
        const double zero_y = top + label_room_mm + units::mm_from_m(high_m);
        const View view(pages, {left, top, width, height}, left - tile.from_mm - units::mm_from_m(nose_m),
                        zero_y);
        draw(view);
        add_scale(view, nose_m, std::fmax(tile.from_mm, 0.0), std::fmin(tile.to_mm, length_mm));
        if (k > 0) add_register_mark(view, nose_m + units::m_from_mm(tile.from_mm + 0.5 * overlap_mm));
        if (k + 1 < stretches.size())
            add_register_mark(view, nose_m + units::m_from_mm(stretches[k + 1].from_mm + 0.5 * overlap_mm));
    }
    if (stretches.size() > 1) {
        pages.paragraph("Longer than the paper: cut the stretches out with their overlap and glue them line "
                        "on line where the "
                        "dashed line with three ticks stands; the numbers of the scale must meet.",
                        2.8, soft_ink);
    }
}

} // namespace evenfall::sheet
