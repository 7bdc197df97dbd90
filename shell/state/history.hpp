#pragma once

// The history of one bench: whole documents with a label each. A document is a few kilobytes, and a whole
// value cannot be put back wrongly, as an inverse operation can.

#include "document/document.hpp"

#include <cstddef>
#include <string>
#include <vector>

namespace evenfall::shell::state {

/// A document and what was done to reach it.
struct Entry {
    document::Document document;
    std::string label; ///< "Depth of hole 2"; empty for the first
};

class History {
public:
    /// The number of entries kept; the oldest go first.
    static constexpr std::size_t limit = 200;

    explicit History(document::Document first);

    [[nodiscard]] const document::Document& current() const { return entries_[cursor_].document; }

    /// Adds an entry after the current one; what had been undone is forgotten.
    void add(document::Document document, std::string label);

    [[nodiscard]] bool can_undo() const { return cursor_ > 0; }
    [[nodiscard]] bool can_redo() const { return cursor_ + 1 < entries_.size(); }

    /// What undo would take back, what redo would do again; empty where there is nothing.
    [[nodiscard]] std::string undo_label() const;
    [[nodiscard]] std::string redo_label() const;

    /// One step back or forward; nothing happens at either end.
    void undo();
    void redo();

    [[nodiscard]] std::size_t size() const { return entries_.size(); }

private:
    std::vector<Entry> entries_; ///< at least one
    std::size_t cursor_ = 0;
};

} // namespace evenfall::shell::state
