#include "base/read_number.hpp"

#include <cmath>
#include <cstdint>
#include <optional>
#include <string>

namespace evenfall::units {

namespace {

constexpr std::string_view minus_sign = "−"; // U+2212

bool is_digit(char c) {
    return c >= '0' && c <= '9';
}
bool is_blank(char c) {
    return c == ' ' || c == '\t';
}

/// Text read from the front.
struct Reader {
    std::string_view rest;

    void skip_blanks() {
        while (!rest.empty() && is_blank(rest.front()))
            rest.remove_prefix(1);
    }
    bool take(std::string_view word) {
        if (rest.substr(0, word.size()) != word) return false;
        rest.remove_prefix(word.size());
        return true;
    }
    bool at_digit() const { return !rest.empty() && is_digit(rest.front()); }
    std::string_view digits() {
        std::size_t n = 0;
        while (n < rest.size() && is_digit(rest[n]))
            ++n;
        const std::string_view taken = rest.substr(0, n);
        rest.remove_prefix(n);
        return taken;
    }
};

/// whole.part as a double. Eighteen digits fit an integer exactly; further digits are below a double's
/// precision.
double decimal(std::string_view whole, std::string_view part) {
    constexpr int most_digits = 18;
    std::uint64_t mantissa = 0;
    int used = 0;
    int exponent = 0;
    const auto add = [&](std::string_view digits, int exponent_when_used, int exponent_when_left) {
        for (char c : digits) {
            if (used < most_digits) {
                mantissa = mantissa * 10 + static_cast<std::uint64_t>(c - '0');
                if (mantissa != 0) ++used;
                exponent += exponent_when_used;
            } else {
                exponent += exponent_when_left;
            }
        }
    };
    add(whole, 0, 1);
    add(part, -1, 0);
    const double power = std::pow(10.0, std::abs(exponent));
    return exponent < 0 ? static_cast<double>(mantissa) / power : static_cast<double>(mantissa) * power;
}

struct Typed {
    double value = 0.0;
    std::string_view unit; ///< as typed, may be empty
};

enum class Flaw { none, no_number, divided_by_nothing };

/// Reads numerator/denominator from the front; reads nothing where there is no fraction.
std::optional<double> take_fraction(Reader& reader, Flaw& flaw) {
    Reader ahead = reader;
    const std::string_view numerator = ahead.digits();
    if (numerator.empty()) return std::nullopt;
    ahead.skip_blanks();
    if (!ahead.take("/")) return std::nullopt;
    ahead.skip_blanks();
    const std::string_view denominator = ahead.digits();
    if (denominator.empty()) return std::nullopt;
    reader = ahead;
    const double below = decimal(denominator, {});
    if (below == 0.0) {
        flaw = Flaw::divided_by_nothing;
        return 0.0;
    }
    return decimal(numerator, {}) / below;
}

/// The number at the front, without its sign.
double take_size(Reader& reader, Flaw& flaw) {
    if (const auto fraction = take_fraction(reader, flaw)) return *fraction;

    const std::string_view whole = reader.digits();
    if (reader.take(".") || reader.take(",")) {
        const std::string_view part = reader.digits();
        if (whole.empty() && part.empty()) flaw = Flaw::no_number;
        return decimal(whole, part);
    }
    if (whole.empty()) {
        flaw = Flaw::no_number;
        return 0.0;
    }
    Reader ahead = reader; // "1 3/8" and "1-3/8"
    ahead.skip_blanks();
    if (ahead.take("-")) ahead.skip_blanks();
    if (const auto fraction = take_fraction(ahead, flaw)) {
        reader = ahead;
        return decimal(whole, {}) + *fraction;
    }
    return decimal(whole, {});
}

Typed take_number(std::string_view text, Flaw& flaw) {
    Reader reader{text};
    reader.skip_blanks();
    const bool negative = reader.take("-") || reader.take(minus_sign);
    if (!negative) reader.take("+");
    reader.skip_blanks();
    const double size = take_size(reader, flaw);
    reader.skip_blanks();
    std::string_view unit = reader.rest;
    while (!unit.empty() && is_blank(unit.back()))
        unit.remove_suffix(1);
    // What still looks like a number is a typing error, not a unit.
    const std::string_view of_numbers = "0123456789.,+-/";
    if (!unit.empty() && of_numbers.find(unit.front()) != std::string_view::npos) flaw = Flaw::no_number;
    return {negative ? -size : size, unit};
}

Problem refusal(ProblemCode code, std::string_view path, std::string limit, std::string sentence) {
    return {code, std::string(path), std::move(limit), std::move(sentence)};
}

struct Read {
    double value = 0.0;
    Unit unit = Unit::one;
};

Outcome<Read> read(std::string_view text, Unit usual, std::string_view path) {
    if (text.size() > max_number_text) {
        const std::string most = std::to_string(max_number_text) + " characters";
        return refusal(ProblemCode::too_large, path, most,
                       "This is too long for a number: " + most + " are the most.");
    }
    Flaw flaw = Flaw::none;
    const Typed typed = take_number(text, flaw);
    if (flaw == Flaw::divided_by_nothing) {
        return refusal(ProblemCode::out_of_range, path, "not 0",
                       "A fraction needs a number other than 0 below its stroke.");
    }
    if (flaw == Flaw::no_number) {
        return refusal(ProblemCode::wrong_type, path, "a number",
                       "This cannot be read as a number. Type it like 8, 8.25, 8,25, 7/64 or 1 3/8, with or "
                       "without a unit.");
    }
    const std::optional<Unit> unit = typed.unit.empty() ? usual : find_unit(typed.unit);
    if (!unit) {
        return refusal(ProblemCode::unknown_name, path, symbols_of(quantity_of(usual)),
                       "The unit behind the number is not known here.");
    }
    const double value = to_core(typed.value, *unit);
    if (!std::isfinite(value)) {
        return refusal(ProblemCode::out_of_range, path, "not 0",
                       "Seconds for a stretch of fall must be other than 0: nothing falls in no time.");
    }
    return Read{value, *unit};
}

} // namespace

Outcome<double> read_number(std::string_view text, Unit usual, std::string_view path) {
    const auto typed = read(text, usual, path);
    if (!typed) return typed.problems();
    const Quantity wanted = quantity_of(usual);
    if (quantity_of(typed->unit) != wanted) {
        const std::string limit = symbols_of(wanted);
        return refusal(ProblemCode::unknown_name, path, limit,
                       "A number in " + std::string(symbol(typed->unit)) + " is " +
                           std::string(words_of(quantity_of(typed->unit))) + "; wanted here is " +
                           std::string(words_of(wanted)) + (limit.empty() ? "." : " in " + limit + "."));
    }
    return typed->value;
}

} // namespace evenfall::units
