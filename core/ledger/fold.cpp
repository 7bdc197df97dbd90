#include "ledger/fold.hpp"

#include <cmath>

namespace evenfall::ledger {

Sum& Sum::operator+=(const Line& line) {
    mass += Mass{line.mass_kg};
    displaced_m3 += line.displaced_m3;
    mass_moment_kg_m += line.mass_kg * line.mass_at_m();
    displaced_moment_m4 += line.displaced_m3 * line.at_m;
    return *this;
}

Sum& Sum::operator+=(const Sum& other) {
    mass += other.mass;
    displaced_m3 += other.displaced_m3;
    mass_moment_kg_m += other.mass_moment_kg_m;
    displaced_moment_m4 += other.displaced_moment_m4;
    return *this;
}

Sum Sum::scaled(double mass_factor, double displaced_factor) const {
    return {mass_factor * mass, displaced_factor * displaced_m3, mass_factor * mass_moment_kg_m,
            displaced_factor * displaced_moment_m4};
}

Vec3 Sum::g_m() const {
    return mass.kg != 0.0 ? mass_moment_kg_m / mass.kg : Vec3{};
}

Vec3 Sum::b_m() const {
    return displaced_m3 != 0.0 ? displaced_moment_m4 / displaced_m3 : Vec3{};
}

StageSums stage_sums(std::span<const Line> lines, std::size_t segments) {
    StageSums f;
    f.segments.resize(segments);
    for (const Line& line : lines) {
        f.through[static_cast<std::size_t>(line.stage)] += line;
        const auto s = static_cast<std::size_t>(line.segment);
        if (s < segments) f.segments[s] += line;
    }
    for (std::size_t s = 1; s < f.through.size(); ++s) {
        Sum sum = f.through[s - 1];
        sum += f.through[s];
        f.through[s] = sum;
    }
    f.total = f.through.back();
    return f;
}

namespace {

/// Signed steps of one standard deviation for one cause and group, by the stage that adds them.
struct SigmaStep {
    Cause cause = Cause::none;
    int group = 0;
    std::array<SumSigma, stage_count> at;
};

SigmaStep& step_of(std::vector<SigmaStep>& steps, const Variation& spread) {
    for (SigmaStep& step : steps) {
        if (step.cause == spread.cause && step.group == spread.group) return step;
    }
    steps.push_back({spread.cause, spread.group, {}});
    return steps.back();
}

} // namespace

std::array<SumSigma, stage_count> sigmas(std::span<const Line> lines, double water_kg_m3) {
    std::vector<SigmaStep> steps;
    steps.reserve(lines.size());
    for (const Line& line : lines) {
        for (const Variation& spread : line.spreads) {
            if (spread.cause == Cause::none || spread.relative == 0.0) continue;
            const double relative = spread.share * spread.relative;
            const Mass mass{spread.moves_mass ? relative * line.mass_kg : 0.0};
            const double volume = spread.moves_volume ? relative * line.displaced_m3 : 0.0;
            SumSigma& at = step_of(steps, spread).at[static_cast<std::size_t>(line.stage)];
            at.mass += mass;
            at.in_water += mass - DisplacedMass{water_kg_m3 * volume};
        }
    }
    std::array<SumSigma, stage_count> sigmas{};
    struct Squares {
        double mass = 0.0;
        double in_water = 0.0;
    };
    std::array<Squares, stage_count> squares{};
    for (const SigmaStep& step : steps) {
        SumSigma reached;
        for (std::size_t s = 0; s < squares.size(); ++s) {
            reached.mass += step.at[s].mass;
            reached.in_water += step.at[s].in_water;
            squares[s].mass += reached.mass.kg * reached.mass.kg;
            squares[s].in_water += reached.in_water.kg * reached.in_water.kg;
        }
    }
    for (std::size_t s = 0; s < sigmas.size(); ++s)
        sigmas[s] = {{std::sqrt(squares[s].mass)}, {std::sqrt(squares[s].in_water)}};
    return sigmas;
}

Inertia inertia_about(std::span<const Line> lines, Stage stage, const Vec3& point_m) {
    Inertia sum;
    for (const Line& line : lines) {
        if (line.stage > stage) continue;
        sum += line.own_kg_m2;
        sum += point_inertia(line.mass_kg, line.mass_at_m() - point_m);
    }
    return sum;
}

} // namespace evenfall::ledger
