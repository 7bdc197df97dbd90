#pragma once

// The smallest changes of a lure that let its lead meet what is asked. Each is proven: the changed document
// is evaluated with its lead planned anew. No linear model decides.

#include "base/outcome.hpp"
#include "base/sentence.hpp"
#include "reach/goal.hpp"

#include <memory>
#include <vector>

namespace evenfall::reach {

/// What is changed.
enum class Kind {
    another_hole,
    deeper_holes,
    wider_bits,
    other_metal,
    other_wood,
    thickness, ///< of the whole body, from side to side
    belly,     ///< the belly line, along the whole body or one half of it
    back,      ///< the back line
    hook_size,
    hanger_moved,
    coat_more,
    coat_less,
    joint_moved,
    tail_size,
};

/// A change that does it, with the lead planned anew.
struct Way {
    std::vector<Kind> kinds;     ///< one, or two of a pair, in the order of Kind
    Sentence change;             ///< "Belly 1.2 mm fuller.", of a pair one after the other
    double cost = 0.0;           ///< costs.hpp
    document::Document document; ///< readings of holes that it changes stay readings of the old ones
    Figures after;
    std::vector<Sentence> also; ///< what it does to joint swing, walls and the board; empty where nothing
};

struct Ways {
    document::Document document; ///< the lure as it is, its lead as near to the goal as the holes allow
    Figures before;              ///< of that
    bool met = false;            ///< lead alone does it: no way out is needed, and none is looked for
    Problems shortfalls;         ///< else: what stops the lead, or the chance that is too low
    std::vector<Way> ways;       ///< the cheapest first
};

/// No more ways than these are told: the cheapest of each kind, or pair of kinds.
inline constexpr std::size_t most_ways = 8;

/// Looks for ways out in slices of at most some milliseconds, so that a page stays live.
class Search {
public:
    /// Refuses what evaluate() refuses, and a goal out of range (off_range). The document is taken as it lies
    /// on the bench: what is carved, drilled or put on already is not changed back.
    [[nodiscard]] static Outcome<Search> start(const document::Document& document, const Goal& goal);

    /// One slice more. False once all is done.
    bool step();
    [[nodiscard]] bool done() const;
    [[nodiscard]] double progress() const; ///< 0 to 1
    /// What is known so far, the cheapest first; all once done.
    [[nodiscard]] const Ways& found() const;

    Search(Search&&) noexcept;
    Search& operator=(Search&&) noexcept;
    ~Search();

private:
    struct State;
    explicit Search(std::unique_ptr<State> state);
    std::unique_ptr<State> state_;
};

/// The whole search at once.
[[nodiscard]] Outcome<Ways> ways_out(const document::Document& document, const Goal& goal);

} // namespace evenfall::reach
