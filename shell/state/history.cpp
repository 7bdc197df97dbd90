#include "state/history.hpp"

#include <utility>

namespace evenfall::shell::state {
namespace {

Entry entry_of(document::Document document, std::string label) {
    std::string text = document::write_compact(document);
    return {std::move(document), std::move(label), std::move(text), false};
}

} // namespace

History::History(document::Document first) {
    entries_.push_back(entry_of(std::move(first), {}));
}

History::History(std::vector<Entry> entries, std::size_t cursor)
    : entries_(std::move(entries)), cursor_(cursor) {}

void History::add(document::Document document, std::string label) {
    forget_redo();
    entries_.push_back(entry_of(std::move(document), std::move(label)));
    if (entries_.size() > limit) entries_.erase(entries_.begin());
    cursor_ = entries_.size() - 1;
}

History::Own History::own() const {
    std::size_t from = cursor_;
    while (from > 0 && !entries_[from].another_lure)
        --from;
    std::size_t to = cursor_ + 1;
    while (to < entries_.size() && !entries_[to].another_lure)
        ++to;
    return {std::span(entries_).subspan(from, to - from), cursor_ - from};
}

std::string History::undo_label() const {
    return can_undo() ? entries_[cursor_].label : std::string{};
}

std::string History::redo_label() const {
    return can_redo() ? entries_[cursor_ + 1].label : std::string{};
}

void History::undo() {
    if (can_undo()) --cursor_;
}

void History::redo() {
    if (can_redo()) ++cursor_;
}

void History::forget_undo() {
    entries_.erase(entries_.begin(), entries_.begin() + static_cast<std::ptrdiff_t>(cursor_));
    cursor_ = 0;
}

void History::forget_redo() {
    entries_.resize(cursor_ + 1);
}

} // namespace evenfall::shell::state
