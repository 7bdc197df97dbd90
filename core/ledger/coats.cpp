#include "base/sentence.hpp"
#include "body/pocket_surface.hpp"
#include "document/coat_traits.hpp"
#include "ledger/build_detail.hpp"
#include "materials/solids.hpp"

#include <algorithm>
#include <numbers>
#include <string>

namespace evenfall::ledger {

namespace {

constexpr double coat_spread =
    0.20; // coat thickness by brush, standard deviation over value (common practice, no source)

/// One pocket in one segment, and its free volume.
struct PocketRoom {
    int pocket = 0;
    int segment = 0;
    bool floods = true;
    double room_m3 = 0.0; ///< volume left by earlier films
    const shape::PocketSurface& surface;
};

std::vector<PocketRoom> rooms(const document::Document& document,
                              const std::vector<shape::PocketPiece>& pockets) {
    std::vector<PocketRoom> out;
    out.reserve(pockets.size());
    for (const shape::PocketPiece& p : pockets) {
        const bool floods = document.pockets[static_cast<std::size_t>(p.pocket)].floods;
        out.push_back({p.pocket, p.segment, floods, p.cut.volume_m3, p.surface});
    }
    return out;
}

struct CoatedSurface {
    double area_m2 = 0.0;
    double curvature_m = 0.0;
    Vec3 centroid_m;
    bool closed = false;
};

CoatedSurface coated_surface(const LedgerInputs& w, int index, const document::Coat& coat,
                             const std::vector<PocketRoom>& openings) {
    const shape::Segment& segment = w.body->segments[static_cast<std::size_t>(index)];
    CoatedSurface surface;
    Vec3 moment;
    double whole = segment.skin_m2;
    if (coat.on_skin) {
        surface.area_m2 += segment.skin_m2;
        moment += segment.skin_m2 * segment.skin_centroid_m;
    }
    for (const shape::Face& face : segment.faces) {
        whole += face.area_m2;
        if (!coat.on_joint_faces) continue;
        surface.area_m2 += face.area_m2;
        moment += face.area_m2 * face.centroid_m;
    }
    if (coat.on_pockets) {
        const auto take_off = [&](const shape::Patch& mouth) {
            surface.area_m2 = std::max(0.0, surface.area_m2 - mouth.area_m2);
            moment = moment - mouth.moment_m3;
        };
        for (const PocketRoom& o : openings) {
            if (o.segment != index) continue;
            if (coat.on_skin) take_off(o.surface.skin);
            if (coat.on_joint_faces) take_off(o.surface.faces);
        }
    }
    if (surface.area_m2 > 0.0) surface.centroid_m = moment / surface.area_m2;
    surface.closed = coat.on_skin && coat.on_joint_faces;
    surface.curvature_m = whole > 0.0 ? segment.curvature_m * surface.area_m2 / whole : 0.0;
    return surface;
}

/// Volume of a film of thickness t on the walls of a box, with t² shared where two walls meet: S·t − (length
/// of inner edges)·t². Limited to the free volume.
double film_in(const PocketRoom& o, double thickness_m) {
    const double film =
        o.surface.wall.area_m2 * thickness_m - o.surface.inner_edge_m * thickness_m * thickness_m;
    return std::clamp(film, 0.0, o.room_m3);
}

/// All lines of one coat.
class CoatLines {
public:
    CoatLines(const LedgerInputs& w, std::size_t index, const materials::Solid& solid,
              std::vector<PocketRoom>& openings)
        : w_(w), index_(index), coat_(w.document->coats[index]), solid_(solid), openings_(openings) {
        for (int s = 0; s < static_cast<int>(w.body->segments.size()); ++s) {
            outside_.push_back(coated_surface(w, s, coat_, openings));
            total_m2_ += outside_.back().area_m2;
        }
        if (!coat_.on_pockets) return;
        for (const PocketRoom& o : openings)
            total_m2_ += o.surface.wall.area_m2;
    }

    [[nodiscard]] double total_m2() const { return total_m2_; }

    void append(Ledger& out) const {
        for (std::size_t s = 0; s < outside_.size(); ++s)
            append_outside(static_cast<int>(s), out);
        if (!coat_.on_pockets) return;
        for (PocketRoom& o : openings_)
            append_inside(o, out);
    }

private:
    [[nodiscard]] Variation spread(bool moves_volume) const {
        return {Cause::coat_amount, static_cast<int>(index_), coat_.spread.value_or(coat_spread), true,
                moves_volume};
    }

    [[nodiscard]] bool takes_room() const { return traits_of(coat_.kind).takes_room; }

    [[nodiscard]] Line line_at(int segment, const Vec3& at_m) const {
        Line line;
        line.kind = Kind::coat;
        line.item = static_cast<int>(index_);
        line.segment = segment;
        line.stage = coat_.stage;
        line.at_m = at_m;
        return line;
    }

    void append_outside(int segment_index, Ledger& out) const {
        const shape::Segment& segment = w_.body->segments[static_cast<std::size_t>(segment_index)];
        const CoatedSurface& surface = outside_[static_cast<std::size_t>(segment_index)];
        if (surface.area_m2 <= 0.0) return;
        Line line = line_at(segment_index, surface.centroid_m);
        double volume = 0.0;
        if (coat_.mass_kg) {
            line.mass_kg = *coat_.mass_kg * surface.area_m2 / total_m2_;
            volume = line.mass_kg / solid_.density_kg_m3.value;
        } else {
            // Steiner (1840): a film of thickness t on a convex body adds S·t + M·t² + 4/3·π·t³.
            const double t = coat_.thickness_m.value_or(0.0);
            volume = surface.area_m2 * t + surface.curvature_m * t * t;
            if (surface.closed) volume += 4.0 / 3.0 * std::numbers::pi * t * t * t;
            line.mass_kg = volume * solid_.density_kg_m3.value;
        }
        if (takes_room()) line.displaced_m3 = volume;
        // A thin shell on a form has about 5/3 of the solid's radius of gyration squared (exact on a sphere).
        if (segment.volume_m3 > 0.0)
            line.own_kg_m2 = segment.inertia_m5 * (5.0 / 3.0 * line.mass_kg / segment.volume_m3);
        line.spreads[0] = spread(takes_room());
        out.push_back(line);
    }

    /// In a pocket that floods, a film displaces water; in one that stays dry it only adds mass. Its own
    /// inertia is negligible and left out.
    void append_inside(PocketRoom& o, Ledger& out) const {
        if (o.surface.wall.area_m2 <= 0.0) return;
        Line line = line_at(o.segment, o.surface.wall.centroid_m());
        line.pocket = o.pocket;
        double volume = 0.0;
        if (coat_.mass_kg) {
            line.mass_kg = *coat_.mass_kg * o.surface.wall.area_m2 / total_m2_;
            volume = std::min(line.mass_kg / solid_.density_kg_m3.value, o.room_m3);
        } else {
            volume = film_in(o, coat_.thickness_m.value_or(0.0));
            line.mass_kg = volume * solid_.density_kg_m3.value;
        }
        if (takes_room()) o.room_m3 -= volume;
        const bool displaces = takes_room() && o.floods;
        if (displaces) line.displaced_m3 = volume;
        line.spreads[0] = spread(displaces);
        out.push_back(line);
    }

    const LedgerInputs& w_;
    std::size_t index_;
    const document::Coat& coat_;
    const materials::Solid& solid_;
    std::vector<PocketRoom>& openings_;
    std::vector<CoatedSurface> outside_;
    double total_m2_ = 0.0;
};

std::string nowhere_text(const document::Coat& coat) {
    if (!coat.on_joint_faces) return " goes into the pockets alone, and there is no pocket in the wood.";
    if (!coat.on_pockets) return " goes onto the joint faces alone, and the lure has no joint.";
    return " goes onto joint faces and into pockets alone, and the lure has neither.";
}

} // namespace

Problems append_coats(const LedgerInputs& w, const std::vector<shape::PocketPiece>& pockets, Ledger& out) {
    Problems problems;
    std::vector<PocketRoom> walls = rooms(*w.document, pockets);
    for (std::size_t i = 0; i < w.document->coats.size(); ++i) {
        const document::Coat& coat = w.document->coats[i];
        const materials::Solid* solid = materials::find_solid(coat.material);
        if (solid == nullptr) {
            problems.push_back(unknown_material(pointer("coats", i, "material"), coat.material));
            continue;
        }
        const CoatLines lines(w, i, *solid, walls);
        // A mass needs a surface; a thickness on no surface adds nothing.
        if (lines.total_m2() <= 0.0 && (coat.on_pockets || coat.mass_kg.value_or(0.0) > 0.0)) {
            problems.push_back({ProblemCode::missing_key, pointer("coats", i, "surfaces"),
                                "a surface that is there",
                                "Coat " + std::to_string(i + 1) + nowhere_text(coat)});
            continue;
        }
        lines.append(out);
    }
    return problems;
}

} // namespace evenfall::ledger
