#include "state/bench.hpp"

#include "state/edits.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::shell::state {
namespace {

using document::Reading;
using document::ReadingKind;

/// For one frame: a few milliseconds on a tablet.
constexpr std::size_t draws_a_frame = 250;

} // namespace

void BenchAnswerCache::follow(const Session& session) {
    if (revision_ == session.shown_revision()) return;
    revision_ = session.shown_revision();
    uncertainty_known_ = now_known_ = false;
    uncertainty_.reset();
    now_.reset();
    run_.reset();
}

const Uncertainty* BenchAnswerCache::uncertainty(const Session& session) {
    if (session.unfinished() && uncertainty_known_) return uncertainty_ ? &*uncertainty_ : nullptr;
    follow(session);
    if (!uncertainty_known_) {
        uncertainty_known_ = true;
        if (auto found = evenfall::uncertainty(session.document(), session.worked()))
            uncertainty_ = std::move(found).value();
    }
    return uncertainty_ ? &*uncertainty_ : nullptr;
}

const DoNow* BenchAnswerCache::now(const Session& session) {
    follow(session);
    if (!now_known_) {
        now_known_ = true;
        if (auto found = do_now(session.document())) now_ = std::move(found).value();
    }
    return now_ ? &*now_ : nullptr;
}

void BenchAnswerCache::start_draws(const Session& session) {
    follow(session);
    run_.reset();
    if (auto run = DrawRun::start(session.document())) run_.emplace(std::move(run).value());
}

bool BenchAnswerCache::continue_draws(const Session& session) {
    follow(session);
    if (!drawing()) return false;
    run_->run(std::min(draws_a_frame, draws_wanted - run_->count()));
    return drawing();
}

std::optional<Draws> BenchAnswerCache::draws() const {
    if (!run_ || run_->count() == 0) return std::nullopt;
    return run_->result();
}

Reading new_reading(ReadingKind kind, const Uncertainty* uncertainty, std::string date) {
    constexpr double usual_depth_m = 0.5;
    Reading r;
    r.kind = kind;
    r.date = std::move(date);
    if (uncertainty != nullptr && uncertainty->has_readings) {
        r.stage = uncertainty->stage;
        if (uncertainty->lure > 0) r.lure = uncertainty->lure;
    }
    switch (kind) {
    case ReadingKind::board:
        r.stage = Stage::carved;
        break;
    case ReadingKind::tub_fall:
        // As carvers do it: sealed, with all on that it will have.
        r.depth_m = usual_depth_m;
        r.stage = std::max(r.stage, Stage::sealed);
        if (uncertainty != nullptr && !uncertainty->stages_with_all.empty() && r.stage < Stage::rigged)
            r.with = document::all_hung_on();
        break;
    case ReadingKind::suspends:
        r.clip_material = "lead";
        r.stage = std::max(r.stage, Stage::leaded);
        break;
    case ReadingKind::hang_angle:
    case ReadingKind::hung_in_water:
        r.stage = std::max(r.stage, Stage::leaded);
        break;
    case ReadingKind::beats:
        r.stage = Stage::rigged;
        break;
    case ReadingKind::dry_weight:
    case ReadingKind::held_under:
    case ReadingKind::freeboard:
    case ReadingKind::caliper:
        break;
    }
    return r;
}

Edit done_now(const DoNow& now, std::optional<int> hole) {
    return on_document([now, hole](document::Document& d) { d = with_advice(std::move(d), now, hole); });
}

Edit mark_hole(int index, document::HoleUse use) {
    return on_hole(index, [use](document::Hole& hole) { hole.use = use; });
}

} // namespace evenfall::shell::state
