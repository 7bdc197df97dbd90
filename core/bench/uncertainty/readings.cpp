#include "bench/uncertainty/readings.hpp"

#include "base/root.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "materials/solids.hpp"
#include "materials/water_properties.hpp"
#include "water/afloat/float_answers.hpp"
#include "water/afloat/rest.hpp"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace evenfall {

double time_from_rest_s(double depth_m, double speed_m_s, double gathering_m) {
    // M·dv/dt = W − k·v² gives depth = ℓ·ln cosh(v·t/ℓ), ℓ = M/k (own derivation; any textbook on fall with
    // drag squared). acosh(eˣ) = x + ln(1 + √(1 − e^(−2x))), which does not overflow.
    const double x = depth_m / gathering_m;
    return gathering_m / speed_m_s * (x + std::log1p(std::sqrt(-std::expm1(-2.0 * x))));
}

} // namespace evenfall

namespace evenfall::bench {

using document::Reading;
using document::ReadingKind;

namespace {

double block_density(const Reading& r) {
    const double volume = r.length_m.value_or(0.0) * r.width_m.value_or(0.0) * r.height_m.value_or(0.0);
    return volume > 0.0 ? r.mass_kg.value_or(0.0) / volume : 0.0;
}

} // namespace

double clip_share(const Reading& r, double water_kg_m3) {
    constexpr double least = 0.01;
    const materials::Solid* solid =
        r.clip_material.empty() ? nullptr : materials::find_solid(r.clip_material);
    const double share = solid == nullptr ? 1.0 : 1.0 - water_kg_m3 / solid->density_kg_m3.value;
    return std::copysign(std::max(std::abs(share), least), share);
}

double own_sigma(const Reading& r) {
    switch (r.kind) {
    case ReadingKind::dry_weight:
        return r.mass_sigma_kg.value_or(scale_sigma_kg);
    case ReadingKind::held_under:
        return r.mass_sigma_kg.value_or(held_under_sigma_kg);
    case ReadingKind::hung_in_water:
        return r.mass_sigma_kg.value_or(hung_sigma_kg);
    case ReadingKind::just_hangs:
        return r.mass_sigma_kg.value_or(clip_sigma_kg);
    case ReadingKind::tub_fall:
        return r.time_sigma_s.value_or(std::hypot(stopwatch_sigma_s, fall_scatter * r.time_s.value_or(0.0)));
    case ReadingKind::floats_showing:
        return r.showing_sigma_m.value_or(showing_sigma_m);
    case ReadingKind::hang_angle:
        return r.angle_sigma_rad.value_or(angle_sigma_rad);
    case ReadingKind::block: {
        double square = block_scatter * block_scatter;
        for (const auto& side : {r.length_m, r.width_m, r.height_m}) {
            if (side) square += (block_side_sigma_m / *side) * (block_side_sigma_m / *side);
        }
        if (r.mass_kg) square += std::pow(r.mass_sigma_kg.value_or(scale_sigma_kg) / *r.mass_kg, 2);
        return block_density(r) * std::sqrt(square);
    }
    }
    return 1.0;
}

double main_number(const Reading& r) {
    switch (r.kind) {
    case ReadingKind::dry_weight:
    case ReadingKind::held_under:
    case ReadingKind::hung_in_water:
        return r.mass_kg.value_or(0.0) - r.holder_kg.value_or(0.0);
    case ReadingKind::just_hangs:
        return r.mass_kg.value_or(0.0);
    case ReadingKind::block:
        return block_density(r);
    case ReadingKind::tub_fall:
        return r.time_s.value_or(0.0);
    case ReadingKind::floats_showing:
        return r.showing_m.value_or(0.0);
    case ReadingKind::hang_angle:
        return r.angle_rad.value_or(0.0);
    }
    return 0.0;
}

std::optional<double> in_water_for_time(FallModel& falls, const ledger::Sum& sum, double drag, double depth_m,
                                        double time_s) {
    // The gathering length hardly moves with the weight: guess, and go round until it stays.
    double gathering = 0.15;
    std::optional<double> kg;
    for (int i = 0; i < 12; ++i) {
        const double speed = time_from_rest_s(depth_m, 1.0, gathering) / time_s;
        kg = falls.in_water_for(sum, drag, speed);
        if (!kg || !(*kg > 0.0)) return std::nullopt;
        const double next = falls.gathering_m(sum, *kg, speed);
        const bool settled = std::abs(next - gathering) < 1e-9 * gathering;
        gathering = next;
        if (settled) break;
    }
    return kg;
}

bool Observer::Key::operator<(const Key& o) const {
    return std::tie(stage, density, viscosity) < std::tie(o.stage, o.density, o.viscosity);
}

materials::WaterProperties Observer::tub(const Reading& r) const {
    if (!r.temperature_c) return model_.water().tub;
    const auto water =
        materials::water_properties(*r.temperature_c, model_.document().tub.salinity_g_kg, "/log");
    return water ? *water : model_.water().tub;
}

FallModel& Observer::falls(Stage stage, const materials::WaterProperties& water) {
    const Key key{stage, water.density_kg_m3, water.viscosity_pa_s};
    const auto at = falls_.find(key);
    return at != falls_.end() ? at->second
                              : falls_.emplace(key, model_.fall_model(stage, water)).first->second;
}

const afloat::Hull& Observer::hull(Stage stage) {
    const auto at = hulls_.find(stage);
    if (at != hulls_.end()) return at->second;
    ledger::Ledger lines;
    for (const ledger::Line& line : model_.evaluation().ledger) {
        if (line.stage <= stage) lines.push_back(line);
    }
    return hulls_.try_emplace(stage, model_.evaluation().body, lines, model_.document()).first->second;
}

std::optional<double> Observer::in_water_for_showing(Stage stage, const ledger::Sum& sum, double water_kg_m3,
                                                     double showing_m) {
    const afloat::Hull& floating = hull(stage);
    const Vec3 g = sum.g_m();
    const double all_of_it = water_kg_m3 * floating.volume_m3();
    bool lost = false; // no upright rest on the way
    const auto more_than_read = [&](double in_water_kg) {
        const auto rest = afloat::upright_rest({&floating, all_of_it + in_water_kg, g, water_kg_m3});
        lost = lost || !rest;
        return rest ? rest->freeboard_m - showing_m : 0.0;
    };
    const double heavy = -1e-6 * all_of_it;
    const double at_heavy = -showing_m; // awash nothing shows; there is nothing steady to be looked at there
    if (at_heavy >= 0.0) return heavy;
    // The lighter, the more shows: between awash and nearly all of it dry; or more than half of it, where so
    // light a lure has no upright rest. Lost on both ways, the reading says nothing.
    for (const double share : {-0.98, -0.6}) {
        lost = false;
        const double light = share * all_of_it;
        const double at_light = more_than_read(light);
        if (lost) continue;
        if (at_light < 0.0) return std::nullopt; // no weight shows more than that
        const double kg = root_between(more_than_read, light, heavy, at_light, at_heavy, {1e-12 * all_of_it});
        if (!lost) return kg;
    }
    return std::nullopt;
}

std::optional<Observation> Observer::observe(const Reading& r, const Eigen::VectorXd& u) {
    const int segment = r.segment.value_or(-1);
    const materials::WaterProperties water = tub(r);
    const Trim t = model_.trim(r.stage, segment, u, water.density_kg_m3);
    Observation o;
    o.sigma = own_sigma(r);
    o.read = main_number(r);
    switch (r.kind) {
    case ReadingKind::dry_weight: {
        const double on_mass = 1.0 + air_kg_m3 / scale_weights_kg_m3;
        o.value = on_mass * t.mass_kg.value - air_kg_m3 * t.displaced_m3.value;
        o.slope = on_mass * t.mass_kg.slope - air_kg_m3 * t.displaced_m3.slope;
        return o;
    }
    case ReadingKind::held_under:
        o.value = water.density_kg_m3 * t.displaced_m3.value;
        o.slope = water.density_kg_m3 * t.displaced_m3.slope;
        return o;
    case ReadingKind::hung_in_water:
        o.value = t.in_water_kg.value;
        o.slope = t.in_water_kg.slope;
        return o;
    case ReadingKind::block: {
        o.slope = Eigen::VectorXd::Zero(model_.count());
        // The ledger's own wood: mass over volume of the solid segments, by its density and its moisture.
        double mass = 0.0;
        double volume = 0.0;
        for (const ledger::Line& line : model_.evaluation().ledger) {
            if (line.kind != ledger::Kind::wood) continue;
            mass += line.mass_kg;
            volume += line.displaced_m3;
        }
        const auto is_of_wood = [&](Eigen::Index i) {
            const document::Cause cause = model_.inputs()[static_cast<std::size_t>(i)].cause;
            return cause == document::Cause::wood_density || cause == document::Cause::moisture;
        };
        double factor = 1.0;
        bool any = false;
        for (Eigen::Index i = 0; i < model_.count(); ++i) {
            if (!is_of_wood(i)) continue;
            any = true;
            factor *= factor_of(model_.inputs()[static_cast<std::size_t>(i)], u(i));
        }
        if (!any) return std::nullopt;
        o.value = mass / volume * factor;
        for (Eigen::Index i = 0; i < model_.count(); ++i) {
            const Input& input = model_.inputs()[static_cast<std::size_t>(i)];
            if (is_of_wood(i)) o.slope(i) = o.value * factor_slope_of(input, u(i)) / factor_of(input, u(i));
        }
        o.read += air_kg_m3 * (1.0 - o.read / scale_weights_kg_m3);
        return o;
    }
    case ReadingKind::just_hangs:
        o.read *= -clip_share(r, water.density_kg_m3);
        o.sigma *= std::abs(clip_share(r, water.density_kg_m3));
        o.value = t.in_water_kg.value;
        o.slope = t.in_water_kg.slope;
        return o;
    case ReadingKind::tub_fall: {
        FallModel& model = falls(r.stage, water);
        const double drag = model_.drag(u);
        const double depth = r.depth_m.value_or(0.5);
        const auto kg = in_water_for_time(model, t.sum, drag, depth, o.read);
        if (!kg) return std::nullopt;
        ledger::Sum there = t.sum;
        const double extra = *kg - t.in_water_kg.value;
        there.mass_kg += extra;
        there.mass_moment_kg_m += extra * t.sum.g_m();
        const auto s = model.slopes(there, drag);
        if (!s || !(s->per_kg > 0.0)) return std::nullopt;
        // Time is a function of speed v and gathering length ℓ, and ℓ goes as v²/weight: how it moves with
        // each.
        const double v = s->speed_m_s;
        const double gathering = model.gathering_m(t.sum, *kg, v);
        constexpr double step = 1e-5;
        const double per_speed = (time_from_rest_s(depth, v * (1.0 + step), gathering * (1.0 + 2.0 * step)) -
                                  time_from_rest_s(depth, v, gathering)) /
                                 (v * step);
        const double per_log_gathering =
            (time_from_rest_s(depth, v, gathering * (1.0 + step)) - time_from_rest_s(depth, v, gathering)) /
            step;
        const double per_kg = per_speed * s->per_kg - per_log_gathering / *kg;
        o.value = t.in_water_kg.value;
        o.slope = t.in_water_kg.slope;
        o.read = *kg;
        o.sigma /= std::abs(per_kg);
        // At the time that was read, the weight asked for moves with drag and with where G lies.
        o.slope += per_speed / per_kg * (s->per_aft_m * t.aft_m.slope + s->per_below_m * t.plumb_m.slope);
        o.slope(model_.count() - 1) += per_speed / per_kg * s->per_log_drag * model_.inputs().back().relative;
        return o;
    }
    case ReadingKind::floats_showing: {
        const auto kg = in_water_for_showing(r.stage, t.sum, water.density_kg_m3, o.read);
        const auto lighter =
            in_water_for_showing(r.stage, t.sum, water.density_kg_m3, o.read + 0.1 * o.sigma);
        // Where the showing leaps, a tenth of its spread is no weight at all, and the reading would be
        // without any doubt.
        if (!kg || !lighter || !(*lighter < *kg)) return std::nullopt;
        o.sigma *= std::abs(*lighter - *kg) / (0.1 * o.sigma);
        o.read = *kg;
        o.value = t.in_water_kg.value;
        o.slope = t.in_water_kg.slope;
        return o;
    }
    case ReadingKind::hang_angle: {
        const auto hang = Model::hang(t);
        if (!hang) return std::nullopt;
        o.value = hang->value;
        o.slope = hang->slope;
        return o;
    }
    }
    return std::nullopt;
}

} // namespace evenfall::bench
