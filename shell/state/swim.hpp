#pragma once

// How the shown lure swims: worked out a little in each frame, and only while it is shown.

#include "evenfall.hpp"
#include "state/session.hpp"
#include "water.hpp"
#include "workshop.hpp"

#include <optional>
#include <string>
#include <vector>

namespace evenfall::shell::state {

/// Pointers are valid until the session shows another lure or more is worked out.
class SwimAnswerCache {
public:
    /// Goes on for some milliseconds, to be called in each frame that shows the answer. True while more is
    /// left. During a drag it rests, and what is known stays that of the lure before it.
    bool work(const Session& session);

    /// Of the draws that are done; nullptr before the first and where the core refuses. Counts are not in it.
    [[nodiscard]] const swim::SwimAnswer* answer() const { return answer_ ? &*answer_ : nullptr; }
    /// Beats per metre by the answer and the counts in the log; absent where it does not beat.
    [[nodiscard]] std::optional<bench::KnownBeats> known_beats(const Session& session) const;
    /// Beats per metre that are foretold of the shown lure, whatever was counted; absent until all is worked
    /// out, and where it does not beat. To be asked for after work().
    [[nodiscard]] std::optional<double> foretold_per_m() const;
    /// Why there is no answer: the lure lies outside what the model was tried on.
    [[nodiscard]] const Problems& refusal() const { return refusal_; }

    /// Whether a lure is worked out that the shown one can be compared with: itself, or the one before.
    [[nodiscard]] bool can_tell_changes(const Session& session);
    /// What the shown lure does against the last one that was worked out to the end; nullptr where there is
    /// none, and until this one is.
    const swim::Change* change();

    /// Another lure is on the bench: no change leads to it.
    void forget() { *this = {}; }

private:
    void follow(const Session& session);

    std::optional<unsigned> revision_;
    std::string design_; ///< what of the document bears on the swim, as text
    bool asked_ = false;
    Problems refusal_;
    std::optional<swim::SwimRun> run_;
    std::optional<swim::SwimAnswer> answer_;
    std::optional<swim::Draws> before_;
    std::optional<swim::Change> change_;
};

/// The segments of a wave seen from above at this part of a beat, 0 to 1, between its poses straight on; the
/// way of travel is along −x.
[[nodiscard]] std::vector<joints::SegmentPose> segments_at(const swim::Wave& wave, double beat);

} // namespace evenfall::shell::state
