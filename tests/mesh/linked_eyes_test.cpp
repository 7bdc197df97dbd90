// Linked eyes against triangle meshes of rings and necks: CGAL's finding of meeting meshes against the
// clearance worked out.

#include "base/trade.hpp"
#include "workshop/linked_eyes.hpp"

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/intersection.h>
#include <CGAL/Surface_mesh.h>
#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <array>
#include <cmath>
#include <numbers>
#include <vector>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

namespace {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Point = Kernel::Point_3;
using Mesh = CGAL::Surface_mesh<Point>;
namespace pmp = CGAL::Polygon_mesh_processing;

constexpr int round_ring = 160;
constexpr int round_wire = 40;
constexpr double turn = 2.0 * std::numbers::pi;

/// A frame: columns are the ring's own axes (out along the neck, across, normal), then its middle.
/// Millimetres.
struct Frame {
    std::array<double, 3> out, across, normal, middle;

    [[nodiscard]] Point at(double u, double v, double w) const {
        std::array<double, 3> p{};
        for (std::size_t k = 0; k < 3; ++k)
            p[k] = middle[k] + u * out[k] + v * across[k] + w * normal[k];
        return {p[0], p[1], p[2]};
    }
};

/// A grid of points, closed round the first way and round or open along the second, as triangles.
void add_grid(Mesh& mesh, const std::vector<std::vector<Point>>& rows, bool closed) {
    std::vector<std::vector<Mesh::Vertex_index>> v;
    for (const auto& row : rows) {
        v.emplace_back();
        for (const Point& p : row)
            v.back().push_back(mesh.add_vertex(p));
    }
    const std::size_t count = closed ? rows.size() : rows.size() - 1;
    for (std::size_t i = 0; i < count; ++i) {
        const auto& a = v[i];
        const auto& b = v[(i + 1) % rows.size()];
        for (std::size_t k = 0; k < a.size(); ++k) {
            const std::size_t n = (k + 1) % a.size();
            mesh.add_face(a[k], a[n], b[n]);
            mesh.add_face(a[k], b[n], b[k]);
        }
    }
}

Mesh ring(const Frame& f, double radius, double wire) {
    std::vector<std::vector<Point>> rows;
    for (int i = 0; i < round_ring; ++i) {
        rows.emplace_back();
        const double a = turn * i / round_ring;
        for (int k = 0; k < round_wire; ++k) {
            const double b = turn * k / round_wire;
            const double r = radius + 0.5 * wire * std::cos(b);
            rows.back().push_back(f.at(r * std::cos(a), r * std::sin(a), 0.5 * wire * std::sin(b)));
        }
    }
    Mesh mesh;
    add_grid(mesh, rows, true);
    return mesh;
}

/// A bar of two wires' diameter with a round end that begins half a wire outside the ring's middle line.
Mesh neck(const Frame& f, double radius, double wire) {
    std::vector<std::vector<Point>> rows;
    const double from = radius + 0.5 * wire;
    const auto row = [&](double u, double r) {
        rows.emplace_back();
        for (int k = 0; k < round_wire; ++k)
            rows.back().push_back(
                f.at(u, r * std::cos(turn * k / round_wire), r * std::sin(turn * k / round_wire)));
    };
    for (int i = 1; i <= 16; ++i) {
        const double a = 0.25 * turn * i / 16.0;
        row(from - wire * std::cos(a), wire * std::sin(a));
    }
    row(4.0 * radius, wire);
    Mesh mesh;
    add_grid(mesh, rows, false);
    return mesh;
}

struct Pair {
    std::vector<Mesh> fore, aft;
};

Pair meshes(const joints::LinkedEyes& e, double swing_rad, const joints::LinkOffset& o) {
    const double wire = 1e3 * e.wire_m;
    const double radius = 0.5e3 * (e.inside_m + e.wire_m);
    const double c = std::cos(e.lean_rad);
    const double s = std::sin(e.lean_rad);
    const double cp = std::cos(swing_rad);
    const double sp = std::sin(swing_rad);
    const auto turned = [&](double x, double y, double z) {
        return std::array{cp * x - sp * y, sp * x + cp * y, z};
    };
    const Frame fore{{-1.0, 0.0, 0.0}, {0.0, c, s}, {0.0, -s, c}, {0.0, 0.0, 0.0}};
    const Frame aft{turned(1.0, 0.0, 0.0),
                    turned(0.0, -s, c),
                    turned(0.0, c, s),
                    {1e3 * o.x_m, 1e3 * o.y_m, 1e3 * o.z_m}};
    return {{ring(fore, radius, wire), neck(fore, radius, wire)},
            {ring(aft, radius, wire), neck(aft, radius, wire)}};
}

bool meet(const Pair& p) {
    for (const Mesh& a : p.fore) {
        for (const Mesh& b : p.aft) {
            if (pmp::do_intersect(a, b)) return true;
        }
    }
    return false;
}

/// Chords of a mesh lie inside the round surface by up to this share of the wire and of the ring [m].
double chord_m(const joints::LinkedEyes& e) {
    const auto sagitta = [](double radius, int sides) {
        return radius * (1.0 - std::cos(std::numbers::pi / sides));
    };
    return 2.0 * (sagitta(e.wire_m, round_wire) + sagitta(e.inside_m + e.wire_m, round_ring));
}

} // namespace

TEST_CASE(
    "linked eyes and necks meet as triangle meshes exactly where their clearance is below nothing (CGAL)",
    "[joints][mesh]") {
    int met = 0;
    int apart = 0;
    for (const double lean_deg : {0.0, 25.0, 45.0, 80.0}) {
        const joints::LinkedEyes eyes{0.9e-3, 1.6e-3, units::rad_from_deg(lean_deg)};
        const double radius = 0.5 * (eyes.inside_m + eyes.wire_m);
        for (const double swing_deg : {0.0, 40.0, 75.0, 100.0, 118.0}) {
            const double swing = units::rad_from_deg(swing_deg);
            for (int k = 0; k < 12; ++k) {
                // The fore eye's wire through places in the aft eye's hole, spread by the golden angle.
                const double a = 2.399963 * k;
                const double r = radius * (0.75 + 0.35 * std::sin(0.9 * k));
                const joints::LinkOffset at{r * std::cos(swing + 0.4 * std::sin(a)),
                                            r * std::sin(swing + 0.4 * std::sin(a)), 0.25e-3 * std::cos(a)};
                const double clear = joints::link_clearance(eyes, swing, at);
                if (!(std::abs(clear) > chord_m(eyes)))
                    continue; // not linked, or nearer than the chords can tell
                INFO("lean " << lean_deg << ", swing " << swing_deg << ", place " << k << ", clearance "
                             << 1e3 * clear << " mm");
                CHECK(meet(meshes(eyes, swing, at)) == (clear < 0.0));
                ++(clear < 0.0 ? met : apart);
            }
        }
    }
    INFO("met " << met << ", apart " << apart);
    CHECK(met > 20);
    CHECK(apart > 20);
}
