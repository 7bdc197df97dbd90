// The time to find the outline in a usual photo of a tablet: the page does it in slices, the longest of which
// is the longest stop of a frame.

#include "picture/outline.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>
#include <cmath>
#include <random>

using namespace evenfall::picture;

TEST_CASE("picture", "[bench]") {
    constexpr int width = 2000;
    constexpr int height = 1500;
    std::mt19937 draw(7);
    std::normal_distribution<double> grain(0.0, 5.0);
    std::vector<std::uint8_t> samples(static_cast<std::size_t>(4 * width) * height, 255);
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const double u = (x - 1000.0) / 800.0;
            const double v = (y - 750.0) / 240.0;
            const double off = (std::hypot(u, v) - 1.0) * 240.0;
            const double ink = std::clamp(2.5 - std::abs(off), 0.0, 1.0);
            const double value = (230.0 - 0.05 * x) * (1.0 - 0.5 * ink) + grain(draw);
            const std::size_t at = 4 * (static_cast<std::size_t>(y) * width + static_cast<std::size_t>(x));
            for (std::size_t k = 0; k < 3; ++k)
                samples[at + k] = static_cast<std::uint8_t>(std::clamp(value, 0.0, 255.0));
        }
    }
    REQUIRE(find_outline({width, height, 4, samples}).ok());
    BENCHMARK("outline of a sketch, 2000 x 1500") {
        return find_outline({width, height, 4, samples}).value().area_px2;
    };
}
