#include "words/language.hpp"

#include "words/po.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>
#include <cstdlib>

namespace evenfall::words {

namespace {

constexpr std::string_view text_mark = "{text}";
constexpr std::string_view blanks = " \t";
// Signs that hold the parts of a sentence together, those that part the most first.
constexpr std::array<std::string_view, 7> joints{"; ",  " \xC2\xB7 ", ": ", ", ", " \xE2\x80\x93 ",
                                                 " | ", " / "};

Problems refused(int line, const std::string& what) {
    return {{ProblemCode::wrong_type,
             "",
             {},
             "Line " + std::to_string(line) + " of the catalogue of words: " + what}};
}

bool is_capital(std::string_view text) {
    return !text.empty() && ((text[0] >= 'A' && text[0] <= 'Z') || text.starts_with("\xE2\x80\x9C"));
}

/// Whether there is something to translate: a word of two letters and more.
bool has_words(std::string_view text) {
    int letters = 0;
    for (const char c : text) {
        letters = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') ? letters + 1 : 0;
        if (letters > 1) return true;
    }
    return false;
}

/// Where the sentence that begins at `from` ends: behind its point, before the blank.
std::size_t sentence_end(std::string_view text, std::size_t from) {
    for (std::size_t at = from; at + 2 < text.size(); ++at) {
        const bool point = text[at] == '.' || text[at] == '!' || text[at] == '?';
        if (point && text[at + 1] == ' ' && is_capital(text.substr(at + 2))) return at + 1;
    }
    return text.size();
}

/// Whether {text} may stand for this: no more than one part of a sentence.
bool is_one_part(std::string_view text) {
    int open = 0;
    for (const char c : text) {
        open += c == '(' ? 1 : c == ')' ? -1 : 0;
        if (open < 0) return false;
    }
    return open == 0 && text.find("; ") == std::string_view::npos && sentence_end(text, 0) == text.size();
}

std::vector<std::string> split(const std::string& text, std::string_view by) {
    std::vector<std::string> out;
    std::size_t from = 0;
    for (std::size_t at = text.find(by); at != std::string::npos; at = text.find(by, from)) {
        out.push_back(text.substr(from, at - from));
        from = at + by.size();
    }
    out.push_back(text.substr(from));
    return out;
}

/// Marks {}, {text} and {1}, in order: what each names, 0 for the next.
std::optional<std::vector<std::size_t>> marks_of(std::string_view text) {
    std::vector<std::size_t> out;
    for (std::size_t at = text.find('{'); at != std::string_view::npos; at = text.find('{', at + 1)) {
        const std::size_t end = text.find('}', at);
        if (end == std::string_view::npos) return std::nullopt;
        const std::string_view name = text.substr(at + 1, end - at - 1);
        std::size_t place = 0;
        if (!name.empty() && name != "text") {
            const auto [last, error] = std::from_chars(name.data(), name.data() + name.size(), place);
            if (error != std::errc() || last != name.data() + name.size() || place == 0) return std::nullopt;
        }
        out.push_back(place);
    }
    return out;
}

bool fits(std::string_view english, std::string_view other) {
    const auto given = marks_of(english);
    const auto named = marks_of(other);
    if (!given || !named) return false;
    std::size_t next = 0;
    return std::all_of(named->begin(), named->end(),
                       [&](std::size_t place) { return (place == 0 ? ++next : place) <= given->size(); });
}

} // namespace

/// Collects what is not known.
struct Language::Unknown {
    std::vector<std::string>* into;
    void add(std::string_view text) const {
        constexpr std::size_t longest_word = 40; // an address or a share link is none
        const bool is_address = text.size() > longest_word && text.find(' ') == std::string_view::npos;
        if (into != nullptr && !is_address) into->emplace_back(text);
    }
};

Outcome<Language> Language::read(std::string_view catalogue) {
    auto entries = read_po(catalogue);
    if (!entries) return entries.problems();
    Language out;
    for (PoEntry& entry : *entries) {
        Problems problems = entry.english.empty()
                                ? out.take_head(entry.others.front())
                                : out.take(entry.english, entry.plural, std::move(entry.others), entry.line);
        if (!problems.empty()) return problems;
    }
    if (out.code_.empty()) return refused(1, "it has no head that names its language.");
    const auto letters = [](const Template& t) {
        std::size_t sum = 0;
        for (const std::string& piece : t.pieces)
            sum += piece.size();
        return sum;
    };
    std::stable_sort(out.templates_.begin(), out.templates_.end(),
                     [&](const Template& a, const Template& b) { return letters(a) > letters(b); });
    return out;
}

Problems Language::take_head(std::string_view head) {
    const auto value = [&](std::string_view key) {
        for (const std::string& line : split(std::string(head), "\n")) {
            if (line.starts_with(key))
                return line.substr(std::min(line.find_first_not_of(' ', key.size()), line.size()));
        }
        return std::string();
    };
    code_ = value("Language:");
    name_ = value("X-Name:");
    if (const std::string sign = value("X-Decimal-Sign:"); !sign.empty()) decimal_sign_ = sign.front();
    if (const std::string date = value("X-Date:"); !date.empty()) date_ = date;
    auto rule = PluralRule::read(value("Plural-Forms:"));
    if (!rule) return rule.problems();
    plurals_ = std::move(rule).value();
    return {};
}

Problems Language::take(std::string_view english, std::string_view plural, std::vector<std::string> others,
                        int line) {
    const std::size_t wanted = plural.empty() ? 1 : static_cast<std::size_t>(plurals_.count());
    if (others.size() != wanted) return refused(line, "it has " + std::to_string(others.size()) + " forms.");
    for (const std::string& other : others) {
        if (!fits(english, other)) return refused(line, "the translation names what the English has not.");
    }
    if (english.find(text_mark) != std::string_view::npos) {
        templates_.push_back({split(std::string(english), text_mark), others.front()});
        return {};
    }
    bool fresh = exact_.emplace(english, others).second;
    if (!plural.empty()) fresh = exact_.emplace(plural, std::move(others)).second && fresh;
    return fresh ? Problems{} : refused(line, "the text stands there twice: " + std::string(english));
}

std::string Language::number(const std::string& text) const {
    if (text.size() == 10 && text[4] == '-' && text[7] == '-') {
        std::string out = date_;
        for (const auto& [mark, part] :
             {std::pair<std::string_view, std::string>{"{year}", text.substr(0, 4)},
              {"{month}", text.substr(5, 2)},
              {"{day}", text.substr(8, 2)}}) {
            const std::size_t at = out.find(mark);
            if (at != std::string::npos) out.replace(at, mark.size(), part);
        }
        return out;
    }
    return with_decimal_sign(text, decimal_sign_);
}

std::string Language::numbers_only(std::string_view text) const {
    Pattern pattern = pattern_of(text, true);
    for (std::string& n : pattern.numbers)
        n = number(n);
    return pattern.text(0, pattern.key.size());
}

std::string Language::filled(const std::string& other, const std::vector<std::string>& parts) const {
    std::string out;
    std::size_t next = 0;
    for (std::size_t at = 0; at < other.size(); ++at) {
        if (other[at] != '{') {
            out += other[at];
            continue;
        }
        const std::size_t end = other.find('}', at);
        const std::size_t place = std::strtoul(other.c_str() + at + 1, nullptr, 10); // 0: the next
        const std::size_t index = place == 0 ? next++ : place - 1;
        if (index < parts.size()) out += parts[index];
        at = end;
    }
    return out;
}

Language::Found Language::by_pattern(const Pattern& pattern) const {
    const auto entry = exact_.find(pattern.key);
    if (entry == exact_.end()) return std::nullopt;
    std::vector<std::string> numbers;
    for (const std::string& n : pattern.numbers)
        numbers.push_back(number(n));
    std::size_t form = 0;
    if (entry->second.size() > 1 && !pattern.numbers.empty())
        form = static_cast<std::size_t>(
            plurals_.form(std::strtoul(pattern.numbers.front().c_str(), nullptr, 10)));
    return filled(entry->second[form], numbers);
}

Language::Found Language::by_template(const Pattern& pattern, Unknown& unknown) const {
    const std::string& key = pattern.key;
    for (const Template& t : templates_) {
        const std::string& first = t.pieces.front();
        const std::string& last = t.pieces.back();
        if (!key.starts_with(first) || !key.ends_with(last) || key.size() <= first.size() + last.size())
            continue;
        // Numbers of the pieces and texts between them, in order.
        std::vector<std::string> parts;
        std::size_t number_at = 0;
        const auto add_numbers = [&](const std::string& piece) {
            for (std::size_t at = piece.find(number_mark); at != std::string::npos;
                 at = piece.find(number_mark, at + 2))
                parts.push_back(number(pattern.numbers[number_at++]));
        };
        add_numbers(first);
        std::size_t at = first.size();
        bool found = true;
        for (std::size_t k = 1; k < t.pieces.size() && found; ++k) {
            const bool is_last = k + 1 == t.pieces.size();
            const std::size_t next = is_last ? key.size() - last.size() : key.find(t.pieces[k], at + 1);
            found = next != std::string::npos && next > at && next + t.pieces[k].size() <= key.size() &&
                    is_one_part(std::string_view(key).substr(at, next - at));
            if (!found) break;
            for (std::size_t m = key.find(number_mark, at); m < next; m = key.find(number_mark, m + 2))
                ++number_at;
            parts.push_back(part(pattern.text(at, next), unknown));
            add_numbers(t.pieces[k]);
            at = next + t.pieces[k].size();
        }
        if (found) return filled(t.other, parts);
    }
    return std::nullopt;
}

Language::Found Language::whole(std::string_view text, Unknown& unknown) const {
    for (const bool in_is_inch : {true, false}) {
        if (auto found = by_pattern(pattern_of(text, in_is_inch))) return found;
    }
    // A sentence may stand as a part, without its point, or with a sign behind it.
    if (text.size() > 1 && (text.back() == '.' || text.back() == ':' || text.back() == ',')) {
        const std::string_view shorter = text.substr(0, text.size() - 1);
        for (const bool in_is_inch : {true, false}) {
            if (auto found = by_pattern(pattern_of(shorter, in_is_inch))) {
                found->push_back(text.back());
                return found;
            }
        }
    }
    std::vector<std::string> inside;
    Unknown of_template{unknown.into != nullptr ? &inside : nullptr};
    if (auto found = by_template(pattern_of(text, true), of_template)) {
        for (const std::string& part : inside)
            unknown.add(part);
        return found;
    }
    return has_words(pattern_of(text, true).key) && !is_unit_symbol(text) ? std::nullopt
                                                                          : Found(numbers_only(text));
}

Language::Found Language::clauses(std::string_view text, Unknown& unknown) const {
    const auto known = [&](std::string_view part) -> Found {
        if (auto found = whole(part, unknown)) return found;
        return clauses(part, unknown);
    };
    if (const std::size_t open = text.find(" ("); open != std::string_view::npos && text.back() == ')') {
        const auto before = known(text.substr(0, open));
        const auto inside = known(text.substr(open + 2, text.size() - open - 3));
        if (before && inside) return *before + " (" + *inside + ")";
    }
    for (const std::string_view joint : joints) {
        const std::size_t at = text.find(joint);
        if (at == std::string_view::npos) continue;
        const auto before = known(text.substr(0, at));
        const auto behind = known(text.substr(at + joint.size()));
        if (before && behind) return *before + std::string(joint) + *behind;
    }
    return std::nullopt;
}

std::string Language::sentence(std::string_view text, Unknown& unknown) const {
    const std::size_t first = std::min(text.find_first_not_of(blanks), text.size());
    const std::size_t last = std::min(text.find_last_not_of(blanks) + 1, text.size());
    if (first >= last) return std::string(text);
    const std::string_view core = text.substr(first, last - first);
    Found out = whole(core, unknown);
    if (!out) out = clauses(core, unknown);
    if (!out) {
        unknown.add(core);
        out = numbers_only(core);
    }
    return std::string(text.substr(0, first)) + *out + std::string(text.substr(last));
}

std::string Language::part(const std::string& text, Unknown& unknown) const {
    if (auto out = whole(text, unknown)) return *out;
    if (auto out = clauses(text, unknown)) return *out;
    unknown.add(text);
    return text; // a name: its numbers are none of the language's
}

std::string Language::line(std::string_view text, Unknown& unknown) const {
    if (auto out = whole(text, unknown)) return *out;
    std::string said;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = sentence_end(text, from);
        said += sentence(text.substr(from, end - from), unknown);
        from = end;
    }
    return said;
}

std::string Language::said(std::string_view english, std::vector<std::string>* unknown) const {
    Unknown not_known{unknown};
    if (const auto exact = exact_.find(std::string(english)); exact != exact_.end())
        return exact->second.front();
    std::string out;
    for (std::size_t from = 0; from <= english.size();) {
        const std::size_t end = std::min(english.find('\n', from), english.size());
        out += line(english.substr(from, end - from), not_known);
        if (end < english.size()) out += '\n';
        from = end + 1;
    }
    return out;
}

} // namespace evenfall::words
