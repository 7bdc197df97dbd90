#include "state/history.hpp"

#include <utility>

namespace evenfall::shell::state {

History::History(document::Document first) {
    entries_.push_back({std::move(first), {}});
}

void History::add(document::Document document, std::string label) {
    entries_.resize(cursor_ + 1);
    entries_.push_back({std::move(document), std::move(label)});
    if (entries_.size() > limit) entries_.erase(entries_.begin());
    cursor_ = entries_.size() - 1;
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

} // namespace evenfall::shell::state
