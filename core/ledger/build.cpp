#include "ledger/build.hpp"

#include "base/sentence.hpp"
#include "ledger/build_detail.hpp"
#include "materials/solids.hpp"
#include "materials/woods.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>

namespace evenfall::ledger {

namespace {

// Standard deviations over value, used where no reading gives better (common practice, no source).
/// Wood at the tail over wood at the head of one board: growth rings run out, sapwood begins.
constexpr double wood_gradient_spread = 0.02;
constexpr double part_mass_spread = 0.03;     // hardware from a packet, not weighed
constexpr double weighed_fill_spread = 0.005; // lead cut to weight on a scale that reads 0.02 g
constexpr double measured_fill_spread = 0.02; // rod cut to length
constexpr double cap_mass_spread = 0.10;
constexpr double weighed_wood_spread = 0.02;
constexpr double weighed_plastic_spread = 0.02;
constexpr double tail_size_spread =
    0.02; // a casting compared with its mould's drawing: shrinkage, incomplete filling
constexpr double moisture_sigma_percent = 1.5; // accuracy of a pin meter, or of a guess from the climate

/// Where a line of wood keeps its gradient.
constexpr std::size_t gradient = 2;

Variation spread(Cause cause, std::size_t group, double relative, bool moves_mass, bool moves_volume) {
    return {cause, static_cast<int>(group), relative, moves_mass, moves_volume};
}

Line water_line(Kind kind, std::size_t item, int segment, Stage stage, double volume_m3, const Vec3& at_m) {
    Line line;
    line.kind = kind;
    line.item = static_cast<int>(item);
    line.segment = segment;
    line.stage = stage;
    line.displaced_m3 = -volume_m3;
    line.at_m = at_m;
    return line;
}

/// Inertia of a vertical cylinder of given mass, cross-section and volume about its centroid.
Inertia cylinder(double mass_kg, double area_m2, double volume_m3) {
    if (area_m2 <= 0.0) return {};
    const double r2 = area_m2 / std::numbers::pi;
    const double h = volume_m3 / area_m2;
    const double across = mass_kg * (3.0 * r2 + h * h) / 12.0;
    return {across, across, 0.5 * mass_kg * r2, 0.0, 0.0, 0.0};
}

void append_segments(const LedgerInputs& w, Ledger& out) {
    for (std::size_t s = 0; s < w.body->segments.size(); ++s) {
        const shape::Segment& segment = w.body->segments[s];
        Line line = wood_line(w, Kind::wood, s, static_cast<int>(s), Stage::carved, segment.volume_m3,
                              segment.centroid_m);
        line.displaced_m3 = segment.volume_m3;
        line.own_kg_m2 = segment.inertia_m5 * w.wood_kg_m3;
        // Wood that is denser at one end has its own centre nearer to that end: ∫(x − x̄)² dV over length.
        const Inertia& i = segment.inertia_m5;
        line.spreads[gradient].aft_m = 0.5 * (i.yy + i.zz - i.xx) / segment.volume_m3 / w.carved.length_m;
        // The same thickness all round is a larger part of a slender segment.
        line.spreads[3] = spread(Cause::carved_size, 0, w.carved.relative, true, true);
        line.spreads[3].share = segment.skin_m2 / segment.volume_m3 * w.carved.volume_m3 / w.carved.skin_m2;
        if (w.body->segments.size() > 1) {
            line.spreads[4] = spread(
                Cause::carved_size, s + 1,
                relative_size(w.carved.within.segment_m, segment.skin_m2, segment.volume_m3), true, true);
        }
        out.push_back(line);
    }
}

Problems append_pockets(const LedgerInputs& w, const std::vector<shape::PocketPiece>& pieces,
                        RemovedWood& taken, Ledger& out) {
    Problems problems;
    auto piece = pieces.begin();
    for (std::size_t i = 0; i < w.document->pockets.size(); ++i) {
        const document::Pocket& p = w.document->pockets[i];
        const auto who = [&] {
            return "Pocket " + std::to_string(i + 1) + (p.name.empty() ? "" : " (" + p.name + ")");
        };
        const auto first = piece;
        for (; piece != pieces.end() && piece->pocket == static_cast<int>(i); ++piece) {
            const shape::BoxCut& cut = piece->cut;
            if (taken.removes_last_wood(piece->segment, cut.volume_m3)) {
                problems.push_back(
                    {ProblemCode::outside_segment, pointer("pockets", i, "x_from_mm"), "some wood left",
                     who() + " leaves no wood of segment " + std::to_string(piece->segment + 1) + "."});
            }
            out.push_back(wood_line(w, Kind::pocket_wood, i, piece->segment, Stage::drilled, -cut.volume_m3,
                                    cut.centroid_m));
            if (p.floods) {
                out.push_back(water_line(Kind::pocket_water, i, piece->segment, Stage::drilled, cut.volume_m3,
                                         cut.centroid_m));
            }
        }
        if (piece == first) {
            problems.push_back({ProblemCode::outside_segment, pointer("pockets", i, "x_from_mm"), "",
                                who() + " from " + length_text(p.x_from_m) + " to " + length_text(p.x_to_m) +
                                    " meets no wood."});
        }
    }
    return problems;
}

Problems append_parts(const LedgerInputs& w, RemovedWood& taken, Ledger& out) {
    Problems problems;
    for (std::size_t i = 0; i < w.document->parts.size(); ++i) {
        const document::Part& part = w.document->parts[i];
        const materials::Solid* solid = materials::find_solid(part.material);
        if (solid == nullptr) {
            problems.push_back(unknown_material(pointer("parts", i, "material"), part.material));
            continue;
        }
        const int last = static_cast<int>(w.body->segments.size()) - 1;
        const int segment =
            std::clamp(part.segment.value_or(shape::nearest_segment(*w.body, part.at_m.x)), 0, last);
        const double volume = part.mass_kg / solid->density_kg_m3.value;
        Line line;
        line.kind = Kind::part;
        line.item = static_cast<int>(i);
        line.segment = segment;
        line.stage = part.stage;
        line.mass_kg = part.mass_kg;
        line.displaced_m3 = (1.0 - part.embedded) * volume;
        line.at_m = part.at_m;
        const double relative =
            part.mass_sigma_kg && part.mass_kg > 0.0 ? *part.mass_sigma_kg / part.mass_kg : part_mass_spread;
        line.spreads[0] = spread(Cause::part_mass, i, relative, true, true);
        out.push_back(line);
        if (part.embedded > 0.0) {
            if (taken.removes_last_wood(segment, part.embedded * volume)) {
                problems.push_back(
                    {ProblemCode::does_not_fit, pointer("parts", i, "embedded_percent"), "some wood left",
                     "Part " + std::to_string(i + 1) + (part.name.empty() ? "" : " (" + part.name + ")") +
                         " takes the place of all the wood that is left of segment " +
                         std::to_string(segment + 1) + "."});
            }
            out.push_back(wood_line(w, Kind::bore_wood, i, segment, Stage::hardware, -part.embedded * volume,
                                    part.at_m));
        }
    }
    return problems;
}

Problems append_tail(const LedgerInputs& w, Ledger& out) {
    if (!w.tail) return {};
    const document::Tail& tail = *w.document->tail;
    const materials::Solid* solid = materials::find_solid(tail.material);
    if (solid == nullptr) return {unknown_material("/tail/material", tail.material)};
    const double density = tail::density_kg_m3(tail);
    const int segment = static_cast<int>(w.body->segments.size()) - 1;
    const auto append = [&](int item, double volume_m3, double displaced_m3, const Vec3& at_m,
                            const Inertia& own_m5) {
        Line line;
        line.kind = Kind::tail;
        line.item = item;
        line.segment = segment;
        line.stage = Stage::rigged;
        line.mass_kg = density * volume_m3;
        line.displaced_m3 = displaced_m3;
        line.at_m = at_m;
        line.own_kg_m2 = own_m5 * density;
        const double usual = tail.density_kg_m3 ? weighed_plastic_spread : solid->density_kg_m3.spread;
        line.spreads[0] = spread(Cause::tail, 0, tail.density_spread.value_or(usual), true, false);
        line.spreads[1] = spread(Cause::tail, 1, tail_size_spread, true, true);
        out.push_back(line);
    };
    const shape::Segment& tail_geometry = w.tail->body.segments[0];
    append(0, tail_geometry.volume_m3, tail_geometry.volume_m3,
           tail::to_lure_axes(tail, tail_geometry.centroid_m), tail_geometry.inertia_m5);
    if (!tail.tenon) return {};
    const document::Tenon& t = *tail.tenon;
    const double volume = t.length_m * t.thickness_m * t.height_m;
    const auto square = [](double side_m) { return side_m * side_m / 12.0; };
    const double x = volume * square(t.length_m), y = volume * square(t.thickness_m),
                 z = volume * square(t.height_m);
    append(1, volume, volume - w.tail->dry_m3, tail::to_lure_axes(tail, {-0.5 * t.length_m, 0.0, 0.0}),
           {y + z, x + z, x + y, 0.0, 0.0, 0.0});
    return {};
}

/// Air caught under water, from the sealed piece on, which is the first to go into the tub. It sits where the
/// flooded pockets have their middle; without one, where the wood has. No standard deviation: who knows of it
/// shakes it out.
void append_air(const LedgerInputs& w, Ledger& out) {
    if (!w.document->air_m3 || *w.document->air_m3 == 0.0) return;
    const auto middle_of = [&](Kind kind, auto volume_of) {
        Vec3 sum;
        double volume = 0.0;
        for (const Line& line : out) {
            if (line.kind != kind) continue;
            sum = sum + line.at_m * volume_of(line);
            volume += volume_of(line);
        }
        return volume > 0.0 ? std::optional(sum / volume) : std::nullopt;
    };
    Line line;
    line.kind = Kind::air;
    line.stage = Stage::sealed;
    line.displaced_m3 = *w.document->air_m3;
    const auto pockets = middle_of(Kind::pocket_water, [](const Line& l) { return -l.displaced_m3; });
    line.at_m = pockets ? *pockets : *middle_of(Kind::wood, [](const Line& l) { return l.displaced_m3; });
    line.segment = shape::nearest_segment(*w.body, line.at_m.x);
    out.push_back(line);
}

} // namespace

Line wood_line(const LedgerInputs& w, Kind kind, std::size_t item, int segment, Stage stage, double volume_m3,
               const Vec3& at_m) {
    Line line;
    line.kind = kind;
    line.item = static_cast<int>(item);
    line.segment = segment;
    line.stage = stage;
    line.mass_kg = w.wood_kg_m3 * volume_m3;
    line.at_m = at_m;
    line.spreads[0] = spread(Cause::wood_density, 0, w.wood_spread, true, false);
    if (w.moisture_spread > 0.0) line.spreads[1] = spread(Cause::moisture, 0, w.moisture_spread, true, false);
    line.spreads[gradient] = spread(Cause::wood_gradient, 0, wood_gradient_spread, true, false);
    line.spreads[gradient].share = (at_m.x - w.carved.centroid_x_m) / w.carved.length_m;
    return line;
}

bool RemovedWood::removes_last_wood(int segment, double volume_m3) {
    // Less than this share of a segment is rounding error, not wood.
    constexpr double least_left = 1e-3;
    const auto s = static_cast<std::size_t>(segment);
    const double limit = (1.0 - least_left) * body_.segments[s].volume_m3;
    const bool was_left = taken_m3_[s] < limit;
    taken_m3_[s] += volume_m3;
    return was_left && taken_m3_[s] >= limit;
}

Problem unknown_material(std::string path, const std::string& id) {
    return {ProblemCode::unknown_name, std::move(path), "", "“" + id + "” is not in the table of materials."};
}

namespace {

/// Applies the corrections from earlier readings to the lines from `first` on. Masses and volumes are
/// corrected nowhere else.
void correct(const LedgerInputs& w, std::size_t first, Ledger& out) {
    if (w.document->corrections.empty()) return;
    for (std::size_t i = first; i < out.size(); ++i) {
        Line& line = out[i];
        for (Variation& s : line.spreads) {
            for (const document::Correction& c : w.document->corrections) {
                if (s.cause == Cause::none || c.of != s.cause || document::group_of(c) != s.group) continue;
                const double by = line_factor(c.factor, s.share);
                if (s.moves_mass) {
                    line.mass_kg *= by;
                    line.mass_aft_m += s.aft_m * (c.factor - 1.0) / by;
                    line.own_kg_m2 = line.own_kg_m2 * by;
                }
                if (s.moves_volume) line.displaced_m3 *= by;
                // So that a further factor on this line is as one of both on the line before.
                s.share *= c.factor / by;
                s.aft_m *= c.factor / (by * by);
                if (c.spread) s.relative = *c.spread;
            }
        }
    }
}

void append_hole_uncorrected(const LedgerInputs& w, std::size_t index, const document::Hole& hole,
                             Ledger& out) {
    const holes::Bore& bore = w.bores[index];
    if (hole.depth_m <= 0.0 || bore.segment < 0) return;
    const holes::HoleContents c = holes::contents(hole, bore);
    const auto at = [&](const holes::HolePart& s) { return Vec3{bore.x_m, bore.y_m, s.z_m}; };

    Line wood =
        wood_line(w, Kind::hole_wood, index, bore.segment, Stage::drilled, -c.wood.volume_m3, at(c.wood));
    wood.own_kg_m2 = cylinder(wood.mass_kg, bore.area_m2, c.wood.volume_m3);
    out.push_back(wood);
    if (c.floods) {
        out.push_back(
            water_line(Kind::hole_water, index, bore.segment, Stage::drilled, c.wood.volume_m3, at(c.wood)));
    }
    if (c.fill_kg > 0.0) {
        Line fill;
        fill.kind = Kind::fill;
        fill.item = static_cast<int>(index);
        fill.segment = bore.segment;
        fill.stage = Stage::leaded;
        fill.mass_kg = c.fill_kg;
        // A capped hole already displaces its water with the body's outer surface; in an open hole the fill
        // restores its own displacement.
        fill.displaced_m3 = c.floods ? c.fill.volume_m3 : 0.0;
        fill.at_m = at(c.fill);
        fill.own_kg_m2 = cylinder(fill.mass_kg, bore.area_m2, c.fill.volume_m3);
        const bool weighed = hole.fill && hole.fill->mass_kg;
        fill.spreads[0] = spread(Cause::fill_mass, index,
                                 weighed ? weighed_fill_spread : measured_fill_spread, true, false);
        out.push_back(fill);
    }
    if (hole.cap && c.cap.volume_m3 > 0.0) {
        const materials::Solid* solid = materials::find_solid(hole.cap->material);
        Line cap;
        cap.kind = Kind::cap;
        cap.item = static_cast<int>(index);
        cap.segment = bore.segment;
        cap.stage = Stage::leaded;
        cap.mass_kg = solid != nullptr ? c.cap.volume_m3 * solid->density_kg_m3.value : 0.0;
        cap.at_m = at(c.cap);
        cap.spreads[0] = spread(Cause::cap_mass, index, cap_mass_spread, true, false);
        out.push_back(cap);
    }
}

} // namespace

void append_hole(const LedgerInputs& w, std::size_t index, const document::Hole& hole, Ledger& out) {
    const std::size_t first = out.size();
    append_hole_uncorrected(w, index, hole, out);
    correct(w, first, out);
}

namespace {

/// Relative change of density for one standard deviation of moisture, from the difference between both sides.
double moisture_spread(const materials::Wood& wood, double percent) {
    const double drier = std::max(0.0, percent - moisture_sigma_percent);
    const double wetter = std::min(30.0, percent + moisture_sigma_percent);
    const double per_percent =
        (materials::wood_density_kg_m3(wood, wetter) - materials::wood_density_kg_m3(wood, drier)) /
        (wetter - drier);
    return std::abs(per_percent) * moisture_sigma_percent / materials::wood_density_kg_m3(wood, percent);
}

} // namespace

Outcome<LedgerInputs> ledger_inputs(const document::Document& document, const shape::Body& body) {
    const materials::Wood* wood = materials::find_wood(document.wood.species);
    if (wood == nullptr && !document.wood.density_kg_m3) {
        return Problem{ProblemCode::unknown_name, "/wood/species", "",
                       "“" + document.wood.species +
                           "” is not in the table of woods; weigh your own and give its density."};
    }
    LedgerInputs w;
    w.document = &document;
    w.body = &body;
    w.carved = carved_size(document, body);
    if (document.wood.density_kg_m3) {
        w.wood_kg_m3 = *document.wood.density_kg_m3;
        w.wood_spread = document.wood.density_spread.value_or(weighed_wood_spread);
    } else {
        w.wood_kg_m3 = materials::wood_density_kg_m3(*wood, document.wood.moisture_percent);
        const double table = wood->sg_12 ? wood->sg_12->spread : wood->sg_green->spread;
        w.wood_spread = document.wood.density_spread.value_or(table);
        w.moisture_spread = moisture_spread(*wood, document.wood.moisture_percent);
    }
    w.bores.reserve(document.holes.size());
    for (const document::Hole& hole : document.holes)
        w.bores.push_back(holes::place(hole, body));
    if (document.tail) {
        auto tail_geometry = tail::tail_geometry(document, body);
        if (!tail_geometry) return tail_geometry.problems();
        w.tail = std::move(tail_geometry).value();
    }
    return w;
}

Outcome<Ledger> build(const LedgerInputs& w, const std::vector<shape::PocketPiece>& pockets) {
    Ledger ledger;
    ledger.reserve(w.body->segments.size() * (2 + w.document->coats.size()) + 4 * w.document->holes.size() +
                   4 * w.document->pockets.size() + 2 * w.document->parts.size());
    append_segments(w, ledger);
    Problems problems;
    for (std::size_t i = 0; i < w.document->holes.size(); ++i) {
        const document::Hole& hole = w.document->holes[i];
        if (hole.fill && materials::find_solid(hole.fill->material) == nullptr) {
            problems.push_back(unknown_material(pointer("holes", i, "fill/material"), hole.fill->material));
        }
        if (hole.cap && materials::find_solid(hole.cap->material) == nullptr) {
            problems.push_back(unknown_material(pointer("holes", i, "cap/material"), hole.cap->material));
        }
        append_hole_uncorrected(w, i, hole, ledger);
    }
    RemovedWood taken(*w.body);
    for (Problem& p : append_pockets(w, pockets, taken, ledger))
        problems.push_back(std::move(p));
    append_glue(w, ledger);
    for (Problem& p : append_fittings(w, taken, ledger))
        problems.push_back(std::move(p));
    for (Problem& p : append_parts(w, taken, ledger))
        problems.push_back(std::move(p));
    for (Problem& p : append_tail(w, ledger))
        problems.push_back(std::move(p));
    for (Problem& p : append_coats(w, pockets, ledger))
        problems.push_back(std::move(p));
    append_air(w, ledger);
    if (!problems.empty()) return problems;
    correct(w, 0, ledger);
    return ledger;
}

} // namespace evenfall::ledger
