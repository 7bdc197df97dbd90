#include "state/session_json.hpp"

#include "look/words_state.hpp"
#include "state/history_text.hpp"

#include "evenfall.hpp"
#include "output.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <cstdint>
#include <string_view>

namespace evenfall::shell::state {
namespace {

using Json = document::Tree;

constexpr int session_version = 1;
// A document's own limit plus room for view, settings and the history, whose quotation marks are escaped.
constexpr std::size_t max_session_bytes = document::max_document_bytes + 8192 + 3 * most_kept_history;

constexpr std::array<std::string_view, step_count> step_words{"shape",  "joints", "hardware", "lead",
                                                              "finish", "water",  "log",      "sheet"};
static_assert(!step_words.back().empty());
constexpr std::array<std::string_view, 3> small_view_words{"above", "section", "hang"};
constexpr std::array<std::string_view, 4> curve_words{"back", "belly", "half_width", "corners"};
constexpr std::array<std::string_view, 7> water_view_words{"waters", "fall",   "afloat", "swim",
                                                           "season", "hinges", "ledger"};
constexpr std::array<std::string_view, 3> log_view_words{"now", "readings", "uncertainty"};
constexpr std::array<std::string_view, 2> theme_words{"light", "dark"};
constexpr std::array<std::string_view, 3> retrieve_words{"second", "hour", "turns"};
constexpr std::array<std::string_view, 2> paper_words{"a4", "letter"};

template <class E, std::size_t N>
std::string word_of(const std::array<std::string_view, N>& words, E value) {
    return std::string(words[std::min(static_cast<std::size_t>(value), N - 1)]);
}

/// True where a known word stands there.
template <class E, std::size_t N>
bool take_word(const Json& from, const char* key, const std::array<std::string_view, N>& words, E& into) {
    const auto found = from.find(key);
    if (found == from.end() || !found->is_string()) return false;
    const auto known = std::find(words.begin(), words.end(), found->template get_ref<const std::string&>());
    if (known == words.end()) return false;
    into = static_cast<E>(known - words.begin());
    return true;
}

struct UnitWord {
    std::string_view word;
    units::Unit unit;
};
constexpr UnitWord unit_words[] = {
    {"mm", units::Unit::mm},
    {"in", units::Unit::inch},
    {"in_fraction", units::Unit::inch_fraction},
    {"g", units::Unit::gram},
    {"oz", units::Unit::ounce},
    {"gr", units::Unit::grain},
    {"s_per_ft", units::Unit::s_per_ft},
    {"mm_per_s", units::Unit::mm_per_s},
    {"s_per_m", units::Unit::s_per_m},
    {"C", units::Unit::celsius},
    {"F", units::Unit::fahrenheit},
};

std::string word_of(units::Unit unit) {
    for (const UnitWord& known : unit_words) {
        if (known.unit == unit) return std::string(known.word);
    }
    return {};
}

/// A unit of the quantity that `into` has now; anything else leaves it as it is.
void take_unit(const Json& from, const char* key, units::Unit& into) {
    const auto found = from.find(key);
    if (found == from.end() || !found->is_string()) return;
    for (const UnitWord& known : unit_words) {
        if (found->get_ref<const std::string&>() == known.word &&
            quantity_of(known.unit) == quantity_of(into))
            into = known.unit;
    }
}

void take_flag(const Json& from, const char* key, bool& into) {
    const auto found = from.find(key);
    if (found != from.end() && found->is_boolean()) into = found->get<bool>();
}

/// In metres, so that what is read is what was written to the last digit.
Json retrieve_tree(const Retrieve& retrieve) {
    return {{"by", word_of(retrieve_words, retrieve.by)},
            {"m_s", retrieve.speed_m_s},
            {"line_per_turn_m", retrieve.line_per_turn_m}};
}

void take_retrieve(const Json& from, Retrieve& into) {
    if (!from.is_object()) return;
    take_word(from, "by", retrieve_words, into.by);
    const auto speeds = from.find("m_s");
    if (speeds != from.end() && speeds->is_array() && speeds->size() == into.speed_m_s.size()) {
        for (std::size_t i = 0; i < into.speed_m_s.size(); ++i) {
            if (const Json& speed = (*speeds)[i]; speed.is_number())
                into.speed_m_s[i] = std::clamp(speed.get<double>(), least_retrieve_m_s, most_retrieve_m_s);
        }
    }
    const auto line = from.find("line_per_turn_m");
    if (line != from.end() && line->is_number())
        into.line_per_turn_m = std::clamp(line->get<double>(), least_line_per_turn_m, most_line_per_turn_m);
}

/// Sections that were opened or closed; ids of another version are kept, and do nothing.
void take_sections(const Json& view, std::map<std::string, bool>& into) {
    constexpr std::size_t most_sections = 64;
    constexpr std::size_t longest_id = 40;
    const auto found = view.find("sections");
    if (found == view.end() || !found->is_object() || found->size() > most_sections) return;
    for (const auto& [id, open] : found->items()) {
        if (open.is_boolean() && id.size() <= longest_id) into[id] = open.get<bool>();
    }
}

Problem refused(ProblemCode code, std::string sentence) {
    return {code, "", "", std::move(sentence)};
}

/// "{…" of a lure; the document's own text is inserted unchanged, so that its numbers are never rewritten.
std::string session_head(const document::Document& document) {
    return "{\"session\": " + std::to_string(session_version) + ", \"document\": " + write_document(document);
}

} // namespace

document::Tree settings_tree(const Settings& settings) {
    return {{"language", settings.language},
            {"length", word_of(settings.units.length)},
            {"mass", word_of(settings.units.mass)},
            {"fall", word_of(settings.units.fall)},
            {"temperature", word_of(settings.units.temperature)},
            {"theme", word_of(theme_words, settings.theme)},
            {"large_text", settings.large_text},
            {"left_handed", settings.left_handed},
            {"retrieve", retrieve_tree(settings.retrieve)}};
}

void take_settings(const document::Tree& tree, Settings& settings) {
    if (!tree.is_object()) return;
    constexpr std::size_t longest_language = 16;
    const auto language = tree.find("language");
    if (language != tree.end() && language->is_string() &&
        language->get_ref<const std::string&>().size() <= longest_language)
        settings.language = language->get<std::string>();
    take_unit(tree, "length", settings.units.length);
    take_unit(tree, "mass", settings.units.mass);
    take_unit(tree, "fall", settings.units.fall);
    take_unit(tree, "temperature", settings.units.temperature);
    take_word(tree, "theme", theme_words, settings.theme);
    take_flag(tree, "large_text", settings.large_text);
    take_flag(tree, "left_handed", settings.left_handed);
    if (const auto retrieve = tree.find("retrieve"); retrieve != tree.end())
        take_retrieve(*retrieve, settings.retrieve);
}

std::string session_of(const document::Document& document) {
    return session_head(document) + "}";
}

std::string write_session(const Session& session, bool with_history) {
    const ViewState& view = session.view;
    Json sections = Json::object();
    for (const auto& [id, open] : view.sections)
        sections[id] = open;
    Json view_json{{"step", word_of(step_words, view.step)},
                   {"small_view", word_of(small_view_words, view.small_view)},
                   {"curve", word_of(curve_words, view.curve)},
                   {"snap", view.snap},
                   {"mirror", view.mirror},
                   {"drilling", view.drilling},
                   {"drill_screen", view.drill_screen},
                   {"water_view", word_of(water_view_words, view.water_view)},
                   {"log_view", word_of(log_view_words, view.log_view)},
                   {"season_by_salt", view.season_by_salt},
                   {"sheet_lures", view.sheet.lures},
                   {"fall_depth_mm", units::mm_from_m(view.fall_depth_m)},
                   {"section_x_mm", units::mm_from_m(view.section_x_m)},
                   {"sections", sections}};
    if (view.sheet.paper) view_json["sheet_paper"] = word_of(paper_words, *view.sheet.paper);
    std::string text = session_head(session.kept()) + ", \"view\": " + document::compact_text(view_json) +
                       ", \"settings\": " + document::compact_text(settings_tree(session.settings));
    const std::string history = with_history ? write_history(session.history()) : std::string();
    if (!history.empty()) text += ", \"history\": " + history;
    return text + "}";
}

Problems restore_session(Session& session, const std::string& text, bool with_history) {
    if (text.size() > max_session_bytes)
        return {refused(ProblemCode::too_large, look::words::saved_too_large)};
    const auto parsed = document::parse_guarded(text, max_session_bytes);
    if (!parsed.ok() || !parsed->is_object())
        return {refused(ProblemCode::not_json, look::words::saved_damaged)};
    const Json& json = *parsed;
    const auto version = json.find("session");
    if (version == json.end() || !version->is_number_integer() || version->get<int>() != session_version) {
        return {refused(ProblemCode::unknown_version, look::words::saved_by_another_version)};
    }
    const auto document = json.find("document");
    if (document == json.end() || !document->is_object()) {
        return {refused(ProblemCode::missing_key, look::words::saved_empty)};
    }
    auto read = read_document(document::compact_text(*document));
    if (!read.ok()) return read.problems();
    auto checked = evaluate(*read);
    if (!checked.ok()) return checked.problems();

    Session restored(std::move(read).value());
    restored.view = session.view;
    restored.view.clear_lure_state();
    restored.settings = session.settings;
    if (const auto view = json.find("view"); view != json.end() && view->is_object()) {
        take_word(*view, "step", step_words, restored.view.step);
        take_word(*view, "small_view", small_view_words, restored.view.small_view);
        take_word(*view, "curve", curve_words, restored.view.curve);
        take_word(*view, "water_view", water_view_words, restored.view.water_view);
        take_word(*view, "log_view", log_view_words, restored.view.log_view);
        take_flag(*view, "season_by_salt", restored.view.season_by_salt);
        take_flag(*view, "snap", restored.view.snap);
        take_flag(*view, "mirror", restored.view.mirror);
        take_flag(*view, "drilling", restored.view.drilling);
        const auto screen = view->find("drill_screen");
        if (screen != view->end() && screen->is_number_integer())
            restored.view.drill_screen = static_cast<int>(std::clamp<std::int64_t>(
                screen->get<std::int64_t>(), 0, static_cast<std::int64_t>(document::max_holes)));
        bool letter = false; // what sessions had before version 1.3
        take_flag(*view, "sheet_letter", letter);
        if (letter) restored.view.sheet.paper = SheetPaper::letter;
        SheetPaper paper{};
        if (take_word(*view, "sheet_paper", paper_words, paper)) restored.view.sheet.paper = paper;
        take_sections(*view, restored.view.sections);
        const auto lures = view->find("sheet_lures");
        if (lures != view->end() && lures->is_number_integer())
            restored.view.sheet.lures =
                static_cast<int>(std::clamp<std::int64_t>(lures->get<std::int64_t>(), 1, most_lures));
        const auto depth = view->find("fall_depth_mm");
        if (depth != view->end() && depth->is_number()) {
            restored.view.fall_depth_m =
                std::clamp(units::m_from_mm(depth->get<double>()), least_fall_depth_m, most_fall_depth_m);
        }
        const auto x = view->find("section_x_mm");
        if (x != view->end() && x->is_number()) {
            const double length_m = restored.evaluation()->body.lines->length_m();
            restored.view.section_x_m = std::clamp(units::m_from_mm(x->get<double>()), 0.0, length_m);
        }
    }
    if (const auto settings = json.find("settings"); settings != json.end())
        take_settings(*settings, restored.settings);
    const auto history = json.find("history");
    if (with_history && history != json.end() && history->is_object()) {
        if (auto kept = read_history(*history, restored.kept())) restored.take_history(std::move(*kept));
    }
    restored.continue_counters_of(session);
    session = std::move(restored);
    return {};
}

} // namespace evenfall::shell::state
