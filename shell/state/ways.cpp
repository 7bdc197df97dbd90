#include "state/ways.hpp"

#include <utility>

namespace evenfall::shell::state {
namespace {

/// For one frame: a few milliseconds on a tablet.
constexpr int slices_a_frame = 3;

} // namespace

bool WaySearch::work_on(const Session& session) {
    if (revision_ != session.revision() || chance_ != chance) {
        revision_ = session.revision();
        chance_ = chance;
        search_.reset();
        refusal_.clear();
        open = {};
        auto search = reach::Search::start(session.kept(), {session.kept().targets, chance});
        if (search)
            search_.emplace(std::move(search).value());
        else
            refusal_ = search.problems();
        return !done();
    }
    for (int i = 0; i < slices_a_frame && !done(); ++i)
        search_->step();
    return !done();
}

Edit take_way(const reach::Way& way) {
    return [changed = way.document](const document::Document& kept) {
        document::Document next = changed;
        next.holes = kept.holes;
        document::change_holes(next, changed.holes);
        return next;
    };
}

template <class T, class Ask>
const T* ReachAnswerCache::answer(Kept<T>& kept, const Session& session, Ask ask) {
    if (kept.revision != session.revision()) {
        kept.revision = session.revision();
        auto made = ask(session.kept());
        kept.value = made.ok() ? std::optional(std::move(made).value()) : std::nullopt;
    }
    return kept.value ? &*kept.value : nullptr;
}

const reach::ReachMap* ReachAnswerCache::map(const Session& session) {
    return answer(map_, session, [](const document::Document& d) {
        return reach::reach_map(d, {d.targets, {}});
    });
}

const Family* ReachAnswerCache::family(const Session& session) {
    return answer(family_, session, reach::family);
}

} // namespace evenfall::shell::state
