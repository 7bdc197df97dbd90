#include "water/afloat/state.hpp"

#include "base/trade.hpp"

#include <cmath>

namespace evenfall::afloat {

FloatState state_at(const Afloat& afloat, const Vec3& up, double depth_m) {
    FloatState s;
    s.up = up;
    s.depth_m = depth_m;
    s.cut = afloat.hull->immersed(up, depth_m);
    const double wanted = afloat.wanted_m3();
    const Immersion& c = s.cut;
    s.energy = wanted * (dot(up, afloat.g_m) - depth_m) + depth_m * c.volume_m3 - dot(up, c.moment_m4);
    s.over = c.volume_m3 - wanted;
    const Vec3 slope = wanted * afloat.g_m - c.moment_m4;
    s.turn = {dot(slope, c.level.along), dot(slope, c.level.across)};
    const double lift = -dot(slope, up);
    s.stiff_along = c.own_along_m4() + lift;
    s.stiff_across = c.own_across_m4() + lift;
    s.stiff_mixed = c.own_mixed_m4();
    return s;
}

double energy_j(const Afloat& afloat, const Vec3& up, double depth_m) {
    return afloat.water_kg_m3 * units::standard_gravity_m_s2 * state_at(afloat, up, depth_m).energy;
}

Posture posture_of(const Vec3& up) {
    if (std::abs(up.x) > std::abs(up.y) && std::abs(up.x) > std::abs(up.z)) {
        return up.x < 0.0 ? Posture::nose_up : Posture::nose_down;
    }
    if (std::abs(up.y) > std::abs(up.z)) return Posture::on_its_side;
    return up.z > 0.0 ? Posture::upright : Posture::on_its_back;
}

Rest rest_at(const Afloat& afloat, const FloatState& s) {
    const FloatingHull& hull = *afloat.hull;
    const double wanted = afloat.wanted_m3();
    Rest r;
    r.up = s.up;
    r.depth_m = s.depth_m;
    const Attitude a = attitude_of(s.up);
    r.pitch_rad = a.pitch_rad;
    r.heel_rad = a.heel_rad;
    r.posture = posture_of(s.up);

    const Span wood = hull.wood_span(s.up);
    r.draft_fore_m = s.depth_m - hull.end_span(s.up, 0).low_m;
    r.draft_aft_m = s.depth_m - hull.end_span(s.up, 1).low_m;
    r.deepest_m = s.depth_m - wood.low_m;
    r.freeboard_m = wood.high_m - s.depth_m;
    r.volume_out = 1.0 - wanted / hull.volume_m3();
    r.back_line_out = hull.back_line_out(s.up, s.depth_m);
    constexpr double least_slope = 1e-3; // below 0.06° to the view the crossing is metres away
    if (std::abs(s.up.z) > least_slope) {
        r.nose_waterline_z_m = (s.depth_m - s.up.x * hull.nose_x_m()) / s.up.z;
        r.tail_waterline_z_m = (s.depth_m - s.up.x * hull.tail_x_m()) / s.up.z;
    }

    r.gm_transverse_m = s.stiff_across / wanted;
    r.gm_longitudinal_m = s.stiff_along / wanted;
    const double middle = 0.5 * (s.stiff_along + s.stiff_across);
    r.least_gm_m = (middle - std::hypot(0.5 * (s.stiff_along - s.stiff_across), s.stiff_mixed)) / wanted;
    r.righting_nm_per_deg =
        afloat.mass_kg * units::standard_gravity_m_s2 * r.gm_transverse_m * units::degree_rad;
    r.energy_j = afloat.water_kg_m3 * units::standard_gravity_m_s2 * s.energy;
    return r;
}

} // namespace evenfall::afloat
