#include "report/log_csv.hpp"

#include "preset/field_table.hpp"
#include "preset/json_text.hpp"

#include <array>
#include <functional>

namespace evenfall::report {
namespace {

std::string quoted(const std::string& text) {
    std::string safe = text;
    if (!safe.empty() && (safe[0] == '=' || safe[0] == '+' || safe[0] == '-' || safe[0] == '@')) safe.insert(0, 1, '\'');
    if (safe.find_first_of(",\"\r\n") == std::string::npos) return safe;
    std::string out = "\"";
    for (const char c : safe) {
        if (c == '"') out += '"';
        out += c;
    }
    return out + '"';
}

/// Walks the fields of a reading in the table's order: once for the head, once for each line.
class Row {
public:
    Row(const preset::Reading* reading, std::string& out) : reading_(reading), out_(out) {}

    template <class Words, class A>
    void choice(std::string_view key, const Words& words, A at) {
        std::string text;
        if (reading_ != nullptr) {
            for (const auto& word : words) {
                if (word.value == std::invoke(at, *reading_)) text = std::string(word.word);
            }
        }
        put(key, text);
    }
    template <class A>
    void ordinal(const preset::NumberField& field, A at) {
        std::string text;
        if (reading_ != nullptr) {
            if (const auto& held = std::invoke(at, *reading_)) text = std::to_string(*held + 1);
            else if (field.key == "lure") text = "1";
        }
        put(field.key, text);
    }
    template <class A>
    void optional_number(const preset::NumberField& field, A at) {
        std::string text;
        if (reading_ != nullptr) {
            if (const auto& held = std::invoke(at, *reading_)) text = preset::plain_number(preset::to_trade(field, *held));
        }
        put(field.key, text);
    }
    template <class A>
    void text(const preset::TextField& field, A at) {
        put(field.key, reading_ != nullptr ? quoted(std::invoke(at, *reading_)) : std::string());
    }
    template <class A>
    void yes_no(std::string_view key, A at) {
        put(key, reading_ != nullptr ? (std::invoke(at, *reading_) ? "yes" : "no") : "");
    }

private:
    void put(std::string_view key, const std::string& value) {
        out_ += ',';
        out_ += reading_ == nullptr ? std::string(key) : value;
    }

    const preset::Reading* reading_;
    std::string& out_;
};

}  // namespace

std::string log_csv(const preset::Document& document) {
    std::string out = "reading";
    Row head(nullptr, out);
    preset::describe(head, preset::Of<preset::Reading>{});
    out += "\r\n";
    for (std::size_t i = 0; i < document.log.size(); ++i) {
        out += std::to_string(i + 1);
        Row row(&document.log[i], out);
        preset::describe(row, preset::Of<preset::Reading>{});
        out += "\r\n";
    }
    return out;
}

}  // namespace evenfall::report
