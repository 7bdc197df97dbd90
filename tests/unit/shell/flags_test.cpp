#include "drawing/flags.hpp"

#include <catch2/catch_test_macros.hpp>

#include <vector>

using namespace evenfall::shell;
using drawing::flag_place;
using drawing::flag_size;
using widgets::Rect;

namespace {

bool covers(ImVec2 flag, const Rect& box) {
    const float half = 0.5f * flag_size;
    return flag.x - half < box.right() && box.x < flag.x + half && flag.y - half < box.bottom() &&
           box.y < flag.y + half;
}

} // namespace

TEST_CASE("the flag of G or B stands beside its mark, on the preferred side", "[shell][flags]") {
    const ImVec2 right = flag_place({100.0f, 100.0f}, 1.0f, 1.0f, {});
    CHECK(right.x > 100.0f);
    CHECK(right.y > 100.0f);
    const ImVec2 left = flag_place({100.0f, 100.0f}, -1.0f, -1.0f, {});
    CHECK(left.x < 100.0f);
    CHECK(left.y < 100.0f);
}

TEST_CASE("wherever a row of holes' numbers runs below a mark, its flag covers none of them",
          "[shell][flags]") {
    for (int y = 60; y <= 180; y += 3) {
        for (int x = 40; x <= 160; x += 3) {
            CAPTURE(x, y);
            // Five numbers, 45 px apart, one of them at x.
            std::vector<Rect> numbers;
            for (int k = -2; k <= 2; ++k)
                numbers.push_back(
                    {static_cast<float>(x + 45 * k) - 7.0f, static_cast<float>(y), 14.0f, 16.0f});
            const ImVec2 flag = flag_place({100.0f, 100.0f}, 1.0f, 1.0f, numbers);
            for (const Rect& number : numbers)
                CHECK_FALSE(covers(flag, number));
        }
    }
}

TEST_CASE("where no place is free the flag keeps its usual one", "[shell][flags]") {
    const std::vector<Rect> all{{0.0f, 0.0f, 200.0f, 200.0f}};
    const ImVec2 usual = flag_place({100.0f, 100.0f}, 1.0f, 1.0f, {});
    const ImVec2 flag = flag_place({100.0f, 100.0f}, 1.0f, 1.0f, all);
    CHECK(flag.x == usual.x);
    CHECK(flag.y == usual.y);
}
