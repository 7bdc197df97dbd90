#include "output/log_csv.hpp"

#include "base/number_text.hpp"
#include "document/walk.hpp"

#include <optional>

namespace evenfall::output {
namespace {

std::string quoted(const std::string& text) {
    std::string safe = text;
    if (!safe.empty() && (safe[0] == '=' || safe[0] == '+' || safe[0] == '-' || safe[0] == '@'))
        safe.insert(0, 1, '\'');
    if (safe.find_first_of(",\"\r\n") == std::string::npos) return safe;
    std::string out = "\"";
    for (const char c : safe) {
        if (c == '"') out += '"';
        out += c;
    }
    return out + '"';
}

/// The keys of a reading's fields and what it says in each, every one after a comma.
struct Row {
    std::string keys;
    std::string cells;

    void add(std::string_view key, std::string_view cell) {
        keys.append(",").append(key);
        cells.append(",").append(cell);
    }
    template <class Words, class E>
    void choice(std::string_view key, const Words& words, E held) {
        add(key, document::word_of(words, held));
    }
    void ordinal(const document::NumberField& field, const std::optional<int>& held) {
        add(field.key, held ? std::to_string(*held + 1) : field.key == "lure" ? "1" : "");
    }
    void list(const document::ListField& field, const document::HungList& held) {
        std::string text;
        for (const document::HungOn& on : held) {
            if (!text.empty()) text += "; ";
            text += document::word_of(document::table::hung_kinds, on.what);
            if (on.part) text += ' ' + std::to_string(*on.part + 1);
            if (on.mass_kg) text += ' ' + units::number_text(*on.mass_kg, units::Unit::gram, 2) + " g";
            if (!on.material.empty()) text += ' ' + on.material;
        }
        add(field.key, quoted(text));
    }
    void optional_number(const document::NumberField& field, const std::optional<double>& held) {
        add(field.key, held ? document::plain_number(to_trade(field, *held)) : "");
    }
    void text(const document::TextField& field, const std::string& held) { add(field.key, quoted(held)); }
    void yes_no(std::string_view key, bool held) { add(key, held ? "yes" : "no"); }
};

Row row_of(const document::Reading& reading) {
    Row row;
    walk(row, reading);
    return row;
}

} // namespace

std::string log_csv(const document::Document& document) {
    std::string out = "reading" + row_of({}).keys + "\r\n";
    for (std::size_t i = 0; i < document.log.size(); ++i)
        out += std::to_string(i + 1) + row_of(document.log[i]).cells + "\r\n";
    return out;
}

} // namespace evenfall::output
