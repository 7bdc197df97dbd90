#include "state/everything.hpp"

#include "look/words_drawer.hpp"
#include "look/words_shelf.hpp"
#include "output.hpp"
#include "state/session_json.hpp"

#include <array>
#include <cmath>
#include <cstdint>
#include <set>
#include <utility>

namespace evenfall::shell::state {
namespace {

namespace words = look::words;
using Json = document::Tree;

constexpr int everything_version = 1;
constexpr std::size_t longest_id = 64;
constexpr double latest_ms = 8.64e15; // the last moment that a JavaScript date can name
constexpr std::array<const char*, 5> keys{"evenfall_everything", "lures", "bin", "drawer", "settings"};

std::string list_text(const std::vector<KeptDocument>& lures) {
    std::string text;
    for (const KeptDocument& lure : lures) {
        text += text.empty() ? "\n" : ",\n";
        text += "{\"id\": " + document::compact_text(Json(lure.id)) +
                ", \"kept_ms\": " + std::to_string(static_cast<std::int64_t>(lure.time_ms)) +
                ", \"document\": " + write_document(lure.document) + "}";
    }
    return "[" + text + "]";
}

Problem refused(ProblemCode code, std::string path, std::string sentence) {
    return {code, std::move(path), "", std::move(sentence)};
}

/// The problems of one lure, each with its place in the file and the lure's number.
Problems placed(Problems problems, const std::string& path, const std::string& who) {
    for (Problem& problem : problems) {
        problem.path.insert(0, path);
        problem.sentence = who + problem.sentence;
    }
    return problems;
}

Outcome<KeptDocument> read_kept(const Json& json, const std::string& path, const std::string& who) {
    const auto damaged = [&] {
        return refused(ProblemCode::wrong_type, path, who + words::everything_lure_damaged);
    };
    if (!json.is_object()) return damaged();
    const auto id = json.find("id"); // older files have none
    const auto time = json.find("kept_ms");
    const auto document = json.find("document");
    if (time == json.end() || document == json.end() || !time->is_number() || !document->is_object())
        return damaged();
    if (json.size() != (id == json.end() ? 2 : 3)) return damaged();
    KeptDocument lure;
    if (id != json.end()) {
        if (!id->is_string() || id->get_ref<const std::string&>().size() > longest_id) return damaged();
        lure.id = id->get<std::string>();
    }
    lure.time_ms = std::floor(time->get<double>());
    if (!(lure.time_ms >= 0.0 && lure.time_ms <= latest_ms)) return damaged();
    auto read = read_document(document::compact_text(*document));
    if (!read.ok()) return placed(read.problems(), path + "/document", who);
    if (const auto built = evaluate(*read); !built.ok())
        return placed(built.problems(), path + "/document", who);
    lure.document = std::move(read).value();
    return lure;
}

Outcome<std::vector<KeptDocument>> read_lures(const Json& json, const char* key, const char* word) {
    const std::string path = std::string("/") + key;
    const Json& list = json.at(key);
    if (!list.is_array()) return refused(ProblemCode::wrong_type, path, words::everything_damaged);
    if (list.size() > most_everything_lures)
        return refused(ProblemCode::too_large, path, words::everything_too_large);
    std::vector<KeptDocument> lures;
    for (std::size_t i = 0; i < list.size(); ++i) {
        auto lure = read_kept(list[i], path + "/" + std::to_string(i),
                              word + std::to_string(i + 1) + words::everything_colon);
        if (!lure.ok()) return lure.problems();
        lures.push_back(std::move(lure).value());
    }
    return lures;
}

/// Settings that this version knows, each with a word that it knows.
Outcome<Settings> read_settings(const Json& json) {
    Settings settings;
    take_settings(json, settings);
    const Json understood = settings_tree(settings);
    bool fine = json.is_object();
    for (const auto& [key, value] : json.items())
        fine = fine && understood.contains(key) && understood.at(key) == value;
    if (!fine) return refused(ProblemCode::unknown_name, "/settings", words::everything_settings);
    return settings;
}

using Texts = std::set<std::string>;

Texts texts_of(const std::vector<KeptDocument>& lures) {
    Texts texts;
    for (const KeptDocument& lure : lures)
        texts.insert(document::write_compact(lure.document));
    return texts;
}

/// Those of the file that are not known yet; they are known from then on.
std::vector<KeptDocument> unknown_of(const std::vector<KeptDocument>& file, Texts& known) {
    std::vector<KeptDocument> lures;
    for (const KeptDocument& lure : file) {
        if (known.insert(document::write_compact(lure.document)).second) lures.push_back(lure);
    }
    return lures;
}

/// What merging and replacing have in common: the lures.
Taking with_lures(const Everything& file, const OnThisDevice& here) {
    Taking taking;
    Texts known = texts_of(here.all.lures);
    known.insert(document::write_compact(here.bench));
    taking.lures = unknown_of(file.lures, known);
    taking.lures_here = file.lures.size() - taking.lures.size();
    known.merge(texts_of(here.all.bin));
    taking.bin = unknown_of(file.bin, known);
    return taking;
}

Json plan_list(const std::vector<KeptDocument>& lures) {
    Json list = Json::array();
    for (const KeptDocument& lure : lures)
        list.push_back({{"id", lure.id},
                        {"session", session_of(lure.document)},
                        {"time", static_cast<std::int64_t>(lure.time_ms)}});
    return list;
}

} // namespace

std::string write_everything(const Everything& everything) {
    return "{\"evenfall_everything\": " + std::to_string(everything_version) +
           ",\n\"lures\": " + list_text(everything.lures) + ",\n\"bin\": " + list_text(everything.bin) +
           ",\n\"drawer\": " + write_drawer(everything.drawer) +
           ",\n\"settings\": " + document::compact_text(settings_tree(everything.settings)) + "}\n";
}

Outcome<Everything> read_everything(const std::string& text) {
    if (text.size() > most_everything_bytes)
        return refused(ProblemCode::too_large, "", words::everything_too_large);
    const auto parsed = document::parse_guarded(text, most_everything_bytes);
    if (!parsed.ok() || !parsed->is_object())
        return refused(ProblemCode::not_json, "", words::everything_damaged);
    const Json& json = *parsed;
    const auto version = json.find(keys[0]);
    if (version == json.end() || !version->is_number_integer() || version->get<int>() != everything_version)
        return refused(ProblemCode::unknown_version, std::string("/") + keys[0],
                       words::everything_other_version);
    for (const char* key : keys) {
        if (!json.contains(key))
            return refused(ProblemCode::missing_key, std::string("/") + key, words::everything_damaged);
    }
    if (json.size() != keys.size()) return refused(ProblemCode::unknown_key, "", words::everything_damaged);

    Everything everything;
    auto lures = read_lures(json, "lures", words::everything_lure);
    if (!lures.ok()) return lures.problems();
    auto bin = read_lures(json, "bin", words::everything_bin_lure);
    if (!bin.ok()) return bin.problems();
    auto drawer = read_drawer(document::compact_text(json.at("drawer")));
    if (!drawer.ok()) return placed(drawer.problems(), "/drawer", "");
    auto settings = read_settings(json.at("settings"));
    if (!settings.ok()) return settings.problems();
    everything.lures = std::move(lures).value();
    everything.bin = std::move(bin).value();
    everything.drawer = std::move(drawer).value();
    everything.settings = *settings;
    return everything;
}

Outcome<Taking> merged(const Everything& file, const OnThisDevice& here) {
    Taking taking = with_lures(file, here);
    taking.settings = here.all.settings;
    taking.drawer = here.all.drawer;
    for (const DrawerItem& piece : file.drawer.things()) {
        if (taking.drawer.holds(piece.kind, piece.name)) continue;
        if (!taking.drawer.put(piece)) return refused(ProblemCode::too_large, "/drawer", words::drawer_full);
        ++taking.new_pieces;
    }
    return taking;
}

Taking replaced(const Everything& file, const OnThisDevice& here) {
    Taking taking = with_lures(file, here);
    taking.settings = file.settings;
    taking.drawer = file.drawer;
    taking.new_pieces = file.drawer.things().size();
    const Texts stay = texts_of(file.lures);
    for (const KeptDocument& lure : here.all.lures) {
        if (!stay.contains(document::write_compact(lure.document))) taking.away.push_back(lure.id);
    }
    return taking;
}

std::string plan_text(const Taking& taking) {
    return document::compact_text({{"lures", plan_list(taking.lures)},
                                   {"bin", plan_list(taking.bin)},
                                   {"away", taking.away},
                                   {"drawer", write_drawer(taking.drawer)}});
}

} // namespace evenfall::shell::state
