#pragma once

#include <span>
#include <string_view>

namespace evenfall::words {

/// A file of this folder, one for each language but English.
struct Catalogue {
    std::string_view code; ///< its name without .po: "de"
    std::string_view name; ///< the language's own, as in the head of the file: "Deutsch"
    std::string_view text;
};

[[nodiscard]] std::span<const Catalogue> catalogues();

/// The catalogue for a locale ("de_CH.UTF-8", "de-AT"); nullptr where it is English or there is none.
[[nodiscard]] const Catalogue* catalogue_of(std::string_view locale);

} // namespace evenfall::words
