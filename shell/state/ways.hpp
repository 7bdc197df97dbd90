#pragma once

// What lead can reach, and the ways to what it cannot: for the kept lure, and only while somebody looks.

#include "reach.hpp"
#include "state/session.hpp"

#include <optional>
#include <vector>

namespace evenfall::shell::state {

/// The search for ways out, in slices.
class WaySearch {
public:
    /// One frame's share of the work, for the kept lure and the chance that is asked. Begins anew where
    /// either is another one. True while more is left.
    bool work_on(const Session& session);

    std::optional<double> chance; ///< that a way is to have, least; absent: any
    Sentence open;                ///< the change of the way whose figures are listed

    /// Why there is none: what is asked is out of range, or the lure cannot be planned.
    [[nodiscard]] const Problems& refusal() const { return refusal_; }
    /// What is known so far, the cheapest first; nullptr before the search has begun.
    [[nodiscard]] const reach::Ways* found() const { return search_ ? &search_->found() : nullptr; }
    [[nodiscard]] bool done() const { return !refusal_.empty() || (search_ && search_->done()); }
    [[nodiscard]] double progress() const { return search_ ? search_->progress() : 0.0; } ///< 0 to 1

private:
    std::optional<unsigned> revision_;
    std::optional<double> chance_;
    std::optional<reach::Search> search_;
    Problems refusal_;
};

/// Reach map and family of the kept lure, each worked out once for it. nullptr where the core refuses.
class ReachAnswerCache {
public:
    const reach::ReachMap* map(const Session& session);
    /// The members so far, one more with each call: each takes some milliseconds.
    const std::vector<reach::Member>* family(const Session& session);

private:
    template <class T>
    struct Kept {
        std::optional<unsigned> revision;
        std::optional<T> value;
        /// Forgets what was kept for another lure. True where the answer is asked for the first time.
        bool begins(const Session& session);
    };

    Kept<reach::ReachMap> map_;
    Kept<std::vector<reach::Member>> family_;
};

} // namespace evenfall::shell::state
