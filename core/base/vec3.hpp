#pragma once

#include <cmath>

namespace evenfall {

/// A point or vector in the lure's axes: x aft from the nose, y to starboard, z up from the datum line.
struct Vec3 {
    double x = 0.0;
    double y = 0.0;
    double z = 0.0;

    constexpr bool operator==(const Vec3&) const = default;
    constexpr Vec3& operator+=(const Vec3& o) {
        x += o.x;
        y += o.y;
        z += o.z;
        return *this;
    }
    constexpr Vec3& operator*=(double k) {
        x *= k;
        y *= k;
        z *= k;
        return *this;
    }
};

constexpr Vec3 operator+(Vec3 a, const Vec3& b) {
    return a += b;
}
constexpr Vec3 operator-(const Vec3& a, const Vec3& b) {
    return {a.x - b.x, a.y - b.y, a.z - b.z};
}
constexpr Vec3 operator*(Vec3 a, double k) {
    return a *= k;
}
constexpr Vec3 operator*(double k, Vec3 a) {
    return a *= k;
}
constexpr Vec3 operator/(Vec3 a, double k) {
    return a *= 1.0 / k;
}
constexpr double dot(const Vec3& a, const Vec3& b) {
    return a.x * b.x + a.y * b.y + a.z * b.z;
}
inline double length(const Vec3& a) {
    return std::sqrt(dot(a, a));
}

/// Second moments of a distribution about its own centroid: the entries of ∫ρ(r²1 − r rᵀ)dV; products of
/// inertia are stored without the minus sign (xy = ∫ρ x y dV). For a mass distribution [kg·m²], for a volume
/// [m⁵].
struct Inertia {
    double xx = 0.0;
    double yy = 0.0;
    double zz = 0.0;
    double xy = 0.0;
    double xz = 0.0;
    double yz = 0.0;

    constexpr Inertia& operator+=(const Inertia& o) {
        xx += o.xx;
        yy += o.yy;
        zz += o.zz;
        xy += o.xy;
        xz += o.xz;
        yz += o.yz;
        return *this;
    }
};

constexpr Inertia operator*(const Inertia& i, double k) {
    return {i.xx * k, i.yy * k, i.zz * k, i.xy * k, i.xz * k, i.yz * k};
}

/// Contribution of a point mass (or volume) m at offset d from the reference point (parallel-axis theorem).
constexpr Inertia point_inertia(double m, const Vec3& d) {
    return {m * (d.y * d.y + d.z * d.z),
            m * (d.x * d.x + d.z * d.z),
            m * (d.x * d.x + d.y * d.y),
            m * d.x * d.y,
            m * d.x * d.z,
            m * d.y * d.z};
}

} // namespace evenfall
