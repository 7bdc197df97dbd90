#include "body/polygon.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall::shape {

namespace {

using document::OutlinePoint;
using Outline = std::span<const OutlinePoint>;

/// Exact integrals of both halves by Green's theorem, edge by edge, as sums over triangles with the origin.
UnitMoments outline_moments(Outline p) {
    UnitMoments m;
    for (std::size_t k = 0; k + 1 < p.size(); ++k) {
        const OutlinePoint a = p[k];
        const OutlinePoint b = p[k + 1];
        const double twice = a.y * b.z - b.y * a.z;
        m.area += twice;
        m.z += twice * (a.z + b.z) / 3.0;
        m.yy += twice * (a.y * a.y + a.y * b.y + b.y * b.y) / 6.0;
        m.zz += twice * (a.z * a.z + a.z * b.z + b.z * b.z) / 6.0;
    }
    return m;
}

struct OnPiece {
    std::size_t piece;
    double share;          ///< 0 to 1 along the piece
    double pieces_per_tau; ///< d(share)/dτ
};

OnPiece on_piece(double tau, std::size_t pieces) {
    const double pace = 0.5 * static_cast<double>(pieces);
    const double run = std::clamp((tau + 1.0) * pace, 0.0, static_cast<double>(pieces));
    const auto piece = std::min(static_cast<std::size_t>(run), pieces - 1);
    return {piece, run - static_cast<double>(piece), pace};
}

RimPoint outline_rim(Outline p, double tau) {
    const OnPiece on = on_piece(tau, p.size() - 1);
    const OutlinePoint a = p[on.piece];
    const OutlinePoint b = p[on.piece + 1];
    RimPoint r{};
    r.y = a.y + on.share * (b.y - a.y);
    r.z = a.z + on.share * (b.z - a.z);
    r.y_tau = on.pieces_per_tau * (b.y - a.y);
    r.z_tau = on.pieces_per_tau * (b.z - a.z);
    return r;
}

/// Y at height z; Z never falls along the outline. The largest Y where an edge is level.
double outline_half_width(Outline p, double z) {
    double widest = 0.0;
    for (std::size_t k = 0; k + 1 < p.size(); ++k) {
        const OutlinePoint a = p[k];
        const OutlinePoint b = p[k + 1];
        if (z < a.z || z > b.z) continue;
        widest =
            std::max(widest, b.z > a.z ? a.y + (z - a.z) / (b.z - a.z) * (b.y - a.y) : std::max(a.y, b.y));
    }
    return widest;
}

/// Z at Y on the lower (belly) side; the lower end of a vertical side.
double outline_lower(Outline p, double y) {
    for (std::size_t k = 0; k + 1 < p.size(); ++k) {
        const OutlinePoint a = p[k];
        const OutlinePoint b = p[k + 1];
        if (b.y >= y) return b.y > a.y ? a.z + std::max(0.0, y - a.y) / (b.y - a.y) * (b.z - a.z) : a.z;
    }
    return p.back().z;
}

/// Z at Y on the upper (back) side; the upper end of a vertical side.
double outline_upper(Outline p, double y) {
    for (std::size_t k = p.size() - 1; k > 0; --k) {
        const OutlinePoint a = p[k];
        const OutlinePoint b = p[k - 1];
        if (b.y >= y) return b.y > a.y ? a.z + std::max(0.0, y - a.y) / (b.y - a.y) * (b.z - a.z) : a.z;
    }
    return p.front().z;
}

using ChamferedOutline = std::array<OutlinePoint, 6>;

ChamferedOutline chamfered(double cut) {
    const double k = 1.0 - cut;
    return {{{0.0, -1.0}, {k, -1.0}, {1.0, -k}, {1.0, k}, {k, 1.0}, {0.0, 1.0}}};
}

constexpr std::array<double, 4> chamfered_breaks{-0.6, -0.2, 0.2, 0.6};

} // namespace

UnitMoments Chamfered::moments(double cut) const {
    return outline_moments(chamfered(cut));
}

RimPoint Chamfered::rim(double cut, double tau) const {
    RimPoint r = outline_rim(chamfered(cut), tau);
    // How the six corners move as the cut grows.
    static constexpr std::array<OutlinePoint, 6> pace{{{0, 0}, {-1, 0}, {0, 1}, {0, -1}, {-1, 0}, {0, 0}}};
    const OnPiece on = on_piece(tau, 5);
    r.y_parameter = pace[on.piece].y + on.share * (pace[on.piece + 1].y - pace[on.piece].y);
    r.z_parameter = pace[on.piece].z + on.share * (pace[on.piece + 1].z - pace[on.piece].z);
    return r;
}

std::span<const double> Chamfered::rim_breaks() const {
    return chamfered_breaks;
}

double Chamfered::upper_z(double cut, double y) const {
    return outline_upper(chamfered(cut), y);
}

double Chamfered::lower_z(double cut, double y) const {
    return outline_lower(chamfered(cut), y);
}

double Chamfered::half_width(double cut, double z) const {
    return outline_half_width(chamfered(cut), z);
}

FreeOutline::FreeOutline(std::vector<document::OutlinePoint> points)
    : points_(std::move(points)), moments_(outline_moments(points_)) {
    const double piece = 2.0 / static_cast<double>(points_.size() - 1);
    for (std::size_t k = 1; k + 1 < points_.size(); ++k)
        breaks_.push_back(-1.0 + piece * static_cast<double>(k));
}

UnitMoments FreeOutline::moments(double) const {
    return moments_;
}

RimPoint FreeOutline::rim(double, double tau) const {
    return outline_rim(points_, tau);
}

std::span<const double> FreeOutline::rim_breaks() const {
    return breaks_;
}

double FreeOutline::upper_z(double, double y) const {
    return outline_upper(points_, y);
}

double FreeOutline::lower_z(double, double y) const {
    return outline_lower(points_, y);
}

double FreeOutline::half_width(double, double z) const {
    return outline_half_width(points_, z);
}

} // namespace evenfall::shape
