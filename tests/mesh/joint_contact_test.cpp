// The swing of a joint against contact of triangle meshes: the aft segment's mesh is turned about the pin
// until CGAL finds that it meets the fore segment's.

#include "base/trade.hpp"
#include "body/body.hpp"
#include "support/drawn_shapes.hpp"
#include "support/lure_mesh.hpp"
#include "workshop/swing.hpp"

#include <CGAL/Aff_transformation_3.h>
#include <CGAL/Polygon_mesh_processing/intersection.h>
#include <CGAL/Polygon_mesh_processing/transform.h>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using namespace support::lure_mesh;
using Catch::Matchers::WithinAbs;

namespace {

namespace pmp = CGAL::Polygon_mesh_processing;

Mesh part(const Mesh& whole, const document::Joint& joint, bool aft) {
    Mesh mesh = whole;
    const double side = aft ? -1.0 : 1.0;
    clip_face(mesh, 1000.0 * (joint.at_m - side * 0.5 * joint.gap_m),
              aft ? joint.relief_aft_rad : joint.relief_fore_rad, side);
    return mesh;
}

bool meets(const Mesh& fore, const Mesh& aft, const joints::Pin& pin, double angle_rad) {
    const double c = std::cos(angle_rad);
    const double s = std::sin(angle_rad);
    const double x = 1000.0 * pin.x_m;
    const double y = 1000.0 * pin.y_m;
    // Tail to starboard: about the upright axis through the pin.
    const CGAL::Aff_transformation_3<Kernel> turn(c, -s, 0.0, x - c * x + s * y, s, c, 0.0, y - s * x - c * y,
                                                  0.0, 0.0, 1.0, 0.0);
    Mesh turned = aft;
    pmp::transform(turn, turned);
    return pmp::do_intersect(fore, turned);
}

/// The least angle at which the meshes meet, to a hundredth of a degree.
double mesh_swing_deg(const Mesh& fore, const Mesh& aft, const joints::Pin& pin) {
    double free = 0.0;
    double stuck = 1.9;
    REQUIRE_FALSE(meets(fore, aft, pin, free));
    REQUIRE(meets(fore, aft, pin, stuck));
    while (stuck - free > 1.5e-4) {
        const double middle = 0.5 * (free + stuck);
        (meets(fore, aft, pin, middle) ? stuck : free) = middle;
    }
    return units::deg_from_rad(free);
}

} // namespace

TEST_CASE("a joint of a drawn lure swings until its triangle meshes touch, within a fifth of a degree (CGAL)",
          "[joints][mesh]") {
    for (const double exponent : {2.0, 2.6}) {
        document::Shape shape = support::drawn_minnow();
        shape.section.curve() = {{0.0, exponent}};
        const auto lines = shape::drawn_lines(shape);
        REQUIRE(lines.ok());
        const Mesh whole = whole_lure(shape, exponent, 200, 120);
        for (const document::Joint& joint : support::two_joints()) {
            const auto body = shape::cut(*lines, {joint});
            REQUIRE(body.ok());
            const Mesh fore = part(whole, joint, false);
            const Mesh aft = part(whole, joint, true);
            for (const joints::Pin pin :
                 {joints::Pin{joint.at_m, 0.0}, joints::Pin{joint.at_m + 0.003, 0.001},
                  joints::Pin{joint.at_m - 0.001, 0.003}, joints::Pin{joint.at_m, -0.004}}) {
                const auto s = joints::swing(*body, 0, pin, joints::SwingSide::starboard);
                const double mesh = mesh_swing_deg(fore, aft, pin);
                INFO("exponent " << exponent << ", joint at " << joint.at_m << ", pin at " << pin.x_m << ", "
                                 << pin.y_m);
                CHECK(s.stopped);
                // 120 sides and 200 rings leave chords of up to 0.02 mm inside the skin, at some 10 mm from
                // the pin: 0.1°.
                CHECK_THAT(units::deg_from_rad(s.angle_rad), WithinAbs(mesh, 0.2));
            }
        }
    }
}
