#include "document/version_1.hpp"

#include <initializer_list>
#include <string>
#include <string_view>
#include <utility>

// Version 2 holds what version 1 held and says it in other words. No value but a word changes.

namespace evenfall::document {
namespace {

using Words = std::initializer_list<std::pair<std::string_view, std::string_view>>;

/// Other names for an object's keys. An old name beside its new one stays, and is refused as unknown.
void rename_keys(Tree& object, Words names) {
    if (!object.is_object()) return;
    Tree renamed = Tree::object();
    for (auto& [key, value] : object.items()) {
        std::string name = key;
        for (const auto& [old_name, new_name] : names) {
            if (key == old_name && !object.contains(new_name)) name = new_name;
        }
        renamed[name] = std::move(value);
    }
    object = std::move(renamed);
}

/// Another word where one of these stands as the value of `key`.
void replace_word(Tree& object, std::string_view key, Words words) {
    if (!object.is_object()) return;
    const auto at = object.find(key);
    if (at == object.end() || !at->is_string()) return;
    const std::string word = at->get<std::string>();
    for (const auto& [old_word, new_word] : words) {
        if (word == old_word) *at = std::string(new_word);
    }
}

void rename_lines(Tree& shape) {
    rename_keys(shape, {{"top_mm", "back_mm"}, {"bottom_mm", "belly_mm"}});
}

void replace_stage(Tree& entry) {
    replace_word(entry, "stage", {{"dressed", "rigged"}});
}

template <class Change>
void change_member(Tree& object, std::string_view key, const Change& change) {
    if (!object.is_object()) return;
    if (const auto at = object.find(key); at != object.end()) change(*at);
}

template <class Change>
void change_entries(Tree& object, std::string_view key, const Change& change) {
    change_member(object, key, [&](Tree& list) {
        if (!list.is_array()) return;
        for (Tree& entry : list)
            change(entry);
    });
}

/// Fullness was the exponent of a rounded section, the corner cut of a chamfered one, and nothing to a drawn
/// one.
void change_section(Tree& section) {
    if (!section.is_object()) return;
    const auto kind = section.find("kind");
    const std::string word = kind != section.end() && kind->is_string() ? kind->get<std::string>() : "";
    rename_keys(section, {{"fullness", word == "chamfered" ? "corner_cut" : "exponent"}});
    if (word == "free") section.erase("exponent");
    replace_word(section, "kind", {{"superellipse", "rounded"}, {"free", "drawn"}});
}

void change_reading(Tree& reading) {
    rename_keys(reading, {{"showing_mm", "freeboard_mm"}, {"struck", "excluded"}});
    replace_word(reading, "kind",
                 {{"block", "board"}, {"just_hangs", "suspends"}, {"floats_showing", "freeboard"}});
    replace_stage(reading);
}

} // namespace

Tree from_version_1(Tree document) {
    rename_keys(document, {{"blank", "board"}});
    change_member(document, "shape", [](Tree& shape) {
        rename_lines(shape);
        change_member(shape, "section", change_section);
    });
    change_member(document, "tail", [](Tree& tail) {
        rename_lines(tail);
        rename_keys(tail, {{"fullness", "exponent"}});
    });
    change_entries(document, "parts", replace_stage);
    change_entries(document, "log", change_reading);
    return document;
}

} // namespace evenfall::document
