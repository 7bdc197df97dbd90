#pragma once

// The history of edits: whole documents, each with a label. A document is a few kilobytes, and restoring a
// whole value cannot go wrong, as an inverse operation can.

#include "evenfall.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace evenfall::shell::state {

/// A document and the change that led to it.
struct Entry {
    document::Document document;
    std::string label; ///< "Depth of hole 2"; empty for the first
};

class History {
public:
    /// Number of entries kept; the oldest are dropped first.
    static constexpr std::size_t limit = 200;

    explicit History(document::Document first);

    [[nodiscard]] const document::Document& current() const { return entries_[cursor_].document; }

    /// Adds an entry after the current one; undone entries are dropped.
    void add(document::Document document, std::string label);

    [[nodiscard]] bool can_undo() const { return cursor_ > 0; }
    [[nodiscard]] bool can_redo() const { return cursor_ + 1 < entries_.size(); }

    /// Labels of what undo and redo would do; empty where there is nothing.
    [[nodiscard]] std::string undo_label() const;
    [[nodiscard]] std::string redo_label() const;

    /// One step back or forward; no effect at either end.
    void undo();
    void redo();

    [[nodiscard]] std::size_t size() const { return entries_.size(); }

private:
    std::vector<Entry> entries_; ///< at least one
    std::size_t cursor_ = 0;
};

} // namespace evenfall::shell::state
