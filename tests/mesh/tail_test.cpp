// A soft tail against a triangle mesh of its drawing: curves by Boost.Math's pchip, volume and centroid by
// CGAL (package Polygon Mesh Processing).

#include "body/tail_loft.hpp"
#include "support/lure_mesh.hpp"
#include "support/soft_tails.hpp"

#include <CGAL/Polygon_mesh_processing/measure.h>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

using namespace support::lure_mesh;

TEST_CASE("a soft tail has the volume and centroid of its triangle mesh within 0.1 % (CGAL)",
          "[tail][mesh]") {
    for (const double exponent : {1.6, 2.0, 3.0}) {
        document::Tail tail = support::paddle(0.1);
        tail.exponent = exponent;
        document::Shape drawn;
        drawn.back = tail.back;
        drawn.belly = tail.belly;
        drawn.half_width = tail.half_thickness;
        const Mesh mesh = whole_lure(drawn, exponent);
        REQUIRE(CGAL::is_closed(mesh));
        const auto body = tail::shaped(tail);
        REQUIRE(body.ok());
        const shape::Segment& s = body->segments.front();
        const double volume = pmp::volume(mesh) * 1e-9;
        INFO("exponent " << exponent << ": mesh " << volume * 1e9 << " mm³, here " << s.volume_m3 * 1e9
                         << " mm³, ratio less one " << s.volume_m3 / volume - 1.0);
        CHECK_THAT(s.volume_m3, WithinRel(volume, 1e-3));
        CHECK_THAT(1000.0 * s.centroid_m.x, WithinAbs(pmp::centroid(mesh).x(), 0.046));
        CHECK_THAT(1000.0 * s.centroid_m.z, WithinAbs(pmp::centroid(mesh).z(), 0.02));
    }
}
