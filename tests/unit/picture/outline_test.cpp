// The outline of drawn pictures whose true outline is known by formula.

#include "evenfall.hpp"
#include "picture/profile.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numbers>
#include <random>
#include <utility>

using namespace evenfall;
using namespace evenfall::picture;
using Catch::Matchers::WithinAbs;

namespace {

struct Ellipse {
    double x, y, a, b, turned;
};

/// Nearly the distance from the ellipse, outside positive (to first order in it).
double off(const Ellipse& e, Spot s) {
    const double c = std::cos(e.turned);
    const double n = std::sin(e.turned);
    const double u = (s.x - e.x) * c + (s.y - e.y) * n;
    const double v = -(s.x - e.x) * n + (s.y - e.y) * c;
    const double f = u * u / (e.a * e.a) + v * v / (e.b * e.b) - 1.0;
    return f / (2.0 * std::hypot(u / (e.a * e.a), v / (e.b * e.b)));
}

enum class Drawn { pencil, piece };

/// Paper whose light falls off to half from left to right, with grain.
std::vector<std::uint8_t> picture_of(const Ellipse& e, int width, int height, Drawn how, double grain,
                                     double gap_px) {
    std::mt19937 draw(7);
    std::normal_distribution<double> noise(0.0, grain);
    std::vector<std::uint8_t> grey(static_cast<std::size_t>(width) * static_cast<std::size_t>(height));
    for (int y = 0; y < height; ++y) {
        for (int x = 0; x < width; ++x) {
            const Spot s{x + 0.5, y + 0.5};
            const double d = off(e, s);
            double ink =
                how == Drawn::piece ? std::clamp(0.5 - d, 0.0, 1.0) : std::clamp(2.0 - std::abs(d), 0.0, 1.0);
            const bool in_gap = s.y < e.y && std::abs(s.x - e.x) < 0.5 * gap_px;
            if (how == Drawn::pencil && in_gap) ink = 0.0;
            const double light = 0.9 - 0.45 * x / width;
            const double value = light * (1.0 - 0.5 * ink) + noise(draw);
            grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) +
                 static_cast<std::size_t>(x)] =
                static_cast<std::uint8_t>(std::clamp(255.0 * value + 0.5, 0.0, 255.0));
        }
    }
    return grey;
}

double furthest(const Contour& contour, const Ellipse& e) {
    double worst = 0.0;
    for (const Spot& s : contour.points)
        worst = std::max(worst, std::abs(off(e, s)));
    return worst;
}

} // namespace

TEST_CASE("a pencilled ellipse with a gap, grain and light falling off by half is found within half a pixel",
          "[picture]") {
    const Ellipse e{410.3, 250.7, 300.0, 90.0, 0.12};
    const auto grey = picture_of(e, 820, 500, Drawn::pencil, 0.02, 9.0);
    const auto contour = find_outline({820, 500, 1, grey});
    REQUIRE(contour.ok());
    CHECK(contour->drawn_line);
    CHECK(contour->backed > 0.95);
    CHECK(furthest(*contour, e) < 0.5);
    CHECK_THAT(contour->area_px2 / (std::numbers::pi * e.a * e.b), WithinAbs(1.0, 0.003));
}

TEST_CASE("a gap of 16 pixels in a pencil line is crossed as the line on both sides bends: within half a "
          "pixel, at a tip of 27 pixels' radius within 1.5",
          "[picture]") {
    // Where the ellipse is flat, and across its tip, where it bends most.
    for (const auto& [turned, most] : {std::pair{0.12, 0.5}, std::pair{0.12 + 0.5 * std::numbers::pi, 1.5}}) {
        const Ellipse e{410.3, 410.7, 300.0, 90.0, turned};
        const auto grey = picture_of(e, 820, 820, Drawn::pencil, 0.02, 16.0);
        OutlineOptions options;
        options.gap_px = 20.0;
        const auto contour = find_outline({820, 820, 1, grey}, options);
        REQUIRE(contour.ok());
        CHECK(contour->working_scale == 1.0);
        CHECK(furthest(*contour, e) < most);
    }
}

TEST_CASE("a tablet's photo is reduced before it is looked at, and still met within a tenth of a millimetre",
          "[picture]") {
    // 2000 by 1500 over 250 mm of table: 8 pixels a millimetre, a pencil line of half a millimetre.
    const Ellipse e{1010.3, 750.7, 760.0, 230.0, 0.12};
    const auto grey = picture_of(e, 2000, 1500, Drawn::pencil, 0.02, 16.0);
    const auto contour = find_outline({2000, 1500, 1, grey});
    REQUIRE(contour.ok());
    CHECK(contour->working_scale > 1.5);
    CHECK(furthest(*contour, e) / 8.0 < 0.1);
}

TEST_CASE("the rim of a dark ellipse on an unevenly lit ground is found within half a pixel", "[picture]") {
    const Ellipse e{410.3, 250.7, 300.0, 90.0, -0.2};
    const auto grey = picture_of(e, 820, 500, Drawn::piece, 0.02, 0.0);
    const auto contour = find_outline({820, 500, 1, grey});
    REQUIRE(contour.ok());
    CHECK_FALSE(contour->drawn_line);
    CHECK(furthest(*contour, e) < 0.5);
}

TEST_CASE("the rim of a bright piece on a dark ground is found within half a pixel, sharp or soft, however "
          "dark the ground",
          "[picture]") {
    const Ellipse e{410.3, 250.7, 300.0, 90.0, 0.12};
    for (const double ground : {0.0, 0.05, 0.15, 0.24, 0.26, 0.35}) {
        for (const double rim_px : {1.0, 6.0}) {
            std::mt19937 draw(7);
            std::normal_distribution<double> noise(0.0, 0.01);
            std::vector<std::uint8_t> grey;
            for (int y = 0; y < 500; ++y) {
                for (int x = 0; x < 820; ++x) {
                    const double wood = std::clamp(0.5 - off(e, {x + 0.5, y + 0.5}) / rim_px, 0.0, 1.0);
                    const double value = ground + (0.95 - ground) * wood + noise(draw);
                    grey.push_back(static_cast<std::uint8_t>(std::clamp(255.0 * value + 0.5, 0.0, 255.0)));
                }
            }
            CAPTURE(ground, rim_px);
            const auto contour = find_outline({820, 500, 1, grey});
            REQUIRE(contour.ok());
            CHECK_FALSE(contour->drawn_line);
            CHECK(furthest(*contour, e) < 0.5);
            CHECK_THAT(contour->area_px2 / (std::numbers::pi * e.a * e.b), WithinAbs(1.0, 0.003));
        }
    }
}

TEST_CASE("a found ellipse becomes back and belly lines within the tolerance, and a lure that can be weighed",
          "[picture]") {
    const Ellipse e{410.3, 250.7, 300.0, 60.0, 0.1};
    const auto grey = picture_of(e, 820, 500, Drawn::piece, 0.01, 0.0);
    const auto contour = find_outline({820, 500, 1, grey});
    REQUIRE(contour.ok());
    Scale scale;
    scale.from = {100.0, 400.0};
    scale.to = {600.0, 400.0};
    scale.distance_m = 0.125; // 0.25 mm a pixel: 150 mm long, 30 mm high
    const auto profile = profile_from(*contour, scale);
    REQUIRE(profile.ok());
    CHECK_THAT(profile->length_m, WithinAbs(0.150, 0.0004));
    CHECK_THAT(profile->greatest_height_m, WithinAbs(0.030, 0.0003));
    CHECK_THAT(profile->turned_rad, WithinAbs(0.1, 0.003));
    CHECK(profile->off_top_m <= scale.tolerance_m);
    CHECK(profile->off_bottom_m <= scale.tolerance_m);
    CHECK(profile->top.size() <= 24);
    CHECK(evaluate(new_lure(*profile)).ok());
}

TEST_CASE("a forked tail is closed by the lines, and how far its apex lies off them is told", "[picture]") {
    Contour contour;
    const auto draw_to = [&](Spot to) {
        const Spot from = contour.points.empty() ? to : contour.points.back();
        for (int k = 1; k <= 100; ++k)
            contour.points.push_back(
                {from.x + 0.01 * k * (to.x - from.x), from.y + 0.01 * k * (to.y - from.y)});
    };
    // 400 by 100 pixels, its fork 100 deep: the apex lies 50 from back and belly.
    for (const Spot corner : {Spot{0, 0}, {400, 0}, {300, 50}, {400, 100}, {0, 100}, {0, 1}})
        draw_to(corner);
    Scale scale;
    scale.to = {400.0, 0.0};
    scale.distance_m = 0.1;
    const auto profile = profile_from(contour, scale);
    REQUIRE(profile.ok());
    CHECK_THAT(profile->length_m, WithinAbs(0.100, 1e-6));
    CHECK_THAT(profile->greatest_height_m, WithinAbs(0.025, 1e-6));
    CHECK_THAT(profile->overhang_m, WithinAbs(0.0125, 1e-6));
}

TEST_CASE("plain paper has no outline, and says so", "[picture]") {
    const std::vector<std::uint8_t> grey(200 * 100, 220);
    const auto contour = find_outline({200, 100, 1, grey});
    REQUIRE_FALSE(contour.ok());
    CHECK(contour.problems()
              .front()
              .sentence.text(evenfall::units::metric)
              .rfind("No closed outline was found", 0) == 0);
}

TEST_CASE("one colour, grain alone and a lone stroke have no outline, and say so", "[picture]") {
    constexpr int width = 400;
    constexpr int height = 300;
    for (unsigned seed = 1; seed <= 6; ++seed) {
        CAPTURE(seed);
        std::mt19937 draw(seed);
        std::normal_distribution<double> grain(0.0, 6.0 * seed);
        std::vector<std::uint8_t> grey(width * height);
        for (std::uint8_t& value : grey)
            value = static_cast<std::uint8_t>(std::clamp(150.0 + grain(draw), 0.0, 255.0));
        // From the third on a stroke that closes nothing.
        for (int x = 60; seed > 2 && x < 340; ++x) {
            for (int y = 148; y < 152; ++y)
                grey[static_cast<std::size_t>(y * width + x)] = 20;
        }
        const auto contour = find_outline({width, height, 1, grey});
        REQUIRE_FALSE(contour.ok());
        CHECK(contour.problems()
                  .front()
                  .sentence.text(evenfall::units::metric)
                  .rfind("No closed outline was found", 0) == 0);
    }
    for (const std::uint8_t value : {std::uint8_t{0}, std::uint8_t{1}, std::uint8_t{255}}) {
        CHECK_FALSE(find_outline({width, height, 1, std::vector<std::uint8_t>(width * height, value)}).ok());
    }
}

TEST_CASE("pictures and options off their limits are refused by name", "[picture]") {
    const std::vector<std::uint8_t> grey(200 * 100, 220);
    CHECK_FALSE(find_outline({200, 101, 1, grey}).ok());
    CHECK_FALSE(find_outline({-200, -100, 1, grey}).ok());
    CHECK_FALSE(find_outline({2'000'000'000, 2'000'000'000, 4, grey}).ok());
    CHECK_FALSE(find_outline({200, 100, 3, grey}).ok());
    OutlineOptions options;
    options.sensitivity = std::numeric_limits<double>::quiet_NaN();
    const auto refused = find_outline({200, 100, 1, grey}, options);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.problems().front().path == "/sensitivity");
}
