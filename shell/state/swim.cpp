#include "state/swim.hpp"

#include <algorithm>
#include <chrono>
#include <cmath>

namespace evenfall::shell::state {
namespace {

using Clock = std::chrono::steady_clock;

/// Of a frame of 16 ms.
constexpr std::chrono::milliseconds slice{9};
/// Between two looks at the clock: some milliseconds on a tablet.
constexpr int steps_at_once = 250;

/// The document without what has no bearing on the swim.
std::string design_of(document::Document document) {
    document.name.clear();
    document.note.clear();
    document.log.clear();
    document.board.reset();
    document.targets = {};
    return write_document(document);
}

} // namespace

void SwimAnswerCache::follow(const Session& session) {
    if (revision_ == session.shown_revision() || (session.unfinished() && revision_)) return;
    revision_ = session.shown_revision();
    std::string design = design_of(session.document());
    if (design == design_) return;
    design_ = std::move(design);
    if (run_ && run_->done()) before_ = answer_->draws;
    asked_ = false;
    refusal_.clear();
    run_.reset();
    answer_.reset();
    change_.reset();
}

bool SwimAnswerCache::work(const Session& session) {
    follow(session);
    if (!session.evaluation() || session.unfinished()) return false;
    if (!asked_) {
        asked_ = true;
        const auto chain = swim::chain_of(session.document(), *session.evaluation());
        if (chain.ok()) {
            run_.emplace(*chain);
        } else {
            refusal_ = chain.problems();
        }
    }
    if (!run_ || run_->done()) return false;
    const auto end = Clock::now() + slice;
    const int known = run_->draws_done();
    do
        run_->work(steps_at_once);
    while (!run_->done() && Clock::now() < end);
    if (run_->draws_done() > known || run_->done()) answer_ = run_->answer();
    return !run_->done();
}

bool SwimAnswerCache::can_tell_changes(const Session& session) {
    follow(session);
    return before_.has_value() || (run_ && run_->done());
}

std::optional<bench::KnownBeats> SwimAnswerCache::known_beats(const Session& session) const {
    if (!answer_ || !answer_->beats_per_m) return std::nullopt;
    return bench::known_beats(session.document(), *answer_->beats_per_m);
}

std::optional<double> SwimAnswerCache::foretold_per_m() const {
    if (!run_ || !run_->done() || !answer_->beats_per_m) return std::nullopt;
    return answer_->beats_per_m->mid;
}

const swim::Change* SwimAnswerCache::change() {
    if (!before_ || !run_ || !run_->done()) return nullptr;
    if (!change_) change_ = swim::compare(*before_, answer_->draws);
    return &*change_;
}

std::vector<joints::SegmentPose> segments_at(const swim::Wave& wave, double beat) {
    std::vector<joints::SegmentPose> segments;
    if (wave.poses.empty()) return segments;
    const double at = (beat - std::floor(beat)) * static_cast<double>(wave.poses.size());
    const auto first = std::min(static_cast<std::size_t>(at), wave.poses.size() - 1);
    const swim::Wave::Pose& before = wave.poses[first];
    const swim::Wave::Pose& after = wave.poses[(first + 1) % wave.poses.size()];
    const double part = at - static_cast<double>(first);
    double x_m = wave.x_m.empty() ? 0.0 : wave.x_m.front();
    double y_m = std::lerp(before.y_m, after.y_m, part);
    for (std::size_t i = 0; i < wave.x_m.size(); ++i) {
        const double heading = std::lerp(before.heading_rad[i], after.heading_rad[i], part);
        const double along = std::cos(heading);
        const double across = std::sin(heading);
        segments.push_back({heading, x_m - along * wave.x_m[i], y_m - across * wave.x_m[i]});
        if (i + 1 == wave.x_m.size()) break;
        const double length_m = wave.x_m[i + 1] - wave.x_m[i];
        x_m += along * length_m;
        y_m += across * length_m;
    }
    return segments;
}

} // namespace evenfall::shell::state
