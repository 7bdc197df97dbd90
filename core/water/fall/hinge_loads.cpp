#include "water/fall/hinge_loads.hpp"

#include "base/sentence.hpp"
#include "base/trade.hpp"
#include "body/hinge_place.hpp"
#include "ledger/fold.hpp"
#include "water/fall/hull.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::fall {

namespace {

constexpr double g = units::standard_gravity_m_s2;
constexpr double friction = 0.25;
constexpr double pin_radius_m = 0.6e-3;
constexpr double eye_radius_m = 1.5e-3;
constexpr double swing_share = 3e-4;
constexpr double slow_pull_m_s = 0.2;
constexpr double opposed_kg = 0.3e-3;
constexpr double nothing_n_m = 1e-9;

/// Horizontal distance aft of a point in the lure's axes when it is pitched.
struct Level {
    double sine, cosine;
    [[nodiscard]] double aft(const Vec3& at) const { return at.x * cosine + at.z * sine; }
};

/// Drag of a level fall aft of a place: ∑ and ∑·x over the strips, the whole being 1.
struct DragAft {
    double share = 0.0;
    double share_x_m = 0.0;
};

DragAft drag_aft(const HydroBody& hull, double x_m) {
    double whole = 0.0;
    DragAft aft;
    for (const HydroBody::Slice& s : hull.slices) {
        whole += s.pressure_m2;
        if (s.x_m < x_m) continue;
        aft.share += s.pressure_m2;
        aft.share_x_m += s.pressure_m2 * s.x_m;
    }
    if (whole > 0.0) {
        aft.share /= whole;
        aft.share_x_m /= whole;
    }
    return aft;
}

std::string name_of(const document::Document& document, std::size_t segment) {
    return segment < document.segment_names.size() ? document.segment_names[segment]
                                                   : "Segment " + std::to_string(segment + 1);
}

Sentence floats_or_sinks(double in_water_kg) {
    return (in_water_kg < 0.0 ? " floats by " : " sinks by ") + mass_text(std::abs(in_water_kg));
}

} // namespace

HingeLoads hinge_loads(const shape::Body& body, const ledger::Ledger& ledger,
                       const document::Document& document, const materials::WaterProperties& water,
                       double pitch_rad) {
    const ledger::StageSums stage_sums = ledger::stage_sums(ledger, body.segments.size());
    const double rho = water.density_kg_m3;
    const double in_water = stage_sums.total.in_water(rho).kg;
    const HydroBody h = hull(body);
    const Level level{std::sin(pitch_rad), std::cos(pitch_rad)};

    HingeLoads loads;
    for (const ledger::Sum& s : stage_sums.segments) {
        loads.segments.push_back(
            {s.in_water(rho).kg, g * s.mass.kg * (level.aft(s.g_m()) - level.aft(s.b_m()))});
    }
    for (std::size_t j = 0; j < body.joints.size() && j + 1 < stage_sums.segments.size(); ++j) {
        ledger::Sum aft;
        for (std::size_t s = j + 1; s < stage_sums.segments.size(); ++s)
            aft += stage_sums.segments[s];
        const double x = body.joints[j].at_m;
        const shape::Station station = body.lines->at(x);
        const double here = level.aft({x, 0.0, station.centre_z_m});
        const DragAft drag = drag_aft(h, x);

        JointLoad load;
        load.shear_n = g * (aft.in_water(rho).kg - in_water * drag.share);
        const double weights = aft.mass.kg * (level.aft(aft.g_m()) - here) -
                               rho * aft.displaced_m3 * (level.aft(aft.b_m()) - here);
        load.moment_n_m = g * (weights - in_water * (drag.share_x_m - drag.share * x) * level.cosine);
        const joints::HingePlace place = joints::hinge_place(document, body, static_cast<int>(j));
        load.eye_spacing_m = place.eye_spacing_m;
        if (load.eye_spacing_m > 0.0) load.eye_force_n = std::abs(load.moment_n_m) / load.eye_spacing_m;
        if (load.eye_spacing_m > 0.0 && std::abs(load.moment_n_m) > nothing_n_m) {
            load.sag_rad = std::copysign(std::atan(joints::play_per_eye_m(place.hinge) / load.eye_spacing_m),
                                         load.moment_n_m);
        }
        load.pin_friction_n_m =
            friction * (2.0 * load.eye_force_n * pin_radius_m + std::abs(load.shear_n) * eye_radius_m);
        const double length = body.lines->length_m();
        load.swings_from_m_s =
            std::sqrt(load.pin_friction_n_m / (0.5 * rho * length * length * length * swing_share));
        const double fore_kg = loads.segments[j].in_water_kg;
        const double aft_kg = loads.segments[j + 1].in_water_kg;
        const bool are_opposed =
            fore_kg * aft_kg < 0.0 && std::min(std::abs(fore_kg), std::abs(aft_kg)) >= opposed_kg;
        load.may_bind = are_opposed && load.swings_from_m_s > slow_pull_m_s;
        if (load.may_bind) {
            loads.warnings.push_back({ProblemCode::binds_joint, "/joints/" + std::to_string(j), "",
                                      name_of(document, j + 1) + floats_or_sinks(aft_kg) + " while " +
                                          name_of(document, j) + floats_or_sinks(fore_kg) +
                                          ": the eyes of joint " + std::to_string(j + 1) +
                                          " press on the pin and it may stick in a slow pull."});
        }
        loads.joints.push_back(load);
    }
    return loads;
}

} // namespace evenfall::fall
