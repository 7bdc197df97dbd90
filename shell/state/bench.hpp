#pragma once

// The core's answers about the bench log: computed once for each shown lure, and only when shown.

#include "evenfall.hpp"
#include "state/session.hpp"

#include <optional>
#include <string>

namespace evenfall::shell::state {

/// Each answer is nullptr where the core refuses. Pointers are valid until the session shows another lure.
class BenchAnswerCache {
public:
    /// During a drag, that of the lure before the drag: it takes longer than a frame.
    const Uncertainty* uncertainty(const Session& session);
    const DoNow* now(const Session& session);

    static constexpr std::size_t draws_wanted = 10'000;

    /// Starts drawing random lures; does nothing where the core refuses.
    void start_draws(const Session& session);
    void stop_draws() { run_.reset(); }
    /// A few more draws, for one frame. True while more are left. A change of the lure ends them.
    bool continue_draws(const Session& session);
    [[nodiscard]] bool drawing() const { return run_ && run_->count() < draws_wanted; }
    /// Result of the draws so far; absent before the first.
    [[nodiscard]] std::optional<Draws> draws() const;

private:
    void follow(const Session& session);

    std::optional<unsigned> revision_;
    bool uncertainty_known_ = false;
    bool now_known_ = false;
    std::optional<Uncertainty> uncertainty_;
    std::optional<DoNow> now_;
    std::optional<DrawRun> run_;
};

/// A reading while it is typed: not yet part of the lure, so that half-typed values have no effect.
struct ReadingDraft {
    std::optional<document::Reading> reading;
    std::optional<double> tub_seen_m_s; ///< a fall seen in the tub, not recorded
};

/// A new reading of this kind to be typed: stage and lure as in the last one, only the fields of its kind.
[[nodiscard]] document::Reading new_reading(document::ReadingKind kind, const Uncertainty* uncertainty,
                                            std::string date);

/// Follows the "do now" advice, in one hole or in all of them (with_advice).
[[nodiscard]] Edit done_now(const DoNow& now, std::optional<int> hole = std::nullopt);
/// The tick at a hole: what was done to it.
[[nodiscard]] Edit mark_hole(int index, document::HoleUse use);

} // namespace evenfall::shell::state
