#pragma once

// What page, program and sheet say, in another language. English is written in the code; a catalogue has each
// English text with its translation, and whoever shows a text asks for it here, as a whole and last of all:
// after numbers, units and names have been put in.

#include "base/outcome.hpp"
#include "words/pattern.hpp"
#include "words/plural.hpp"

#include <optional>
#include <string>
#include <string_view>
#include <unordered_map>
#include <vector>

namespace evenfall::words {

/// A language with its catalogue: a file in the PO format of GNU gettext. In an English text {} stands for a
/// number with its unit, or a date, and {text} for anything, which is translated by itself where it can be.
/// In a translation the two stand in the same order, or {1}, {2} … name them by their place in the English.
///
/// The head of the catalogue says Language (the code of ISO 639), Plural-Forms, X-Name (the language's own
/// name), X-Decimal-Sign and X-Date ("{day}.{month}.{year}").
class Language {
public:
    /// Refused: what is no catalogue (read_po), a rule of plurals that cannot be read, a text that stands
    /// twice, a translation that names something that its English has not.
    [[nodiscard]] static Outcome<Language> read(std::string_view catalogue);

    [[nodiscard]] const std::string& code() const { return code_; }
    [[nodiscard]] const std::string& name() const { return name_; }
    [[nodiscard]] char decimal_sign() const { return decimal_sign_; }

    /// The text in this language. A text that the catalogue does not have is looked up in parts: line by
    /// line, sentence by sentence, and by what stands between commas and other signs, the latter only where
    /// all parts are known. What is not known stays English, its numbers with this language's signs, and is
    /// put into `unknown` where it has words.
    [[nodiscard]] std::string said(std::string_view english,
                                   std::vector<std::string>* unknown = nullptr) const;

    /// Each English text of the catalogue with its translations; for tests.
    [[nodiscard]] const std::unordered_map<std::string, std::vector<std::string>>& texts() const {
        return exact_;
    }

private:
    using Found = std::optional<std::string>;
    struct Unknown;

    /// A text with {text} in it: what stands between.
    struct Template {
        std::vector<std::string> pieces;
        std::string other;
    };

    [[nodiscard]] Problems take(std::string_view english, std::string_view plural,
                                std::vector<std::string> others, int line);
    [[nodiscard]] Problems take_head(std::string_view head);

    [[nodiscard]] Found whole(std::string_view text, Unknown& unknown) const;
    [[nodiscard]] Found by_pattern(const Pattern& pattern) const;
    [[nodiscard]] Found by_template(const Pattern& pattern, Unknown& unknown) const;
    [[nodiscard]] Found clauses(std::string_view text, Unknown& unknown) const;
    [[nodiscard]] std::string line(std::string_view text, Unknown& unknown) const;
    [[nodiscard]] std::string sentence(std::string_view text, Unknown& unknown) const;
    [[nodiscard]] std::string number(const std::string& text) const;
    [[nodiscard]] std::string part(const std::string& text, Unknown& unknown) const;
    [[nodiscard]] std::string numbers_only(std::string_view text) const;
    [[nodiscard]] std::string filled(const std::string& other, const std::vector<std::string>& parts) const;

    std::string code_;
    std::string name_;
    char decimal_sign_ = '.';
    std::string date_ = "{year}-{month}-{day}";
    PluralRule plurals_;
    std::unordered_map<std::string, std::vector<std::string>> exact_; ///< English, with {} for numbers
    std::vector<Template> templates_;                                 ///< the longest first
};

/// The language that somebody reads: nothing where it is English.
struct Speech {
    const Language* language = nullptr;
    std::vector<std::string>* unknown = nullptr; ///< collects what the catalogue does not have

    [[nodiscard]] std::string said(std::string_view english) const {
        return language != nullptr ? language->said(english, unknown) : std::string(english);
    }
};

} // namespace evenfall::words
