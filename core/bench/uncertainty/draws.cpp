#include "bench/uncertainty/random.hpp"
#include "bench/uncertainty/standing.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

namespace evenfall {

using bench::Finished;
using bench::Standing;

struct DrawRun::State {
    Standing standing;
    Finished finished;
    std::uint64_t seed = 1;
    Eigen::MatrixXd root; ///< of the covariance: u = mean + root·z
    bool whole = false;   ///< no reading yet: the covariance is diagonal and needs no product
    std::size_t count = 0;
    std::vector<double> mass_kg, in_water_kg, pitch_rad, fall_m_s;
    std::size_t floats = 0, rolls = 0, in_fall = 0, in_pitch = 0, in_both = 0;
};

namespace {

/// A root of a covariance that may have lost rank to exact readings: PᵀL√D of its pivoted Cholesky factors,
/// what rounding made negative left out.
Eigen::MatrixXd root_of(const Eigen::MatrixXd& covariance) {
    const Eigen::LDLT<Eigen::MatrixXd> factors(covariance);
    Eigen::MatrixXd root = factors.matrixL();
    root = (root * factors.vectorD().cwiseMax(0.0).cwiseSqrt().asDiagonal()).eval();
    return factors.transpositionsP().transpose() * root;
}

Spread5 spread_of(std::vector<double> values) {
    Spread5 s;
    if (values.empty()) return s;
    std::sort(values.begin(), values.end());
    const auto at = [&](double share) {
        const double place = share * static_cast<double>(values.size() - 1);
        const auto below = static_cast<std::size_t>(place);
        const std::size_t above = std::min(below + 1, values.size() - 1);
        return values[below] + (place - static_cast<double>(below)) * (values[above] - values[below]);
    };
    s.low_95 = at(0.025);
    s.low_50 = at(0.25);
    s.middle = at(0.5);
    s.high_50 = at(0.75);
    s.high_95 = at(0.975);
    for (const double v : values)
        s.mean += v;
    s.mean /= static_cast<double>(values.size());
    for (const double v : values)
        s.sigma += (v - s.mean) * (v - s.mean);
    s.sigma = values.size() > 1 ? std::sqrt(s.sigma / static_cast<double>(values.size() - 1)) : 0.0;
    return s;
}

} // namespace

DrawRun::DrawRun(std::unique_ptr<State> state) : state_(std::move(state)) {}
DrawRun::DrawRun(DrawRun&&) noexcept = default;
DrawRun& DrawRun::operator=(DrawRun&&) noexcept = default;
DrawRun::~DrawRun() = default;

Outcome<DrawRun> DrawRun::start(const document::Document& document, std::uint64_t seed) {
    Outcome<Standing> standing = bench::stand(document);
    if (!standing) return standing.problems();
    auto state =
        std::make_unique<State>(State{std::move(standing).value(), {}, seed, {}, false, 0, {}, {}, {}, {}});
    state->finished = bench::finished(state->standing);
    state->whole = state->standing.update.used.empty();
    if (!state->whole) state->root = root_of(state->standing.covariance);
    return DrawRun(std::move(state));
}

void DrawRun::run(std::size_t more) {
    State& s = *state_;
    const bench::Model& model = *s.standing.model;
    const materials::WaterProperties& water = model.water().fishing;
    bench::FallModel& falls = s.standing.observer->falls(Stage::dressed, water);
    const document::Targets& targets = model.document().targets;
    const Eigen::Index k = model.count();
    Eigen::VectorXd z(k);
    Eigen::VectorXd u(k);
    std::vector<double> factors(static_cast<std::size_t>(k));
    for (std::size_t n = 0; n < more; ++n, ++s.count) {
        bench::Random random(s.seed, s.count);
        for (Eigen::Index i = 0; i < k; ++i)
            z(i) = random.normal();
        u = s.standing.u;
        if (s.whole)
            u += z;
        else
            u += s.root.lazyProduct(z);
        for (Eigen::Index i = 0; i < k; ++i)
            factors[static_cast<std::size_t>(i)] =
                bench::factor_of(model.inputs()[static_cast<std::size_t>(i)], u(i));
        const ledger::Sum sum = model.sum(Stage::dressed, -1, factors);
        const double in_water = sum.in_water_kg(water.density_kg_m3);
        s.mass_kg.push_back(sum.mass_kg);
        s.in_water_kg.push_back(in_water);
        const Vec3 arm = sum.b_m() - sum.g_m();
        bool pitch_right = false;
        if (arm.z > 0.0) {
            const double pitch = std::atan2(-arm.x, arm.z);
            s.pitch_rad.push_back(pitch);
            pitch_right = std::abs(pitch - targets.pitch_rad) <= targets.pitch_band_rad;
        } else {
            ++s.rolls;
        }
        const std::optional<double> fall = falls.speed_m_s(sum, model.drag(u));
        if (fall) s.fall_m_s.push_back(*fall);
        if (!(in_water > 0.0)) ++s.floats;
        const bool fall_right =
            targets.by == document::TargetBy::fall
                ? fall && std::abs(*fall / targets.fall_m_s - 1.0) <= targets.fall_band
                : in_water >= s.finished.asked.low_kg && in_water <= s.finished.asked.high_kg;
        s.in_fall += fall_right ? 1u : 0u;
        s.in_pitch += pitch_right ? 1u : 0u;
        s.in_both += fall_right && pitch_right ? 1u : 0u;
    }
}

std::size_t DrawRun::count() const {
    return state_->count;
}

Draws DrawRun::result() const {
    const State& s = *state_;
    Draws d;
    d.count = s.count;
    if (s.count == 0) return d;
    const auto share = [&](std::size_t part) {
        return static_cast<double>(part) / static_cast<double>(s.count);
    };
    d.floats = share(s.floats);
    d.rolls = share(s.rolls);
    d.chances = {share(s.in_fall), share(s.in_pitch), share(s.in_both)};
    d.mass_kg = spread_of(s.mass_kg);
    d.in_water_kg = spread_of(s.in_water_kg);
    d.pitch_rad = spread_of(s.pitch_rad);
    d.fall_m_s = spread_of(s.fall_m_s);
    return d;
}

Outcome<Draws> uncertainty_by_draws(const document::Document& document, std::size_t count, std::uint64_t seed) {
    Outcome<DrawRun> run = DrawRun::start(document, seed);
    if (!run) return run.problems();
    run->run(count);
    return run->result();
}

} // namespace evenfall
