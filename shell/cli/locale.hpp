#pragma once

// What the reader's locale says: language and units.

#include "language.hpp"
#include "output.hpp"

#include <initializer_list>
#include <optional>
#include <string>
#include <vector>

namespace evenfall::cli {

/// The first of these locales that is set; empty where none is.
[[nodiscard]] std::string first_set(std::initializer_list<const char*> locales);

/// Inches where the locale counts in them.
[[nodiscard]] units::UnitSet units_of_locale(const std::string& locale);

/// The language of a locale; English where there is no catalogue for it.
class ReaderLanguage {
public:
    explicit ReaderLanguage(const std::string& locale);
    ReaderLanguage(const ReaderLanguage&) = delete;
    ReaderLanguage& operator=(const ReaderLanguage&) = delete;

    /// Valid as long as this is.
    [[nodiscard]] words::Speech speech();
    /// Puts what the catalogue lacks at the end of a file, a text to a line; for translators.
    void tell_unknown(const char* path) const;

private:
    std::optional<words::Language> language_;
    std::vector<std::string> unknown_;
};

} // namespace evenfall::cli
