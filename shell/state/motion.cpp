#include "state/motion.hpp"

#include "evenfall.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::state {
namespace {

template <class T>
std::optional<T> value_of(Outcome<T> outcome) {
    if (!outcome) return std::nullopt;
    return std::move(outcome).value();
}

template <class T>
const T* address(const std::optional<T>& value) {
    return value ? &*value : nullptr;
}

Outcome<materials::WaterProperties> fishing(const document::Document& document) {
    return materials::water_properties(document.water.temperature_c, document.water.salinity_g_kg);
}

/// Downward speed at a point of the track, from its neighbours; zero at the first one.
double down_m_s(const fall::Track& track, std::size_t i) {
    if (i == 0) return 0.0;
    if (i + 1 == track.points.size()) return track.vertical_m_s;
    const fall::TrackPoint& before = track.points[i - 1];
    const fall::TrackPoint& after = track.points[i + 1];
    return (after.depth_m - before.depth_m) / (after.time_s - before.time_s);
}

} // namespace

bool WaterAnswerCache::follow(const Session& session) {
    if (revision_ != session.shown_revision()) {
        revision_ = session.shown_revision();
        descent_ = {};
        falls_ = {};
        track_ = {};
        sweep_ = {};
        afloat_ = {};
        hinges_ = {};
    }
    return session.evaluation().has_value();
}

const fall::FallingLure* WaterAnswerCache::descent(const Session& session) {
    if (!follow(session)) return nullptr;
    if (!descent_.known) {
        descent_.known = true;
        if (const auto water = fishing(session.document())) {
            const Evaluation& evaluation = *session.evaluation();
            descent_.value.emplace(evaluation.body, evaluation.ledger, session.document(), *water);
        }
    }
    return address(descent_.value);
}

const fall::SteadyFalls* WaterAnswerCache::falls(const Session& session) {
    const fall::FallingLure* lure = descent(session);
    if (lure == nullptr) return nullptr;
    if (!falls_.known) {
        falls_ = {true, lure->steady()};
        ++asked_;
    }
    return address(falls_.value);
}

const fall::Track* WaterAnswerCache::track(const Session& session) {
    const fall::FallingLure* lure = descent(session);
    if (lure == nullptr) return nullptr;
    const double depth_m = session.view.fall_depth_m;
    if (!track_.known || track_depth_m_ != depth_m) {
        fall::TrackRequest request;
        request.depth_m = depth_m;
        // A slow fall may take long in deep water; nobody watches more than this.
        request.time_limit_s = 300.0;
        track_ = {true, value_of(lure->track(request))};
        track_depth_m_ = depth_m;
        ++asked_;
    }
    return address(track_.value);
}

const fall::Sweep* WaterAnswerCache::sweep(const Session& session) {
    const fall::FallingLure* lure = descent(session);
    if (lure == nullptr) return nullptr;
    if (!sweep_.known) {
        sweep_ = {true, value_of(fall::water_sweep(*lure, session.document().water))};
        ++asked_;
    }
    return address(sweep_.value);
}

const afloat::FloatAnswers* WaterAnswerCache::afloat(const Session& session) {
    if (!follow(session)) return nullptr;
    if (!afloat_.known) {
        afloat_.known = true;
        ++asked_;
        if (const auto water = fishing(session.document())) {
            const Evaluation& evaluation = *session.evaluation();
            afloat_.value = value_of(afloat::float_answers(evaluation.body, evaluation.ledger,
                                                           session.document(), water->density_kg_m3));
        }
    }
    return address(afloat_.value);
}

const fall::HingeLoads* WaterAnswerCache::hinges(const Session& session) {
    const fall::SteadyFalls* ways = falls(session);
    if (ways == nullptr) return nullptr;
    if (!hinges_.known) {
        hinges_.known = true;
        ++asked_;
        const double pitch =
            ways->main ? ways->falls[*ways->main].pitch_rad : ways->hang_pitch_rad.value_or(0.0);
        if (const auto water = fishing(session.document())) {
            const Evaluation& evaluation = *session.evaluation();
            hinges_.value =
                fall::hinge_loads(evaluation.body, evaluation.ledger, session.document(), *water, pitch);
        }
    }
    return address(hinges_.value);
}

const joints::JointsAnswer* JointAnswerCache::of(const Session& session) {
    if (revision_ != session.shown_revision()) {
        revision_ = session.shown_revision();
        answer_.reset();
        if (session.evaluation())
            answer_ =
                value_of(evenfall::joints::joint_answers(session.document(), session.evaluation()->body));
    }
    return address(answer_);
}

Pose pose_at(const fall::Track& track, double time_s) {
    const auto& points = track.points;
    if (points.empty()) return {};
    const double held = std::clamp(time_s, points.front().time_s, points.back().time_s);
    const auto later = std::lower_bound(points.begin(), points.end(), held,
                                        [](const fall::TrackPoint& p, double t) { return p.time_s < t; });
    const auto i = static_cast<std::size_t>(later - points.begin());
    const auto pose_of = [&track](std::size_t k) {
        const fall::TrackPoint& p = track.points[k];
        return Pose{p.time_s, p.depth_m, p.forward_m, p.state.pitch_rad, down_m_s(track, k)};
    };
    if (i == 0) return pose_of(0);
    const Pose a = pose_of(i - 1);
    const Pose b = pose_of(i);
    const double t = (held - a.time_s) / (b.time_s - a.time_s);
    return {held, std::lerp(a.depth_m, b.depth_m, t), std::lerp(a.forward_m, b.forward_m, t),
            std::lerp(a.pitch_rad, b.pitch_rad, t), std::lerp(a.down_m_s, b.down_m_s, t)};
}

double duration_s(const fall::Track& track) {
    return track.points.empty() ? 0.0 : track.points.back().time_s;
}

} // namespace evenfall::shell::state
