#pragma once

// What the core makes of the bench log: asked once for each shown lure, and only when it is looked at.

#include "bench/uncertainty/uncertainty.hpp"
#include "state/session.hpp"

#include <optional>
#include <string>

namespace evenfall::shell::state {

/// Each answer is nullptr where the core refuses. Pointers hold until the session shows another lure.
class BenchAnswers {
public:
    /// While a finger drags, that of the lure before it took hold: an uncertainty costs more than a frame's
    /// share.
    const Uncertainty* uncertainty(const Session& session);
    const DoNow* now(const Session& session);

    static constexpr std::size_t draws_wanted = 10'000;

    /// Begins to draw lures by chance; nothing where the core refuses.
    void start_draws(const Session& session);
    void stop_draws() { run_.reset(); }
    /// Some draws more, few enough for one frame. True while there are more to come. A change of the lure
    /// ends them.
    bool go_on_drawing(const Session& session);
    [[nodiscard]] bool drawing() const { return run_ && run_->count() < draws_wanted; }
    /// Of those drawn so far; absent before the first.
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

/// A reading while it is typed: not yet part of the lure, so that nothing half typed counts.
struct Draft {
    std::optional<document::Reading> reading;
    std::optional<double> tub_seen_m_s; ///< a fall seen in the tub, asked about and not put down
};

/// What its kind needs and has not been given yet: empty where it may be put down.
[[nodiscard]] bool is_complete(const document::Reading& reading);

/// A reading of this kind to be typed in: stage and lure of the last one, fields of its kind only.
[[nodiscard]] document::Reading begun(document::ReadingKind kind, const Uncertainty* uncertainty,
                                      std::string date);

/// The change that a "do now" asks for. Readings of the leaded lure were of other lead: what they taught
/// stays as corrections. `why` is added to the notes of those that are struck out.
[[nodiscard]] Edit done_now(const DoNow& now, std::string why);

} // namespace evenfall::shell::state
