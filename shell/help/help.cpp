#include "help/help.hpp"

#include "help/entries_bench.hpp"
#include "help/entries_how.hpp"
#include "help/entries_joints.hpp"
#include "help/entries_lure.hpp"
#include "help/entries_water.hpp"
#include "output.hpp"

#include <algorithm>

namespace evenfall::shell::help {
namespace {

using Json = document::Tree;

/// Of an entry, in the order in which `score` weighs them.
struct Words {
    std::vector<std::string> title;
    std::vector<std::string> find;
    std::vector<std::string> what;
    std::vector<std::string> rest;
};

/// Lower-case words. Bytes beyond ASCII belong to a word; of those only Ä, Ö, Ü and their like are lowered.
std::vector<std::string> words_of(std::string_view text) {
    std::vector<std::string> out(1);
    for (const char c : text) {
        const bool upper = c >= 'A' && c <= 'Z';
        const bool letter = upper || (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9') ||
                            static_cast<unsigned char>(c) >= 0x80;
        const auto byte = static_cast<unsigned char>(c);
        const bool latin_1 =
            !out.back().empty() && out.back().back() == '\xC3' && byte >= 0x80 && byte <= 0x9E;
        if (letter)
            out.back() += upper || latin_1 ? static_cast<char>(c + ('a' - 'A')) : c;
        else if (!out.back().empty())
            out.emplace_back();
    }
    if (out.back().empty()) out.pop_back();
    return out;
}

/// Words that a question is made of, whatever it asks for. One text, so that it is translated as one.
constexpr std::string_view fillers =
    "a about an and are as at be but by can could do does for get has have how i if in is it its me my not "
    "of on or "
    "should so that the then this to was what when where which why will with you your";

/// "weigh" and "weighing" are one word to the reader, so are "Gewicht" and "Trockengewicht".
bool alike(std::string_view a, std::string_view b) {
    const std::string_view shorter = a.size() < b.size() ? a : b;
    const std::string_view longer = a.size() < b.size() ? b : a;
    const std::size_t at = longer.find(shorter);
    return shorter == longer || (shorter.size() >= 3 && at == 0) ||
           (shorter.size() >= 6 && at != longer.npos);
}

bool holds(const std::vector<std::string>& words, std::string_view wanted) {
    return std::any_of(words.begin(), words.end(), [&](const std::string& w) { return alike(w, wanted); });
}

/// In English and in the reader's language.
Words words_of(const Entry& entry, const words::Speech& in) {
    const auto both = [&](std::initializer_list<const char*> texts) {
        std::string all;
        for (const char* text : texts)
            all += std::string(text) + " " + in.said(text) + " ";
        return words_of(all);
    };
    return {both({entry.title}), both({entry.find}), both({entry.what}),
            both({entry.how, entry.source, entry.trust})};
}

/// Of one word of the question; the word itself counts more than one that begins like it.
int score(const Words& words, const std::string& wanted) {
    const auto has = [&](const std::vector<std::string>& list) {
        return std::find(list.begin(), list.end(), wanted) != list.end();
    };
    if (has(words.title)) return 7;
    if (holds(words.title, wanted)) return 6;
    if (has(words.find)) return 5;
    if (holds(words.find, wanted)) return 4;
    return holds(words.what, wanted) ? 2 : holds(words.rest, wanted) ? 1 : 0;
}

int score(const Entry& entry, const std::vector<std::string>& question, const words::Speech& in) {
    const Words words = words_of(entry, in);
    int sum = 0;
    for (const std::string& word : question)
        sum += score(words, word);
    return sum;
}

Json told_tree(const Entry& entry, const std::vector<Figure>& figures, const units::UnitSet& units) {
    Json tree;
    tree["id"] = entry.id;
    tree["title"] = entry.title;
    tree["what"] = entry.what;
    tree["how"] = entry.how;
    tree["source"] = entry.source;
    tree["trust"] = entry.trust;
    tree["figures"] = Json::array();
    for (const Figure& figure : figures)
        tree["figures"].push_back(Json::array({figure.label, figure.value}));
    tree["steps"] = Json::array();
    if (entry.reading) {
        for (const Sentence& step : output::reading_steps(*entry.reading))
            tree["steps"].push_back(step.text(units));
    }
    return tree;
}

} // namespace

std::span<const Entry> entries() {
    static const std::vector<Entry> all = [] {
        std::vector<Entry> together;
        for (const std::span<const Entry> some :
             {std::span<const Entry>(lure_entries), std::span<const Entry>(joint_entries),
              std::span<const Entry>(bench_entries), std::span<const Entry>(water_entries),
              std::span<const Entry>(how_entries)})
            together.insert(together.end(), some.begin(), some.end());
        return together;
    }();
    return all;
}

const Entry* entry_of(Topic topic) {
    const auto all = entries();
    const auto found =
        std::find_if(all.begin(), all.end(), [topic](const Entry& e) { return e.topic == topic; });
    return found == all.end() ? nullptr : &*found;
}

std::string told(const Asked& asked, const units::UnitSet& units) {
    const Entry* entry = entry_of(asked.topic);
    return entry == nullptr ? std::string() : told_tree(*entry, asked.figures, units).dump();
}

std::vector<const Entry*> found(std::string_view question, const words::Speech& in) {
    std::vector<std::string> wanted = words_of(question);
    const std::vector<std::string> idle = words_of(std::string(fillers) + " " + in.said(fillers));
    std::erase_if(wanted, [&](const std::string& word) {
        return std::find(idle.begin(), idle.end(), word) != idle.end();
    });
    struct Scored {
        const Entry* entry;
        int score;
    };
    std::vector<Scored> list;
    for (const Entry& entry : entries()) {
        const int points = wanted.empty() ? 1 : score(entry, wanted, in);
        if (points > 0) list.push_back({&entry, points});
    }
    std::stable_sort(list.begin(), list.end(),
                     [](const Scored& a, const Scored& b) { return a.score > b.score; });
    std::vector<const Entry*> out;
    constexpr std::size_t most = 10;
    for (const Scored& one : list) {
        if (!wanted.empty() && out.size() == most) break;
        out.push_back(one.entry);
    }
    return out;
}

std::string found_json(std::string_view question, const words::Speech& in) {
    Json list = Json::array();
    for (const Entry* entry : found(question, in))
        list.push_back(Json::array({entry->id, entry->title}));
    return list.dump();
}

std::string told_by_id(std::string_view id, const units::UnitSet& units) {
    for (const Entry& entry : entries()) {
        if (id == entry.id) return told_tree(entry, {}, units).dump();
    }
    return {};
}

} // namespace evenfall::shell::help
