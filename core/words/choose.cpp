#include "words/catalogues.hpp"

#include <algorithm>

namespace evenfall::words {

const Catalogue* catalogue_of(std::string_view locale) {
    const std::string_view code = locale.substr(0, std::min(locale.find_first_of("_-.@"), locale.size()));
    for (const Catalogue& c : catalogues()) {
        if (c.code == code) return &c;
    }
    return nullptr;
}

} // namespace evenfall::words
