#pragma once

// The history of edits: whole documents, each with a label. A document is a few kilobytes, and restoring a
// whole value cannot go wrong, as an inverse operation can.

#include "evenfall.hpp"

#include <cstddef>
#include <span>
#include <string>
#include <vector>

namespace evenfall::shell::state {

/// A document and the change that led to it.
struct Entry {
    document::Document document;
    std::string label;         ///< "Depth of hole 2"; empty for the first
    std::string text;          ///< the document by write_compact: tells two apart, and what a step changed
    bool another_lure = false; ///< it was opened here: what comes before it is another lure's
};

class History {
public:
    /// Number of entries kept; the oldest are dropped first.
    static constexpr std::size_t limit = 200;

    explicit History(document::Document first);
    /// `entries` hold at least one; `cursor` is the current one's.
    History(std::vector<Entry> entries, std::size_t cursor);

    [[nodiscard]] const document::Document& current() const { return entries_[cursor_].document; }
    [[nodiscard]] const std::string& current_text() const { return entries_[cursor_].text; }

    /// Adds an entry after the current one; undone entries are dropped.
    void add(document::Document document, std::string label);

    /// The current entry is another lure than the one before it.
    void mark_another_lure() { entries_[cursor_].another_lure = true; }

    /// The entries of the current lure: its own steps back and forward, without those of lures that were on
    /// the bench before or after it. `now` is the current one's index among them.
    struct Own {
        std::span<const Entry> entries;
        std::size_t now = 0;
    };
    [[nodiscard]] Own own() const;

    [[nodiscard]] bool can_undo() const { return cursor_ > 0; }
    [[nodiscard]] bool can_redo() const { return cursor_ + 1 < entries_.size(); }

    /// Labels of what undo and redo would do; empty where there is nothing.
    [[nodiscard]] std::string undo_label() const;
    [[nodiscard]] std::string redo_label() const;

    /// One step back or forward; no effect at either end.
    void undo();
    void redo();
    /// Drops what undo, or redo, would lead to.
    void forget_undo();
    void forget_redo();

    [[nodiscard]] std::size_t size() const { return entries_.size(); }

private:
    std::vector<Entry> entries_; ///< at least one
    std::size_t cursor_ = 0;
};

} // namespace evenfall::shell::state
