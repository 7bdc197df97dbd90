#pragma once

// The editing session: the document with its history, the last good evaluation, and the problems of the last
// refusal. Every change is a function document → document, evaluated by the core; where it is refused,
// nothing changes.

#include "evenfall.hpp"
#include "state/history.hpp"
#include "state/settings.hpp"
#include "state/view_state.hpp"

#include <functional>
#include <optional>
#include <string>

namespace evenfall::shell::state {

/// Document → document, without side effects.
using Edit = std::function<document::Document(document::Document)>;

/// A change asked for by the builder. Unfinished ones (a held stepper, a drag) are shown at once and enter
/// the history only when finished, as one entry.
struct Change {
    std::string label; ///< for the history: "Depth of hole 2"
    Edit edit;         ///< applied to the last kept document, so a held stepper gives values, not differences
    bool finished = true;
    bool of_kept =
        false; ///< made of the kept document, and a shown plan is dropped; else it is accepted first
};

class Session {
public:
    explicit Session(document::Document first);

    /// The document as shown: the kept one, or the result of an unfinished change or an open plan.
    [[nodiscard]] const document::Document& document() const { return shown_; }

    /// The last finished document: what is saved and shared.
    [[nodiscard]] const document::Document& kept() const { return history_.current(); }

    /// What the next evaluation may reuse of this one, or null.
    [[nodiscard]] const Kept* worked() const { return evaluation_ ? &evaluation_->kept : nullptr; }

    /// The answers for document(); absent only when the very first document could not be evaluated.
    [[nodiscard]] const std::optional<Evaluation>& evaluation() const { return evaluation_; }

    /// Why the last change was refused; empty after a success.
    [[nodiscard]] const Problems& problems() const { return problems_; }
    /// Increases with every refusal except those of unfinished changes, so that a repeated sentence is shown
    /// again.
    [[nodiscard]] unsigned refusals() const { return refusals_; }
    /// Reports why something other than a change of the document was refused.
    void refuse(Problems why);

    /// Applies a change. False and problems() where the core refuses it; then document() is the kept one
    /// again for a finished change, and the last good preview for an unfinished one. A change to a shown plan
    /// accepts the plan first, as an entry of its own, unless it is of_kept; a refused change leaves it
    /// shown.
    bool apply(const Change& change);

    /// Ends an unfinished change: keeps it as one entry of the history.
    void finish();
    /// Ends a drag that was released at a forbidden place: keeps the last allowed place, and reports it in
    /// problems().
    void finish_at_last_allowed(const std::string& saying);
    /// Ends an unfinished change or an open plan: back to the kept document.
    void abandon();
    [[nodiscard]] bool unfinished() const { return unfinished_label_.has_value(); }

    void undo();
    void redo();
    [[nodiscard]] const History& history() const { return history_; }
    /// Continues a history that was kept with the lure. Ignored where its current document is another one.
    void take_history(History kept);

    /// Makes a document the current one, as an entry that can be undone. Resets selection and section
    /// station.
    bool open(document::Document document, std::string label);
    /// The same from JSON text, and from a share text or address. False and problems() where refused.
    bool open_json(const std::string& text);
    bool open_link(const std::string& text);

    /// Plans the lead for the kept document and shows the result until it is accepted or dropped. A plan that
    /// falls short is shown too, with its shortfalls.
    bool plan_lead();
    [[nodiscard]] const std::optional<LeadPlan>& offer() const { return offer_; }
    void keep_offer();

    /// Increases whenever kept() changes: for autosave and announcements.
    [[nodiscard]] unsigned revision() const { return revision_; }

    /// Increases whenever document() and evaluation() change, previews included: what is derived from them is
    /// computed again.
    [[nodiscard]] unsigned shown_revision() const { return shown_revision_; }
    /// Continues the counters of a session that this one replaces.
    void continue_counters_of(const Session& replaced) {
        revision_ = replaced.revision_ + 1;
        shown_revision_ = replaced.shown_revision_ + 1;
        refusals_ = replaced.refusals_;
    }

    ViewState view;
    Settings settings;

private:
    void keep(document::Document document, std::string label);
    /// False where the kept document cannot be evaluated.
    bool show_kept();
    void clamp_view();

    History history_;
    document::Document shown_;
    std::optional<Evaluation> evaluation_;
    std::optional<LeadPlan> offer_;
    std::optional<std::string> unfinished_label_;
    Problems problems_;
    unsigned revision_ = 0;
    unsigned shown_revision_ = 0;
    unsigned refusals_ = 0;
};

/// A plain one-piece body to start a new lure.
[[nodiscard]] document::Document new_lure();

} // namespace evenfall::shell::state
