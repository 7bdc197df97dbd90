#pragma once

#include "base/outcome.hpp"

#include <string>
#include <string_view>

namespace evenfall::words {

/// Which form of a word goes with a number, by the rule that a catalogue's head has as "Plural-Forms": an
/// expression of C in n with ?:, ||, &&, comparisons, %, brackets and whole numbers (GNU gettext manual,
/// "Additional functions for plural forms").
class PluralRule {
public:
    PluralRule() = default; ///< one form for 1, one for every other number

    /// Reads "nplurals=2; plural=(n != 1);". Refused where it is no such rule.
    [[nodiscard]] static Outcome<PluralRule> read(std::string_view forms);

    /// The index of the form for n ≥ 0; below count().
    [[nodiscard]] int form(unsigned long n) const;
    [[nodiscard]] int count() const { return count_; }

private:
    int count_ = 2;
    std::string expression_ = "n!=1"; ///< without blanks
};

} // namespace evenfall::words
