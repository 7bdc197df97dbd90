#include "output/log_csv.hpp"

#include "document/table.hpp"

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

/// The value of one field of a reading, as text.
std::string said(const document::Field& field, const document::Reading& reading) {
    using document::Sort;
    switch (field.sort) {
    case Sort::choice:
        return std::string(word_of(field, choice_at(&reading, field.offset)));
    case Sort::ordinal:
        if (const auto& held = document::value_at<std::optional<int>>(&reading, field.offset))
            return std::to_string(*held + 1);
        return field.key == "lure" ? "1" : "";
    case Sort::optional_number:
        if (const auto& held = document::value_at<std::optional<double>>(&reading, field.offset)) {
            return document::plain_number(to_trade(field.number, *held));
        }
        return {};
    case Sort::text:
        return quoted(document::value_at<std::string>(&reading, field.offset));
    case Sort::yes_no:
        return document::value_at<bool>(&reading, field.offset) ? "yes" : "no";
    default:
        return {}; // readings have no other kinds of field
    }
}

} // namespace

std::string log_csv(const document::Document& document) {
    const document::Table& table = document::reading_table();
    std::string out = "reading";
    for (const document::Field& field : table.fields)
        out.append(",").append(field.key);
    out += "\r\n";
    for (std::size_t i = 0; i < document.log.size(); ++i) {
        out += std::to_string(i + 1);
        for (const document::Field& field : table.fields)
            out.append(",").append(said(field, document.log[i]));
        out += "\r\n";
    }
    return out;
}

} // namespace evenfall::output
