#include "evenfall.hpp"
#include "materials/woods.hpp"
#include "unit/water/afloat/forms.hpp"
#include "unit/workshop/answered_joint.hpp"
#include "unit/workshop/hinged_block.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using namespace evenfall::joints;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::answered;
using support::hinged_block;
using support::wall;
using support::warns_of;

TEST_CASE("walls are what a ruler finds between pin, pocket, skin and hole", "[joints]") {
    document::Document d = hinged_block();
    d.holes.push_back(support::belly_hole(74.0, 6.0, 20.0));
    d.holes[0].depth_m = 0.010; // from −15 to −5 mm: beside the lower pocket (−9.5 to −6.5)
    const JointAnswer j = answered(d).joints[0];
    // Pin 3 mm behind its face, 0.6 mm thick to one side; skin 10 mm out.
    CHECK_THAT(wall(j, WallKind::pin_and_face)->thickness_m, WithinAbs(0.0024, 1e-9));
    CHECK_THAT(wall(j, WallKind::pin_and_skin)->thickness_m, WithinAbs(0.0094, 1e-9));
    CHECK_THAT(wall(j, WallKind::pocket_and_skin)->thickness_m, WithinAbs(0.007, 1e-9));
    CHECK_THAT(wall(j, WallKind::pocket_and_hole)->thickness_m, WithinAbs(0.003, 1e-9));
    CHECK_THAT(wall(j, WallKind::pin_and_hole)->thickness_m, WithinAbs(0.0064, 1e-9));
    CHECK(wall(j, WallKind::pocket_and_hole)->hole == 0);
    d.holes[0].depth_m = 0.004; // ends below the pocket; the pin ends 2 mm inside the belly
    CHECK(wall(answered(d).joints[0], WallKind::pocket_and_hole) == nullptr);
    CHECK(wall(answered(d).joints[0], WallKind::pin_and_hole) != nullptr);
    d.holes[0].depth_m = 0.0019;
    CHECK(wall(answered(d).joints[0], WallKind::pin_and_hole) == nullptr);
}

TEST_CASE("a hole that meets the pin below its lowest eye is told, and one in the fore segment that a pocket "
          "reaches into",
          "[joints]") {
    document::Document d = hinged_block();
    d.holes.push_back(support::belly_hole(64.0, 6.0, 20.0));
    d.holes[0].depth_m =
        0.004; // from −15 to −11 mm, on the pin's own axis; the lower pocket begins at −9.5 mm
    CHECK_THAT(wall(answered(d).joints[0], WallKind::pin_and_hole)->thickness_m, WithinAbs(-0.0036, 1e-12));
    CHECK(warns_of(answered(d), "no wood is left between the pin and hole 1"));
    // A pin that stands beside the wood, 10 mm to either side, meets no hole.
    d.holes[0].depth_m = 0.020;
    CHECK(wall(answered(d).joints[0], WallKind::pin_and_hole) != nullptr);
    d.joints[0].hinge->pin_off_m = 0.011;
    CHECK(wall(answered(d).joints[0], WallKind::pin_and_hole) == nullptr);
    d.joints[0].hinge->pin_off_m = 0.0;
    // Linked eyes: pockets from 50 to 70 mm reach 9 mm into either segment. A hole of 6 mm at 46.4 mm leaves
    // 0.6 mm.
    d.joints[0].hinge->kind = document::HingeKind::linked;
    for (document::Pocket& p : d.pockets) {
        p.x_from_m = 0.050;
        p.x_to_m = 0.070;
    }
    for (const double x_m : {0.0464, 0.0736}) {
        d.holes[0].x_m = x_m;
        d.holes[0].depth_m = 0.014;
        const JointsAnswer a = answered(d);
        REQUIRE(wall(a.joints[0], WallKind::pocket_and_hole) != nullptr);
        CHECK_THAT(wall(a.joints[0], WallKind::pocket_and_hole)->thickness_m, WithinAbs(0.0006, 1e-12));
        CHECK(warns_of(a, "between the eye pocket and hole 1"));
    }
    // Pockets of the aft segment alone are no matter to a hole of the fore one.
    for (document::Pocket& p : d.pockets)
        p.x_from_m = 0.0605;
    d.holes[0].x_m = 0.050;
    CHECK(wall(answered(d).joints[0], WallKind::pocket_and_hole) == nullptr);
}

TEST_CASE("a pin bears on wood where no pocket is and bends over the widest one, whichever way its pockets "
          "are drawn",
          "[joints]") {
    document::Document d = hinged_block();
    const auto pocket = [&](std::optional<double> from_mm, std::optional<double> to_mm) {
        document::Pocket p = d.pockets[0];
        p.z_from_m.reset();
        p.z_to_m.reset();
        if (from_mm) p.z_from_m = units::m_from_mm(*from_mm);
        if (to_mm) p.z_to_m = units::m_from_mm(*to_mm);
        return p;
    };
    // What basswood of 500 kg/m³ bears across 1.2 mm, bending 4·M over the span, for a pin from −13 to 13 mm.
    const double bearing_pa =
        materials::pin_bearing_pa(*materials::find_wood("basswood"), 500.0 / (0.37 * 1120.0));
    const auto hold = [&](std::vector<document::Pocket> pockets, std::optional<double> lower_z_m,
                          std::optional<double> upper_z_m) {
        document::Document e = d;
        e.pockets = std::move(pockets);
        e.joints[0].hinge->lower_z_m = lower_z_m;
        e.joints[0].hinge->upper_z_m = upper_z_m;
        const JointAnswer j = answered(e).joints[0];
        const double shared = j.eyes.size() > 1 ? 1.5 : 1.0;
        const double moment = wire::tensile(wire::Temper::spring, 0.0012).low_pa * 1.728e-9 / 6.0;
        return std::pair(j.strength.wood_n / (bearing_pa * 0.0012),
                         shared * 4.0 * moment / j.strength.pin_bend_n);
    };
    const auto is = [](std::pair<double, double> got, double in_wood_m, double span_m) {
        CHECK_THAT(got.first, WithinAbs(in_wood_m, 1e-12));
        CHECK_THAT(got.second, WithinAbs(span_m, 1e-12));
    };
    is(hold({pocket(-9.5, -6.5), pocket(6.5, 9.5)}, {}, {}), 0.020, 0.003);
    // Two eyes in one pocket: its height is missing once.
    is(hold({pocket(-8, 8)}, -0.005, 0.005), 0.010, 0.016);
    is(hold({pocket(-8, 8)}, {}, 0.005), 0.010, 0.016);
    // The widest, wherever it is.
    is(hold({pocket(-11, -4), pocket(4, 7)}, {}, {}), 0.016, 0.007);
    is(hold({pocket(-7, -4), pocket(4, 11)}, {}, {}), 0.016, 0.007);
    // Open to the belly is as closed anywhere below the pin's end.
    is(hold({pocket({}, 8)}, {}, 0.004), 0.005, 0.021);
    is(hold({pocket(-14.9, 8)}, {}, 0.004), 0.005, 0.021);
    is(hold({pocket(-8, {})}, -0.004, {}), 0.005, 0.021);
    is(hold({pocket({}, {})}, {}, 0.004), 0.0, 0.026);
}

TEST_CASE("a thin wall before the pin is warned of once the hinge is drawn, and not for a hinge nobody drew",
          "[joints]") {
    document::Document d = hinged_block();
    d.joints[0].hinge->pin_aft_m = 0.0025;
    CHECK(warns_of(answered(d), "in front of the pin"));
    d.joints[0].hinge.reset();
    CHECK_FALSE(warns_of(answered(d), "in front of the pin"));
}

TEST_CASE("a pin off the middle of an oval body is as long as the wood is high where it stands, less both "
          "ends, and bears on that much less wood",
          "[joints]") {
    // An ellipse 20 by 30 mm: 4 mm beside the middle it is √(1 − 0.4²) of 30 mm high.
    const auto lines = support::elliptic_bar_lines(0.12, 0.010, 0.015);
    const auto with_pin_at = [&](double y_m) {
        document::Document d = hinged_block();
        d.joints[0].hinge->pin_off_m = y_m;
        for (auto& pocket : d.pockets)
            pocket.y_m = y_m;
        const auto body = shape::cut(lines, d.joints);
        REQUIRE(body.ok());
        const auto a = joint_answers(d, *body);
        REQUIRE(a.ok());
        return a->joints[0];
    };
    const JointAnswer middle = with_pin_at(0.0);
    CHECK(middle.pin_length_m == 2.0 * (0.015 - 0.002));
    CHECK(middle.pin_middle_z_m == 0.0);
    const double high_m = 0.030 * std::sqrt(1.0 - 0.4 * 0.4);
    for (const double y_m : {-0.004, 0.004}) {
        const JointAnswer off = with_pin_at(y_m);
        REQUIRE(off.eyes.size() == 2);
        REQUIRE(off.eyes[0].place.pocket.has_value());
        CHECK_THAT(off.pin_length_m, WithinAbs(high_m - 0.004, 1e-12));
        CHECK_THAT(off.pin_middle_z_m, WithinAbs(0.0, 1e-12));
        // Two pockets of 3 mm are open round the pin.
        CHECK_THAT(off.strength.wood_n / middle.strength.wood_n,
                   WithinRel((high_m - 0.010) / (0.030 - 0.010), 1e-9));
    }
    // Beside the wood there is nothing to put a pin into.
    CHECK(with_pin_at(0.0105).pin_length_m == 0.0);
}
