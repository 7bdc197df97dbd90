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

template <class T>
bool ReachAnswerCache::Kept<T>::begins(const Session& session) {
    if (revision == session.revision()) return false;
    revision = session.revision();
    value.reset();
    return true;
}

const reach::ReachMap* ReachAnswerCache::map(const Session& session) {
    if (map_.begins(session)) {
        const document::Document& lure = session.kept();
        if (auto made = reach::reach_map(lure, {lure.targets, {}})) map_.value = std::move(made).value();
    }
    return map_.value ? &*map_.value : nullptr;
}

const std::vector<reach::Member>* ReachAnswerCache::family(const Session& session) {
    if (family_.begins(session)) family_.value.emplace();
    auto& members = family_.value;
    if (members && members->size() < reach::family_falls.size()) {
        auto next = reach::family_member(session.kept(), reach::family_falls[members->size()]);
        if (next)
            members->push_back(std::move(next).value());
        else
            members.reset();
    }
    return members ? &*members : nullptr;
}

} // namespace evenfall::shell::state
