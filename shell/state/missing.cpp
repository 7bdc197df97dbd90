#include "state/missing.hpp"

#include "look/words_state.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::shell::state {

std::string missing_words(const document::Document& document) {
    const auto rigged = [](const document::Part& part) { return part.stage == Stage::rigged; };
    std::string list;
    const auto name = [&](bool missing, const char* what) {
        if (missing) list += (list.empty() ? "" : ", ") + std::string(what);
    };
    name(document.holes.empty(), look::words::missing_lead);
    name(std::none_of(document.parts.begin(), document.parts.end(), rigged), look::words::missing_hooks);
    name(document.coats.empty(), look::words::missing_coats);
    return list.empty() ? list : look::words::still_missing + list + ".";
}

bool balance_counts(const document::Document& document) {
    return !document.holes.empty();
}

Problems warnings_shown(const document::Document& document, Problems warnings) {
    if (!balance_counts(document))
        std::erase_if(warnings, [](const Problem& p) { return p.code == ProblemCode::capsizes; });
    return warnings;
}

} // namespace evenfall::shell::state
