#include "words/pattern.hpp"

#include "base/unit.hpp"

#include <algorithm>

namespace evenfall::words {

namespace {

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || c == '_';
}

/// The symbols of all units, the longest first.
const std::vector<std::string_view>& symbols() {
    static const std::vector<std::string_view> all = [] {
        std::vector<std::string_view> out;
        for (int i = 0; i <= static_cast<int>(units::Unit::inch_fraction); ++i) {
            const std::string_view symbol = units::symbol(static_cast<units::Unit>(i));
            if (!symbol.empty()) out.push_back(symbol);
        }
        std::sort(out.begin(), out.end(),
                  [](std::string_view a, std::string_view b) { return a.size() > b.size(); });
        return out;
    }();
    return all;
}

std::size_t digits_at(std::string_view text, std::size_t at) {
    std::size_t end = at;
    while (end < text.size() && is_digit(text[end]))
        ++end;
    return end - at;
}

/// "3/8" at this place: its length, else 0.
std::size_t fraction_at(std::string_view text, std::size_t at) {
    const std::size_t above = digits_at(text, at);
    if (above == 0 || at + above >= text.size() || text[at + above] != '/') return 0;
    const std::size_t below = digits_at(text, at + above + 1);
    return below == 0 ? 0 : above + 1 + below;
}

/// "2026-11-30"
bool is_date_at(std::string_view text, std::size_t at) {
    return digits_at(text, at) == 4 && text.substr(at + 4, 1) == "-" && digits_at(text, at + 5) == 2 &&
           text.substr(at + 7, 1) == "-" && digits_at(text, at + 8) == 2;
}

/// Where the number that begins here ends, its unit not counted.
std::size_t number_end(std::string_view text, std::size_t at) {
    if (is_date_at(text, at)) return at + 10;
    if (const std::size_t fraction = fraction_at(text, at)) return at + fraction;
    std::size_t end = at + digits_at(text, at);
    while (end + 1 < text.size() && (text[end] == '.' || text[end] == ',') && is_digit(text[end + 1]))
        end += 1 + digits_at(text, end + 1);
    if (end < text.size() && text[end] == ' ') {
        if (const std::size_t fraction = fraction_at(text, end + 1)) end += 1 + fraction;
    }
    return end;
}

/// Where the unit behind a number ends; `at` where there is none.
std::size_t unit_end(std::string_view text, std::size_t at, bool in_is_inch) {
    std::size_t from = at;
    for (const std::string_view blank : {" ", "\xC2\xA0"}) { // the page's does not break
        if (from == at && text.substr(at).starts_with(blank)) from += blank.size();
    }
    for (const std::string_view symbol : symbols()) {
        if (!text.substr(from).starts_with(symbol)) continue;
        if (symbol == "in" && !in_is_inch) continue;
        const std::size_t end = from + symbol.size();
        const bool goes_on =
            end < text.size() && is_letter(symbol.back()) && (is_letter(text[end]) || is_digit(text[end]));
        if (!goes_on) return end;
    }
    return at;
}

/// The sign before a number that begins at `at`: its length in bytes, else 0. Not the dash of a range.
std::size_t sign_before(std::string_view text, std::size_t at) {
    for (const std::string_view sign : {"+", "-", "\xE2\x88\x92"}) {
        if (at < sign.size() || text.substr(at - sign.size(), sign.size()) != sign) continue;
        const std::size_t before = at - sign.size();
        if (before == 0 || text[before - 1] == ' ' || text[before - 1] == '(') return sign.size();
    }
    return 0;
}

} // namespace

std::string Pattern::text(std::size_t from, std::size_t to) const {
    std::string out;
    std::size_t number = 0;
    for (std::size_t at = key.find(number_mark); at < from; at = key.find(number_mark, at + 2))
        ++number;
    for (std::size_t at = from; at < to; ++at) {
        if (key.compare(at, number_mark.size(), number_mark) == 0) {
            out += numbers[number++];
            ++at;
        } else {
            out += key[at];
        }
    }
    return out;
}

Pattern pattern_of(std::string_view text, bool in_is_inch) {
    Pattern out;
    for (std::size_t at = 0; at < text.size();) {
        if (text.substr(at).starts_with(number_mark)) { // somebody has typed it
            out.numbers.emplace_back(number_mark);
            out.key += number_mark;
            at += number_mark.size();
            continue;
        }
        const bool begins =
            is_digit(text[at]) && (at == 0 || (!is_letter(text[at - 1]) && !is_digit(text[at - 1])));
        if (!begins) {
            out.key += text[at++];
            continue;
        }
        const std::size_t sign = sign_before(text, at);
        out.key.erase(out.key.size() - sign);
        const std::size_t end = unit_end(text, number_end(text, at), in_is_inch);
        out.numbers.emplace_back(text.substr(at - sign, end - at + sign));
        out.key += number_mark;
        at = end;
    }
    return out;
}

std::string with_decimal_sign(std::string_view text, char sign) {
    std::string out(text);
    for (std::size_t at = 1; at + 1 < out.size(); ++at) {
        if (out[at] != '.' || !is_digit(out[at - 1]) || !is_digit(out[at + 1])) continue;
        const std::size_t end = at + 1 + digits_at(out, at + 1);
        std::size_t begin = at;
        while (begin > 0 && is_digit(out[begin - 1]))
            --begin;
        const bool another_point =
            (end + 1 < out.size() && out[end] == '.' && is_digit(out[end + 1])) ||
            (begin > 1 && (out[begin - 1] == '.' || out[begin - 1] == sign) && is_digit(out[begin - 2]));
        if (!another_point) out[at] = sign;
    }
    return out;
}

bool is_unit_symbol(std::string_view text) {
    return std::find(symbols().begin(), symbols().end(), text) != symbols().end();
}

} // namespace evenfall::words
