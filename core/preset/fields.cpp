#include "preset/fields.hpp"

#include <cmath>
#include <cstdio>

namespace evenfall::preset {
namespace {

// Beyond this a double cannot hold six decimals; such values are out of every range anyhow.
constexpr double largest_rounded = 1e9;

std::string lower_first(std::string text) {
    if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z') text[0] = static_cast<char>(text[0] - 'A' + 'a');
    return text;
}

std::string pointer_token(std::string_view key) {
    std::string token;
    for (const char c : key) {
        if (c == '~') token += "~0";
        else if (c == '/') token += "~1";
        else token += c;
    }
    return token;
}

}  // namespace

double round_trade(double trade) {
    if (!(std::abs(trade) < largest_rounded)) return trade;
    return std::round(trade * 1e6) / 1e6 + 0.0;  // + 0.0 turns −0 into 0
}

double to_trade(const NumberField& field, double si) { return round_trade(si * field.per_si); }

double to_si(const NumberField& field, double trade) { return round_trade(trade) / field.per_si; }

std::string plain_number(double value) {
    if (std::isnan(value)) return "not a number";
    if (std::isinf(value)) return value > 0.0 ? "infinity" : "-infinity";
    if (!(std::abs(value) < largest_rounded)) {
        std::array<char, 32> buffer{};
        std::snprintf(buffer.data(), buffer.size(), "%.6g", value);
        return buffer.data();
    }
    // By integers, so that no locale and no library difference can change a digit.
    const long long millionths = std::llround(value * 1e6);
    const unsigned long long size = static_cast<unsigned long long>(millionths < 0 ? -millionths : millionths);
    std::string text = (millionths < 0 ? "-" : "") + std::to_string(size / 1'000'000ULL);
    if (const unsigned long long rest = size % 1'000'000ULL; rest != 0) {
        std::string decimals = std::to_string(rest);
        decimals.insert(0, 6 - decimals.size(), '0');
        decimals.erase(decimals.find_last_not_of('0') + 1);
        text += '.' + decimals;
    }
    return text;
}

std::string with_unit(const NumberField& field, double trade) {
    std::string text = plain_number(trade);
    if (!field.unit.empty()) text.append(field.unit == "°" ? "" : " ").append(field.unit);
    return text;
}

std::string limit_text(const NumberField& field) {
    return plain_number(field.min) + " to " + with_unit(field, field.max);
}

std::string counted(std::size_t count, std::string_view one) {
    return std::to_string(count) + ' ' + std::string(one) + (count == 1 ? "" : "s");
}

std::string Place::path_of(std::string_view key) const { return path + '/' + pointer_token(key); }

Place Place::key(std::string_view key, std::string subject_there) const {
    return {path_of(key), std::move(subject_there)};
}

Place Place::entry(std::string_view key, std::string_view one, std::size_t index) const {
    return {path_of(key) + '/' + std::to_string(index), std::string(one) + ' ' + std::to_string(index + 1)};
}

Place Place::point(std::string_view key, std::string_view called, std::size_t index) const {
    return {path_of(key) + '/' + std::to_string(index), "Point " + std::to_string(index + 1) + " of the " + std::string(called)};
}

std::string Place::owned(std::string_view called) const {
    return "The " + std::string(called) + " of " + lower_first(subject);
}

std::string quotable(std::string_view text) {
    constexpr std::size_t longest = 40;
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const auto lead = static_cast<unsigned char>(text[i]);
        const std::size_t bytes = lead < 0x80 ? 1 : lead >= 0xC2 && lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
        bool whole = (lead < 0x80 || lead >= 0xC2) && lead < 0xF5 && i + bytes <= text.size();
        for (std::size_t k = 1; whole && k < bytes; ++k) whole = (static_cast<unsigned char>(text[i + k]) & 0xC0) == 0x80;
        if (!whole || lead < 0x20 || lead == 0x7F) {
            ++i;
            continue;
        }
        if (out.size() + bytes > longest) return out + "…";
        out.append(text, i, bytes);
        i += bytes;
    }
    return out;
}

void add_problem(Problems& problems, Problem problem) {
    if (problems.size() < max_problems) problems.push_back(std::move(problem));
}

}  // namespace evenfall::preset
