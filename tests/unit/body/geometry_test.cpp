#include "body/geometry.hpp"

#include "support/presets.hpp"

#include <catch2/catch_test_macros.hpp>

using namespace evenfall;

TEST_CASE("only what is made from something that changed is made anew", "[body][reuse]") {
    const document::Document lure = support::preset_named("millrace-170");
    const auto before = shape::geometry_of(lure);
    REQUIRE(before.ok());
    const auto after = [&](auto edit) {
        document::Document changed = lure;
        edit(changed);
        return shape::geometry_of(changed, &*before).value();
    };
    const auto lead = after([](document::Document& d) { d.holes.front().depth_m *= 0.9; });
    CHECK(lead.wood == before->wood);
    CHECK(lead.pockets == before->pockets);

    const auto hinge = after([](document::Document& d) { d.joints.front().hinge = document::Hinge{}; });
    CHECK(hinge.wood == before->wood);

    const auto pocket = after([](document::Document& d) { d.pockets.front().width_m *= 0.9; });
    CHECK(pocket.wood == before->wood);
    CHECK(pocket.pockets != before->pockets);

    const auto joint = after([](document::Document& d) { d.joints.front().at_m += 1e-3; });
    CHECK(joint.wood != before->wood);
    CHECK(joint.pockets != before->pockets);

    const auto line = after([](document::Document& d) { d.shape.back[1].value += 1e-3; });
    CHECK(line.wood != before->wood);
    CHECK(line.pockets->wood == line.wood);
}
