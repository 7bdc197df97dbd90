// A jointed, relieved lure afloat, heeled and pitched, against its triangle mesh cut at the water's plane:
// rings of triangles through the drawn lines, cuts, volumes and centroids by CGAL (package Polygon Mesh
// Processing).

#include "support/drawn_shapes.hpp"
#include "unit/water/afloat/forms.hpp"

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/clip.h>
#include <CGAL/Polygon_mesh_processing/measure.h>
#include <CGAL/Surface_mesh.h>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::afloat;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Point = Kernel::Point_3;
using Mesh = CGAL::Surface_mesh<Point>;
namespace pmp = CGAL::Polygon_mesh_processing;

constexpr double exponent = 2.4;

/// A closed mesh of the uncut body in millimetres, superellipses by their textbook parameters.
Mesh whole_body(const shape::Lines& lines) {
    constexpr std::size_t rings = 140;
    constexpr std::size_t sides = 140;
    const double length = lines.length_m();
    Mesh mesh;
    std::vector<std::vector<Mesh::Vertex_index>> ring(rings + 1);
    for (std::size_t i = 0; i <= rings; ++i) {
        const double x =
            i == rings ? length
                       : 0.5 * length * (1.0 - std::cos(std::numbers::pi * static_cast<double>(i) / rings));
        const shape::Station s = lines.at(x);
        for (std::size_t k = 0; k < sides; ++k) {
            const double t = 2.0 * std::numbers::pi * (static_cast<double>(k) + 0.5) / sides;
            const double y =
                std::copysign(s.half_width_m * std::pow(std::abs(std::cos(t)), 2.0 / exponent), std::cos(t));
            const double z =
                std::copysign(s.half_height_m * std::pow(std::abs(std::sin(t)), 2.0 / exponent), std::sin(t));
            ring[i].push_back(mesh.add_vertex(Point(1e3 * x, 1e3 * y, 1e3 * (s.centre_z_m + z))));
        }
    }
    const auto nose = mesh.add_vertex(Point(0.0, 0.0, 1e3 * lines.at(0.0).centre_z_m));
    const auto tail = mesh.add_vertex(Point(1e3 * length, 0.0, 1e3 * lines.at(length).centre_z_m));
    for (std::size_t k = 0; k < sides; ++k) {
        const std::size_t next = (k + 1) % sides;
        mesh.add_face(nose, ring.front()[next], ring.front()[k]);
        mesh.add_face(tail, ring.back()[k], ring.back()[next]);
        for (std::size_t i = 0; i < rings; ++i) {
            mesh.add_face(ring[i][k], ring[i][next], ring[i + 1][k]);
            mesh.add_face(ring[i][next], ring[i + 1][next], ring[i + 1][k]);
        }
    }
    return mesh;
}

/// Keeps what lies under a·x + b·y + c·z = d (millimetres).
void keep_under(Mesh& mesh, double a, double b, double c, double d) {
    REQUIRE(pmp::clip(mesh, Kernel::Plane_3(a, b, c, -d), CGAL::parameters::clip_volume(true)));
}

std::vector<Mesh> segments(const Mesh& whole, const std::vector<document::Joint>& joints) {
    std::vector<Mesh> out;
    for (std::size_t k = 0; k <= joints.size(); ++k) {
        Mesh mesh = whole;
        for (const double flank : {-1.0, 1.0}) {
            if (k > 0) {
                const document::Joint& j = joints[k - 1];
                keep_under(mesh, -1.0, flank * std::tan(j.relief_aft_rad), 0.0,
                           -1e3 * (j.at_m + 0.5 * j.gap_m));
            }
            if (k < joints.size()) {
                const document::Joint& j = joints[k];
                keep_under(mesh, 1.0, flank * std::tan(j.relief_fore_rad), 0.0,
                           1e3 * (j.at_m - 0.5 * j.gap_m));
            }
        }
        out.push_back(std::move(mesh));
    }
    return out;
}

struct Wet {
    double volume_m3 = 0.0;
    Vec3 b_m;
};

Wet wet(const std::vector<Mesh>& lure, const Vec3& up, double depth_m) {
    Wet w;
    Vec3 moment;
    for (Mesh mesh : lure) {
        keep_under(mesh, up.x, up.y, up.z, 1e3 * depth_m);
        if (mesh.number_of_faces() == 0) continue;
        const double volume = 1e-9 * pmp::volume(mesh);
        const Point c = pmp::centroid(mesh);
        w.volume_m3 += volume;
        moment += volume * 1e-3 * Vec3{c.x(), c.y(), c.z()};
    }
    w.b_m = moment / w.volume_m3;
    return w;
}

struct Lure {
    BareHull bare;
    std::vector<Mesh> mesh;
};

Lure relieved_lure() {
    document::Shape shape = drawn_minnow();
    shape.section.kind = document::SectionKind::rounded;
    shape.section.curve() = {{0.0, exponent}};
    auto lines = shape::drawn_lines(shape).value();
    std::vector<Mesh> mesh = segments(whole_body(*lines), two_joints());
    return {bare_hull(std::move(lines), two_joints()), std::move(mesh)};
}

} // namespace

TEST_CASE("heeled and pitched, a jointed lure has the wet volume and centre of buoyancy of its mesh cut at "
          "the plane within 0.1 % "
          "(CGAL)",
          "[flotation][mesh]") {
    const Lure lure = relieved_lure();
    const FloatingHull& hull = lure.bare.hull;
    const Wet whole = wet(lure.mesh, {0.0, 0.0, 1.0}, 1.0);
    struct Case {
        Attitude at;
        double share;
    };
    for (const auto& [at, share] : {Case{{0.06, 0.35}, 0.95}, Case{{-0.15, 1.2}, 0.6},
                                    Case{{0.5, -2.2}, 0.35}, Case{{-1.3, 0.7}, 0.8}}) {
        const Vec3 up = up_of(at);
        const double depth = hull.depth_for(up, share * hull.volume_m3(), 0.0);
        const Immersion i = hull.immersed(up, depth);
        const Wet w = wet(lure.mesh, up, depth);
        const double off = length(i.b_m() - w.b_m);
        INFO("pitch " << at.pitch_rad << " heel " << at.heel_rad << " share " << share << ": volume "
                      << i.volume_m3 / w.volume_m3 - 1.0 << ", B off by " << off * 1e3 << " mm");
        // 140 chords leave 4e-4 of each ring out, of the wet part as of the whole: their ratio is told
        // better.
        CHECK_THAT(i.volume_m3, WithinRel(w.volume_m3, 1e-3));
        CHECK_THAT(i.volume_m3 / hull.volume_m3(), WithinAbs(w.volume_m3 / whole.volume_m3, 1e-4));
        CHECK(off < 2e-4 * hull.length_m());
    }
}

TEST_CASE(
    "a lure at rest balances on its mesh: weight by volume within 0.1 %, G plumb with the mesh's B (CGAL)",
    "[flotation][mesh]") {
    const Lure lure = relieved_lure();
    const Vec3 c = lure.bare.hull.centroid_m();
    const Afloat a = floating(lure.bare, 0.9, c + Vec3{0.0015, 0.0008, -0.003});
    const auto found = rests(a);
    REQUIRE_FALSE(found.empty());
    const Rest& rest = found.front();
    CHECK(std::abs(rest.heel_rad) > 0.05);
    CHECK(std::abs(rest.pitch_rad) > 0.02);
    const Wet w = wet(lure.mesh, rest.up, rest.depth_m);
    CHECK_THAT(1000.0 * w.volume_m3, WithinRel(a.mass_kg, 1e-3));
    const Vec3 arm = w.b_m - a.g_m;
    const Vec3 aside = arm - dot(arm, rest.up) * rest.up;
    // 0.02 mm athwart is 0.4° of heel at a GM of 3 mm; chords shift B by about a hundredth of a millimetre.
    CHECK(length(aside) < 2e-5);
}
