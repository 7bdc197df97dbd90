#include "document/fields.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace evenfall::document {
namespace {

// Beyond this a double cannot hold six decimals; such values are out of every range anyhow.
constexpr double largest_rounded = 1e9;

std::string lower_first(std::string text) {
    if (!text.empty() && text[0] >= 'A' && text[0] <= 'Z') text[0] = static_cast<char>(text[0] - 'A' + 'a');
    return text;
}

/// What the field holds, where its unit is the metric one of a quantity. Absent for plain numbers, for what
/// is kept in percent, and for pounds of pull, which are no pounds of mass.
std::optional<units::Quantity> quantity_of(const NumberField& field) {
    const auto unit = units::find_unit(field.unit);
    if (!unit || units::metric.of(units::quantity_of(*unit)) != *unit) return std::nullopt;
    if (std::abs(units::from_core(1.0, *unit) - field.per_si) > 1e-9 * field.per_si) return std::nullopt;
    return units::quantity_of(*unit);
}

std::string named(std::string number, const NumberField& field) {
    if (!field.unit.empty()) number.append(" ").append(field.unit);
    return number;
}

std::string pointer_token(std::string_view key) {
    std::string token;
    for (const char c : key) {
        if (c == '~')
            token += "~0";
        else if (c == '/')
            token += "~1";
        else
            token += c;
    }
    return token;
}

} // namespace

double round_trade(double trade) {
    if (!(std::abs(trade) < largest_rounded)) return trade;
    return std::round(trade * 1e6) / 1e6 + 0.0; // + 0.0 turns −0 into 0
}

double to_trade(const NumberField& field, double si) {
    return round_trade(si * field.per_si);
}

double to_si(const NumberField& field, double trade) {
    return round_trade(trade) / field.per_si;
}

Sentence with_unit(const NumberField& field, double si) {
    if (const auto quantity = quantity_of(field)) return plain_text(si, *quantity);
    return named(plain_number(to_trade(field, si)), field);
}

Sentence limit_text(const NumberField& field) {
    if (const auto quantity = quantity_of(field))
        return range_text(field.min / field.per_si, field.max / field.per_si, *quantity);
    return plain_number(field.min) + " to " + named(plain_number(field.max), field);
}

std::string counted(std::size_t count, std::string_view one) {
    return std::to_string(count) + ' ' + std::string(one) + (count == 1 ? "" : "s");
}

std::string Place::path_of(std::string_view key) const {
    return path + '/' + pointer_token(key);
}

Place Place::key(std::string_view key, std::string subject_there) const {
    return {path_of(key), std::move(subject_there)};
}

Place Place::entry(std::string_view key, std::string_view one, std::size_t index) const {
    return {path_of(key) + '/' + std::to_string(index), std::string(one) + ' ' + std::to_string(index + 1)};
}

Place Place::point(std::string_view key, std::string_view called, std::size_t index) const {
    return {path_of(key) + '/' + std::to_string(index),
            "Point " + std::to_string(index + 1) + " of the " + std::string(called)};
}

std::string Place::owned(std::string_view called) const {
    return "The " + std::string(called) + " of " + lower_first(subject);
}

std::size_t letter_bytes(std::string_view text, std::size_t at) {
    const auto byte = [&](std::size_t k) {
        return at + k < text.size() ? static_cast<unsigned char>(text[at + k]) : 0u;
    };
    const unsigned lead = byte(0), second = byte(1);
    if (lead < 0x80) return 1;
    // Letters longer than need be, halves of pairs and what lies beyond the last letter.
    if (lead < 0xC2 || lead > 0xF4 || (lead == 0xE0 && second < 0xA0) || (lead == 0xED && second > 0x9F) ||
        (lead == 0xF0 && second < 0x90) || (lead == 0xF4 && second > 0x8F)) {
        return 0;
    }
    const std::size_t bytes = lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
    for (std::size_t k = 1; k < bytes; ++k) {
        if ((byte(k) & 0xC0) != 0x80) return 0;
    }
    return bytes;
}

namespace {

/// The number of one whole letter (RFC 3629, section 3).
unsigned code_point(std::string_view letter) {
    constexpr std::array<unsigned, 4> of_lead{0x7F, 0x1F, 0x0F, 0x07};
    unsigned point = static_cast<unsigned char>(letter[0]) & of_lead[letter.size() - 1];
    for (const char next : letter.substr(1))
        point = point << 6 | (static_cast<unsigned char>(next) & 0x3Fu);
    return point;
}

/// Code points that show nothing of themselves and change how the rest is shown: the control characters C0
/// and C1 and those for line ends and the direction of writing (The Unicode Standard, chapters 23.1 and 23.2,
/// from memory).
bool steers(unsigned point) {
    return point < 0x20 || (point >= 0x7F && point < 0xA0) || point == 0x200E || point == 0x200F ||
           (point >= 0x2028 && point <= 0x202E) || (point >= 0x2066 && point <= 0x2069) || point == 0xFEFF ||
           point == 0x061C;
}

} // namespace

std::string printable(std::string_view text, std::size_t most_bytes, std::string_view cut_mark) {
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t bytes = letter_bytes(text, i);
        if (bytes > 0 && !steers(code_point(text.substr(i, bytes)))) {
            if (out.size() + bytes > most_bytes) return out.append(cut_mark);
            out.append(text, i, bytes);
        }
        i += std::max<std::size_t>(bytes, 1);
    }
    return out;
}

std::string quotable(std::string_view text) {
    return printable(text, 40, "…");
}

Problem too_many_points(const Place& place, const PointsField& field, std::size_t count) {
    const std::string limit =
        std::to_string(field.min_count) + " to " + std::to_string(max_curve_points) + " points";
    return {ProblemCode::too_large, place.path_of(field.key), limit,
            "The " + std::string(field.called) + " has " + counted(count, "point") + "; the limit is " +
                limit + '.'};
}

Problem too_many_entries(const Place& place, const ListField& field, std::size_t count) {
    const std::string limit = "at most " + std::to_string(field.max_count);
    return {ProblemCode::too_large, place.path_of(field.key), limit,
            "There are " + std::to_string(count) + ' ' + std::string(field.many) + "; the limit is " + limit +
                '.'};
}

void add_problem(Problems& problems, Problem problem) {
    if (problems.size() < max_problems) problems.push_back(std::move(problem));
}

} // namespace evenfall::document
