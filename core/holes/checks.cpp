#include "holes/checks.hpp"

#include "base/sentence.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace evenfall::holes {

namespace {

/// A micron: far below any bench, far above rounding in a written document.
constexpr double slack_m = 1e-6;

double wall_of(const preset::Hole& hole) { return hole.use == preset::HoleUse::fixed ? 0.0 : hole.wall_m; }

/// The wood beside the hole at height z, at the hole's middle and its fore and aft edge, least of the three.
double side_wood_m(const preset::Hole& hole, const shape::Lines& lines, double z_m) {
    const double r = 0.5 * hole.diameter_m;
    const double reach = std::fabs(hole.y_m) + r;
    double least = std::numeric_limits<double>::infinity();
    for (const double x : {hole.x_m - r, hole.x_m, hole.x_m + r}) {
        const double inside = std::clamp(x, lines.breakpoints_m().front(), lines.breakpoints_m().back());
        least = std::min(least, shape::skin_half_width(lines, inside, z_m) - reach);
    }
    return least;
}

/// How far inward from the mouth the far skin lies, least over the hole's rim; negative where the rim hangs over the plan.
double far_skin_depth_m(const preset::Hole& hole, const Bore& bore, const shape::Lines& lines) {
    const double r = 0.5 * hole.diameter_m;
    const std::array<std::array<double, 2>, 5> rim{
        {{0.0, 0.0}, {r, 0.0}, {-r, 0.0}, {0.0, r}, {0.0, -r}}};
    double least = std::numeric_limits<double>::infinity();
    for (const auto& [dx, dy] : rim) {
        const double x = hole.x_m + dx;
        if (x < lines.breakpoints_m().front() || x > lines.breakpoints_m().back()) return -1.0;
        const shape::SkinHeights skin = shape::skin_heights(lines, x, hole.y_m + dy);
        if (!std::isfinite(skin.back_z_m)) return -1.0;
        const double far_z = bore.inward > 0.0 ? skin.back_z_m : skin.belly_z_m;
        least = std::min(least, bore.inward * (far_z - bore.mouth_z_m));
    }
    return least;
}

double depth_of_middle(const preset::Hole& hole, const Bore& bore, const shape::Lines& lines) {
    return bore.inward * (lines.at(hole.x_m).centre_z_m - bore.mouth_z_m);
}

double height_at(const Bore& bore, double depth_m) { return bore.mouth_z_m + bore.inward * depth_m; }

/// Does a shoulder at this depth keep the walls? Cheap: no search.
bool keeps_walls(const preset::Hole& hole, const Bore& bore, const shape::Lines& lines, double depth_m) {
    const double wall = wall_of(hole);
    if (far_skin_depth_m(hole, bore, lines) - bore.cone_height_m - wall < depth_m - slack_m) return false;
    const double middle = depth_of_middle(hole, bore, lines);
    if (side_wood_m(hole, lines, height_at(bore, middle)) < wall - slack_m) return false;
    return depth_m <= middle || side_wood_m(hole, lines, height_at(bore, depth_m)) >= wall - slack_m;
}

const char* stop_text(DepthStop stop) {
    switch (stop) {
        case DepthStop::bit: return "its own depth limit";
        case DepthStop::far_wall: return "the wall that must stay on the far side";
        case DepthStop::side_wall: return "the wall that must stay beside it";
    }
    return "";
}

struct Span {
    double from = 0.0;
    double to = 0.0;
};

/// Where the wood is or may be taken along z. A ballast hole not drilled yet is held against its depth limit.
Span height_span(const preset::Hole& hole, const Bore& bore) {
    const bool planned = hole.use == preset::HoleUse::ballast && hole.depth_m <= 0.0;
    const double depth = planned ? std::min(hole.max_depth_m, bore.far_skin_m) : hole.depth_m;
    const double end = height_at(bore, depth + (depth > 0.0 ? bore.cone_height_m : 0.0));
    return {std::min(bore.mouth_z_m, end), std::max(bore.mouth_z_m, end)};
}

bool spans_meet(const Span& a, const Span& b, double apart) { return a.from < b.to + apart && b.from < a.to + apart; }

Problem outside(std::size_t i, const preset::Hole& hole, const std::string& why) {
    return {ProblemCode::outside_segment, pointer("holes", i, "x_mm"), "",
            hole_text(i, hole.name) + " at " + millimetres_text(hole.x_m) + " " + why + "."};
}

/// The plan-view stand of a hole within its segment's faces.
void check_stand(std::size_t i, const preset::Hole& hole, const Bore& bore, const shape::Body& body, Problems& out) {
    const auto s = static_cast<std::size_t>(bore.segment);
    const double r = 0.5 * hole.diameter_m;
    const double wall = wall_of(hole);
    const double reach_y = std::fabs(hole.y_m) + r;
    const shape::Segment& segment = body.segments[s];
    const double fore_tan = s > 0 ? std::tan(body.joints[s - 1].relief_aft_rad) : 0.0;
    const double aft_tan = s < body.joints.size() ? std::tan(body.joints[s].relief_fore_rad) : 0.0;
    const double fore_wood = hole.x_m - r - (segment.x_from_m + reach_y * fore_tan);
    const double aft_wood = segment.x_to_m - reach_y * aft_tan - (hole.x_m + r);
    const double least = std::min(fore_wood, aft_wood);
    if (least < wall - slack_m) {
        Problem p = outside(i, hole, "leaves " + millimetres_text(least) + " of wood to the end of its segment; the limit is " +
                                         millimetres_text(wall));
        p.limit = "≥ " + millimetres_text(wall);
        out.push_back(std::move(p));
    }
}

void check_depth(std::size_t i, const preset::Hole& hole, const Bore& bore, const shape::Body& body, Problems& out) {
    if (hole.depth_m <= 0.0 || keeps_walls(hole, bore, *body.lines, hole.depth_m)) return;
    preset::Hole free_of_stop = hole;
    free_of_stop.max_depth_m = std::numeric_limits<double>::infinity();
    const DepthLimit limit = depth_limit(free_of_stop, bore, body);
    std::string sentence = hole_text(i, hole.name) + " is " + millimetres_text(hole.depth_m) + " deep; ";
    sentence += limit.depth_m > 0.0
                    ? stop_text(limit.stop) + std::string(" (") + millimetres_text(wall_of(hole)) + ") allows " +
                          millimetres_text(limit.depth_m) + "."
                    : "its " + millimetres_text(hole.diameter_m) + " bit is too wide for the wood there.";
    out.push_back({ProblemCode::through_wall, pointer("holes", i, "depth_mm"), "≤ " + millimetres_text(limit.depth_m),
                   std::move(sentence)});
}

void check_contents(std::size_t i, const preset::Hole& hole, const Bore& bore, Problems& out) {
    const std::string who = hole_text(i, hole.name);
    if (hole.depth_m <= 0.0) {
        const bool filled = hole.fill && (hole.fill->mass_kg.value_or(0.0) > 0.0 || hole.fill->length_m.value_or(0.0) > 0.0);
        if (filled) {
            out.push_back({ProblemCode::does_not_fit, pointer("holes", i, "fill"), "depth above 0 mm",
                           who + " has a fill but is not drilled; give it a depth."});
        }
        return;
    }
    if (hole.cap && hole.cap->length_m > hole.depth_m + slack_m) {
        out.push_back({ProblemCode::does_not_fit, pointer("holes", i, "cap/length_mm"), "≤ " + millimetres_text(hole.depth_m),
                       who + " is " + millimetres_text(hole.depth_m) + " deep; a cap of " +
                           millimetres_text(hole.cap->length_m) + " does not fit."});
        return;
    }
    if (!hole.fill) return;
    if (hole.fill->stock_diameter_m && *hole.fill->stock_diameter_m > hole.diameter_m + slack_m) {
        out.push_back({ProblemCode::does_not_fit, pointer("holes", i, "fill/stock_diameter_mm"),
                       "≤ " + millimetres_text(hole.diameter_m),
                       who + " is " + millimetres_text(hole.diameter_m) + " wide; stock of " +
                           millimetres_text(*hole.fill->stock_diameter_m) + " does not go in."});
    }
    const Contents c = contents(hole, bore);
    if (c.fill_column_m > c.room_m + slack_m) {
        out.push_back({ProblemCode::does_not_fit, pointer("holes", i, "fill"), "≤ " + millimetres_text(c.room_m),
                       who + " has " + millimetres_text(c.room_m) + " of room under its cap; its fill of " +
                           grams_text(c.fill_kg) + " is " + millimetres_text(c.fill_column_m) + " long."});
    }
}

void check_pairs(const preset::Document& document, const std::vector<Bore>& bores, Problems& out) {
    const auto& list = document.holes;
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (bores[i].segment < 0) continue;
        for (std::size_t k = i + 1; k < list.size(); ++k) {
            if (bores[k].segment != bores[i].segment) continue;
            const double wall = std::max(wall_of(list[i]), wall_of(list[k]));
            const double apart = std::hypot(list[i].x_m - list[k].x_m, list[i].y_m - list[k].y_m) -
                                 0.5 * (list[i].diameter_m + list[k].diameter_m);
            if (apart >= wall - slack_m) continue;
            if (!spans_meet(height_span(list[i], bores[i]), height_span(list[k], bores[k]), wall)) continue;
            out.push_back({ProblemCode::overlap, pointer("holes", k, "x_mm"), "≥ " + millimetres_text(wall),
                           hole_text(k, list[k].name) + " stands " + millimetres_text(apart) + " of wood away from hole " +
                               std::to_string(i + 1) + "; the limit is " + millimetres_text(wall) + "."});
        }
    }
}

void check_pockets(const preset::Document& document, const std::vector<Bore>& bores, Problems& out) {
    constexpr double far = std::numeric_limits<double>::infinity();
    for (std::size_t i = 0; i < document.pockets.size(); ++i) {
        const preset::Pocket& p = document.pockets[i];
        const std::string who = "Pocket " + std::to_string(i + 1) + (p.name.empty() ? "" : " (" + p.name + ")");
        if (p.x_to_m <= p.x_from_m || p.z_to_m.value_or(far) <= p.z_from_m.value_or(-far)) {
            const bool along = p.x_to_m <= p.x_from_m;
            out.push_back({ProblemCode::out_of_order, pointer("pockets", i, along ? "x_to_mm" : "z_to_mm"),
                           "beyond its start", who + " ends before it begins."});
            continue;
        }
        const Span height{p.z_from_m.value_or(-far), p.z_to_m.value_or(far)};
        for (std::size_t h = 0; h < document.holes.size(); ++h) {
            const preset::Hole& hole = document.holes[h];
            if (bores[h].segment < 0) continue;
            const double dx = std::max({p.x_from_m - hole.x_m, hole.x_m - p.x_to_m, 0.0});
            const double dy = std::max(std::fabs(hole.y_m - p.y_m) - 0.5 * p.width_m, 0.0);
            if (std::hypot(dx, dy) >= 0.5 * hole.diameter_m - slack_m) continue;
            if (!spans_meet(height, height_span(hole, bores[h]), 0.0)) continue;
            out.push_back({ProblemCode::overlap, pointer("pockets", i, "x_from_mm"), "",
                           who + " cuts into hole " + std::to_string(h + 1) + "."});
        }
        for (std::size_t k = i + 1; k < document.pockets.size(); ++k) {
            const preset::Pocket& q = document.pockets[k];
            const bool along = p.x_from_m < q.x_to_m - slack_m && q.x_from_m < p.x_to_m - slack_m;
            const bool across = std::fabs(p.y_m - q.y_m) < 0.5 * (p.width_m + q.width_m) - slack_m;
            const Span other{q.z_from_m.value_or(-far), q.z_to_m.value_or(far)};
            if (along && across && spans_meet(height, other, -slack_m)) {
                out.push_back({ProblemCode::overlap, pointer("pockets", k, "x_from_mm"), "",
                               "Pocket " + std::to_string(k + 1) + " overlaps pocket " + std::to_string(i + 1) +
                                   "; one box may serve both."});
            }
        }
    }
}

}  // namespace

DepthLimit depth_limit(const preset::Hole& hole, const Bore& bore, const shape::Body& body) {
    const shape::Lines& lines = *body.lines;
    const double wall = wall_of(hole);
    DepthLimit limit{hole.max_depth_m, DepthStop::bit};

    const double far_m = far_skin_depth_m(hole, bore, lines) - bore.cone_height_m - wall;
    if (far_m < limit.depth_m) limit = {std::max(far_m, 0.0), DepthStop::far_wall};

    const double middle = depth_of_middle(hole, bore, lines);
    if (side_wood_m(hole, lines, height_at(bore, middle)) < wall - slack_m) return {0.0, DepthStop::side_wall};
    if (limit.depth_m > middle && side_wood_m(hole, lines, height_at(bore, limit.depth_m)) < wall) {
        double good = middle;
        double bad = limit.depth_m;
        for (int i = 0; i < 40; ++i) {  // halves to well under a nanometre
            const double mid = 0.5 * (good + bad);
            (side_wood_m(hole, lines, height_at(bore, mid)) >= wall ? good : bad) = mid;
        }
        limit = {good, DepthStop::side_wall};
    }
    return limit;
}

Problems check(const preset::Document& document, const shape::Body& body, const std::vector<Bore>& bores) {
    Problems out;
    for (std::size_t i = 0; i < document.holes.size(); ++i) {
        const preset::Hole& hole = document.holes[i];
        if (bores[i].segment < 0) {
            out.push_back(outside(i, hole, "is not in the wood of any segment"));
            continue;
        }
        check_stand(i, hole, bores[i], body, out);
        check_depth(i, hole, bores[i], body, out);
        check_contents(i, hole, bores[i], out);
    }
    check_pairs(document, bores, out);
    check_pockets(document, bores, out);
    return out;
}

}  // namespace evenfall::holes
