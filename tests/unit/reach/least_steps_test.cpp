#include "reach/least_steps.hpp"

#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <functional>

using evenfall::reach::LeastSteps;

namespace {

/// The search over a shortage, and how often it asked.
std::pair<std::optional<int>, int> search(int most, const std::function<double(int)>& shortage) {
    LeastSteps steps(most, shortage(0));
    int asked = 0;
    while (const auto n = steps.ask()) {
        REQUIRE(++asked < 200);
        REQUIRE((*n >= 1 && *n <= most));
        steps.tell(shortage(*n));
    }
    return {steps.found(), asked};
}

} // namespace

TEST_CASE("the least number of steps is found wherever the shortage falls steadily, in few questions",
          "[reach]") {
    for (int most = 1; most <= 80; most += (most < 12 ? 1 : 17)) {
        for (int answer = 1; answer <= most; ++answer) {
            const auto [straight, few] = search(most, [=](int n) { return answer - 0.5 - n; });
            CHECK(straight == answer);
            CHECK(few <= 8);
            const auto [bent, more] =
                search(most, [=](int n) { return std::sqrt(answer - 0.0) - std::sqrt(n + 1e-9) - 1e-6; });
            CHECK(bent == answer);
            CHECK(more <= 16);
        }
    }
}

TEST_CASE("what never helps, helps too little, or cannot be built is given up", "[reach]") {
    CHECK_FALSE(search(50, [](int n) { return 1.0 + n; }).first.has_value());
    CHECK_FALSE(search(50, [](int n) { return 100.0 - n; }).first.has_value());
    const double none = std::numeric_limits<double>::infinity();
    CHECK_FALSE(search(50, [=](int n) { return n == 0 ? 1.0 : none; }).first.has_value());
    CHECK_FALSE(search(50, [=](int n) { return n > 20 ? none : 30.0 - n; }).first.has_value());
    CHECK(search(50, [=](int n) { return n > 20 ? none : 18.5 - n; }).first == 19);
}

TEST_CASE("where it comes nearest is kept", "[reach]") {
    LeastSteps steps(3, 5.0);
    for (const double short_by : {4.0, 2.0, 3.0}) {
        REQUIRE(steps.ask().has_value());
        steps.tell(short_by);
    }
    CHECK_FALSE(steps.ask().has_value());
    CHECK_FALSE(steps.found().has_value());
    CHECK(steps.best() == 2);
    CHECK(steps.best_shortage() == 2.0);
}
