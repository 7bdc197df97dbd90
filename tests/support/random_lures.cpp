#include "support/random_lures.hpp"

#include "base/trade.hpp"
#include "bench/uncertainty/random.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::support {

namespace {

using document::Document;

/// Makes the parts of one random lure in the order of the document.
class Maker {
public:
    Maker(std::uint64_t seed, std::uint64_t draw) : random_(seed, draw) {}

    Document lure() {
        length_ = between(0.07, 0.25);
        height_ = length_ * between(0.14, 0.28);
        width_ = height_ * between(0.4, 1.1);
        wood_and_water();
        shape();
        joints();
        for (std::size_t s = 0; s < d_.segment_names.size(); ++s)
            holes(s);
        if (chance(0.4)) tail_slot();
        parts();
        coats();
        if (chance(0.8)) wood_that_holes_can_sink();
        targets();
        learnt();
        return d_;
    }

private:
    double between(double low, double high) { return low + (high - low) * random_.uniform(); }
    bool chance(double p) { return random_.uniform() < p; }
    int whole(int low, int high) {
        return low + static_cast<int>(random_.next() % static_cast<std::uint64_t>(high - low + 1));
    }
    template <std::size_t N>
    const char* one_of(const std::array<const char*, N>& words) {
        return words[static_cast<std::size_t>(whole(0, static_cast<int>(N) - 1))];
    }

    void wood_and_water() {
        d_.name = "Drawn by chance";
        d_.wood.species = one_of(std::array{"basswood", "yellow_poplar", "black_walnut", "western_redcedar",
                                            "balsa", "hard_maple"});
        d_.wood.moisture_percent = between(0.0, 20.0);
        if (chance(0.4)) d_.wood.density_kg_m3 = between(150.0, 800.0);
        if (chance(0.3)) d_.wood.density_spread = between(0.01, 0.15);
        d_.water = water();
        d_.tub = water();
    }

    document::Water water() {
        document::Water w;
        w.temperature_c = between(1.0, 35.0);
        if (chance(0.4)) w.salinity_g_kg = between(0.0, 38.0);
        return w;
    }

    /// Relative thickness of the drawing at this share of the length: thin at nose and tail.
    static double section_point_at(double share) {
        const double fore = std::min(1.0, 0.35 + 2.6 * share);
        const double aft = std::min(1.0, 0.3 + 1.4 * (1.0 - share));
        return fore * aft;
    }

    document::CurvePoints line(double size) {
        document::CurvePoints out;
        const int points = whole(4, 9);
        for (int k = 0; k < points; ++k) {
            const double share = static_cast<double>(k) / (points - 1);
            const double off = k == 0 || k == points - 1 ? 0.0 : between(-0.3, 0.3) / (points - 1);
            const double x = k == points - 1 ? length_ : length_ * (share + off);
            out.push_back({x, size * section_point_at(share + off) * between(0.9, 1.1)});
        }
        return out;
    }

    void shape() {
        const double back = between(0.4, 0.6);
        d_.shape.back = line(height_ * back);
        d_.shape.belly = line(-height_ * (1.0 - back));
        d_.shape.half_width = line(0.5 * width_);
        document::Section& section = d_.shape.section;
        const int kind = whole(0, 3);
        if (kind < 2) {
            section.curve() = {{0.0, between(1.8, 4.0)}};
            if (kind == 1) section.curve().push_back({length_, between(1.8, 4.0)});
        } else if (kind == 2) {
            section.kind = document::SectionKind::chamfered;
            section.curve() = {{0.0, between(0.1, 0.8)}};
        } else {
            section.kind = document::SectionKind::drawn;
            const double low = between(-0.9, -0.7);
            const double high = between(0.6, 0.9);
            section.half_outline = {{0.0, -1.0}, {0.5, low},  {1.0, between(-0.3, 0.0)},
                                    {0.9, 0.4},  {0.5, high}, {0.0, 1.0}};
        }
        if (chance(0.15)) {
            document::Measured m;
            m.x_m = length_ * between(0.3, 0.7);
            m.width_m = width_ * section_point_at(m.x_m / length_) * between(0.97, 1.03);
            d_.shape.measured.push_back(m);
        }
    }

    void joints() {
        const int count = whole(0, 4);
        for (int k = 0; k < count; ++k) {
            document::Joint j;
            j.at_m = length_ * (k + 1.0 + between(-0.2, 0.2)) / (count + 1.0);
            j.gap_m = between(0.0012, 0.004);
            j.relief_fore_rad = between(0.0, 20.0) * units::degree_rad;
            j.relief_aft_rad = between(0.0, 20.0) * units::degree_rad;
            if (chance(0.6)) hinge(j);
            d_.joints.push_back(j);
        }
        for (int s = 0; s <= count; ++s)
            d_.segment_names.push_back("Segment " + std::to_string(s + 1));
    }

    void hinge(document::Joint& joint) {
        document::Hinge h;
        h.kind = chance(0.8) ? document::HingeKind::pinned : document::HingeKind::linked;
        h.eyes_on = chance(0.7) ? document::EyesOn::fore : document::EyesOn::aft;
        const double side = h.eyes_on == document::EyesOn::fore ? 1.0 : -1.0;
        h.pin_aft_m = side * between(0.0025, 0.004);
        if (chance(0.2)) h.pin_off_m = between(-0.0005, 0.0005);
        h.wire_m = between(0.0006, 0.001);
        h.eye_inside_m = between(0.0016, 0.0022);
        h.glued_m = between(0.008, 0.02);
        joint.hinge = h;
        if (chance(0.3)) return;
        const double half_height = 0.5 * height_ * section_point_at(joint.at_m / length_);
        for (const double level : {0.35, -0.35}) {
            document::Pocket p;
            p.name = "Eye pocket";
            const double from = joint.at_m + side * 0.0006;
            const double to = joint.at_m + side * (std::abs(h.pin_aft_m) + 0.002);
            p.x_from_m = std::min(from, to);
            p.x_to_m = std::max(from, to);
            p.width_m = between(0.004, 0.006);
            p.z_from_m = level * half_height - 0.0015;
            p.z_to_m = level * half_height + 0.0015;
            p.floods = chance(0.8);
            d_.pockets.push_back(p);
        }
    }

    void holes(std::size_t segment) {
        const double from = segment == 0 ? 0.08 * length_ : d_.joints[segment - 1].at_m + 0.012;
        const double to = segment == d_.joints.size() ? 0.9 * length_ : d_.joints[segment].at_m - 0.012;
        const int count = segment == 0 ? whole(1, 3) : whole(0, 3);
        const double step = (to - from) / 3.0;
        if (step < 0.004) return;
        for (int k = 0; k < count; ++k) {
            document::Hole h;
            h.x_m = from + step * (k + between(0.4, 0.6));
            const double full = section_point_at(h.x_m / length_);
            h.diameter_m = std::clamp(std::min(0.45 * width_ * full, 0.5 * step), 0.002, 0.012);
            h.from = chance(0.8) ? document::HoleFrom::belly : document::HoleFrom::back;
            h.end = chance(0.3) ? document::HoleEnd::point_118 : document::HoleEnd::flat;
            h.wall_m = between(0.001, 0.002);
            h.max_depth_m = height_ * full * between(0.5, 0.7);
            if (chance(0.3)) h.y_m = width_ * full * between(-0.06, 0.06);
            if (chance(0.2))
                h.cap.reset();
            else
                h.cap = document::Cap{chance(0.7) ? "ca_soda" : "dowel", between(0.001, 0.002)};
            const int use = whole(0, 9);
            h.use = use < 7   ? document::HoleUse::ballast
                    : use < 9 ? document::HoleUse::drilled
                              : document::HoleUse::fixed;
            if (use > 2) h.depth_m = h.max_depth_m * between(0.4, 0.8);
            fill(h);
            h.name = std::to_string(d_.holes.size() + 1);
            d_.holes.push_back(h);
        }
    }

    void fill(document::Hole& hole) {
        document::Fill f;
        f.material =
            one_of(std::array{"lead", "lead", "lead_antimony", "tungsten", "tin", "bismuth", "brass"});
        const double room = hole.depth_m - (hole.cap ? hole.cap->length_m : 0.0);
        if (chance(0.3)) f.stock_diameter_m = hole.diameter_m * between(0.7, 0.95);
        if (hole.depth_m > 0.0 && chance(0.9))
            f.length_m = std::max(0.0, room) * between(0.2, 0.9);
        else
            f.mass_kg = 0.0;
        hole.fill = f;
    }

    /// Wood heavy enough that lead in a fair share of the holes sinks the lure, by a rough estimate of its
    /// volume; otherwise few plans could be met.
    void wood_that_holes_can_sink() {
        double share = 0.0;
        for (int k = 0; k < 20; ++k)
            share += section_point_at((k + 0.5) / 20.0) * section_point_at((k + 0.5) / 20.0) / 20.0;
        const double body_m3 = 0.8 * share * length_ * height_ * width_;
        double room_m3 = 0.0;
        for (const document::Hole& h : d_.holes) {
            if (h.use != document::HoleUse::fixed)
                room_m3 += 0.6 * h.diameter_m * h.diameter_m * std::max(0.0, h.max_depth_m - 0.002);
        }
        const double lifted_kg = between(0.3, 0.8) * 10000.0 * room_m3;
        d_.wood.density_kg_m3 = std::clamp(950.0 - lifted_kg / body_m3, 150.0, 900.0);
    }

    void tail_slot() {
        document::Pocket p;
        p.name = "Tail slot";
        p.x_from_m = 0.94 * length_;
        p.x_to_m = length_;
        p.width_m = between(0.001, 0.0018);
        p.floods = chance(0.7);
        d_.pockets.push_back(p);
    }

    void parts() {
        const int count = whole(1, 7);
        for (int k = 0; k < count; ++k) {
            document::Part p;
            p.name = "Part " + std::to_string(k + 1);
            p.stage = chance(0.5) ? Stage::hardware : Stage::rigged;
            p.material = one_of(std::array{"stainless", "steel", "brass", "glass", "nylon", "plastisol",
                                           "silicone", "tungsten"});
            p.mass_kg = between(0.0002, 0.003);
            p.at_m.x = length_ * (chance(0.1) ? 1.05 : between(0.0, 0.85));
            p.at_m.y = chance(0.4) ? width_ * between(-0.5, 0.5) : 0.0;
            p.at_m.z = height_ * between(-0.8, 0.1);
            if (p.stage == Stage::hardware) p.embedded = between(0.0, 0.9);
            if (chance(0.3)) p.segment = whole(0, static_cast<int>(d_.segment_names.size()) - 1);
            if (chance(0.2)) p.reach_m = between(0.01, 0.025);
            if (chance(0.3)) p.mass_sigma_kg = p.mass_kg * between(0.01, 0.1);
            d_.parts.push_back(p);
        }
    }

    void coats() {
        const int count = whole(0, 4);
        Stage stage = Stage::sealed;
        for (int k = 0; k < count; ++k) {
            document::Coat c;
            c.name = "Coat " + std::to_string(k + 1);
            if (stage == Stage::sealed && chance(0.4))
                stage = Stage::painted;
            else if (stage == Stage::painted && chance(0.4))
                stage = Stage::clear_coated;
            c.stage = stage;
            c.kind = chance(0.25) ? document::CoatKind::soaks : document::CoatKind::film;
            c.material = one_of(std::array{"epoxy", "ca", "polyurethane", "acrylic_paint"});
            if (c.kind == document::CoatKind::soaks || chance(0.3))
                c.mass_kg = between(0.0001, 0.0012);
            else
                c.thickness_m = between(0.00002, 0.0006);
            if (chance(0.3)) c.spread = between(0.05, 0.4);
            c.on_joint_faces = chance(0.7);
            c.on_pockets = !d_.pockets.empty() && chance(0.2);
            d_.coats.push_back(c);
        }
    }

    void targets() {
        document::Targets& t = d_.targets;
        t.by = chance(0.5) ? document::TargetBy::fall : document::TargetBy::in_water;
        t.fall_m_s = between(0.05, 0.3);
        t.in_water_kg = between(-0.002, 0.005);
        t.pitch_rad = between(-8.0, 4.0) * units::degree_rad;
    }

    void learnt() {
        if (chance(0.2))
            d_.corrections.push_back(
                {document::Cause::wood_density, {}, between(0.9, 1.1), between(0.01, 0.05)});
        if (chance(0.1)) d_.corrections.push_back({document::Cause::drag, {}, between(0.9, 1.1), {}});
        if (!d_.parts.empty() && chance(0.1))
            d_.corrections.push_back({document::Cause::part_mass, 0, between(0.95, 1.05), {}});
    }

    bench::Random random_;
    Document d_;
    double length_ = 0.0;
    double height_ = 0.0;
    double width_ = 0.0;
};

} // namespace

document::Document random_document(std::uint64_t seed, std::uint64_t draw) {
    return Maker(seed, draw).lure();
}

RandomLure RandomLures::next() {
    while (true) {
        const std::uint64_t draw = draw_++;
        document::Document document = random_document(seed_, draw);
        auto evaluation = evaluate(document);
        if (evaluation.ok()) return {seed_, draw, std::move(document), std::move(evaluation).value()};
    }
}

} // namespace evenfall::support
