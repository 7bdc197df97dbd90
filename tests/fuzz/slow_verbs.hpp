#pragma once

// Everything that the page or the program asks of a lure, but draws and sheet, and how long each takes.

#include "evenfall.hpp"
#include "fuzz/slow_input.hpp"
#include "output/water_json.hpp"
#include "water/swim/swim.hpp"
#include "workshop/joint_answers.hpp"
#include "workshop/swim_chain.hpp"

#include <algorithm>
#include <array>
#include <ctime>
#include <optional>

namespace evenfall::fuzz {

/// Of this thread: what others take of the machine counts for little.
inline double processor_s() {
    timespec t{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &t);
    return static_cast<double>(t.tv_sec) + 1e-9 * static_cast<double>(t.tv_nsec);
}

struct SlowVerb {
    const char* name;
    void (*ask)(const SlowInput&, const Evaluation&);
};

/// The first answer of a swim: the usual assumptions alone.
inline void swim_first(const SlowInput& in, const Evaluation& lure) {
    const auto chain = swim::chain_of(in.document, lure);
    if (!chain.ok()) return;
    swim::SwimRun run(*chain, {}, 1);
    while (!run.done())
        run.work(10000);
}

inline void read_again(const SlowInput& in, const Evaluation&) {
    static_cast<void>(read_document(document::write_compact(in.document)));
}
inline void float_answers(const SlowInput& in, const Evaluation& lure) {
    static_cast<void>(
        afloat::float_answers(lure.body, lure.ledger, in.document, lure.answers.water_density_kg_m3));
}
inline void tub_fall(const SlowInput& in, const Evaluation&) {
    static_cast<void>(finished_fall_for_tub(in.document, Stage::sealed, 0.2, true));
}
inline void length_for(const SlowInput& in, const Evaluation& lure) {
    static_cast<void>(reach::length_for(in.document, 1.3 * lure.answers.mass.kg));
}

inline constexpr std::array slow_verbs{
    SlowVerb{"read", read_again},
    SlowVerb{"link",
             [](const SlowInput& in, const Evaluation&) { (void)read_link(write_link(in.document)); }},
    SlowVerb{"evaluate", [](const SlowInput& in, const Evaluation&) { (void)evaluate(in.document); }},
    SlowVerb{"plan", [](const SlowInput& in, const Evaluation&) { (void)plan_lead(in.document); }},
    SlowVerb{"uncertainty", [](const SlowInput& in, const Evaluation&) { (void)uncertainty(in.document); }},
    SlowVerb{"do-now", [](const SlowInput& in, const Evaluation&) { (void)do_now(in.document); }},
    SlowVerb{"corrected", [](const SlowInput& in, const Evaluation&) { (void)corrected(in.document); }},
    SlowVerb{"next-lure", [](const SlowInput& in, const Evaluation&) { (void)for_next_lure(in.document); }},
    SlowVerb{"tub-fall", tub_fall},
    SlowVerb{"joints", [](const SlowInput& in,
                          const Evaluation& lure) { (void)joints::joint_answers(in.document, lure.body); }},
    SlowVerb{"float", float_answers},
    SlowVerb{"fall", [](const SlowInput& in,
                        const Evaluation& lure) { (void)output::in_water(in.document, lure, 3.0); }},
    SlowVerb{"swim-first", swim_first},
    SlowVerb{"woods", [](const SlowInput& in, const Evaluation&) { (void)compare::woods(in.document); }},
    SlowVerb{"metals", [](const SlowInput& in, const Evaluation&) { (void)compare::metals(in.document); }},
    SlowVerb{"family", [](const SlowInput& in, const Evaluation&) { (void)reach::family(in.document); }},
    SlowVerb{"length-for", length_for},
    SlowVerb{"map",
             [](const SlowInput& in, const Evaluation&) { (void)reach::reach_map(in.document, in.goal); }},
};
/// Of one search for ways out, which is asked last.
inline constexpr std::array search_names{"search-start", "search-slice", "search-whole"};
inline constexpr double longest_search_s = 20.0; ///< then it is given up: long enough

inline constexpr std::size_t slow_asked = slow_verbs.size() + 1;
inline constexpr std::size_t slow_figures = slow_verbs.size() + search_names.size();
/// Processor time in seconds; 0 where it was not asked.
using SlowTimes = std::array<double, slow_figures>;

inline const char* slow_name(std::size_t figure) {
    return figure < slow_verbs.size() ? slow_verbs[figure].name : search_names[figure - slow_verbs.size()];
}

template <class Ask>
double spent_s(const Ask& ask) {
    const double from = processor_s();
    ask();
    return processor_s() - from;
}

inline void time_search(const SlowInput& in, SlowTimes& out) {
    double& start_s = out[slow_verbs.size()];
    double& slice_s = out[slow_verbs.size() + 1];
    double& whole_s = out[slow_verbs.size() + 2];
    std::optional<Outcome<reach::Search>> search;
    start_s = whole_s = spent_s([&] { search.emplace(reach::Search::start(in.document, in.goal)); });
    if (!search->ok()) return;
    for (bool more = true; more && whole_s < longest_search_s;) {
        const double slice = spent_s([&] { more = search->value().step(); });
        slice_s = std::max(slice_s, slice);
        whole_s += slice;
    }
}

/// Asks for one of slow_asked and times it; absent where the lure cannot be built.
inline std::optional<SlowTimes> slow_times(std::size_t asked, const SlowInput& in) {
    const auto lure = evaluate(in.document);
    if (!lure.ok()) return std::nullopt;
    SlowTimes out{};
    if (asked == slow_verbs.size())
        time_search(in, out);
    else
        out[asked] = spent_s([&] { slow_verbs[asked].ask(in, *lure); });
    return out;
}

} // namespace evenfall::fuzz
