#pragma once

#include "evenfall.hpp"

#include <catch2/catch_test_macros.hpp>

#include <cstdint>
#include <string>

namespace evenfall::support {

/// A random lure that can be built, and the seed and number that reproduce it.
struct RandomLure {
    std::uint64_t seed = 0;
    std::uint64_t draw = 0;
    document::Document document;
    Evaluation evaluation;

    [[nodiscard]] std::string where() const {
        return "seed " + std::to_string(seed) + ", draw " + std::to_string(draw);
    }
};

/// Random lure number `draw` of `seed`: one to five segments with any kind of section, in any wood and water,
/// with holes, pockets, hinges, parts, coats, caliper readings and corrections. Most, not all, can be built.
///
/// Uses only +, −, ×, ÷ of doubles and integers, and one random number per statement, so that every build of
/// the project makes the same document to the last bit, with any compiler and mathematical library.
[[nodiscard]] document::Document random_document(std::uint64_t seed, std::uint64_t draw);

/// The lures of one seed that can be built, in order.
class RandomLures {
public:
    explicit RandomLures(std::uint64_t seed) : seed_(seed) {}

    [[nodiscard]] RandomLure next();

    /// Number of lures made so far, including those that could not be built.
    [[nodiscard]] std::uint64_t drawn() const { return draw_; }

private:
    std::uint64_t seed_;
    std::uint64_t draw_ = 0;
};

/// Looks at the first `count` lures of a seed that can be built: `see(lure, number)`. A failure names seed
/// and draw.
template <class See>
void each_random_lure(std::uint64_t seed, int count, See see) {
    RandomLures drawn(seed);
    for (int n = 0; n < count; ++n) {
        const RandomLure lure = drawn.next();
        INFO(lure.where());
        see(lure, n);
    }
}

} // namespace evenfall::support
