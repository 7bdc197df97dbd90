// Single moves first, then pairs: how many steps of each move should do, quickly; then the cheapest of them
// proven, one after the other.

#include "base/number_text.hpp"
#include "document/check.hpp"
#include "document/work_done.hpp"
#include "reach/least_steps.hpp"
#include "reach/moves.hpp"
#include "reach/proof.hpp"
#include "reach/shortage.hpp"

#include <algorithm>
#include <cmath>
#include <deque>
#include <utility>

namespace evenfall::reach {

namespace {

constexpr std::size_t enough_singles = 4;   ///< with as many, no pairs are looked for
constexpr std::size_t most_first_moves = 4; ///< of pairs
constexpr std::size_t most_second_moves = 6;
constexpr int most_more_steps = 3; ///< where the quick search was a little too hopeful

/// A lure that moves start from: as it is, or changed by the first move of a pair.
struct Start {
    document::Document document;
    std::vector<Kind> kinds;
    Sentence change;
    double cost = 0.0;
    double shortage = 0.0;
};
using StartPtr = std::shared_ptr<const Start>;

/// One move from one start.
struct Try {
    StartPtr start;
    std::size_t move = 0;
    LeastSteps steps;
};

/// A change that should do it.
struct Hope {
    StartPtr start;
    std::size_t move = 0;
    int steps = 0;
    int more = 0; ///< steps that were added since
    double cost = 0.0;
};

Problem too_unsure(double chance, double asked) {
    const auto percent = [](double share) {
        return units::number_text(share, units::Unit::percent, 0) + " %";
    };
    return {ProblemCode::cannot_be_met, "/chance", percent(chance),
            "Lead does it, but with a chance of " + percent(chance) + " only; " + percent(asked) +
                " is asked."};
}

} // namespace

struct Search::State {
    document::Document document; ///< as it lies, with the goal's targets
    Goal goal;
    Ways ways;
    std::optional<Known> before;
    std::optional<Shortage> shortage;
    std::vector<Move> moves;
    std::deque<Try> tries;
    std::vector<Try> tried;    ///< singles that do not do it alone
    std::vector<Hope> hopes;   ///< the dearest first
    std::optional<Way> proven; ///< its lead meets the targets
    bool is_sound = false;     ///< nor does it make a warning
    bool is_known = false;     ///< `before` has been worked out
    bool moves_made = false;
    bool pairs_made = false;
    double slices = 0.0;
    double slices_expected = 1.0;

    [[nodiscard]] document::Document changed(const Start& start, std::size_t move, int steps) const {
        document::Document out = start.document;
        moves[move].apply(out, steps);
        return out;
    }
    void look_for_moves();
    void try_next();
    void hope_for(Hope hope);
    void make_pairs();
    void pair_with(const Try& first, const std::vector<std::size_t>& seconds);
    void prove_next();
    void look_for_warnings();
    void offer_proven();
    [[nodiscard]] bool has_one_of(const std::vector<Kind>& kinds) const;
    [[nodiscard]] bool is_done() const;
    bool step();
};

void Search::State::look_for_moves() {
    const auto lure = evaluate(document);
    if (!lure) return;
    const auto inputs = ledger::ledger_inputs(document, lure->body);
    if (!inputs) return;
    const document::LogState log = document::log_state(document);
    const Stage by_holes = document::stage_of_holes(document);
    const std::vector<lead::Candidate> candidates = lead::candidates(*inputs);
    moves = moves_of({document, *inputs, candidates,
                      !log.has_readings && by_holes == Stage::carved && document.shape.measured.empty(),
                      log.has_readings ? std::max(log.stage, by_holes) : by_holes});
    const auto start = std::make_shared<const Start>(Start{document, {}, {}, 0.0, shortage->of(document)});
    for (std::size_t i = 0; i < moves.size(); ++i)
        tries.push_back({start, i, LeastSteps(moves[i].most, start->shortage)});
    slices_expected = 3.0 * static_cast<double>(tries.size()) + 5.0 * most_ways;
}

void Search::State::try_next() {
    Try& now = tries.front();
    if (const auto steps = now.steps.ask()) {
        now.steps.tell(shortage->of(changed(*now.start, now.move, *steps)));
        return;
    }
    if (const auto found = now.steps.found())
        hope_for({now.start, now.move, *found});
    else if (now.start->kinds.empty() && now.steps.best() > 0)
        tried.push_back(now);
    tries.pop_front();
}

void Search::State::hope_for(Hope hope) {
    hope.cost = hope.start->cost + moves[hope.move].cost(hope.steps);
    const auto dearer = [](const Hope& a, const Hope& b) { return a.cost > b.cost; };
    hopes.insert(std::upper_bound(hopes.begin(), hopes.end(), hope, dearer), hope);
}

/// From where the first move comes nearest, and from half way there.
void Search::State::pair_with(const Try& first, const std::vector<std::size_t>& seconds) {
    const Move& move = moves[first.move];
    int last = 0;
    for (const int steps : {(first.steps.best() + 1) / 2, first.steps.best()}) {
        if (steps == std::exchange(last, steps)) continue;
        Start start{
            changed(*first.start, first.move, steps), {move.kind}, move.says(steps), move.cost(steps), 0.0};
        start.shortage = shortage->of(start.document);
        if (!std::isfinite(start.shortage)) continue;
        const auto from = std::make_shared<const Start>(std::move(start));
        for (const std::size_t second : seconds)
            tries.push_back({from, second, LeastSteps(moves[second].most, from->shortage)});
    }
}

void Search::State::make_pairs() {
    pairs_made = true;
    if (ways.ways.size() >= enough_singles || shortage->unsure()) return;
    const auto gain = [&](const Try& t) {
        return (t.start->shortage - t.steps.best_shortage()) / moves[t.move].cost(t.steps.best());
    };
    std::stable_sort(tried.begin(), tried.end(),
                     [&](const Try& a, const Try& b) { return gain(a) > gain(b); });
    const auto kind = [&](const Try& t) { return moves[t.move].kind; };
    std::vector<Try> best; // of each kind
    for (const Try& t : tried) {
        if (std::none_of(best.begin(), best.end(), [&](const Try& b) { return kind(b) == kind(t); }))
            best.push_back(t);
    }
    if (best.size() > most_second_moves) best.erase(best.begin() + most_second_moves, best.end());
    for (std::size_t a = 0; a < std::min(best.size(), most_first_moves); ++a) {
        // One hole may need another one somewhere else.
        std::vector<std::size_t> seconds;
        for (const Try& t : kind(best[a]) == Kind::another_hole ? tried : best) {
            const bool is_best =
                std::any_of(best.begin(), best.end(), [&](const Try& b) { return b.move == t.move; });
            if (t.move != best[a].move && (is_best || kind(t) == Kind::another_hole))
                seconds.push_back(t.move);
        }
        pair_with(best[a], seconds);
    }
    slices_expected += 3.0 * static_cast<double>(tries.size());
}

bool Search::State::has_one_of(const std::vector<Kind>& kinds) const {
    return std::any_of(ways.ways.begin(), ways.ways.end(),
                       [&](const Way& way) { return way.kinds == kinds; });
}

void Search::State::prove_next() {
    const Hope hope = hopes.back();
    hopes.pop_back();
    Way way;
    way.kinds = hope.start->kinds;
    way.kinds.push_back(moves[hope.move].kind);
    std::sort(way.kinds.begin(), way.kinds.end()); // whichever comes first
    if (has_one_of(way.kinds)) return;
    auto met = shortage->met(changed(*hope.start, hope.move, hope.steps));
    if (!met) {
        if (hope.more < most_more_steps && hope.steps < moves[hope.move].most)
            hope_for({hope.start, hope.move, hope.steps + 1, hope.more + 1});
        return;
    }
    if (!hope.start->change.empty()) way.change = hope.start->change + "; ";
    way.change += moves[hope.move].says(hope.steps);
    way.cost = hope.cost;
    const std::vector<document::Hole> holes = std::exchange(met->holes, document.holes);
    document::change_holes(*met, holes);
    way.document = std::move(*met);
    proven = std::move(way);
}

void Search::State::look_for_warnings() {
    const auto after = known_of(proven->document);
    if (!after || warns_anew(before->warnings, after->warnings)) {
        proven.reset();
        return;
    }
    proven->also = side_effects(*before, *after);
    is_sound = true;
}

void Search::State::offer_proven() {
    Way way = std::move(*proven);
    proven.reset();
    is_sound = false;
    const auto figures = figures_of(way.document);
    if (!figures || figures->bg_m < least_bg_m || (goal.chance && figures->chance < *goal.chance)) return;
    way.after = *figures;
    const auto cheaper = [](const Way& a, const Way& b) { return a.cost < b.cost; };
    ways.ways.insert(std::upper_bound(ways.ways.begin(), ways.ways.end(), way, cheaper), std::move(way));
}

bool Search::State::is_done() const {
    if (ways.met) return true;
    return moves_made && !proven && tries.empty() && (hopes.empty() || ways.ways.size() >= most_ways) &&
           pairs_made;
}

bool Search::State::step() {
    if (is_done()) return false;
    if (!is_known) {
        is_known = true;
        if (auto known = known_of(ways.document))
            before = std::move(known).value();
        else
            moves_made = pairs_made = true; // joints that cannot be worked out: nothing to hold a way against
    } else if (!moves_made) {
        moves_made = true;
        look_for_moves();
    } else if (proven && is_sound) {
        offer_proven();
    } else if (proven) {
        look_for_warnings();
    } else if (!tries.empty()) {
        try_next();
    } else if (!hopes.empty() && ways.ways.size() < most_ways) {
        prove_next();
    } else {
        make_pairs();
    }
    slices += 1.0;
    return !is_done();
}

Search::Search(std::unique_ptr<State> state) : state_(std::move(state)) {}
Search::Search(Search&&) noexcept = default;
Search& Search::operator=(Search&&) noexcept = default;
Search::~Search() = default;

Outcome<Search> Search::start(const document::Document& document, const Goal& goal) {
    auto state = std::make_unique<State>();
    state->document = document::as_it_lies(document);
    state->document.targets = goal.targets;
    state->goal = goal;
    const auto lure = evaluate(state->document);
    if (!lure) return lure.problems();
    if (Problems problems = off_range(goal, lure->answers); !problems.empty()) return problems;
    const auto plan = plan_lead(state->document);
    if (!plan) return plan.problems();
    Ways& ways = state->ways;
    ways.document = plan->document;
    const auto figures = figures_of(plan->document);
    if (!figures) return figures.problems();
    ways.before = *figures;
    ways.shortfalls = plan->shortfalls;
    const bool unsure = goal.chance && ways.before.chance < *goal.chance;
    ways.met = plan->met && !unsure;
    if (plan->met && unsure) ways.shortfalls.push_back(too_unsure(ways.before.chance, *goal.chance));
    state->shortage.emplace(state->document, *plan, goal);
    return Search(std::move(state));
}

bool Search::step() {
    return state_->step();
}

bool Search::done() const {
    return state_->is_done();
}

double Search::progress() const {
    return done() ? 1.0 : std::min(0.99, state_->slices / state_->slices_expected);
}

const Ways& Search::found() const {
    return state_->ways;
}

Outcome<Ways> ways_out(const document::Document& document, const Goal& goal) {
    auto search = Search::start(document, goal);
    if (!search) return search.problems();
    while (search->step()) {
    }
    return search->found();
}

} // namespace evenfall::reach
