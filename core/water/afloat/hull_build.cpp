// Builds the hull's shapes from the ledger's lines.

#include "water/afloat/hull.hpp"

#include "base/root.hpp"
#include "body/tail_loft.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace evenfall::afloat {

namespace {

using ledger::Kind;
using ledger::Line;

/// Volume and moment that the skin of one segment must enclose: its wood and films.
struct Wanted {
    double volume = 0.0;
    Vec3 moment;
};

/// Thickness of the films on skin and on joint faces.
struct SkinFilms {
    double skin_m = 0.0;
    double face_m = 0.0;
};

/// Thickness of a film of known volume: the inverse of Steiner's S·t + M·t².
double thickness(double volume_m3, double area_m2, double curvature_m) {
    if (!(area_m2 > 0.0) || !(volume_m3 > 0.0)) return 0.0;
    const double root = std::sqrt(area_m2 * area_m2 + 4.0 * std::max(0.0, curvature_m) * volume_m3);
    return 2.0 * volume_m3 / (area_m2 + root);
}

struct Coated {
    Wanted wanted;
    SkinFilms films;
};

Coated coated(const shape::Segment& segment, int index, std::span<const Line> lines,
              const document::Document& document) {
    Coated c;
    double faces = 0.0;
    for (const shape::Face& face : segment.faces)
        faces += face.area_m2;
    for (const Line& line : lines) {
        if (line.segment != index || (line.kind != Kind::wood && line.kind != Kind::coat) || line.pocket >= 0)
            continue;
        c.wanted.volume += line.displaced_m3;
        c.wanted.moment += line.displaced_m3 * line.at_m;
        if (line.kind != Kind::coat || line.displaced_m3 <= 0.0) continue;
        const document::Coat& coat = document.coats[static_cast<std::size_t>(line.item)];
        const double area = (coat.on_skin ? segment.skin_m2 : 0.0) + (coat.on_joint_faces ? faces : 0.0);
        const double share = area / (segment.skin_m2 + faces);
        const double t = thickness(line.displaced_m3, area, segment.curvature_m * share);
        if (coat.on_skin) c.films.skin_m += t;
        if (coat.on_joint_faces) c.films.face_m += t;
    }
    return c;
}

/// x at which a flank comes out through the skin.
double flank_end(const shape::Lines& lines, const Flank& flank, double film_m) {
    const auto short_of = [&](double depth) {
        const double x = std::clamp(flank.x_m + flank.side * depth, lines.nose_m(), lines.tail_m());
        return flank.tangent * (lines.at(x).half_width_m + film_m) - depth;
    };
    return flank.x_m + flank.side * root_between(short_of, 0.0, lines.length_m(), {1e-12});
}

double secant(double tangent) {
    return std::hypot(1.0, tangent);
}

/// Half size of the overlap of a pocket with the wood, as a box whose volume is the ledger's.
Vec3 pocket_half_size(const document::Pocket& p, const shape::Body& body, const Line& line) {
    const shape::Segment& segment = body.segments[static_cast<std::size_t>(line.segment)];
    const shape::SkinHeights skin = shape::skin_heights(*body.lines, line.at_m.x, line.at_m.y);
    const double x = std::min(p.x_to_m, segment.x_to_m) - std::max(p.x_from_m, segment.x_from_m);
    const double back = std::isfinite(skin.back_z_m) ? skin.back_z_m : line.at_m.z + 0.5 * p.width_m;
    const double belly = std::isfinite(skin.belly_z_m) ? skin.belly_z_m : line.at_m.z - 0.5 * p.width_m;
    const double z = std::min(p.z_to_m.value_or(back), back) - std::max(p.z_from_m.value_or(belly), belly);
    Vec3 half{0.5 * std::max(x, 1e-6), 0.5 * std::max(p.width_m, 1e-6), 0.5 * std::max(z, 1e-6)};
    const double grow = std::cbrt(std::abs(line.displaced_m3) / (8.0 * half.x * half.y * half.z));
    return grow * half;
}

/// Tail or tenon as a box of its own proportions and the line's volume.
Vec3 tail_half_size(document::Tail tail, const Line& line) {
    Vec3 e;
    if (line.item == 1) {
        e = {tail.tenon->length_m, tail.tenon->thickness_m, tail.tenon->height_m};
    } else {
        tail.tenon.reset();
        e = tail::extent(tail);
    }
    return 0.5 * std::cbrt(line.displaced_m3 / (e.x * e.y * e.z)) * e;
}

/// A column along z of the hole's cross-section area and the line's volume.
Vec3 column_half_size(double diameter_m, double volume_m3) {
    const double side = std::sqrt(0.25 * std::numbers::pi) * diameter_m;
    return {0.5 * side, 0.5 * side, 0.5 * volume_m3 / (side * side)};
}

} // namespace

void FloatingHull::add_segment(const shape::Body& body, std::size_t index, std::span<const Line> ledger_lines,
                               const document::Document& document) {
    const shape::Lines& lines = *body.lines;
    const shape::Segment& segment = body.segments[index];
    const bool is_first = index == 0;
    const bool is_last = index + 1 == body.segments.size();
    const Coated coat = coated(segment, static_cast<int>(index), ledger_lines, document);

    Skin& skin = skins_[index];
    skin.lines = &lines;
    skin.film_m = coat.films.skin_m;
    skin.fore = {segment.x_from_m, is_first ? 0.0 : std::tan(body.joints[index - 1].relief_aft_rad), 1.0};
    skin.aft = {segment.x_to_m, is_last ? 0.0 : std::tan(body.joints[index].relief_fore_rad), -1.0};
    skin.fore.x_m -= is_first ? coat.films.skin_m : coat.films.face_m * secant(skin.fore.tangent);
    skin.aft.x_m += is_last ? coat.films.skin_m : coat.films.face_m * secant(skin.aft.tangent);

    // Panels end at the bare nose and tail, where a flank comes out, and at the breaks of the lines unless
    // these are very close: within 2 mm of a 160 mm lure the lines bend too little to matter.
    const double from = skin.fore.x_m;
    const double to = skin.aft.x_m;
    const double closest = lines.length_m() / 80.0;
    std::vector<double> marks{from};
    const auto mark = [&marks](double x) {
        if (x > marks.back()) marks.push_back(x);
    };
    if (is_first) mark(lines.nose_m());
    if (skin.fore.tangent > 0.0) mark(flank_end(lines, skin.fore, skin.film_m));
    const double last = skin.aft.tangent > 0.0 ? flank_end(lines, skin.aft, skin.film_m)
                        : is_last              ? lines.tail_m()
                                               : to;
    for (const double x : lines.breakpoints_m()) {
        if (x > marks.back() + closest && x < last - closest) mark(x);
    }
    mark(last);
    mark(to);

    const double longest = lines.length_m() / 8.0;
    const double brief = lines.length_m() / 10.0;
    const std::size_t first_panel = panels_.size();
    Sums sums;
    for (std::size_t k = 0; k + 1 < marks.size(); ++k) {
        const double length = marks[k + 1] - marks[k];
        if (length < 1e-7) continue;
        const auto parts = static_cast<std::size_t>(std::ceil(length / longest));
        const double step = length / static_cast<double>(parts);
        const bool is_film = marks[k + 1] <= lines.nose_m() ||
                             marks[k] >= lines.tail_m(); // a disc of film beyond the bare wood
        const bool is_relief =
            (skin.fore.tangent > 0.0 && k == 0) || (skin.aft.tangent > 0.0 && k + 2 == marks.size());
        const std::size_t order = is_film ? 2 : step > brief || is_relief ? 4 : 3;
        for (std::size_t i = 0; i < parts; ++i) {
            const double a = marks[k] + static_cast<double>(i) * step;
            const double b = i + 1 == parts ? marks[k + 1] : a + step;
            panels_.emplace_back(skin, a, b, lines.blunt_nose() && a == lines.nose_m(),
                                 lines.blunt_tail() && b == lines.tail_m(), order, *rims_);
            sums.add(panels_.back().whole(), 1.0);
        }
    }

    // Final adjustment: scale the sections to the ledger's volume, then shift the segment to the ledger's
    // centroid.
    const double grow = std::sqrt(coat.wanted.volume / sums.volume);
    sums = {};
    for (std::size_t k = first_panel; k < panels_.size(); ++k) {
        panels_[k].grow(grow);
        sums.add(panels_[k].whole(), 1.0);
    }
    const double shift_x = coat.wanted.moment.x / coat.wanted.volume - sums.x / sums.volume;
    const double shift_z = coat.wanted.moment.z / coat.wanted.volume - sums.z / sums.volume;
    for (std::size_t k = first_panel; k < panels_.size(); ++k)
        panels_[k].shift(shift_x, shift_z);
    skin.grow = grow;
    skin.shift_x_m = shift_x;
    skin.shift_z_m = shift_z;
}

void FloatingHull::add_openings(const shape::Body& body, std::span<const Line> lines,
                                const document::Document& document) {
    for (const Line& line : lines) {
        if (line.displaced_m3 == 0.0) continue;
        const auto item = static_cast<std::size_t>(line.item);
        switch (line.kind) {
        case Kind::wood:
            break;
        case Kind::coat: // on the walls of a flooded pocket: reduces the flooded volume
            if (line.pocket < 0) break;
            panels_.emplace_back(
                rims_->box(), line.at_m,
                pocket_half_size(document.pockets[static_cast<std::size_t>(line.pocket)], body, line), 1.0);
            break;
        case Kind::pocket_water:
            panels_.emplace_back(rims_->box(), line.at_m,
                                 pocket_half_size(document.pockets[item], body, line), -1.0);
            break;
        case Kind::hole_water:
            panels_.emplace_back(rims_->box(), line.at_m,
                                 column_half_size(document.holes[item].diameter_m, -line.displaced_m3), -1.0);
            break;
        case Kind::fill: // in an open hole it restores displacement
            panels_.emplace_back(rims_->box(), line.at_m,
                                 column_half_size(document.holes[item].diameter_m, line.displaced_m3), 1.0);
            break;
        case Kind::tail:
            panels_.emplace_back(rims_->box(), line.at_m, tail_half_size(*document.tail, line), 1.0);
            break;
        case Kind::hole_wood:
        case Kind::pocket_wood:
        case Kind::bore_wood:
        case Kind::cap:
        case Kind::glue:
        case Kind::hinge:
        case Kind::hanger:
        case Kind::part:
        case Kind::air:
            add_ball(line);
            break;
        }
    }
}

void FloatingHull::add_ball(const Line& line) {
    const double radius = std::cbrt(std::abs(line.displaced_m3) * 0.75 / std::numbers::pi);
    balls_.push_back({line.at_m, radius, line.displaced_m3 > 0.0 ? 1.0 : -1.0});
}

} // namespace evenfall::afloat
