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

struct Range {
    unsigned first, last;
};

template <std::size_t N>
bool is_among(const std::array<Range, N>& ranges, unsigned point) {
    return std::any_of(ranges.begin(), ranges.end(),
                       [point](const Range& r) { return point >= r.first && point <= r.last; });
}

// C0 and C1, and what ends lines and turns the direction of writing (The Unicode Standard, chapters 23.1
// and 23.2, from memory).
constexpr std::array<Range, 4> controls{{{0x00, 0x1F}, {0x7F, 0x9F}, {0x2028, 0x202E}, {0x2066, 0x2069}}};
// Letters that show nothing (property Default_Ignorable_Code_Point, from memory), but for those that join.
constexpr std::array<Range, 15> invisible{{{0xAD, 0xAD},
                                           {0x34F, 0x34F},
                                           {0x61C, 0x61C},
                                           {0x115F, 0x1160},
                                           {0x17B4, 0x17B5},
                                           {0x180B, 0x180E},
                                           {0x200B, 0x200B},
                                           {0x200E, 0x200F},
                                           {0x2060, 0x2065},
                                           {0x206A, 0x206F},
                                           {0x3164, 0x3164},
                                           {0xFEFF, 0xFEFF},
                                           {0xFFA0, 0xFFA0},
                                           {0xFFF0, 0xFFFB},
                                           {0x1D173, 0x1D17A}}};
// Joiners and the choice among a letter's shapes: signs of several letters are made with them.
constexpr std::array<Range, 3> joiners{{{0x200C, 0x200D}, {0xFE00, 0xFE0F}, {0xE0000, 0xE0FFF}}};

/// In words; nullptr where the letter may stand.
const char* unfit(unsigned point) {
    if (is_among(controls, point)) return "a control character";
    if (is_among(invisible, point)) return "an invisible letter";
    // Kept free for ever (chapter 23.7, from memory): XML has no way to write them.
    if ((point & 0xFFFEu) == 0xFFFEu || (point >= 0xFDD0 && point <= 0xFDEF))
        return "a code that is no letter";
    return nullptr;
}

} // namespace

const char* unfit_in(std::string_view text, bool lines_allowed) {
    bool shows = text.empty();
    for (std::size_t i = 0, bytes = 0; i < text.size(); i += bytes) {
        bytes = 1;
        if (text[i] >= ' ' && text[i] <= '~') { // most letters, soon told
            shows = true;
            continue;
        }
        bytes = letter_bytes(text, i);
        if (bytes == 0) return "half a letter";
        const unsigned point = code_point(text.substr(i, bytes));
        if (lines_allowed && point == '\n') {
            shows = true; // an empty line is seen to be one
            continue;
        }
        if (const char* what = unfit(point)) return what;
        if (!is_among(joiners, point)) shows = true;
    }
    return shows ? nullptr : "invisible letters alone";
}

std::string printable(std::string_view text, std::size_t most_bytes, std::string_view cut_mark) {
    std::string out;
    for (std::size_t i = 0; i < text.size();) {
        const std::size_t bytes = letter_bytes(text, i);
        if (bytes > 0 && unfit(code_point(text.substr(i, bytes))) == nullptr) {
            if (out.size() + bytes > most_bytes) return out.append(cut_mark);
            out.append(text, i, bytes);
        }
        i += std::max<std::size_t>(bytes, 1);
    }
    return unfit_in(out, true) == nullptr ? out : std::string(); // only joiners are left, and nothing to join
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
