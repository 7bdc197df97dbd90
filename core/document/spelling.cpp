#include "document/spelling.hpp"

#include <algorithm>
#include <cstddef>
#include <numeric>

namespace evenfall::document {
namespace {

/// Letters to insert, drop or change to get from one word to the other (Levenshtein 1966).
std::size_t edit_distance(std::string_view a, std::string_view b) {
    std::vector<std::size_t> row(b.size() + 1);
    std::iota(row.begin(), row.end(), std::size_t{0});
    for (std::size_t i = 1; i <= a.size(); ++i) {
        std::size_t diagonal = row[0];
        row[0] = i;
        for (std::size_t k = 1; k <= b.size(); ++k) {
            const std::size_t change = diagonal + (a[i - 1] == b[k - 1] ? 0 : 1);
            diagonal = row[k];
            row[k] = std::min({row[k] + 1, row[k - 1] + 1, change});
        }
    }
    return row[b.size()];
}

} // namespace

std::string_view nearest_spelling(std::string_view word, const std::vector<std::string_view>& known) {
    constexpr std::size_t longest = 40;
    if (word.size() > longest) return {};
    std::string_view best;
    std::size_t best_distance = word.size() < 5 ? 2 : 3;
    for (const std::string_view candidate : known) {
        const std::size_t distance = edit_distance(word, candidate);
        if (distance < best_distance) {
            best = candidate;
            best_distance = distance;
        }
    }
    return best;
}

} // namespace evenfall::document
