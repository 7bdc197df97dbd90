#include "drawing/glyph.hpp"
#include "drawing/outline.hpp"
#include "drawing/world_to_screen.hpp"
#include "evenfall.hpp"
#include "state/session.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <numbers>

using namespace evenfall;
using namespace evenfall::shell::drawing;
using Catch::Matchers::WithinAbs;

TEST_CASE("a point goes to the screen and back to the same place", "[shell][drawing]") {
    const WorldToScreen map(3100.0, 0.01, 0.02, {40.0f, 200.0f});
    for (double u : {-0.03, 0.0, 0.0617, 0.25}) {
        for (double v : {-0.02, 0.0, 0.013}) {
            const ScreenPoint p = map.at(u, v);
            // Floats of some hundreds of pixels are good to 3e-5 px, which is 1e-8 m here.
            CHECK_THAT(map.u_m(p.x), WithinAbs(u, 3e-8));
            CHECK_THAT(map.v_m(p.y), WithinAbs(v, 3e-8));
        }
    }
}

TEST_CASE("the drawing is to one scale in both directions, and up is up", "[shell][drawing]") {
    const WorldToScreen map(2500.0, 0.0, 0.0, {0.0f, 0.0f});
    CHECK_THAT(map.at(0.04, 0.0).x, WithinAbs(100.0, 1e-4));
    CHECK_THAT(map.at(0.0, 0.04).y, WithinAbs(-100.0, 1e-4));
    CHECK_THAT(map.px(0.04), WithinAbs(100.0, 1e-4));
}

TEST_CASE("a fitted drawing fills its area in one direction and exceeds it in none", "[shell][drawing]") {
    const double wide = fitting_px_per_m(0.2, 0.03, 600.0f, 400.0f);
    CHECK_THAT(0.2 * wide, WithinAbs(600.0, 1e-9));
    CHECK(0.03 * wide <= 400.0);
    const double high = fitting_px_per_m(0.2, 0.2, 600.0f, 100.0f);
    CHECK_THAT(0.2 * high, WithinAbs(100.0, 1e-9));
    CHECK(fitting_px_per_m(0.2, 0.2, -5.0f, 100.0f) > 0.0);
}

TEST_CASE("nose-up lifts the nose and drops the tail by the same, without stretching", "[shell][drawing]") {
    const double pitch = 0.3;
    const ViewPoint nose = pitched(-0.08, 0.0, pitch);
    const ViewPoint tail = pitched(0.08, 0.0, pitch);
    CHECK_THAT(nose.v, WithinAbs(0.08 * std::sin(pitch), 1e-15));
    CHECK_THAT(tail.v, WithinAbs(-nose.v, 1e-15));
    CHECK_THAT(std::hypot(nose.u, nose.v), WithinAbs(0.08, 1e-15));
}

namespace {

document::Document jointed(double relief_deg) {
    document::Document d = shell::state::new_lure();
    const double angle = relief_deg * std::numbers::pi / 180.0;
    d.joints = {{0.06, 0.003, angle, angle}};
    d.segment_names = {"Fore", "Aft"};
    return d;
}

} // namespace

TEST_CASE("segments are drawn with their true gap between them", "[shell][drawing]") {
    const auto evaluation = evaluate(jointed(0.0));
    REQUIRE(evaluation.ok());
    const auto fore = side_columns(evaluation->body, 0, 30);
    const auto aft = side_columns(evaluation->body, 1, 30);
    CHECK_THAT(aft.front().x_m - fore.back().x_m, WithinAbs(0.003, 1e-12));
    CHECK_THAT(fore.front().x_m, WithinAbs(0.0, 1e-12));
    CHECK_THAT(aft.back().x_m, WithinAbs(0.120, 1e-12));
}

TEST_CASE("a relieved joint comes to an edge at the middle plane, seen from above", "[shell][drawing]") {
    const auto evaluation = evaluate(jointed(20.0));
    REQUIRE(evaluation.ok());
    const auto fore = top_columns(evaluation->body, 0, 200);
    CHECK_THAT(fore.back().high_m, WithinAbs(0.0, 1e-12));
    // At the skin the face has fallen back by half width times the tangent of the relief.
    double shoulder_m = 0.0;
    for (const auto& column : fore) {
        if (std::abs(column.high_m - evaluation->body.lines->at(column.x_m).half_width_m) < 1e-12)
            shoulder_m = column.x_m;
    }
    const double half_m = evaluation->body.lines->at(shoulder_m).half_width_m;
    const double expected = 0.06 - 0.0015 - half_m * std::tan(20.0 * std::numbers::pi / 180.0);
    // The columns there are about half a millimetre apart.
    CHECK_THAT(shoulder_m, WithinAbs(expected, 6e-4));
    CHECK(relief_edge(evaluation->body, 0, true, 9).size() == 9);
}

TEST_CASE("a joint without relief shows no edge beside its face", "[shell][drawing]") {
    const auto evaluation = evaluate(jointed(0.0));
    REQUIRE(evaluation.ok());
    CHECK(relief_edge(evaluation->body, 0, true, 9).empty());
}

TEST_CASE("parts are drawn with the sign that their name says", "[shell][drawing]") {
    const auto sign = [](const char* name, Stage stage, double x_m, double z_m) {
        document::Part part;
        part.name = name;
        part.stage = stage;
        part.at_m = {x_m, 0.0, z_m};
        return glyph_of(part, -0.012, 0.15);
    };
    CHECK(sign("Treble, front", Stage::rigged, 0.05, -0.02) == Glyph::hook);
    CHECK(sign("Hook hanger", Stage::hardware, 0.05, -0.01) == Glyph::wire_eye);
    CHECK(sign("Hinge pin", Stage::hardware, 0.06, 0.0) == Glyph::pin);
    CHECK(sign("Glass eyes", Stage::rigged, 0.01, 0.005) == Glyph::glass_eye);
    CHECK(sign("Eyes, front joint", Stage::hardware, 0.06, 0.0) == Glyph::wire_eye);
    CHECK(sign("Soft tail", Stage::rigged, 0.16, 0.0) == Glyph::soft_tail);
    CHECK(sign("Something", Stage::rigged, 0.05, -0.03) == Glyph::hook);
    CHECK(sign("Something", Stage::hardware, 0.05, 0.0) == Glyph::bead);
}
