#include "water/fall/descent.hpp"

#include "base/root.hpp"

// The stepper comes first: the header of dense output needs what it includes.
#include <boost/numeric/odeint/stepper/runge_kutta_dopri5.hpp>

#include <boost/numeric/odeint/stepper/dense_output_runge_kutta.hpp>
#include <boost/numeric/odeint/stepper/generation.hpp>

#include <algorithm>
#include <cmath>
#include <exception>
#include <string>

namespace evenfall::fall {

namespace {

/// along, across, pitching, pitch, depth, forward, lost energy.
using Vector = std::array<double, 7>;

MotionState state_of(const Vector& v) {
    return {v[0], v[1], v[2], v[3]};
}

TrackPoint point_of(double time_s, const Vector& v) {
    return {time_s, v[4], v[5], state_of(v), v[6]};
}

void check(Problems& problems, double value, double least, double most, const char* key,
           const Sentence& limit, const Sentence& sentence) {
    if (value >= least && value <= most) return;
    problems.push_back(
        {std::isfinite(value) ? ProblemCode::out_of_range : ProblemCode::not_a_number, key, limit, sentence});
}

Problems problems_of(const TrackRequest& r) {
    Problems out;
    const Sentence depth =
        at_least_text(0.001, units::Quantity::length) + " to " + at_most_text(100.0, units::Quantity::depth);
    check(out, r.depth_m, 0.001, 100.0, "/depth_m", depth, "The depth to reach must be from " + depth + ".");
    check(out, r.time_limit_s, 0.01, 3600.0, "/time_limit_s", "0.01 to 3600 s",
          "The time limit must be from 0.01 to 3600 s.");
    check(out, r.sample_s, r.time_limit_s / 20000.0, 3600.0, "/sample_s",
          "a 20 000th of the time limit to 3600 s",
          "The time between points must be at least a 20 000th of the time limit.");
    check(out, r.tolerance, 1e-12, 1e-3, "/tolerance", "1e-12 to 1e-3",
          "The solver's tolerance must be from 1e-12 to 1e-3.");
    check(out, r.start_pitch_rad.value_or(0.0), -3.2, 3.2, "/start_pitch_deg", "−180 to 180°",
          "The pitch at the start must be from −180 to 180°.");
    return out;
}

} // namespace

Outcome<Track> FallingLure::track(const TrackRequest& request) const {
    Problems refused = problems_of(request);
    if (!refused.empty()) return refused;
    const double kg = in_water_kg();
    if (!(std::isfinite(kg) && weights_.mass_kg > 0.0 && weights_.pitch_inertia_kg_m2 > 0.0) ||
        hull_->slices.empty()) {
        return Problem{ProblemCode::not_a_number, "", "", "A body without mass or wood has no way to go."};
    }
    const Motion equations = motion();
    const double way = kg < 0.0 ? -1.0 : 1.0;
    const auto rates = [&equations](const Vector& v, Vector& rate, double) {
        const Motion::Rates r = equations.rates_and_loss(state_of(v));
        const double sine = std::sin(v[3]);
        const double cosine = std::cos(v[3]);
        rate = {
            r.rate[0], r.rate[1], r.rate[2], v[2], -v[0] * sine + v[1] * cosine, v[0] * cosine + v[1] * sine,
            r.lost_w};
    };

    Track track;
    Vector v{};
    v[3] = request.start_pitch_rad.value_or(hang_pitch_rad().value_or(0.0));
    track.points.push_back(point_of(0.0, v));
    // The solver throws only when a step cannot be made small enough; the track then ends where it was.
    try {
        namespace odeint = boost::numeric::odeint;
        auto solver = odeint::make_dense_output(0.01 * request.tolerance, request.tolerance,
                                                odeint::runge_kutta_dopri5<Vector>());
        solver.initialize(v, 0.0, std::min(1e-3, request.time_limit_s));
        const auto depth_at = [&](double time) {
            Vector there{};
            solver.calc_state(time, there);
            return way * there[4] - request.depth_m;
        };
        std::size_t sample = 1;
        bool is_over = false;
        while (!is_over) {
            const auto [from, until] = solver.do_step(rates);
            double end = std::min(until, request.time_limit_s);
            const double left_before = depth_at(from);
            const double left_after = depth_at(end);
            if (left_before < 0.0 && left_after >= 0.0) {
                end = root_between(depth_at, from, end, left_before, left_after, {1e-10});
                track.reached_s = end;
            }
            is_over = track.reached_s.has_value() || end >= request.time_limit_s;
            for (double t; (t = static_cast<double>(sample) * request.sample_s) < end; ++sample) {
                solver.calc_state(t, v);
                track.points.push_back(point_of(t, v));
            }
            if (is_over) {
                solver.calc_state(end, v);
                track.points.push_back(point_of(end, v));
            }
        }
    } catch (const std::exception&) {
        return Problem{ProblemCode::out_of_range, "/tolerance", "1e-12 to 1e-3",
                       "The way down could not be followed to this tolerance."};
    }

    const TrackPoint& last = track.points.back();
    const double sine = std::sin(last.state.pitch_rad);
    const double cosine = std::cos(last.state.pitch_rad);
    track.forward_m = last.forward_m;
    track.vertical_m_s = -last.state.along_m_s * sine + last.state.across_m_s * cosine;
    if (const auto steady = main_fall(); steady && last.time_s > 0.0) {
        const double share = 1.0 - last.depth_m / steady->vertical_m_s / last.time_s;
        if (share >= 0.0) track.start_up_share = share;
    }
    return track;
}

} // namespace evenfall::fall
