#pragma once

// A drawn lure as a triangle mesh that shares nothing with core/body except the drawing: curves by
// Boost.Math's pchip, sections by the textbook parametrisation, cuts by CGAL (package Polygon Mesh
// Processing). Millimetres.

#include "document/document.hpp"

#include <CGAL/Exact_predicates_inexact_constructions_kernel.h>
#include <CGAL/Polygon_mesh_processing/clip.h>
#include <CGAL/Surface_mesh.h>
#include <boost/math/interpolators/pchip.hpp>
#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <numbers>
#include <vector>

namespace evenfall::support::lure_mesh {

using Kernel = CGAL::Exact_predicates_inexact_constructions_kernel;
using Point = Kernel::Point_3;
using Mesh = CGAL::Surface_mesh<Point>;
namespace pmp = CGAL::Polygon_mesh_processing;

using Interpolator = boost::math::interpolators::pchip<std::vector<double>>;

/// Three-point end slope with its monotone limiter (Boost's default end differs).
inline double end_slope(const document::CurvePoint& p0, const document::CurvePoint& p1,
                        const document::CurvePoint& p2) {
    const double h0 = p1.x_m - p0.x_m;
    const double h1 = p2.x_m - p1.x_m;
    const double d0 = (p1.value - p0.value) / h0;
    const double d1 = (p2.value - p1.value) / h1;
    const double slope = ((2.0 * h0 + h1) * d0 - h0 * d1) / (h0 + h1);
    if (slope * d0 <= 0.0) return 0.0;
    if (d0 * d1 <= 0.0 && std::abs(slope) > 3.0 * std::abs(d0)) return 3.0 * d0;
    return slope;
}

inline Interpolator interpolated(const document::CurvePoints& points) {
    std::vector<double> x;
    std::vector<double> y;
    for (const auto& p : points) {
        x.push_back(p.x_m);
        y.push_back(p.value);
    }
    const std::size_t n = points.size();
    return Interpolator(std::move(x), std::move(y), end_slope(points[0], points[1], points[2]),
                        end_slope(points[n - 1], points[n - 2], points[n - 3]));
}

/// A closed mesh of the whole body: rings of points joined by triangles, triangle fans at nose and tail.
/// Millimetres.
inline Mesh whole_lure(const document::Shape& shape, double exponent, int rings = 240, int sides = 160) {
    const Interpolator top = interpolated(shape.back);
    const Interpolator bottom = interpolated(shape.belly);
    const Interpolator half_width = interpolated(shape.half_width);
    const double length = shape.back.back().x_m;
    Mesh mesh;
    std::vector<std::vector<Mesh::Vertex_index>> ring(static_cast<std::size_t>(rings) + 1);
    const auto middle = [&](double x) { return 500.0 * (top(x) + bottom(x)); };
    for (int i = 0; i <= rings; ++i) {
        // Closer together near nose and tail.
        const double x = i == rings ? length : length * 0.5 * (1.0 - std::cos(std::numbers::pi * i / rings));
        const double b = 500.0 * (top(x) - bottom(x));
        const double a = 1000.0 * half_width(x);
        for (int k = 0; k < sides; ++k) {
            const double t = 2.0 * std::numbers::pi * (k + 0.5) / sides;
            const double y = std::copysign(a * std::pow(std::abs(std::cos(t)), 2.0 / exponent), std::cos(t));
            const double z = std::copysign(b * std::pow(std::abs(std::sin(t)), 2.0 / exponent), std::sin(t));
            ring[static_cast<std::size_t>(i)].push_back(mesh.add_vertex(Point(1000.0 * x, y, middle(x) + z)));
        }
    }
    const auto nose = mesh.add_vertex(Point(0.0, 0.0, middle(0.0)));
    const auto tail = mesh.add_vertex(Point(1000.0 * length, 0.0, middle(length)));
    const auto around = static_cast<std::size_t>(sides);
    for (std::size_t k = 0; k < around; ++k) {
        const std::size_t next = (k + 1) % around;
        mesh.add_face(nose, ring.front()[next], ring.front()[k]);
        mesh.add_face(tail, ring.back()[k], ring.back()[next]);
        for (std::size_t i = 0; i + 1 < ring.size(); ++i) {
            mesh.add_face(ring[i][k], ring[i][next], ring[i + 1][k]);
            mesh.add_face(ring[i][next], ring[i + 1][next], ring[i + 1][k]);
        }
    }
    return mesh;
}

/// Keeps the wood on one side of a face: each flank of the V is a half space.
inline void clip_face(Mesh& mesh, double x_mm, double relief, double side) {
    for (const double flank : {-1.0, 1.0}) {
        if (relief == 0.0 && flank > 0.0) continue;
        // Kept: side·(x − x_face) + tanα·|y| ≤ 0.
        const Kernel::Plane_3 plane(side, flank * std::tan(relief), 0.0, -side * x_mm);
        REQUIRE(pmp::clip(mesh, plane, CGAL::parameters::clip_volume(true)));
    }
}

} // namespace evenfall::support::lure_mesh
