#pragma once

// Numbers by chance, the same on every machine: draw n of a seed does not depend on the draws before it.

#include <cmath>
#include <cstdint>
#include <numbers>

namespace evenfall::bench {

/// SplitMix64 (Steele, Lea and Flood 2014, "Fast splittable pseudorandom number generators", from memory): a
/// counter in steps of the golden ratio, mixed by two multiplications. Period 2⁶⁴ for each start; a start for
/// each draw is mixed from seed and number.
class Random {
public:
    Random(std::uint64_t seed, std::uint64_t draw) : state_(mixed(mixed(seed + step) ^ (draw * step))) {}

    [[nodiscard]] std::uint64_t next() {
        state_ += step;
        return mixed(state_);
    }

    /// From 0 (not reached) to 1.
    [[nodiscard]] double uniform() { return (static_cast<double>(next() >> 11) + 0.5) * 0x1.0p-53; }

    /// Mean 0, standard deviation 1 (Box and Muller 1958); every second one is the other half of a pair.
    [[nodiscard]] double normal() {
        if (has_spare_) {
            has_spare_ = false;
            return spare_;
        }
        const double radius = std::sqrt(-2.0 * std::log(uniform()));
        const double angle = 2.0 * std::numbers::pi * uniform();
        spare_ = radius * std::sin(angle);
        has_spare_ = true;
        return radius * std::cos(angle);
    }

private:
    static constexpr std::uint64_t step = 0x9E3779B97F4A7C15ULL;
    static std::uint64_t mixed(std::uint64_t z) {
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
        return z ^ (z >> 31);
    }

    std::uint64_t state_;
    double spare_ = 0.0;
    bool has_spare_ = false;
};

} // namespace evenfall::bench
