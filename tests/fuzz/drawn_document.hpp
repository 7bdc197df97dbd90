#pragma once

// Bytes → a document: mostly one that could be a lure, at times one that lies just beside a limit. All lists,
// sections, hinges, fills, pockets, coats, readings and corrections. Limits here are those of the field table
// and of the drawing.

#include "base/trade.hpp"
#include "document/field_table.hpp"
#include "fuzz/bytes.hpp"
#include "materials/solids.hpp"
#include "materials/woods.hpp"

#include <algorithm>
#include <string>
#include <vector>

namespace evenfall::fuzz {

class DrawnDocument {
public:
    explicit DrawnDocument(Bytes& bytes) : b_(bytes) {}

    document::Document draw() {
        document::Document d;
        d.name = b_.text(8, document::max_text);
        d.note = b_.once_in(4) ? b_.text(20, document::max_text) : "";
        wood(d.wood);
        water(d.water);
        if (b_.yes())
            d.tub = d.water;
        else
            water(d.tub);
        length_m_ = mm(b_.usual(60, 250, 20, 600));
        shape(d.shape);
        joints(d.joints);
        for (std::size_t left = d.joints.size() + 1 + (b_.astray() && b_.once_in(16) ? 1 : 0); left > 0;
             --left)
            d.segment_names.push_back(b_.text(3, 60));
        list(d.holes, 6, document::max_holes, [&] { return hole(); });
        list(d.pockets, 2, document::max_pockets, [&] { return pocket(); });
        list(d.parts, 4, document::max_hardware, [&] { return part(d.joints.size()); });
        list(d.coats, 4, document::max_coats, [&] { return coat(); });
        targets(d.targets);
        list(d.log, 3, document::max_readings, [&] { return reading(d.joints.size()); });
        list(d.corrections, 2, document::max_corrections, [&] { return correction(d); });
        if (b_.once_in(4)) d.board = board();
        d.air_m3 = maybe([&] { return units::m3_from_cm3(b_.usual(0.05, 0.5, 0, 100)); });
        for (document::Joint& joint : d.joints)
            if (joint.hinge) weigh(*joint.hinge);
        list(d.hangers, 3, document::max_hangers, [&] { return hanger(); });
        return d;
    }

    /// Any reading of a lure.
    document::Reading draw_reading(const document::Document& lure) {
        if (!lure.shape.back.empty()) length_m_ = lure.shape.back.back().x_m;
        return reading(lure.joints.size());
    }

private:
    static double mm(double trade) { return units::m_from_mm(trade); }
    static double gram(double trade) { return units::kg_from_g(trade); }
    static double degree(double trade) { return units::rad_from_deg(trade); }

    /// Some entries, and sometimes the last one as often as may be: long lists from few bytes.
    template <class T, class Make>
    void list(std::vector<T>& out, std::size_t few, std::size_t most, const Make& make) {
        for (std::size_t left = b_.count(few, most); left > 0; --left)
            out.push_back(make());
        if (!out.empty() && out.size() < most && b_.once_in(64)) out.resize(most, T(out.back()));
    }

    template <class Make>
    auto maybe(const Make& make) -> std::optional<decltype(make())> {
        if (!b_.once_in(3)) return std::nullopt;
        return make();
    }

    std::string material(materials::Use use) {
        std::vector<std::string_view> ids;
        for (const materials::Solid& solid : materials::solids()) {
            if (solid.serves(use)) ids.push_back(solid.id);
        }
        if (b_.astray() && b_.once_in(16)) return b_.text(6, 60);
        return std::string(ids[b_.below(ids.size())]);
    }

    void wood(document::Wood& w) {
        const auto woods = materials::woods();
        w.species = std::string(woods[b_.below(woods.size())].id);
        if (b_.astray() && b_.once_in(16)) w.species = b_.text(6, 60);
        w.moisture_percent = b_.usual(6, 14, 0, 30);
        w.density_kg_m3 = maybe([&] { return b_.usual(150, 900, 50, 1500); });
        w.density_spread = maybe([&] { return b_.usual(0.01, 0.15, 0, 0.5); });
    }

    void water(document::Water& w) {
        w.temperature_c = b_.number(0, 40);
        w.salinity_g_kg = b_.number(0, 40);
    }

    /// Stations from nose to tail.
    std::vector<double> stations(std::size_t count) {
        std::vector<double> x(count, 0.0);
        for (std::size_t i = 1; i < count; ++i)
            x[i] = x[i - 1] + 4.0 + b_.byte();
        const double last = count > 1 ? x.back() : 1.0;
        for (double& value : x)
            value *= length_m_ / last;
        if (count > 1) x.back() = length_m_;
        if (b_.astray() && count > 2 && b_.once_in(8)) x[1 + b_.below(count - 1)] = mm(b_.number(0, 1000));
        return x;
    }

    template <class Value>
    document::CurvePoints curve(std::size_t least, const Value& value) {
        document::CurvePoints out;
        for (const double x : stations(std::min(least + b_.count(6, document::max_curve_points - least),
                                                document::max_curve_points + 1)))
            out.push_back({x, value()});
        return out;
    }

    void shape(document::Shape& s) {
        const double height_mm = b_.usual(6, 30, 0.5, 150);
        const double width_mm = b_.usual(3, 15, 0.5, 120);
        const double lift_mm = b_.once_in(8) ? b_.number(-100, 100) : 0.0;
        s.back = curve(2, [&] {
            return mm(lift_mm + (b_.once_in(16) ? b_.number(0, 0.01) : height_mm * (0.05 + b_.share())));
        });
        s.belly = curve(2, [&] {
            return mm(lift_mm - (b_.once_in(16) ? b_.number(0, 0.01) : height_mm * (0.05 + b_.share())));
        });
        s.half_width =
            curve(2, [&] { return mm(b_.once_in(16) ? b_.number(0, 120) : width_mm * (0.02 + b_.share())); });
        section(s.section);
        s.carving = b_.one_of(document::Carving::rough);
        if (b_.once_in(4)) {
            for (const double x : stations(b_.count(4, document::max_measured))) {
                document::Measured m;
                m.x_m = x;
                if (b_.yes()) m.width_m = mm(b_.usual(2 * width_mm * 0.5, 2 * width_mm, 0.1, 600));
                if (b_.yes()) m.height_m = mm(b_.usual(2 * height_mm * 0.5, 2 * height_mm, 0.1, 600));
                s.measured.push_back(m);
            }
        }
    }

    void section(document::Section& s) {
        s.kind = b_.one_of(document::SectionKind::drawn);
        const bool chamfered = s.kind == document::SectionKind::chamfered;
        s.curve() = curve(1, [&] { return chamfered ? b_.number(0, 1) : b_.usual(1.8, 4, 1.2, 12); });
        if (s.kind != document::SectionKind::drawn) return;
        // Out to y = 1 once, then in; z never falls.
        const std::size_t out = 1 + b_.count(4, 30);
        const std::size_t in = 1 + b_.count(4, 30);
        std::vector<double> z{0.0};
        for (std::size_t i = 0; i < out + in; ++i)
            z.push_back(z.back() + (b_.once_in(16) ? 0.0 : 1.0 + b_.byte()));
        std::vector<double> y;
        for (std::size_t i = 0; i < out - 1; ++i)
            y.push_back(b_.share());
        std::sort(y.begin(), y.end());
        y.push_back(1.0);
        std::vector<double> back;
        for (std::size_t i = 0; i < in - 1; ++i)
            back.push_back(b_.share());
        std::sort(back.rbegin(), back.rend());
        y.insert(y.end(), back.begin(), back.end());
        s.half_outline.push_back({0.0, -1.0});
        for (std::size_t i = 0; i < y.size(); ++i)
            s.half_outline.push_back({y[i], z.back() > 0.0 ? -1.0 + 2.0 * z[i + 1] / z.back() : 0.0});
        s.half_outline.push_back({0.0, 1.0});
        if (b_.astray() && b_.once_in(4))
            s.half_outline[b_.below(s.half_outline.size())] = {b_.number(0, 1), b_.number(-1, 1)};
    }

    void joints(std::vector<document::Joint>& out) {
        const auto places = stations(2 + b_.count(4, document::max_joints));
        for (std::size_t i = 1; i + 1 < places.size(); ++i) {
            document::Joint j;
            j.at_m = places[i];
            j.gap_m = mm(b_.usual(0.5, 3, 0.2, 20));
            j.relief_fore_rad = degree(b_.usual(0, 25, 0, 60));
            j.relief_aft_rad = degree(b_.usual(0, 25, 0, 60));
            j.hinge = maybe([&] { return hinge(); });
            out.push_back(j);
        }
    }

    document::Hinge hinge() {
        document::Hinge h;
        h.kind = b_.one_of(document::HingeKind::linked);
        h.eyes_on = b_.one_of(document::EyesOn::aft);
        h.pin_aft_m = mm(b_.usual(-3, 3, -30, 30));
        h.pin_off_m = mm(b_.usual(-0.5, 0.5, -20, 20));
        h.pin_diameter_m = mm(b_.usual(0.8, 2, 0.3, 6));
        h.temper = b_.one_of(document::WireTemper::soft);
        h.wire_m = mm(b_.usual(0.5, 1.3, 0.2, 3));
        h.eye_inside_m = mm(b_.usual(1.2, 4, 0.5, 30));
        h.turns = b_.usual(3, 10, 0, 40);
        h.glued_m = mm(b_.usual(5, 30, 0, 100));
        h.upper_z_m = maybe([&] { return mm(b_.usual(0, 15, -300, 300)); });
        h.lower_z_m = maybe([&] { return mm(b_.usual(-15, 0, -300, 300)); });
        return h;
    }

    void weigh(document::Hinge& h) {
        h.weighs = b_.yes();
        h.glue = b_.one_of(document::HingeGlue::epoxy);
        h.mass_kg = maybe([&] { return gram(b_.usual(0.2, 2, 0, 200)); });
    }

    document::Hanger hanger() {
        document::Hanger h;
        h.name = b_.text(3, 60);
        h.kind = b_.one_of(document::HangerKind::straight);
        h.on = b_.one_of(document::HangerOn::back);
        h.x_m = place_along();
        h.z_m = mm(b_.usual(-8, 8, -300, 300));
        h.wire_m = mm(b_.usual(0.5, 1.3, 0.2, 3));
        h.eye_inside_m = mm(b_.usual(1.2, 4, 0.5, 30));
        h.turns = b_.usual(3, 10, 0, 40);
        h.depth_m = mm(b_.usual(5, 30, 1, 100));
        h.glue = b_.one_of(document::HingeGlue::epoxy);
        h.mass_kg = maybe([&] { return gram(b_.usual(0.1, 1, 0, 200)); });
        return h;
    }

    double place_along() { return b_.once_in(16) ? mm(b_.number(0, 1000)) : length_m_ * b_.share(); }

    std::optional<int> change() {
        if (b_.astray() && b_.once_in(8)) return static_cast<int>(b_.byte()) - 100;
        return maybe([&] { return static_cast<int>(b_.below(4)); });
    }

    document::Hole hole() {
        document::Hole h;
        h.name = b_.text(3, 60);
        h.use = b_.one_of(document::HoleUse::fixed);
        h.from = b_.one_of(document::HoleFrom::back);
        h.x_m = place_along();
        h.y_m = b_.yes() ? 0.0 : mm(b_.usual(-4, 4, -300, 300));
        h.diameter_m = mm(b_.usual(2, 10, 0.5, 40));
        h.depth_m = b_.once_in(3) ? 0.0 : mm(b_.usual(0, 25, 0, 100));
        h.end = b_.one_of(document::HoleEnd::point_118);
        if (b_.yes()) {
            h.fill = document::Fill{};
            h.fill->material = material(materials::Use::ballast);
            const bool both = b_.astray() && b_.once_in(16);
            const bool by_mass = b_.yes();
            if (by_mass || both) h.fill->mass_kg = gram(b_.usual(0, 5, 0, 1000));
            if (!by_mass || both) h.fill->length_m = mm(b_.usual(0, 15, 0, 100));
            h.fill->stock_diameter_m = maybe([&] { return mm(b_.usual(1, 8, 0.2, 40)); });
        }
        if (b_.once_in(4)) {
            h.cap.reset();
        } else {
            h.cap->material = material(materials::Use::cap);
            h.cap->length_m = mm(b_.usual(0, 4, 0, 50));
        }
        h.max_depth_m = mm(b_.usual(5, 30, 0, 100));
        h.wall_m = mm(b_.usual(0, 3, 0, 30));
        if (b_.once_in(4)) h.before.push_back({change(), mm(b_.usual(0, 25, 0, 100)), h.fill});
        return h;
    }

    document::Pocket pocket() {
        document::Pocket p;
        p.name = b_.text(3, 60);
        p.x_from_m = place_along();
        p.x_to_m = b_.once_in(16) ? mm(b_.number(0, 1000)) : p.x_from_m + mm(b_.usual(0.5, 20, 0, 600));
        p.y_m = b_.yes() ? 0.0 : mm(b_.usual(-5, 5, -300, 300));
        p.width_m = mm(b_.usual(1, 8, 0.2, 600));
        p.z_from_m = maybe([&] { return mm(b_.usual(-15, 5, -300, 300)); });
        p.z_to_m = maybe([&] { return mm(b_.usual(-5, 15, -300, 300)); });
        p.floods = b_.yes();
        return p;
    }

    std::optional<int> segment_of(std::size_t joints) {
        if (b_.astray() && b_.once_in(8)) return static_cast<int>(b_.byte()) - 100;
        return maybe([&] { return static_cast<int>(b_.below(joints + 1)); });
    }

    document::Part part(std::size_t joints) {
        document::Part p;
        p.name = b_.text(3, 60);
        p.stage = std::array{Stage::hardware, Stage::painted, Stage::rigged}[b_.below(3)];
        p.material = material(materials::Use::part);
        p.mass_kg = gram(b_.usual(0, 4, 0, 500));
        p.mass_sigma_kg = maybe([&] { return gram(b_.usual(0, 0.3, 0, 500)); });
        p.at_m = {place_along(), mm(b_.usual(-1, 1, -600, 600)), mm(b_.usual(-25, 20, -600, 600))};
        p.embedded = b_.number(0, 1);
        p.segment = segment_of(joints);
        p.reach_m = maybe([&] { return mm(b_.usual(5, 50, 0, 200)); });
        return p;
    }

    document::Coat coat() {
        document::Coat c;
        c.name = b_.text(3, 60);
        c.stage = static_cast<Stage>(static_cast<std::size_t>(Stage::sealed) + b_.below(3));
        c.kind = b_.one_of(document::table::coat_kinds.back().value);
        c.material = material(materials::Use::coat);
        const bool both = b_.astray() && b_.once_in(16);
        const bool by_mass = c.kind == document::CoatKind::soaks || b_.yes();
        if (by_mass || both) c.mass_kg = gram(b_.usual(0, 4, 0, 500));
        if (!by_mass || both) c.thickness_m = mm(b_.usual(0.01, 0.8, 0, 5));
        c.spread = maybe([&] { return b_.number(0, 1); });
        const unsigned surfaces = b_.byte() & 7u;
        c.on_skin = (surfaces & 1u) != 0u || (surfaces == 0u && !b_.astray());
        c.on_joint_faces = (surfaces & 2u) != 0u;
        c.on_pockets = (surfaces & 4u) != 0u;
        if (b_.once_in(8)) c.note = b_.text(10, document::max_text);
        return c;
    }

    void targets(document::Targets& t) {
        t.by = b_.one_of(document::TargetBy::in_water);
        t.fall_m_s = mm(b_.usual(20, 400, 1, 5000));
        t.in_water_kg = gram(b_.usual(-3, 8, -5000, 5000));
        t.pitch_rad = degree(b_.usual(-15, 15, -80, 80));
        t.fall_band = b_.usual(0.03, 0.2, 0.001, 1);
        t.pitch_band_rad = degree(b_.usual(1, 5, 0.1, 45));
        t.matters_more = b_.one_of(document::MattersMore::hang);
        t.line_n = maybe([&] { return units::n_from_lbf(b_.usual(8, 80, 0.1, 500)); });
    }

    document::Reading reading(std::size_t joints) {
        using document::ReadingKind;
        document::Reading r;
        r.kind = b_.one_of(document::table::reading_kinds.back().value);
        r.stage = b_.one_of(Stage::rigged);
        if (r.stage >= Stage::leaded && b_.once_in(3)) r.with.push_back(hung_on());
        r.lure = maybe([&] { return static_cast<int>(b_.below(b_.once_in(8) ? document::max_lures : 3)); });
        const auto temperature = [&] { return b_.number(0, 40); };
        const bool all = b_.astray() && b_.once_in(16); // what this kind has no place for as well
        if (all || r.kind == ReadingKind::dry_weight || r.kind == ReadingKind::held_under ||
            r.kind == ReadingKind::hung_in_water)
            r.segment = segment_of(joints);
        if (all || r.kind <= ReadingKind::board || r.kind == ReadingKind::suspends) {
            r.mass_kg = gram(b_.usual(0.1, 80, r.kind == ReadingKind::hung_in_water ? -5000 : 0, 5000));
            r.mass_sigma_kg = maybe([&] { return gram(b_.usual(0.01, 1, 0.0001, 1000)); });
        }
        if (all || r.kind == ReadingKind::held_under || r.kind == ReadingKind::hung_in_water)
            r.holder_kg = maybe([&] { return gram(b_.usual(0, 2, -200, 200)); });
        if (all || r.kind == ReadingKind::board) {
            r.length_m = mm(b_.usual(80, 300, 1, 5000));
            r.width_m = mm(b_.usual(15, 60, 1, 1000));
            r.height_m = mm(b_.usual(15, 60, 1, 1000));
        }
        if (all || r.kind == ReadingKind::tub_fall) {
            r.time_s = b_.usual(1, 20, 0.05, 3600);
            r.depth_m = mm(b_.usual(200, 800, 20, 20000));
            r.time_sigma_s = maybe([&] { return b_.usual(0.05, 1, 0.001, 600); });
        }
        if (all || r.kind == ReadingKind::suspends) r.clip_material = material(materials::Use::part);
        if (all || r.kind == ReadingKind::freeboard) {
            r.freeboard_m = mm(b_.usual(0, 15, 0, 300));
        }
        if (all || r.kind == ReadingKind::caliper) {
            r.x_m = place_along();
            (b_.yes() ? r.width_m : r.height_m) = mm(b_.usual(10, 40, 1, 1000));
        }
        if (all || r.kind == ReadingKind::freeboard || r.kind == ReadingKind::caliper) {
            r.length_sigma_m = maybe([&] { return mm(b_.usual(0.2, 2, 0.001, 100)); });
        }
        if (all || r.kind == ReadingKind::hang_angle) {
            r.angle_rad = degree(b_.usual(-20, 20, -89, 89));
            r.angle_sigma_rad = maybe([&] { return degree(b_.usual(0.3, 4, 0.01, 45)); });
        }
        if (all || r.kind == ReadingKind::beats) {
            r.beats = b_.usual(3, 40, 1, 5000);
            if (b_.yes()) {
                r.travel_m = mm(b_.usual(1000, 10000, 100, 1e6));
            } else {
                r.time_s = b_.usual(2, 20, 0.05, 3600);
                r.speed_m_s = mm(b_.usual(200, 1500, 10, 1e4));
            }
            r.foretold_per_m = maybe([&] { return b_.usual(0.5, 6, 0.01, 100); });
            r.beats_sigma = maybe([&] { return b_.usual(0.3, 2, 0.01, 1000); });
        }
        if (all || (r.kind != ReadingKind::dry_weight && r.kind != ReadingKind::board &&
                    r.kind != ReadingKind::caliper && r.kind != ReadingKind::beats))
            r.temperature_c = maybe(temperature);
        if (b_.once_in(8)) r.date = b_.astray() ? b_.text(10, 20) : "2026-03-14";
        if (b_.once_in(8)) r.note = b_.text(10, document::max_text);
        r.excluded = b_.once_in(8);
        r.stands = b_.once_in(8);
        if (b_.once_in(4)) r.before_change = change();
        return r;
    }

    document::HungOn hung_on() {
        document::HungOn on;
        on.what = b_.one_of(document::HungKind::weight);
        const bool astray = b_.astray() && b_.once_in(8);
        if (astray || on.what == document::HungKind::part) on.part = static_cast<int>(b_.below(4));
        if (astray || on.what == document::HungKind::weight) {
            on.mass_kg = gram(b_.usual(0.5, 10, 0, 500));
            on.material = material(materials::Use::part);
        }
        return on;
    }

    document::Correction correction(const document::Document& d) {
        document::Correction c;
        c.of = b_.astray() && b_.once_in(16)
                   ? document::Cause::none
                   : static_cast<document::Cause>(1 +
                                                  b_.below(static_cast<std::size_t>(document::Cause::beats)));
        const std::size_t entries =
            std::max({d.parts.size(), d.holes.size(), d.coats.size(), d.joints.size(), std::size_t{1}});
        c.item = maybe([&] {
            return static_cast<int>(b_.once_in(16) ? b_.below(document::max_hardware) : b_.below(entries));
        });
        c.factor = b_.usual(0.8, 1.2, 0.05, 20);
        c.spread = maybe([&] { return b_.usual(0, 0.2, 0, 1); });
        return c;
    }

    document::Board board() {
        return {mm(b_.usual(100, 300, 1, 2000)), mm(b_.usual(20, 80, 1, 600)), mm(b_.usual(10, 40, 1, 600)),
                mm(b_.usual(0, 3, 0, 20))};
    }

    Bytes& b_;
    double length_m_ = 0.1;
};

} // namespace evenfall::fuzz
