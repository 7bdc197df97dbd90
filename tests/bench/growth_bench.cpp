// What ten times as much of something costs: stations of the drawing, segments, holes, samples. Measured,
// never tested on time.

#include "base/trade.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "evenfall.hpp"
#include "support/small_lures.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <string>

using namespace evenfall;

namespace {

/// A lure of 400 mm, thick in the middle, from parabolas: as many stations, segments and holes as asked for.
document::Document long_lure(int stations, int segments, int holes) {
    document::Document d = support::block();
    document::Shape& shape = d.shape;
    shape.back.clear();
    shape.belly.clear();
    shape.half_width.clear();
    const double length = 0.4;
    for (int k = 0; k < stations; ++k) {
        const double x = length * k / (stations - 1);
        const double full = 0.3 + 2.8 * (x / length) * (1.0 - x / length);
        shape.back.push_back({x, 0.025 * full});
        shape.belly.push_back({x, -0.025 * full});
        shape.half_width.push_back({x, 0.014 * full});
    }
    shape.section = {};
    d.segment_names.assign(static_cast<std::size_t>(segments), "Segment");
    for (int s = 1; s < segments; ++s) {
        document::Joint joint;
        joint.at_m = length * s / segments + 0.001;
        joint.relief_fore_rad = joint.relief_aft_rad = units::rad_from_deg(12.0);
        d.joints.push_back(joint);
    }
    for (int k = 0; k < holes; ++k) {
        document::Hole hole = support::belly_hole(1000.0 * length * (k + 0.5) / holes, 3.0, 12.0);
        hole.wall_m = 0.0005;
        hole.depth_m = 0.006;
        d.holes.push_back(hole);
    }
    return d;
}

void measure(const std::string& name, const document::Document& document) {
    const auto once = evaluate(document);
    for (const Problem& p : once.ok() ? Problems{} : once.problems())
        UNSCOPED_INFO(p.path << ": " << p.sentence.text(evenfall::units::metric));
    REQUIRE(once.ok());
    BENCHMARK("evaluate " + name) {
        return evaluate(document);
    };
}

} // namespace

TEST_CASE("growth", "[bench]") {
    measure("6 stations", long_lure(6, 1, 0));
    measure("60 stations", long_lure(60, 1, 0));
    measure("1 segment", long_lure(12, 1, 0));
    measure("10 segments", long_lure(12, 10, 0));
    measure("4 holes", long_lure(12, 1, 4));
    measure("40 holes", long_lure(12, 1, 40));
    const document::Document fish = support::fish();
    for (const int draws : {1'000, 10'000}) {
        BENCHMARK("draw " + std::to_string(draws) + " samples") {
            return uncertainty_by_draws(fish, draws);
        };
    }
}
