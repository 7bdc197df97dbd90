// A picture behind the drawing: how it lies by its marks, and what is found on it.

#include "state/backdrop.hpp"
#include "state/session.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <string>

using namespace evenfall;
using namespace evenfall::shell;
using Catch::Matchers::WithinAbs;
using state::Backdrop;
using state::Mark;

namespace {

/// White paper of 800 × 500 with a dark oval 600 long and 160 high about (400, 250), turned by `turn`.
Backdrop oval(double turn_rad = 0.0) {
    Backdrop backdrop;
    std::uint8_t* at = backdrop.make_room(800, 500);
    REQUIRE(at != nullptr);
    for (int y = 0; y < 500; ++y) {
        for (int x = 0; x < 800; ++x, at += 4) {
            const double u = (x + 0.5 - 400.0) * std::cos(turn_rad) + (y + 0.5 - 250.0) * std::sin(turn_rad);
            const double v = -(x + 0.5 - 400.0) * std::sin(turn_rad) + (y + 0.5 - 250.0) * std::cos(turn_rad);
            const bool dark = u * u / (300.0 * 300.0) + v * v / (80.0 * 80.0) < 1.0;
            at[0] = at[1] = at[2] = dark ? 90 : 235;
            at[3] = 255;
        }
    }
    backdrop.ready("", 0.150);
    backdrop.put_mark(Mark::nose, {400.0 - 300.0 * std::cos(turn_rad), 250.0 - 300.0 * std::sin(turn_rad)});
    backdrop.put_mark(Mark::tail, {400.0 + 300.0 * std::cos(turn_rad), 250.0 + 300.0 * std::sin(turn_rad)});
    return backdrop;
}

picture::Profile found_on(Backdrop& backdrop) {
    backdrop.start_search();
    REQUIRE(backdrop.searching());
    std::optional<Outcome<picture::Profile>> result;
    int slices = 0;
    while (!(result = backdrop.search_on()))
        ++slices;
    CHECK(slices > 3);
    CHECK_FALSE(backdrop.searching());
    REQUIRE(result->ok());
    return result->value();
}

} // namespace

TEST_CASE("a picture lies level between the marks of nose and tail, to the scale they give",
          "[shell][picture]") {
    for (const double turn : {0.0, 0.2, -0.3}) {
        CAPTURE(turn);
        const Backdrop backdrop = oval(turn);
        const state::PicturePlacement placement = backdrop.placement();
        CHECK_THAT(placement.m_per_px, WithinAbs(0.150 / 600.0, 1e-9));
        const auto nose = placement.world_of(backdrop.mark(Mark::nose));
        const auto tail = placement.world_of(backdrop.mark(Mark::tail));
        CHECK_THAT(nose.x_m, WithinAbs(0.0, 1e-12));
        CHECK_THAT(tail.x_m, WithinAbs(0.150, 1e-9));
        CHECK_THAT(tail.z_m, WithinAbs(0.0, 1e-9));
        const picture::Spot back = placement.spot_of(0.04, 0.01);
        const auto again = placement.world_of(back);
        CHECK_THAT(again.x_m, WithinAbs(0.04, 1e-12));
        CHECK_THAT(again.z_m, WithinAbs(0.01, 1e-12));
    }
}

TEST_CASE("a lure photographed with its nose at the right is mirrored, its back stays up",
          "[shell][picture]") {
    Backdrop backdrop = oval();
    backdrop.put_mark(Mark::nose, {700.0, 250.0});
    backdrop.put_mark(Mark::tail, {100.0, 250.0});
    const auto above_tail = backdrop.placement().world_of({100.0, 150.0});
    CHECK_THAT(above_tail.x_m, WithinAbs(0.150, 1e-9));
    CHECK_THAT(above_tail.z_m, WithinAbs(100.0 * 0.150 / 600.0, 1e-9));
}

TEST_CASE("two marks on a rule give the scale instead of nose and tail", "[shell][picture]") {
    Backdrop backdrop = oval();
    backdrop.set_by_rule(true);
    backdrop.put_mark(Mark::rule_from, {100.0, 400.0});
    backdrop.put_mark(Mark::rule_to, {500.0, 400.0});
    backdrop.set_apart_m(0.100);
    CHECK_THAT(backdrop.placement().world_of(backdrop.mark(Mark::tail)).x_m, WithinAbs(0.150, 1e-9));
}

TEST_CASE("a picture stays put under a mark that is being dragged", "[shell][picture]") {
    Backdrop backdrop = oval();
    const state::PicturePlacement before = backdrop.placement();
    backdrop.hold(Mark::tail);
    backdrop.put_mark(Mark::tail, {600.0, 260.0});
    CHECK(backdrop.placement().m_per_px == before.m_per_px);
    backdrop.hold(std::nullopt);
    CHECK(backdrop.placement().m_per_px > before.m_per_px);
}

TEST_CASE("marks kept as text come back, and a mark never leaves the picture", "[shell][picture]") {
    Backdrop backdrop = oval();
    backdrop.put_mark(Mark::rule_to, {9000.0, -5.0});
    CHECK(backdrop.mark(Mark::rule_to).x == 800.0);
    CHECK(backdrop.mark(Mark::rule_to).y == 0.0);
    backdrop.set_apart_m(0.142);
    backdrop.set_by_rule(true);
    backdrop.set_strength(0.3);
    Backdrop other = oval(0.1);
    other.ready(backdrop.marks_text(), 1.0);
    CHECK(other.marks_text() == backdrop.marks_text());
    for (const char* wrong :
         {"", "[]", "{\"nose\":[1]}", "{\"apart_mm\":\"much\",\"strength\":-3}", "{\"nose\":[null,1e999]}"}) {
        CAPTURE(wrong);
        other.ready(wrong, 0.1);
        CHECK(other.there());
        CHECK(other.rule_length_m() > 0.0);
        CHECK(other.strength() > 0.0f);
    }
}

TEST_CASE("a picture too small, too large or not there is refused and looks for nothing",
          "[shell][picture]") {
    Backdrop backdrop;
    for (const auto& [w, h] : {std::pair{0, 0}, {23, 400}, {400, 2049}, {-5, 100}})
        CHECK(backdrop.make_room(w, h) == nullptr);
    backdrop.start_search();
    CHECK_FALSE(backdrop.searching());
    REQUIRE(backdrop.make_room(400, 300) != nullptr);
    backdrop.ready("", 0.1);
    backdrop.start_search();
    std::optional<Outcome<picture::Profile>> result;
    while (!(result = backdrop.search_on())) {
    }
    CHECK_FALSE(result->ok());
    CHECK_FALSE(result->problems().front().sentence.empty());
}

TEST_CASE("the outline found on a picture is the lure's own, turned level and to scale, as one change that "
          "can be undone",
          "[shell][picture]") {
    for (const double turn : {0.0, 0.15}) {
        CAPTURE(turn);
        Backdrop backdrop = oval(turn);
        const picture::Profile profile = found_on(backdrop);
        CHECK_THAT(profile.length_m, WithinAbs(0.150, 0.0004));
        CHECK_THAT(profile.greatest_height_m, WithinAbs(0.040, 0.0004));
        state::Session session{state::new_lure()};
        const auto before = session.kept().shape.back;
        REQUIRE(session.apply({"Outline",
                               [profile](document::Document d) { return picture::with_profile(d, profile); },
                               false}));
        CHECK(session.kept().shape.back.size() == before.size());
        session.finish();
        CHECK(session.history().size() == 2);
        CHECK_THAT(session.kept().shape.back.back().x_m, WithinAbs(0.150, 0.0004));
        session.undo();
        CHECK(session.kept().shape.back.back().x_m == before.back().x_m);
    }
}

TEST_CASE("a mark is nudged by thousandths of the picture's width, along the lure as it lies",
          "[shell][picture]") {
    for (const double turn : {0.0, 0.3}) {
        CAPTURE(turn);
        Backdrop backdrop = oval(turn);
        const state::PicturePlacement placement = backdrop.placement();
        const auto before = placement.world_of(backdrop.mark(Mark::tail));
        const unsigned revision = backdrop.revision();
        backdrop.nudge_mark(Mark::tail, 2.0, -1.0);
        const auto after = placement.world_of(backdrop.mark(Mark::tail));
        CHECK_THAT(after.x_m - before.x_m, WithinAbs(2.0 * 0.8 * placement.m_per_px, 1e-12));
        CHECK_THAT(after.z_m - before.z_m, WithinAbs(-0.8 * placement.m_per_px, 1e-12));
        CHECK(backdrop.revision() > revision);
    }
}
