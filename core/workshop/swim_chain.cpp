#include "workshop/swim_chain.hpp"

#include "body/fittings.hpp"
#include "body/hinge_place.hpp"
#include "body/tail_loft.hpp"
#include "ledger/fold.hpp"
#include "materials/solids.hpp"
#include "water/fall/added_mass.hpp"
#include "water/fall/drag_items.hpp"
#include "water/fall/hull.hpp"
#include "workshop/joint_answers.hpp"
#include "workshop/swim_limits.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace evenfall::swim {

namespace {

constexpr int slices_a_segment = 12;
constexpr int slices_of_fin = 8;
constexpr double pi = std::numbers::pi;

/// Where the line is tied: to the hanger on the nose, else to the foremost on the back, else to the nose.
void set_tie(const document::Document& document, const shape::Body& body, Held& held) {
    held.tie = document.hangers.size();
    held.tie_x_m = body.lines->nose_m();
    bool on_nose = false;
    for (const fittings::Fitting& f : fittings::fittings(document, body)) {
        if (f.kind != fittings::FittingKind::hanger || f.eyes_m.empty()) continue;
        const auto item = static_cast<std::size_t>(f.item);
        const bool nose = document.hangers[item].on == document::HangerOn::nose;
        const bool back = document.hangers[item].on == document::HangerOn::back;
        const bool is_first = held.tie == document.hangers.size();
        if (on_nose || !(nose || (back && (is_first || f.eyes_m[0].x < held.tie_x_m)))) continue;
        on_nose = nose;
        held.tie = item;
        held.tie_x_m = f.eyes_m[0].x;
    }
}

/// Added mass for motion to the side over that of slices each as if in a long bar: that of the ellipsoid of
/// the same length and the same squares of width and height.
double ends_to_the_side(const shape::Lines& lines) {
    double widths = 0.0, heights = 0.0;
    for (const fall::Strip& s : fall::strips(lines)) {
        widths += 0.25 * s.width_m * s.width_m * s.length_m;
        heights += 0.25 * s.chord_m * s.chord_m * s.length_m;
    }
    const double half_length = 0.5 * lines.length_m();
    const double half_width = std::sqrt(0.75 * widths / half_length);
    const double half_height = std::sqrt(0.75 * heights / half_length);
    return fall::ellipsoid_shares(half_length, half_height, half_width).heave * half_width / half_height;
}

/// Works a document's chain out, part by part.
class Builder {
public:
    Builder(const document::Document& document, const Evaluation& evaluation,
            const materials::WaterProperties& water)
        : document_(document), body_(evaluation.body), ledger_(evaluation.ledger), water_(water),
          hull_(fall::hull(body_)), ends_(ends_to_the_side(*body_.lines)) {
        for (const shape::Segment& s : body_.segments) {
            skin_m2_ += s.skin_m2;
            volume_m3_ += s.volume_m3;
        }
        // Of all the lure's skin; a slice has its share of that.
        skin_friction_ = 0.5 * water.density_kg_m3 * hull_.along_friction_m3_2 *
                         std::sqrt(water.viscosity_pa_s / water.density_kg_m3);
        chain_.water_kg_m3 = water.density_kg_m3;
        chain_.length_m = body_.lines->tail_m();
        chain_.segments.resize(body_.segments.size());
    }

    [[nodiscard]] Chain built(double tie_x_m, const joints::JointsAnswer& joints) {
        chain_.tie_x_m = tie_x_m;
        hinge_m_.push_back(tie_x_m);
        for (const joints::JointAnswer& j : joints.joints) {
            const document::Hinge& hinge = j.place.hinge;
            const bool pinned = hinge.kind == document::HingeKind::pinned;
            chain_.joints.push_back(
                {{j.swing_rad[0], j.swing_rad[1]}, 0.5 * (pinned ? hinge.pin_diameter_m : hinge.wire_m)});
            hinge_m_.push_back(j.place.pin.x_m);
        }
        for (std::size_t i = 0; i < chain_.segments.size(); ++i) {
            weigh(i);
            slice(i);
        }
        add_tails();
        add_hooks();
        for (std::size_t i = 0; i < chain_.segments.size(); ++i) {
            const bool is_last = i + 1 == chain_.segments.size();
            chain_.segments[i].length_m = (is_last ? chain_.length_m : hinge_m_[i + 1]) - hinge_m_[i];
        }
        return std::move(chain_);
    }

private:
    /// Masses of the ledger, and the water in what is flooded: it goes along.
    void weigh(std::size_t i) {
        ledger::Ledger own;
        for (ledger::Line line : ledger_) {
            if (static_cast<std::size_t>(line.segment) != i) continue;
            if (line.kind == ledger::Kind::pocket_water || line.kind == ledger::Kind::hole_water)
                line.mass_kg = -water_.density_kg_m3 * line.displaced_m3;
            own.push_back(line);
        }
        const ledger::Sum sum = ledger::sum_if(own, [](const ledger::Line&) { return true; });
        Segment& s = chain_.segments[i];
        s.mass_kg = sum.mass.kg;
        s.moment_kg_m = sum.mass_moment_kg_m.x - sum.mass.kg * hinge_m_[i];
        s.inertia_kg_m2 = ledger::inertia_about(own, Stage::rigged, {hinge_m_[i], 0.0, 0.0}).zz;
        s.surge_kg = water_.density_kg_m3 * hull_.surge_m3 * body_.segments[i].volume_m3 / volume_m3_;
        s.form_kg_m = 0.5 * water_.density_kg_m3 * hull_.along_pressure_m2 /
                      static_cast<double>(chain_.segments.size());
    }

    /// A section's added mass for motion to the side, a metre of length.
    [[nodiscard]] double added_kg_m(double height_m, double width_m, double share) const {
        return water_.density_kg_m3 * pi * 0.25 * height_m * height_m * ends_ *
               fall::section_added_mass(height_m / width_m, share);
    }
    [[nodiscard]] double cross_kg_m(double x_m, double length_m, double height_m, double width_m,
                                    double exponent) const {
        return 0.5 * water_.density_kg_m3 * height_m * length_m *
               fall::pressure_drag_coefficient({x_m, length_m, height_m, width_m, exponent});
    }

    /// From cut to cut: gaps count as body. The skin of the segment is shared out by width and height.
    void slice(std::size_t i) {
        const double from = i == 0 ? body_.lines->nose_m() : body_.joints[i - 1].at_m;
        const double to = i == body_.joints.size() ? body_.lines->tail_m() : body_.joints[i].at_m;
        const double step = (to - from) / slices_a_segment;
        double girths = 0.0;
        std::vector<Slice>& slices = chain_.segments[i].slices;
        for (int k = 0; k < slices_a_segment; ++k) {
            const double x = from + (k + 0.5) * step;
            const shape::Station station = body_.lines->at(x);
            const double height = 2.0 * station.half_height_m, width = 2.0 * station.half_width_m;
            if (!(height > 0.0 && width > 0.0)) continue;
            const double share = body_.lines->family().moments(station.parameter).area / 4.0;
            slices.push_back({x - hinge_m_[i], step, height, added_kg_m(height, width, share),
                              cross_kg_m(x, step, height, width, fall::equivalent_exponent(share)),
                              height + width});
            girths += height + width;
        }
        for (Slice& s : slices)
            s.skin *= skin_friction_ * body_.segments[i].skin_m2 / (skin_m2_ * girths);
    }

    /// Drawn soft tails by their lines, those weighed whole as the plate that the fall takes them for.
    void add_tails() {
        const double end = body_.lines->tail_m();
        if (document_.tail) {
            // The ledger has taken its shape before.
            const auto tail = tail::shaped(*document_.tail);
            const shape::Lines& lines = *tail->lines;
            const double root = document_.tail->x_m;
            add_fin(root + lines.nose_m(), root + lines.tail_m(),
                    [&](double x) { return lines.at(x - root); });
        }
        for (const ledger::Line& line : ledger_) {
            if (line.kind != ledger::Kind::part || !(line.at_m.x > end)) continue;
            const auto item = static_cast<std::size_t>(line.item);
            if (item >= document_.parts.size() || !materials::is_soft(document_.parts[item].material))
                continue;
            if (!(line.displaced_m3 > 0.0)) continue;
            const double side = fall::soft_plate_side_m(line.displaced_m3);
            const shape::Station plate{0.5 * fall::soft_plate_m, 0.5 * side};
            add_fin(line.at_m.x - 0.5 * side, line.at_m.x + 0.5 * side, [&](double) { return plate; });
        }
    }

    template <class Stations>
    void add_fin(double from, double to, const Stations& station_at) {
        const double end = body_.lines->tail_m();
        const double step = (to - from) / slices_of_fin;
        Segment& last = chain_.segments.back();
        for (int k = 0; k < slices_of_fin; ++k) {
            const double x = from + (k + 0.5) * step;
            const shape::Station fin = station_at(x);
            const double height = 2.0 * fin.half_height_m, thickness = 2.0 * fin.half_width_m;
            if (!(height > 0.0 && thickness > 0.0)) continue;
            Slice s{x - hinge_m_.back(),
                    step,
                    height,
                    water_.density_kg_m3 * pi * 0.25 * height * height * ends_,
                    0.0,
                    0.0,
                    true};
            double beyond = height;
            if (x < end) {
                const shape::Station station = body_.lines->at(x);
                const double share = body_.lines->family().moments(station.parameter).area / 4.0;
                s.wood_kg_m = added_kg_m(2.0 * station.half_height_m, 2.0 * station.half_width_m, share);
                beyond = std::max(0.0, height - 2.0 * station.half_height_m);
            }
            s.cross_kg_m = cross_kg_m(x, step, height, thickness, 2.0) * beyond / height;
            s.skin = skin_friction_ * 2.0 * beyond * step / skin_m2_;
            last.slices.push_back(s);
        }
        chain_.length_m = std::max(chain_.length_m, to);
        chain_.soft_tail = true;
    }

    void add_hooks() {
        for (const fall::DragItem& item : fall::drag_items(*body_.lines, document_, ledger_)) {
            if (item.is_tail && item.at_m.x > body_.lines->tail_m()) continue; // its slices have it
            const auto i = static_cast<std::size_t>(item.segment);
            chain_.segments[i].parts.push_back(
                {item.at_m.x - hinge_m_[i], 0.5 * water_.density_kg_m3 * item.cd_area_m2});
        }
    }

    const document::Document& document_;
    const shape::Body& body_;
    const ledger::Ledger& ledger_;
    const materials::WaterProperties& water_;
    fall::HydroBody hull_;
    double ends_ = 1.0;
    double skin_m2_ = 0.0, volume_m3_ = 0.0;
    double skin_friction_ = 0.0;  ///< [kg/m·(m/s)^½]
    std::vector<double> hinge_m_; ///< line tie, then pins, from the nose
    Chain chain_;
};

} // namespace

Outcome<Chain> chain_of(const document::Document& document, const Evaluation& evaluation) {
    const auto waters = waters_of(document);
    if (!waters) return waters.problems();
    const materials::WaterProperties& water = waters->fishing;
    const auto joints = joints::joint_answers(document, evaluation.body);
    if (!joints) return joints.problems();
    Held held;
    set_tie(document, evaluation.body, held);
    held.mass_kg = evaluation.answers.mass.kg;
    held.in_water_kg = evaluation.answers.in_water.kg;
    held.kinematic_m2_s = water.viscosity_pa_s / water.density_kg_m3;
    std::vector<Joint> swings;
    for (const joints::JointAnswer& j : joints->joints)
        swings.push_back({{j.swing_rad[0], j.swing_rad[1]}, 0.0});
    Problems beyond = beyond_limits(document, evaluation.body, swings, held);
    if (!beyond.empty()) return beyond;
    return Builder(document, evaluation, water).built(held.tie_x_m, *joints);
}

} // namespace evenfall::swim
