#include "state/history_text.hpp"

#include <algorithm>
#include <array>
#include <cstdint>
#include <utility>
#include <vector>

namespace evenfall::shell::state {
namespace {

using Json = document::Tree;

// A step's brackets, commas and two numbers.
constexpr std::size_t bytes_around_a_step = 24;

bool inside_character(std::string_view text, std::size_t at) {
    return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0u) == 0x80u;
}

/// FNV-1a, 32 bits: tells whether the steps belong to this text.
std::uint32_t mark_of(std::string_view text) {
    std::uint32_t hash = 2166136261u;
    for (const char c : text)
        hash = (hash ^ static_cast<unsigned char>(c)) * 16777619u;
    return hash;
}

/// The steps from the current entry on in one direction, nearest first, as far as there is room for them.
Json steps_from(const History::Own& own, bool back, std::size_t& room) {
    Json steps = Json::array();
    std::string_view text = own.entries[own.now].text;
    for (std::size_t i = own.now; back ? i > 0 : i + 1 < own.entries.size(); back ? --i : ++i) {
        if (steps.size() == most_kept_steps) break;
        const Entry& next = own.entries[back ? i - 1 : i + 1];
        // A change is named by the entry that it led to.
        const std::string& label = own.entries[back ? i : i + 1].label;
        TextChange change = change_between(text, next.text);
        const std::size_t bytes = change.put.size() + label.size() + bytes_around_a_step;
        if (bytes > room) break;
        room -= bytes;
        steps.push_back(Json::array({label, change.from, change.cut, std::move(change.put)}));
        text = next.text;
    }
    return steps;
}

struct Step {
    std::string label;
    document::Document document;
    std::string text;
};

std::optional<std::vector<Step>> read_steps(const Json& tree, const char* key, std::string text) {
    const auto list = tree.find(key);
    if (list == tree.end() || !list->is_array() || list->size() > most_kept_steps) return std::nullopt;
    std::vector<Step> steps;
    for (const Json& step : *list) {
        if (!step.is_array() || step.size() != 4 || !step[0].is_string() || !step[1].is_number_unsigned() ||
            !step[2].is_number_unsigned() || !step[3].is_string())
            return std::nullopt;
        auto there = changed(
            text, {step[1].get<std::size_t>(), step[2].get<std::size_t>(), step[3].get<std::string>()});
        if (!there) return std::nullopt;
        auto document = read_document(*there);
        if (!document.ok()) return std::nullopt;
        steps.push_back({step[0].get<std::string>(), std::move(document).value(), *there});
        text = std::move(*there);
    }
    return steps;
}

} // namespace

TextChange change_between(std::string_view before, std::string_view after) {
    const std::size_t most = std::min(before.size(), after.size());
    std::size_t head = 0;
    while (head < most && before[head] == after[head])
        ++head;
    while (head > 0 && (inside_character(before, head) || inside_character(after, head)))
        --head;
    std::size_t tail = 0;
    while (tail < most - head && before[before.size() - 1 - tail] == after[after.size() - 1 - tail])
        ++tail;
    while (tail > 0 && inside_character(after, after.size() - tail))
        --tail;
    return {head, before.size() - head - tail, std::string(after.substr(head, after.size() - head - tail))};
}

std::optional<std::string> changed(std::string_view text, const TextChange& change) {
    if (change.from > text.size() || change.cut > text.size() - change.from) return std::nullopt;
    return std::string(text.substr(0, change.from)) + change.put +
           std::string(text.substr(change.from + change.cut));
}

std::string write_history(const History& history) {
    const History::Own own = history.own();
    if (own.entries.size() < 2) return {};
    std::size_t room = most_kept_history;
    Json undo = steps_from(own, true, room);
    Json redo = steps_from(own, false, room);
    if (undo.empty() && redo.empty()) return {};
    return document::compact_text(
        {{"of", mark_of(history.current_text())}, {"undo", std::move(undo)}, {"redo", std::move(redo)}});
}

std::optional<History> read_history(const document::Tree& tree, const document::Document& current) {
    std::string text = document::write_compact(current);
    const auto mark = tree.find("of");
    if (mark == tree.end() || !mark->is_number_unsigned() ||
        mark->get<std::uint64_t>() != static_cast<std::uint64_t>(mark_of(text)))
        return std::nullopt;
    auto undo = read_steps(tree, "undo", text);
    auto redo = read_steps(tree, "redo", text);
    if (!undo || !redo) return std::nullopt;

    std::vector<Entry> entries;
    const std::size_t now = undo->size();
    // Backwards, a step is named by the entry after it; the first entry has no name.
    for (std::size_t i = now; i > 0; --i) {
        Step& step = (*undo)[i - 1];
        std::string label = i < now ? (*undo)[i].label : std::string();
        entries.push_back({std::move(step.document), std::move(label), std::move(step.text), false});
    }
    std::string label = undo->empty() ? std::string() : undo->front().label;
    entries.push_back({current, std::move(label), std::move(text), false});
    for (Step& step : *redo)
        entries.push_back({std::move(step.document), std::move(step.label), std::move(step.text), false});
    return History(std::move(entries), now);
}

} // namespace evenfall::shell::state
