#include "water/swim/closures.hpp"

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include <algorithm>

using namespace evenfall::swim;

TEST_CASE("the first assumptions are the usual ones, the others keep to their ranges and differ", "[swim]") {
    CHECK(closures_of(0, false).recover == Closures{}.recover);
    CHECK(closures_of(0, true).fin == Closures{}.fin);
    double least = 1.0, most = 0.0, sum = 0.0;
    constexpr int count = 200;
    for (int k = 1; k <= count; ++k) {
        const Closures c = closures_of(k, false);
        CHECK((c.recover >= 0.3 && c.recover <= 0.85));
        CHECK((c.cross >= 0.5 && c.cross <= 0.95));
        CHECK((c.drag >= 0.8 && c.drag <= 1.25));
        CHECK((c.along >= 0.6 && c.along <= 2.0));
        CHECK((c.added >= 0.9 && c.added <= 1.15));
        CHECK((c.fin >= 0.6 && c.fin <= 1.0));
        CHECK((c.parts >= 0.6 && c.parts <= 1.5));
        CHECK((c.joint_loss >= 0.0 && c.joint_loss <= 0.25));
        CHECK(c.edge == 0.0);
        least = std::min(least, c.recover);
        most = std::max(most, c.recover);
        sum += c.recover;
    }
    CHECK(least < 0.35);
    CHECK(most > 0.80);
    // The mean of a triangular distribution is that of its three corners.
    CHECK(sum / count == Catch::Approx((0.3 + 0.6 + 0.85) / 3.0).margin(0.005));
}

TEST_CASE("a soft tail's share of a plate may be as low as 0.3", "[swim]") {
    double least = 1.0;
    for (int k = 1; k <= 100; ++k)
        least = std::min(least, closures_of(k, true).fin);
    CHECK(least < 0.45);
    CHECK(least >= 0.3);
}
