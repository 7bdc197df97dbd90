#include "state/file_stem.hpp"

namespace evenfall::shell::state {

std::string file_stem(const std::string& lure) {
    std::string name;
    for (const char c : lure) {
        const bool plain = (c >= 'a' && c <= 'z') || (c >= '0' && c <= '9');
        const bool capital = c >= 'A' && c <= 'Z';
        if (plain) name += c;
        if (capital) name += static_cast<char>(c - 'A' + 'a');
        if (!plain && !capital && !name.empty() && name.back() != '-') name += '-';
    }
    while (!name.empty() && name.back() == '-')
        name.pop_back();
    return name.empty() ? std::string("lure") : name;
}

} // namespace evenfall::shell::state
