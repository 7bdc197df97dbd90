#include "bench/uncertainty/posterior.hpp"
#include "bench/uncertainty/random.hpp"
#include "water/hang.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

namespace evenfall {

using bench::Finished;
using bench::Posterior;

namespace {

/// A square root of a covariance that may be singular after exact readings: PᵀL√D of its pivoted Cholesky
/// factors, with 0 for what rounding made negative.
Eigen::MatrixXd root_of(const Eigen::MatrixXd& covariance) {
    const Eigen::LDLT<Eigen::MatrixXd> factors(covariance);
    Eigen::MatrixXd root = factors.matrixL();
    root = (root * factors.vectorD().cwiseMax(0.0).cwiseSqrt().asDiagonal()).eval();
    return factors.transpositionsP().transpose() * root;
}

} // namespace

struct DrawRun::State {
    State(Posterior of, std::uint64_t seeded)
        : posterior(std::move(of)), finished(bench::finished(posterior)), seed(seeded),
          is_prior(posterior.fit.used.empty()) {
        if (!is_prior) root = root_of(posterior.covariance);
    }

    Posterior posterior;
    Finished finished;
    std::uint64_t seed;
    bool is_prior;        ///< no readings: the covariance is the unit matrix
    Eigen::MatrixXd root; ///< of the covariance: u = mean + root·z
    std::size_t count = 0;
    std::vector<double> mass_kg, in_water_kg, pitch_rad, fall_m_s;
    std::size_t floats = 0, rolls = 0, in_fall = 0, in_pitch = 0, in_both = 0;

    [[nodiscard]] Eigen::VectorXd inputs(std::uint64_t draw) const;
    void add(const Eigen::VectorXd& u);
};

Eigen::VectorXd DrawRun::State::inputs(std::uint64_t draw) const {
    bench::Random random(seed, draw);
    Eigen::VectorXd z(posterior.model->count());
    for (Eigen::Index i = 0; i < z.size(); ++i)
        z(i) = random.normal();
    if (is_prior) return posterior.mean + z;
    return posterior.mean + root.lazyProduct(z);
}

/// Evaluates the lure with these inputs and counts it.
void DrawRun::State::add(const Eigen::VectorXd& u) {
    const bench::Model& model = *posterior.model;
    const materials::WaterProperties& water = model.water().fishing;
    const document::Targets& targets = model.document().targets;
    const ledger::Sum sum = model.sum(Stage::rigged, -1, u);
    const double in_water = sum.in_water(water.density_kg_m3).kg;
    mass_kg.push_back(sum.mass.kg);
    in_water_kg.push_back(in_water);
    if (!(in_water > 0.0)) ++floats;

    const std::optional<double> pitch = water::hang(sum).pitch_rad;
    if (pitch)
        pitch_rad.push_back(*pitch);
    else
        ++rolls;
    const bool pitch_right = pitch_on_target(targets, pitch);

    bench::FallModel& falls = posterior.observer->falls(Stage::rigged, water);
    const std::optional<double> fall = falls.speed_m_s(sum, model.drag(u));
    if (fall) fall_m_s.push_back(*fall);
    const bool fall_right = targets.by == document::TargetBy::fall
                                ? fall_on_target(targets, fall)
                                : in_water >= finished.target.low_kg && in_water <= finished.target.high_kg;
    in_fall += fall_right ? 1u : 0u;
    in_pitch += pitch_right ? 1u : 0u;
    in_both += fall_right && pitch_right ? 1u : 0u;
}

namespace {

Quantiles spread_of(std::vector<double> values) {
    Quantiles s;
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
    s.median = at(0.5);
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
    Outcome<Posterior> posterior = bench::posterior_of(document);
    if (!posterior) return posterior.problems();
    return DrawRun(std::make_unique<State>(std::move(posterior).value(), seed));
}

void DrawRun::run(std::size_t more) {
    State& s = *state_;
    for (std::size_t n = 0; n < more; ++n, ++s.count)
        s.add(s.inputs(s.count));
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

Outcome<Draws> uncertainty_by_draws(const document::Document& document, std::size_t count,
                                    std::uint64_t seed) {
    Outcome<DrawRun> run = DrawRun::start(document, seed);
    if (!run) return run.problems();
    run->run(count);
    return run->result();
}

} // namespace evenfall
