#include "body/hole_checks.hpp"

#include "base/root.hpp"
#include "base/sentence.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>

namespace evenfall::holes {

namespace {

/// One micrometre: far below what can be measured, far above rounding in a written document.
constexpr double slack_m = 1e-6;

double wall_of(const document::Hole& hole) {
    return hole.use == document::HoleUse::fixed ? 0.0 : hole.wall_m;
}

double height_at(const Bore& bore, double depth_m) {
    return bore.mouth_z_m + bore.inward * depth_m;
}

/// The wood beside the bottom of a hole of this depth (drill point not counted): minimum at the hole's middle
/// and its fore and aft edge. A section widens once and narrows once: while it still widens, its greatest
/// width counts, because a deeper hole has to pass there anyway.
double side_wood_m(const document::Hole& hole, const Bore& bore, const shape::Lines& lines, double depth_m) {
    const double r = 0.5 * hole.diameter_m;
    const double z = height_at(bore, depth_m);
    double least = std::numeric_limits<double>::infinity();
    for (const double x : {hole.x_m - r, hole.x_m, hole.x_m + r}) {
        const double inside = std::clamp(x, lines.breakpoints_m().front(), lines.breakpoints_m().back());
        const shape::Station s = lines.at(inside);
        const shape::SectionFamily& f = lines.family();
        const double widest = bore.inward > 0.0 ? f.upper_z(s.parameter, 1.0) : f.lower_z(s.parameter, 1.0);
        const bool narrows = bore.inward * (z - s.centre_z_m - s.half_height_m * widest) > 0.0;
        least = std::min(least, narrows ? shape::skin_half_width(lines, inside, z) : s.half_width_m);
    }
    return least - std::fabs(hole.y_m) - r;
}

/// Distance from the mouth to the far skin, minimum over the hole's rim; negative where the rim is outside
/// the plan.
double far_skin_depth_m(const document::Hole& hole, const Bore& bore, const shape::Lines& lines) {
    const double r = 0.5 * hole.diameter_m;
    const std::array<std::array<double, 2>, 5> rim{{{0.0, 0.0}, {r, 0.0}, {-r, 0.0}, {0.0, r}, {0.0, -r}}};
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

/// True where a hole of this depth keeps its walls. Cheap: no search.
bool keeps_walls(const document::Hole& hole, const Bore& bore, const shape::Lines& lines, double depth_m) {
    const double wall = wall_of(hole);
    if (far_skin_depth_m(hole, bore, lines) - bore.cone_height_m - wall < depth_m - slack_m) return false;
    return side_wood_m(hole, bore, lines, depth_m) >= wall - slack_m;
}

const char* stop_text(DepthStop stop) {
    switch (stop) {
    case DepthStop::bit:
        return "its own depth limit";
    case DepthStop::far_wall:
        return "the wall that must stay on the far side";
    case DepthStop::side_wall:
        return "the wall that must stay beside it";
    case DepthStop::built_in:
        return "the wall that must stay to what is built in";
    case DepthStop::hole:
        return "the wall that must stay to another hole";
    }
    return "";
}

struct Span {
    double from = 0.0;
    double to = 0.0;
};

/// Heights between which a hole of this depth, above 0, removes wood.
Span height_span(const Bore& bore, double depth_m) {
    const double end = height_at(bore, depth_m + bore.cone_height_m);
    return {std::min(bore.mouth_z_m, end), std::max(bore.mouth_z_m, end)};
}

constexpr double far = std::numeric_limits<double>::infinity();

Span height_span(const document::Pocket& p) {
    return {p.z_from_m.value_or(-far), p.z_to_m.value_or(far)};
}

bool spans_meet(const Span& a, const Span& b, double apart) {
    return a.from < b.to + apart - slack_m && b.from < a.to + apart - slack_m;
}

/// Seen from above: the wood between the bit and a box; negative where it cuts the box.
double wood_beside(const document::Hole& hole, const shape::Box& box) {
    const double dx = std::max({box.x_from_m - hole.x_m, hole.x_m - box.x_to_m, 0.0});
    const double dy = std::max({box.y_from_m - hole.y_m, hole.y_m - box.y_to_m, 0.0});
    return std::hypot(dx, dy) - 0.5 * hole.diameter_m;
}

bool comes_near(const document::Hole& hole, const shape::Box& box, double wall_m) {
    return wood_beside(hole, box) < wall_m - slack_m;
}

/// Seen from above: the wood between two holes, and the wall that is required.
struct HoleSpacing {
    double wood_m = 0.0;
    double wall_m = 0.0;

    [[nodiscard]] bool too_near() const { return wood_m < wall_m - slack_m; }
};

HoleSpacing between(const document::Hole& a, const document::Hole& b) {
    return {std::hypot(a.x_m - b.x_m, a.y_m - b.y_m) - 0.5 * (a.diameter_m + b.diameter_m),
            std::max(wall_of(a), wall_of(b))};
}

Problem outside(std::size_t i, const document::Hole& hole, const Sentence& why) {
    return {ProblemCode::outside_segment, pointer("holes", i, "x_mm"), "",
            hole_text(i, hole.name) + " at " + length_text(hole.x_m) + " " + why + "."};
}

/// The hole's position in plan between its segment's faces.
void check_stand(std::size_t i, const document::Hole& hole, const Bore& bore, const shape::Body& body,
                 Problems& out) {
    const auto s = static_cast<std::size_t>(bore.segment);
    const double r = 0.5 * hole.diameter_m;
    const double wall = wall_of(hole);
    const shape::Segment& segment = body.segments[s];
    const double fore_tan = s > 0 ? std::tan(body.joints[s - 1].relief_aft_rad) : 0.0;
    const double aft_tan = s < body.joints.size() ? std::tan(body.joints[s].relief_fore_rad) : 0.0;
    // Distance of the axis from the nearer flank of a face, perpendicular to it: the flanks bound a convex
    // region.
    const auto wood = [&](double along_m, double tan) {
        return (along_m - std::fabs(hole.y_m) * tan) / std::hypot(1.0, tan) - r;
    };
    const double least =
        std::min(wood(hole.x_m - segment.x_from_m, fore_tan), wood(segment.x_to_m - hole.x_m, aft_tan));
    if (least < wall - slack_m) {
        Problem p = outside(i, hole,
                            "leaves " + length_text(least) +
                                " of wood to the end of its segment; the limit is " + length_text(wall));
        p.limit = "≥ " + length_text(wall);
        out.push_back(std::move(p));
    }
}

void check_depth(std::size_t i, const document::Hole& hole, const Bore& bore, const shape::Body& body,
                 Problems& out) {
    if (hole.depth_m <= 0.0 || keeps_walls(hole, bore, *body.lines, hole.depth_m)) return;
    document::Hole free_of_stop = hole;
    free_of_stop.max_depth_m = std::numeric_limits<double>::infinity();
    const DepthLimit limit = depth_limit(free_of_stop, bore, body);
    Sentence sentence = hole_text(i, hole.name) + " is " + length_text(hole.depth_m) + " deep; ";
    sentence += limit.depth_m > 0.0
                    ? stop_text(limit.stop) + std::string(" (") + length_text(wall_of(hole)) + ") allows " +
                          length_text(limit.depth_m) + "."
                    : "its " + length_text(hole.diameter_m) + " bit is too wide for the wood there.";
    out.push_back({ProblemCode::through_wall, pointer("holes", i, "depth_mm"),
                   "≤ " + length_text(limit.depth_m), std::move(sentence)});
}

void check_contents(std::size_t i, const document::Hole& hole, const Bore& bore, Problems& out) {
    const std::string who = hole_text(i, hole.name);
    if (hole.depth_m <= 0.0) {
        const bool filled =
            hole.fill && (hole.fill->mass_kg.value_or(0.0) > 0.0 || hole.fill->length_m.value_or(0.0) > 0.0);
        if (filled) {
            out.push_back({ProblemCode::does_not_fit, pointer("holes", i, "fill"),
                           "depth above " + plain_text(0.0, units::Quantity::length),
                           who + " has a fill but is not drilled; give it a depth."});
        }
        return;
    }
    if (hole.cap && hole.cap->length_m > hole.depth_m + slack_m) {
        out.push_back({ProblemCode::does_not_fit, pointer("holes", i, "cap/length_mm"),
                       "≤ " + length_text(hole.depth_m),
                       who + " is " + length_text(hole.depth_m) + " deep; a cap of " +
                           length_text(hole.cap->length_m) + " does not fit."});
        return;
    }
    if (hole.depth_m <= bore.skin_drop_m) {
        out.push_back(
            {ProblemCode::does_not_fit, pointer("holes", i, "depth_mm"), "> " + length_text(bore.skin_drop_m),
             who + " is " + length_text(hole.depth_m) + " deep, and over its mouth the skin falls away by " +
                 length_text(bore.skin_drop_m) + ": it would hardly touch wood."});
        return;
    }
    if (!hole.fill) return;
    if (hole.fill->stock_diameter_m && *hole.fill->stock_diameter_m > hole.diameter_m + slack_m) {
        out.push_back({ProblemCode::does_not_fit, pointer("holes", i, "fill/stock_diameter_mm"),
                       "≤ " + length_text(hole.diameter_m),
                       who + " is " + length_text(hole.diameter_m) + " wide; stock of " +
                           length_text(*hole.fill->stock_diameter_m) + " does not go in."});
    }
    const HoleContents c = contents(hole, bore);
    // Lead may project from an open hole; under a cap it must be surrounded by wood.
    const double room = hole.depth_m - (hole.cap ? std::max(hole.cap->length_m, bore.skin_drop_m) : 0.0);
    if (c.fill_column_m > room + slack_m) {
        out.push_back({ProblemCode::does_not_fit, pointer("holes", i, "fill"), "≤ " + length_text(room),
                       who + " has " + length_text(room) + " of room under its cap; its fill of " +
                           mass_text(c.fill_kg) + " is " + length_text(c.fill_column_m) + " long."});
    }
}

void check_pairs(const document::Document& document, const std::vector<Bore>& bores, std::size_t first,
                 Problems& out) {
    const auto& list = document.holes;
    for (std::size_t i = 0; i < list.size(); ++i) {
        if (bores[i].segment < 0 || list[i].depth_m <= 0.0) continue;
        for (std::size_t k = std::max(i + 1, first); k < list.size(); ++k) {
            if (bores[k].segment != bores[i].segment || list[k].depth_m <= 0.0) continue;
            const HoleSpacing apart = between(list[i], list[k]);
            if (!apart.too_near()) continue;
            if (!spans_meet(height_span(bores[i], list[i].depth_m), height_span(bores[k], list[k].depth_m),
                            apart.wall_m))
                continue;
            out.push_back({ProblemCode::overlap, pointer("holes", k, "x_mm"),
                           "≥ " + length_text(apart.wall_m),
                           hole_text(k, list[k].name) + " stands " + length_text(apart.wood_m) +
                               " of wood away from hole " + std::to_string(i + 1) + "; the limit is " +
                               length_text(apart.wall_m) + "."});
        }
    }
}

void check_pockets(const document::Document& document, const std::vector<Bore>& bores, Problems& out) {
    for (std::size_t i = 0; i < document.pockets.size(); ++i) {
        const document::Pocket& p = document.pockets[i];
        const std::string who =
            "Pocket " + std::to_string(i + 1) + (p.name.empty() ? "" : " (" + p.name + ")");
        const Span height = height_span(p);
        if (p.x_to_m <= p.x_from_m || height.to <= height.from) {
            const bool along = p.x_to_m <= p.x_from_m;
            out.push_back({ProblemCode::out_of_order, pointer("pockets", i, along ? "x_to_mm" : "z_to_mm"),
                           "beyond its start", who + " ends before it begins."});
            continue;
        }
        for (std::size_t h = 0; h < document.holes.size(); ++h) {
            const document::Hole& hole = document.holes[h];
            if (bores[h].segment < 0 || hole.depth_m <= 0.0 || !comes_near(hole, shape::box_of(p), 0.0))
                continue;
            if (!spans_meet(height, height_span(bores[h], hole.depth_m), 0.0)) continue;
            out.push_back({ProblemCode::overlap, pointer("pockets", i, "x_from_mm"), "",
                           who + " cuts into hole " + std::to_string(h + 1) + "."});
        }
        for (std::size_t k = i + 1; k < document.pockets.size(); ++k) {
            const document::Pocket& q = document.pockets[k];
            const bool along = p.x_from_m < q.x_to_m - slack_m && q.x_from_m < p.x_to_m - slack_m;
            const bool across = std::fabs(p.y_m - q.y_m) < 0.5 * (p.width_m + q.width_m) - slack_m;
            if (along && across && spans_meet(height, height_span(q), 0.0)) {
                out.push_back({ProblemCode::overlap, pointer("pockets", k, "x_from_mm"), "",
                               "Pocket " + std::to_string(k + 1) + " overlaps pocket " +
                                   std::to_string(i + 1) + "; one box may serve both."});
            }
        }
    }
}

} // namespace

DepthLimit depth_limit(const document::Hole& hole, const Bore& bore, const shape::Body& body) {
    const shape::Lines& lines = *body.lines;
    const double wall = wall_of(hole);
    DepthLimit limit{hole.max_depth_m, DepthStop::bit};

    const double far_m = far_skin_depth_m(hole, bore, lines) - bore.cone_height_m - wall;
    if (far_m < limit.depth_m) limit = {std::max(far_m, 0.0), DepthStop::far_wall};

    if (side_wood_m(hole, bore, lines, 0.0) < wall - slack_m) return {0.0, DepthStop::side_wall};
    if (side_wood_m(hole, bore, lines, limit.depth_m) < wall) {
        const auto leaves_wall = [&](double depth_m) {
            return side_wood_m(hole, bore, lines, depth_m) >= wall;
        };
        limit = {last_where(leaves_wall, 0.0, limit.depth_m, 1e-13), DepthStop::side_wall};
    }
    return limit;
}

DepthLimit free_depth(const document::Document& document, std::size_t index, const shape::Body& body,
                      const std::vector<Bore>& bores,
                      const std::vector<std::pair<std::size_t, double>>& planned) {
    const document::Hole& hole = document.holes[index];
    const Bore& bore = bores[index];
    DepthLimit limit = depth_limit(hole, bore, body);
    const auto keep_off = [&](const Span& span, double wall_m, double behind_m, DepthStop stop) {
        const bool up = bore.inward > 0.0;
        if (bore.inward * ((up ? span.to : span.from) - bore.mouth_z_m) <= behind_m) return; // not in its way
        const double depth =
            bore.inward * ((up ? span.from : span.to) - bore.mouth_z_m) - wall_m - bore.cone_height_m;
        if (depth < limit.depth_m) limit = {std::max(depth, 0.0), stop, {}};
    };
    for (const fittings::KeepOut& zone : fittings::keep_out(document, body)) {
        if (!comes_near(hole, zone.box, joints::thin_wall_m)) continue;
        const double before_m = limit.depth_m;
        keep_off({zone.box.z_from_m, zone.box.z_to_m}, std::max(wall_of(hole), joints::thin_wall_m), 0.0,
                 DepthStop::built_in);
        if (limit.depth_m < before_m) limit.built_in = fittings::built_in_text(document, zone);
    }
    for (std::size_t k = 0; k < document.holes.size(); ++k) {
        if (k == index || bores[k].segment != bore.segment) continue;
        const document::Hole& other = document.holes[k];
        const HoleSpacing apart = between(hole, other);
        if (!apart.too_near()) continue;
        double depth = other.use == document::HoleUse::ballast ? 0.0 : other.depth_m;
        for (const auto& [at, to_m] : planned) {
            if (at == k) depth = to_m;
        }
        if (depth > 0.0) keep_off(height_span(bores[k], depth), apart.wall_m, -apart.wall_m, DepthStop::hole);
    }
    return limit;
}

bool comes_near(const document::Hole& hole, const Bore& bore, const fittings::KeepOut& zone, double wall_m) {
    return comes_near(hole, zone.box, wall_m) &&
           spans_meet(height_span(bore, hole.depth_m), {zone.box.z_from_m, zone.box.z_to_m}, wall_m);
}

Problems built_in_warnings(const document::Document& document, const shape::Body& body,
                           const std::vector<Bore>& bores) {
    Problems out;
    if (document.holes.empty()) return out;
    const auto zones = fittings::keep_out(document, body);
    for (std::size_t i = 0; i < document.holes.size(); ++i) {
        const document::Hole& hole = document.holes[i];
        if (bores[i].segment < 0 || hole.depth_m <= 0.0 || is_plugged(hole)) continue;
        for (const fittings::KeepOut& zone : zones) {
            if (zone.what == fittings::BuiltIn::pocket || zone.what == fittings::BuiltIn::hinge_pin) continue;
            if (!comes_near(hole, bores[i], zone, joints::thin_wall_m)) continue;
            out.push_back(
                {ProblemCode::overlap, pointer("holes", i, "depth_mm"),
                 "≥ " + length_text(joints::thin_wall_m),
                 hole_text(i, hole.name) +
                     (comes_near(hole, bores[i], zone, 0.0) ? " runs into " : " leaves hardly any wood to ") +
                     fittings::built_in_text(document, zone) + "."});
        }
    }
    return out;
}

Problems check(const document::Document& document, const shape::Body& body, const std::vector<Bore>& bores,
               std::size_t first) {
    Problems out;
    for (std::size_t i = first; i < document.holes.size(); ++i) {
        const document::Hole& hole = document.holes[i];
        if (bores[i].segment < 0) {
            out.push_back(outside(i, hole, "is not in the wood of any segment"));
            continue;
        }
        check_stand(i, hole, bores[i], body, out);
        check_depth(i, hole, bores[i], body, out);
        check_contents(i, hole, bores[i], out);
    }
    check_pairs(document, bores, first, out);
    check_pockets(document, bores, out);
    return out;
}

} // namespace evenfall::holes
