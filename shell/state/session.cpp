#include "state/session.hpp"

#include "look/words_state.hpp"

#include <algorithm>
#include <utility>

namespace evenfall::shell::state {
Session::Session(document::Document first) : history_(std::move(first)), shown_(history_.current()) {
    auto outcome = evaluate(shown_);
    if (outcome.ok()) {
        evaluation_ = std::move(outcome).value();
    } else {
        problems_ = outcome.problems();
    }
    clamp_view();
}

bool Session::apply(const Change& change) {
    const bool of_plan = offer_ && !change.of_kept;
    document::Document next = change.edit(of_plan ? offer_->document : history_.current());
    auto outcome = evaluate(next, worked());
    if (outcome.ok() && change.finished) {
        Problems too_long = document::too_long_to_open(next);
        if (!too_long.empty()) outcome = std::move(too_long);
    }
    if (!outcome.ok()) {
        if (change.finished && !offer_) abandon();
        if (change.finished)
            refuse(outcome.problems());
        else
            problems_ = outcome.problems();
        return false;
    }
    if (of_plan) keep_offer();
    offer_.reset();
    problems_.clear();
    evaluation_ = std::move(outcome).value();
    shown_ = std::move(next);
    ++shown_revision_;
    if (change.finished) {
        keep(shown_, change.label);
    } else {
        unfinished_label_ = change.label;
    }
    clamp_view();
    return true;
}

void Session::refuse(Problems why) {
    problems_ = std::move(why);
    ++refusals_;
}

void Session::finish() {
    if (!unfinished_label_) return;
    const std::string label = *unfinished_label_;
    keep(shown_, label);
}

void Session::finish_at_last_allowed(const std::string& saying) {
    Problems refused = problems_;
    finish();
    if (!refused.empty()) refused.front().sentence = saying + " " + refused.front().sentence;
    problems_ = std::move(refused);
}

void Session::abandon() {
    offer_.reset();
    unfinished_label_.reset();
    show_kept();
}

void Session::undo() {
    abandon();
    if (!history_.can_undo()) return;
    history_.undo();
    ++revision_;
    if (show_kept()) return;
    // Only a history of an earlier version can hold what this one cannot build.
    history_.redo();
    history_.forget_undo();
    show_kept();
}

void Session::redo() {
    abandon();
    if (!history_.can_redo()) return;
    history_.redo();
    ++revision_;
    if (show_kept()) return;
    history_.undo();
    history_.forget_redo();
    show_kept();
}

void Session::take_history(History kept) {
    if (kept.current_text() == history_.current_text()) history_ = std::move(kept);
}

bool Session::open(document::Document document, std::string label) {
    if (offer_) abandon();
    const Change change{std::move(label), [&document](const document::Document&) { return document; }, true};
    if (!apply(change)) return false;
    history_.mark_another_lure();
    view.clear_lure_state();
    if (evaluation_ && evaluation_->body.lines) view.section_x_m = 0.4 * evaluation_->body.lines->length_m();
    return true;
}

bool Session::open_json(const std::string& text) {
    auto read = read_document(text);
    if (!read.ok()) {
        refuse(read.problems());
        return false;
    }
    std::string label = look::words::history_open + read->name;
    return open(std::move(read).value(), std::move(label));
}

bool Session::open_link(const std::string& text) {
    auto read = read_link(text);
    if (!read.ok()) {
        refuse(read.problems());
        return false;
    }
    std::string label = look::words::history_open_shared + read->name;
    return open(std::move(read).value(), std::move(label));
}

bool Session::plan_lead() {
    abandon();
    auto planned = evenfall::plan_lead(document::as_it_lies(history_.current()), worked());
    if (!planned.ok()) {
        refuse(planned.problems());
        return false;
    }
    auto outcome = evaluate(planned->document, worked());
    if (!outcome.ok()) {
        refuse(outcome.problems());
        return false;
    }
    problems_.clear();
    offer_ = std::move(planned).value();
    shown_ = offer_->document;
    evaluation_ = std::move(outcome).value();
    ++shown_revision_;
    clamp_view();
    return true;
}

void Session::keep_offer() {
    if (!offer_) return;
    document::Document planned = history_.current();
    document::change_holes(planned, offer_->document.holes);
    offer_.reset();
    keep(std::move(planned), look::words::history_planned);
}

void Session::keep(document::Document document, std::string label) {
    unfinished_label_.reset();
    // Nothing changed (a drag back to its start, a key at its limit): no entry.
    if (document::same(document, history_.current())) return;
    history_.add(std::move(document), std::move(label));
    ++revision_;
}

bool Session::show_kept() {
    shown_ = history_.current();
    ++shown_revision_;
    auto outcome = evaluate(shown_, worked());
    if (outcome.ok()) {
        problems_.clear();
        evaluation_ = std::move(outcome).value();
    } else {
        problems_ = outcome.problems();
    }
    clamp_view();
    return problems_.empty();
}

void Session::clamp_view() {
    const auto count = [this](ItemKind kind) -> std::size_t {
        switch (kind) {
        case ItemKind::joint:
            return shown_.joints.size();
        case ItemKind::hole:
            return shown_.holes.size();
        case ItemKind::pocket:
            return shown_.pockets.size();
        case ItemKind::hanger:
            return shown_.hangers.size();
        case ItemKind::part:
            return shown_.parts.size();
        case ItemKind::coat:
            return shown_.coats.size();
        case ItemKind::back_point:
            return shown_.shape.back.size();
        case ItemKind::belly_point:
            return shown_.shape.belly.size();
        case ItemKind::width_point:
            return shown_.shape.half_width.size();
        case ItemKind::corner_point:
            return shown_.shape.section.curve().size();
        case ItemKind::reading:
            return shown_.log.size();
        case ItemKind::section_point:
            return shown_.shape.section.half_outline.size();
        case ItemKind::tail:
            return shown_.tail ? 1 : 0;
        case ItemKind::none:
            break;
        }
        return 0;
    };
    if (view.selection.index >= static_cast<int>(count(view.selection.kind))) view.selection = {};
    if (evaluation_ && evaluation_->body.lines) {
        view.section_x_m = std::clamp(view.section_x_m, 0.0, evaluation_->body.lines->length_m());
    }
}

document::Document new_lure() {
    document::Document d;
    d.name = look::words::new_lure;
    d.shape.back = {{0.0, 0.002}, {0.012, 0.010}, {0.040, 0.015}, {0.075, 0.0135}, {0.120, 0.004}};
    d.shape.belly = {{0.0, -0.002}, {0.012, -0.010}, {0.040, -0.015}, {0.075, -0.0135}, {0.120, -0.004}};
    d.shape.half_width = {{0.0, 0.0015}, {0.012, 0.0065}, {0.040, 0.0095}, {0.075, 0.0080}, {0.120, 0.0020}};
    d.segment_names = {look::words::new_body};
    return d;
}

} // namespace evenfall::shell::state
