#include "bench/uncertainty/posterior.hpp"
#include "ledger/hung_on.hpp"

#include <Eigen/Cholesky>
#include <algorithm>
#include <cmath>

namespace evenfall::bench {

namespace {

using document::ReadingKind;

/// What might be read, linear in the inputs: one reading, or several that are taken together.
struct Candidate {
    NextReading of;
    Eigen::MatrixXd slope; ///< reading by input
    Eigen::VectorXd sigma; ///< in the unit of the slope

    void also(const Eigen::VectorXd& of_another, double its_sigma) {
        const Eigen::Index row = slope.rows();
        slope.conservativeResize(row + 1, of_another.size());
        slope.row(row) = of_another.transpose();
        sigma.conservativeResize(row + 1);
        sigma(row) = its_sigma;
    }
};

Candidate one_reading(ReadingKind kind, Stage stage, bool with_all, const Eigen::VectorXd& slope,
                      double sigma, double reading_sigma) {
    Candidate c;
    c.of.kind = kind;
    c.of.stage = stage;
    c.of.with_all = with_all;
    c.of.sigma = reading_sigma;
    c.also(slope, sigma);
    return c;
}

/// The covariance of the finished lure's figures after it.
FigureCovariance covariance_after(const Posterior& p, const Finished& f, const Candidate& c) {
    const Eigen::MatrixXd with_inputs = p.covariance.lazyProduct(c.slope.transpose());
    // In units of each reading's sigma: grams and radians become comparable.
    const Eigen::VectorXd scale = c.sigma.cwiseInverse();
    const Eigen::MatrixXd variance =
        scale.asDiagonal() * c.slope.lazyProduct(with_inputs) * scale.asDiagonal() +
        Eigen::MatrixXd::Identity(c.sigma.size(), c.sigma.size());
    const Eigen::MatrixXd with_figures = f.slopes.lazyProduct(with_inputs) * scale.asDiagonal();
    const Eigen::MatrixXd solved = variance.ldlt().solve(with_figures.transpose());
    FigureCovariance figures = covariance_of_figures(p, f);
    figures -= with_figures.lazyProduct(solved);
    return figures;
}

/// The lure as it would be read: at a stage, as it is then or with all of the rigged lure hung on.
struct State {
    Stage stage;
    bool with_all = false;
};

bool is_weighed_dry(const Posterior& p, State at) {
    const auto& log = p.model->document().log;
    return std::any_of(log.begin(), log.end(), [&](const document::Reading& r) {
        return !r.excluded && r.kind == ReadingKind::dry_weight && r.stage == at.stage && !r.segment &&
               r.with == (at.with_all ? document::all_hung_on() : document::HungList{}) &&
               document::lure_of(r) == p.lure;
    });
}

/// A board a little larger than the lure.
void add_block(std::vector<Candidate>& all, Posterior& p) {
    document::Reading board;
    board.kind = ReadingKind::board;
    board.length_m = 0.2;
    board.width_m = 0.03;
    board.height_m = 0.05;
    if (const auto wood = p.observer->observe(board, p.mean))
        board.mass_kg = 0.2 * 0.03 * 0.05 * wood->predicted;
    if (const auto o = p.observer->observe(board, p.mean))
        all.push_back(one_reading(ReadingKind::board, Stage::carved, false, o->slope, o->sigma, o->sigma));
}

bool has_weighed_segments(const Posterior& p, Stage stage) {
    const auto& log = p.model->document().log;
    return std::any_of(log.begin(), log.end(), [&](const document::Reading& r) {
        return !r.excluded && r.segment && r.stage == stage && document::lure_of(r) == p.lure;
    });
}

/// Every segment alone, before the lead is in: dry, and dry with a caliper across its width and its height.
/// Bare wood does not go into water for it.
void add_segments(std::vector<Candidate>& all, Posterior& p) {
    const auto& segments = p.model->evaluation().body.segments;
    if (p.stage >= Stage::leaded || has_weighed_segments(p, p.stage)) return;
    const bool several = segments.size() > 1;
    const double rho = p.model->water().tub.density_kg_m3;
    Candidate dry{{ReadingKind::dry_weight, false, false, several, p.stage, scale_sigma_kg}, {}, {}};
    Candidate measured{{ReadingKind::caliper, true, false, several, p.stage, caliper_sigma_m}, {}, {}};
    for (std::size_t s = 0; s < segments.size(); ++s) {
        const Balance& b = p.observer->balance(p.stage, several ? static_cast<int>(s) : -1, p.mean, rho);
        dry.also(b.mass_kg.slope, scale_sigma_kg);
        measured.also(b.mass_kg.slope, scale_sigma_kg);
        for (const auto side : {&document::Reading::width_m, &document::Reading::height_m}) {
            document::Reading r;
            r.kind = ReadingKind::caliper;
            r.stage = p.stage;
            r.x_m = segments[s].centroid_m.x;
            r.*side = 0.02; // whatever it reads
            if (const auto o = p.observer->observe(r, p.mean)) measured.also(o->slope, o->sigma);
        }
    }
    if (several) all.push_back(std::move(dry));
    all.push_back(std::move(measured));
}

void add_fall(std::vector<Candidate>& all, const Posterior& p, State at, Observer& observer,
              const Balance& balance) {
    constexpr double depth_m = 0.5;
    FallModel& falls = observer.falls(at.stage, p.model->water().tub);
    const auto fall = p.model->fall(falls, balance, p.mean);
    if (!fall) return;
    const double speed = fall->speed_m_s.value;
    const double time = time_from_rest_s(
        depth_m, speed, falls.acceleration_length_m(balance.sum, balance.in_water_kg.value, speed));
    const double sigma_s = std::hypot(stopwatch_sigma_s, fall_scatter * time);
    // Speed is inversely proportional to time: the acceleration length does not depend on the weight.
    all.push_back(one_reading(ReadingKind::tub_fall, at.stage, at.with_all, fall->speed_m_s.slope,
                              speed * sigma_s / time, sigma_s));
}

void add_at(std::vector<Candidate>& all, Posterior& p, State at) {
    const Model& model = at.with_all ? p.model->with_all() : *p.model;
    Observer& observer = at.with_all ? p.observer->with_all() : *p.observer;
    const double rho = model.water().tub.density_kg_m3;
    const Balance& b = observer.balance(at.stage, -1, p.mean, rho);
    const auto add = [&](ReadingKind kind, const Eigen::VectorXd& slope, double sigma) {
        all.push_back(one_reading(kind, at.stage, at.with_all, slope, sigma, sigma));
    };
    add(ReadingKind::dry_weight, b.mass_kg.slope, scale_sigma_kg);
    if (at.stage < Stage::sealed) return; // bare wood soaks up water
    add(ReadingKind::held_under, rho * b.displaced_m3.slope, held_under_sigma_kg);
    if (!is_weighed_dry(p, at)) {
        Candidate both = all.back();
        both.of.with_dry_weight = true;
        both.also(b.mass_kg.slope, scale_sigma_kg);
        all.push_back(std::move(both));
    }
    if (b.in_water_kg.value > 0.0) add(ReadingKind::hung_in_water, b.in_water_kg.slope, hung_sigma_kg);
    if (const auto hang = Model::hang(b)) add(ReadingKind::hang_angle, hang->slope, angle_sigma_rad);
    if (b.in_water_kg.value > 0.0) add_fall(all, p, at, observer, b);
}

/// Where the lure can still be read before it is finished.
std::vector<State> states_to_come(const Posterior& p) {
    std::vector<State> states{{p.stage}};
    if (p.stage < Stage::sealed) states.push_back({Stage::sealed});
    if (p.stage == Stage::clear_coated) states.push_back({Stage::rigged});
    if (!ledger::has_rigging(p.model->ledger())) return states;
    for (std::size_t i = 0, count = states.size(); i < count; ++i) {
        if (states[i].stage >= Stage::leaded && states[i].stage < Stage::rigged)
            states.push_back({states[i].stage, true});
    }
    return states;
}

} // namespace

std::vector<NextReading> next_readings(Posterior& p, const Finished& f, double chance_now) {
    std::vector<Candidate> candidates;
    if (p.stage == Stage::carved && !p.has_readings) add_block(candidates, p);
    add_segments(candidates, p);
    for (const State& at : states_to_come(p))
        add_at(candidates, p, at);

    std::vector<NextReading> next;
    for (const Candidate& c : candidates) {
        const FigureCovariance covariance = covariance_after(p, f, c);
        const Forecast forecast{f.forecast.mean,
                                covariance.topLeftCorner<figure::of_chance, figure::of_chance>(),
                                f.forecast.hangs};
        const double chance = chances_after_correction(forecast, f.target).both;
        const double in_water_variance = covariance(figure::in_water, figure::in_water);
        NextReading& n = next.emplace_back(c.of);
        n.in_water_sigma_kg = std::sqrt(std::max(in_water_variance, 0.0));
        n.chance = chance;
        n.gain = chance - chance_now;
    }
    std::stable_sort(next.begin(), next.end(),
                     [](const NextReading& a, const NextReading& b) { return a.chance > b.chance; });
    return next;
}

} // namespace evenfall::bench
