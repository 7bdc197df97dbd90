#include "support/presets.hpp"
#include "support/worked.hpp"
#include "water/afloat/hull.hpp"

#include "evenfall.hpp"
#include "ledger/fold.hpp"
#include "support/small_lures.hpp"
#include "support/soft_tails.hpp"
#include "unit/water/afloat/forms.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <numbers>

using namespace evenfall;
using namespace evenfall::afloat;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

FloatingHull hull_of(const document::Document& document) {
    const Evaluation e = worked(document);
    return FloatingHull(e.body, e.ledger, document);
}

std::vector<document::Document> lures() {
    std::vector<document::Document> out{block(), fish(), four_piece()};
    for (const char* name : {"millrace-170", "reedline-120", "quarry-230", "estuary-150"})
        out.push_back(preset_named(name));
    // Open holes, one with a fill that pushes the water back out, and pockets of every kind.
    document::Document d = block();
    d.holes = {belly_hole(30, 8, 25), belly_hole(80, 6, 25)};
    for (document::Hole& hole : d.holes) {
        hole.cap.reset();
        hole.depth_m = 0.020;
    }
    d.holes[0].fill->mass_kg = 0.003;
    d.holes[1].fill.reset();
    d.pockets.resize(3);
    d.pockets[0].x_from_m = 0.050;
    d.pockets[0].x_to_m = 0.060;
    d.pockets[1].x_from_m = 0.095;
    d.pockets[1].x_to_m = 0.110;
    d.pockets[1].z_from_m = 0.005;
    d.pockets[2] = d.pockets[1];
    d.pockets[2].z_to_m = -0.002;
    d.pockets[2].z_from_m = -0.010;
    d.pockets[2].floods = false;
    out.push_back(d);
    return out;
}

/// Volume under a level plane, and B.
Immersion level(const FloatingHull& hull, double z_m) {
    return hull.immersed({0.0, 0.0, 1.0}, z_m);
}

} // namespace

TEST_CASE(
    "wholly under water a hull displaces what the ledger says, volume and centre, whichever way it lies") {
    for (const document::Document& document : lures()) {
        const Evaluation e = worked(document);
        const FloatingHull hull(e.body, e.ledger, document);
        const double volume = e.answers.displaced_m3;
        CAPTURE(document.name);
        CHECK_THAT(hull.volume_m3(), WithinRel(volume, 1e-9));
        for (const Attitude at :
             {Attitude{0.0, 0.0}, Attitude{0.3, 1.0}, Attitude{-1.5707963267948966, 0.0}}) {
            const Vec3 up = up_of(at);
            const Immersion i = hull.immersed(up, hull.span(up).high_m + 1e-6);
            CHECK_THAT(i.volume_m3, WithinRel(volume, 1e-9));
            CHECK_THAT(length(i.b_m() - e.answers.b_m), WithinAbs(0.0, 1e-9 * hull.length_m()));
            CHECK(i.area_m2 == 0.0);
            CHECK(hull.immersed(up, hull.span(up).low_m - 1e-6).volume_m3 == 0.0);
        }
    }
}

TEST_CASE("each segment alone displaces its own wood and films") {
    const document::Document document = fish();
    const Evaluation e = worked(document);
    for (int s = 0; s < 3; ++s) {
        ledger::Ledger alone;
        ledger::Sum wanted;
        for (const ledger::Line& line : e.ledger) {
            if (line.kind != ledger::Kind::wood && line.kind != ledger::Kind::coat) continue;
            alone.push_back(line);
            if (line.segment == s) wanted += line;
        }
        // Standing on the nose, water up to the middle of the gap behind the segment: everything fore of it
        // is under.
        const FloatingHull hull(e.body, alone, document);
        const auto under = [&](double x_m) { return hull.immersed({1.0, 0.0, 0.0}, x_m); };
        const double fore_m = s == 0 ? -0.01 : document.joints[static_cast<std::size_t>(s) - 1].at_m;
        const double aft_m = s == 2 ? 0.2 : document.joints[static_cast<std::size_t>(s)].at_m;
        const double volume = under(aft_m).volume_m3 - under(fore_m).volume_m3;
        const Vec3 moment = under(aft_m).moment_m4 - under(fore_m).moment_m4;
        CHECK_THAT(volume, WithinRel(wanted.displaced_m3, 1e-9));
        CHECK_THAT(length(moment / volume - wanted.b_m()), WithinAbs(0.0, 1e-9));
    }
}

TEST_CASE("volume grows with depth as fast as the waterplane is large, and the moment as fast as the "
          "waterplane's own") {
    for (const document::Document& document : lures()) {
        const FloatingHull hull = hull_of(document);
        CAPTURE(document.name);
        for (const Attitude at : {Attitude{0.05, 0.3}, Attitude{0.4, -1.2}, Attitude{-1.4, 2.0}}) {
            CAPTURE(at.pitch_rad, at.heel_rad);
            const Vec3 up = up_of(at);
            const Span span = hull.span(up);
            // Over a tenth of the height, summed in small steps: what the corners of boxes and ends of panels
            // add is told apart from a wrong derivative by its size.
            constexpr int steps = 400;
            const double from = span.low_m + 0.4 * (span.high_m - span.low_m);
            const double step = 0.1 * (span.high_m - span.low_m) / steps;
            double volume = 0.0;
            double along = 0.0;
            double across = 0.0;
            for (int k = 0; k < steps; ++k) {
                const Immersion i = hull.immersed(up, from + (k + 0.5) * step);
                volume += step * i.area_m2;
                along += step * i.along_m3;
                across += step * i.across_m3;
            }
            const Immersion low = hull.immersed(up, from);
            const Immersion high = hull.immersed(up, from + steps * step);
            // Near plumb a waterplane with sharp corners is summed a little less well than volume.
            const double error = (std::abs(at.pitch_rad) > 1.0 ? 4e-4 : 1e-4) * hull.volume_m3();
            CHECK_THAT(high.volume_m3 - low.volume_m3, WithinAbs(volume, error));
            const Vec3 moment = high.moment_m4 - low.moment_m4;
            CHECK_THAT(dot(moment, low.level.along), WithinAbs(along, error * hull.length_m()));
            CHECK_THAT(dot(moment, low.level.across), WithinAbs(across, 0.1 * error * hull.length_m()));
        }
    }
}

TEST_CASE("turning the plane takes from the moment what its second moments say") {
    const BareHull egg = bare_hull(std::make_shared<EllipsoidForm>(0.075, 0.012, 0.022));
    const Vec3 up = up_of({0.3, 0.6});
    const double depth = dot(up, egg.hull.centroid_m()) + 0.002;
    const Immersion i = egg.hull.immersed(up, depth);
    const double step = 1e-3;
    const auto turned_moment = [&](const Vec3& towards) {
        const Immersion a = egg.hull.immersed(turned(up, towards, step), depth);
        const Immersion b = egg.hull.immersed(turned(up, towards, -step), depth);
        return (a.moment_m4 - b.moment_m4) / (2.0 * step);
    };
    const double scale = i.along_m4;
    CHECK_THAT(dot(turned_moment(i.level.along), i.level.along), WithinAbs(-i.along_m4, 2e-3 * scale));
    CHECK_THAT(dot(turned_moment(i.level.along), i.level.across), WithinAbs(-i.mixed_m4, 2e-3 * scale));
    CHECK_THAT(dot(turned_moment(i.level.across), i.level.across),
               WithinAbs(-i.across_m4, 2e-3 * i.across_m4));
}

TEST_CASE("a flooded box in a block takes its volume away, and no more than is under water") {
    document::Document d = block();
    d.pockets.resize(1);
    d.pockets[0].x_from_m = 0.050;
    d.pockets[0].x_to_m = 0.060;
    d.pockets[0].width_m = 0.008;
    d.pockets[0].z_from_m = -0.005;
    d.pockets[0].z_to_m = 0.005;
    const FloatingHull hull = hull_of(d);
    const double slab = 0.120 * 0.020;
    CHECK_THAT(level(hull, -0.006).volume_m3, WithinRel(slab * 0.009, 1e-12));
    CHECK_THAT(level(hull, 0.001).volume_m3, WithinRel(slab * 0.016 - 0.010 * 0.008 * 0.006, 1e-12));
    CHECK_THAT(level(hull, 0.001).area_m2, WithinRel(slab - 0.010 * 0.008, 1e-12));
    CHECK_THAT(level(hull, 0.008).volume_m3, WithinRel(slab * 0.023 - 0.010 * 0.008 * 0.010, 1e-12));
    d.pockets[0].floods = false;
    CHECK_THAT(level(hull_of(d), 0.001).volume_m3, WithinRel(slab * 0.016, 1e-12));
}

TEST_CASE("an open hole floods up to the waterline, and a fill in it pushes the water out again") {
    document::Document d = block();
    d.holes = {belly_hole(60, 8, 25)};
    d.holes[0].cap.reset();
    d.holes[0].fill.reset();
    d.holes[0].depth_m = 0.020;
    const double area = 0.25 * std::numbers::pi * 0.008 * 0.008;
    const double slab = 0.120 * 0.020;
    CHECK_THAT(level(hull_of(d), -0.003).volume_m3, WithinRel((slab - area) * 0.012, 1e-12));
    d.holes[0].fill = document::Fill{"lead", std::nullopt, 0.005, std::nullopt}; // the uppermost 5 mm
    CHECK_THAT(level(hull_of(d), -0.003).volume_m3, WithinRel((slab - area) * 0.012, 1e-12));
    CHECK_THAT(level(hull_of(d), 0.008).volume_m3, WithinRel(slab * 0.023 - area * 0.015, 1e-9));
}

TEST_CASE("a part outside the wood goes under like a sphere of its volume") {
    document::Document d = block();
    document::Part hook;
    hook.name = "hook";
    hook.mass_kg = 0.008;
    hook.at_m = {0.060, 0.0, -0.040};
    d.parts = {hook};
    const Evaluation e = worked(d);
    const FloatingHull hull(e.body, e.ledger, d);
    const double volume = e.answers.displaced_m3 - 0.120 * 0.020 * 0.030;
    CHECK(volume > 0.0);
    CHECK_THAT(level(hull, -0.040).volume_m3, WithinRel(0.5 * volume, 1e-12));
    const double r = std::cbrt(0.75 * volume / std::numbers::pi);
    CHECK_THAT(level(hull, -0.040).area_m2, WithinRel(std::numbers::pi * r * r, 1e-12));
    CHECK_THAT(level(hull, -0.040).b_m().z, WithinRel(-0.040 - 3.0 / 8.0 * r, 1e-12));
    CHECK_THAT(level(hull, -0.030).volume_m3, WithinRel(volume, 1e-12));
    CHECK_THAT(level(hull, -0.040).own_across_m4(),
               WithinRel(0.25 * std::numbers::pi * r * r * r * r, 1e-12));
}

TEST_CASE("a gap between segments is water, and a relief takes a wedge off each side") {
    std::vector<document::Joint> joints(1);
    joints[0] = {0.060, 0.002, 0.0, 0.0};
    const BareHull flat = bare_hull(box_lines(0.120, 0.020, 0.030), joints);
    CHECK_THAT(level(flat.hull, 0.0).volume_m3, WithinRel(0.118 * 0.020 * 0.015, 1e-12));
    joints[0].relief_fore_rad = 15.0 * degree;
    joints[0].relief_aft_rad = 20.0 * degree;
    const BareHull relieved = bare_hull(box_lines(0.120, 0.020, 0.030), joints);
    // Per face ½·a²·tan α on either side, the height of the half block.
    const double wedges = (std::tan(15.0 * degree) + std::tan(20.0 * degree)) * 0.010 * 0.010 * 0.015;
    CHECK_THAT(level(relieved.hull, 0.0).volume_m3, WithinRel(0.118 * 0.020 * 0.015 - wedges, 1e-9));
    // Lying on its side, water in the middle plane: half of it, wedges and all.
    CHECK_THAT(relieved.hull.immersed({0.0, 1.0, 0.0}, 0.0).volume_m3,
               WithinRel(0.5 * relieved.hull.volume_m3(), 1e-9));
}

TEST_CASE("the depth for a volume is found from any guess") {
    const FloatingHull hull = hull_of(fish());
    for (const Attitude at : {Attitude{0.0, 0.0}, Attitude{0.5, 2.5}, Attitude{1.5707, 0.0}}) {
        for (const double share : {0.01, 0.3, 0.97}) {
            for (const double guess : {-10.0, 0.0, 0.3}) {
                const Vec3 up = up_of(at);
                const double depth = hull.depth_for(up, share * hull.volume_m3(), guess);
                // Where the waterline touches a section, volume has steps of the cut's own accuracy.
                CHECK_THAT(hull.immersed(up, depth).volume_m3,
                           WithinAbs(share * hull.volume_m3(), 2e-5 * hull.volume_m3()));
            }
        }
    }
}

TEST_CASE("the back line shows where it is above the water, gaps left out") {
    const BareHull box = bare_hull(box_lines(0.120, 0.020, 0.030));
    CHECK(box.hull.back_line_out({0.0, 0.0, 1.0}, 0.010) == 1.0);
    CHECK(box.hull.back_line_out({0.0, 0.0, 1.0}, 0.016) == 0.0);
    // Pitched so that the plane meets the back line a third from the nose.
    const Vec3 up = up_of({0.1, 0.0});
    CHECK_THAT(box.hull.back_line_out(up, up.x * 0.040 + up.z * 0.015), WithinAbs(1.0 / 3.0, 1e-9));
}

TEST_CASE("port mirrors starboard when every part off the middle has its twin") {
    document::Document d = block();
    CHECK(hull_of(d).is_mirrored());
    document::Part eye;
    eye.material = "glass";
    eye.mass_kg = 0.0003;
    eye.at_m = {0.010, 0.009, 0.004};
    d.parts = {eye};
    CHECK_FALSE(hull_of(d).is_mirrored());
    eye.at_m.y = -0.009;
    d.parts.push_back(eye);
    CHECK(hull_of(d).is_mirrored());
}

TEST_CASE("the depth for a volume counts the soft tail, whichever way the lure stands") {
    const document::Document d = block_with_tail();
    const FloatingHull hull = hull_of(d);
    for (const double share : {0.01, 0.3, 0.95, 0.9999}) {
        for (const Vec3& up : {Vec3{1.0, 0.0, 0.0}, Vec3{-1.0, 0.0, 0.0}, Vec3{0.8, 0.0, 0.6},
                               Vec3{-0.6, 0.48, 0.64}, Vec3{0.0, 0.0, -1.0}}) {
            const double wanted = share * hull.volume_m3();
            const double depth = hull.depth_for(up, wanted, dot(up, hull.centroid_m()));
            CHECK_THAT(hull.immersed(up, depth).volume_m3, WithinAbs(wanted, 1e-9 * hull.volume_m3()));
        }
    }
}
