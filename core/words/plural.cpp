#include "words/plural.hpp"

#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <optional>

namespace evenfall::words {

namespace {

constexpr int deepest = 20; ///< of brackets and choices within each other

/// Reads an expression from left to right and works it out as it goes. Nothing where it is no expression.
class Reader {
public:
    Reader(std::string_view text, unsigned long n) : text_(text), n_(n) {}

    std::optional<unsigned long> whole() {
        const auto value = choice();
        return at_ == text_.size() ? value : std::nullopt;
    }

private:
    using Value = std::optional<unsigned long>;

    bool takes(std::string_view sign) {
        if (!text_.substr(at_).starts_with(sign)) return false;
        at_ += sign.size();
        return true;
    }

    Value choice() {
        if (++depth_ > deepest) return {};
        Value out = joined(0);
        if (out && takes("?")) {
            const Value yes = choice();
            if (!yes || !takes(":")) return {};
            const Value no = choice();
            if (!no) return {};
            out = *out != 0 ? yes : no;
        }
        --depth_;
        return out;
    }

    /// Operators of a level bind less than those of the next.
    Value joined(std::size_t level) {
        static constexpr std::array<std::array<std::string_view, 4>, 5> levels{{{"||", "", "", ""},
                                                                                {"&&", "", "", ""},
                                                                                {"==", "!=", "", ""},
                                                                                {"<=", ">=", "<", ">"},
                                                                                {"%", "", "", ""}}};
        if (level == levels.size()) return single();
        Value left = joined(level + 1);
        while (left) {
            const auto& signs = levels[level];
            const auto sign = std::find_if(signs.begin(), signs.end(),
                                           [&](std::string_view s) { return !s.empty() && takes(s); });
            if (sign == signs.end()) return left;
            const Value right = joined(level + 1);
            left = right ? applied(*sign, *left, *right) : std::nullopt;
        }
        return {};
    }

    static Value applied(std::string_view sign, unsigned long a, unsigned long b) {
        if (sign == "||") return a != 0 || b != 0;
        if (sign == "&&") return a != 0 && b != 0;
        if (sign == "==") return a == b;
        if (sign == "!=") return a != b;
        if (sign == "<=") return a <= b;
        if (sign == ">=") return a >= b;
        if (sign == "<") return a < b;
        if (sign == ">") return a > b;
        return b == 0 ? Value() : Value(a % b);
    }

    Value single() {
        if (takes("n")) return n_;
        if (takes("(")) {
            const Value out = choice();
            return takes(")") ? out : std::nullopt;
        }
        unsigned long value = 0;
        const char* from = text_.data() + at_;
        const auto [end, error] = std::from_chars(from, text_.data() + text_.size(), value);
        if (error != std::errc()) return {};
        at_ += static_cast<std::size_t>(end - from);
        return value;
    }

    std::string_view text_;
    unsigned long n_;
    std::size_t at_ = 0;
    int depth_ = 0;
};

std::optional<std::string_view> between(std::string_view text, std::string_view from) {
    const std::size_t at = text.find(from);
    if (at == std::string_view::npos) return {};
    const std::size_t begin = at + from.size();
    return text.substr(begin, std::min(text.find(';', begin), text.size()) - begin);
}

} // namespace

Outcome<PluralRule> PluralRule::read(std::string_view forms) {
    const Problem refusal{ProblemCode::wrong_type, "", {}, "Plural-Forms is no rule that can be read."};
    std::string text;
    std::copy_if(forms.begin(), forms.end(), std::back_inserter(text),
                 [](char c) { return std::isspace(static_cast<unsigned char>(c)) == 0; });
    const auto count = between(text, "nplurals=");
    const auto expression = between(text, ";plural=");
    if (!count || !expression) return Problems{refusal};
    PluralRule rule;
    rule.expression_ = *expression;
    const auto [end, error] = std::from_chars(count->data(), count->data() + count->size(), rule.count_);
    if (error != std::errc() || end != count->data() + count->size() || rule.count_ < 1 || rule.count_ > 6)
        return Problems{refusal};
    // A hundred numbers show every form: no language's rule looks further than the last two digits.
    for (unsigned long n = 0; n < 200; ++n) {
        const auto form = Reader(rule.expression_, n).whole();
        if (!form || *form >= static_cast<unsigned long>(rule.count_)) return Problems{refusal};
    }
    return rule;
}

int PluralRule::form(unsigned long n) const {
    const auto form = Reader(expression_, n).whole();
    return form && *form < static_cast<unsigned long>(count_) ? static_cast<int>(*form) : count_ - 1;
}

} // namespace evenfall::words
