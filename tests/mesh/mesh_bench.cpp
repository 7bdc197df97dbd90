// Volume and centroid of every segment by triangle mesh (CGAL) and by the core. Measured, never tested on
// time; asked for by name.

#include "body/body.hpp"
#include "support/drawn_shapes.hpp"
#include "support/lure_mesh.hpp"

#include <CGAL/Polygon_mesh_processing/measure.h>
#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

using namespace evenfall;
using namespace support::lure_mesh;

namespace {

/// The segments of a whole lure, as meshes.
std::vector<Mesh> segments_of(const Mesh& whole, const std::vector<document::Joint>& joints) {
    std::vector<Mesh> out;
    for (std::size_t k = 0; k <= joints.size(); ++k) {
        Mesh mesh = whole;
        if (k > 0)
            clip_face(mesh, 1000.0 * (joints[k - 1].at_m + 0.5 * joints[k - 1].gap_m),
                      joints[k - 1].relief_aft_rad, -1.0);
        if (k < joints.size())
            clip_face(mesh, 1000.0 * (joints[k].at_m - 0.5 * joints[k].gap_m), joints[k].relief_fore_rad,
                      1.0);
        out.push_back(std::move(mesh));
    }
    return out;
}

} // namespace

TEST_CASE("segments by mesh and by the core", "[.][bench]") {
    document::Shape shape = support::drawn_minnow();
    shape.section.curve() = {{0.0, 2.6}};
    const auto joints = support::two_joints();
    BENCHMARK("segments by the core") {
        return shape::cut(*shape::drawn_lines(shape), joints)->segments[0].volume_m3;
    };
    BENCHMARK("segments by mesh, made, cut and measured") {
        double sum = 0.0;
        for (const Mesh& mesh : segments_of(whole_lure(shape, 2.6), joints))
            sum += pmp::volume(mesh) + pmp::centroid(mesh).x();
        return sum;
    };
    const std::vector<Mesh> cut = segments_of(whole_lure(shape, 2.6), joints);
    BENCHMARK("segments by mesh, measured alone") {
        double sum = 0.0;
        for (const Mesh& mesh : cut)
            sum += pmp::volume(mesh) + pmp::centroid(mesh).x();
        return sum;
    };
}
