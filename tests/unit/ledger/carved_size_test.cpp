// How carved size and a gradient along the board move the lines of wood.

#include "base/trade.hpp"
#include "evenfall.hpp"
#include "support/presets.hpp"
#include "support/small_lures.hpp"
#include "support/worked.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <optional>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using document::Carving;
using document::Cause;
using document::Correction;
using support::worked;

namespace {

/// The block of 120 × 20 × 30 mm, or one whose skin stands so far out, cut in two with a short fore piece.
document::Document two_piece(double out_m = 0.0) {
    document::Document d = support::block();
    for (auto* curve : {&d.shape.back, &d.shape.belly, &d.shape.half_width}) {
        for (document::CurvePoint& p : *curve)
            p.value += std::copysign(out_m, p.value);
    }
    d.segment_names = {"Fore", "Aft"};
    document::Joint joint;
    joint.at_m = 0.030;
    d.joints = {joint};
    return d;
}

document::Document with(document::Document d, std::initializer_list<Correction> corrections) {
    d.corrections = corrections;
    return d;
}

ledger::Sum wood_of(const document::Document& d, std::optional<int> segment = {}) {
    return ledger::sum_of(worked(d).ledger, ledger::Kind::wood, segment);
}

} // namespace

TEST_CASE("carved size is a skin so far off the drawing: its millimetres times skin over volume") {
    const document::Document d = support::block();
    const ledger::CarvedSize size = ledger::carved_size(d, worked(d).body);
    constexpr double skin_m2 = 2.0 * (0.120 * 0.020 + 0.020 * 0.030 + 0.030 * 0.120);
    constexpr double volume_m3 = 0.120 * 0.020 * 0.030;
    CHECK_THAT(size.skin_m2, WithinRel(skin_m2, 1e-6));
    CHECK_THAT(size.volume_m3, WithinRel(volume_m3, 1e-12));
    CHECK(size.within.all_m == 0.0002);
    CHECK_THAT(size.relative, WithinRel(0.0002 * skin_m2 / volume_m3, 1e-6));
    document::Document rough = d;
    rough.shape.carving = Carving::rough;
    document::Document careful = d;
    careful.shape.carving = Carving::careful;
    CHECK_THAT(ledger::carved_size(rough, worked(rough).body).relative,
               WithinRel(2.0 * size.relative, 1e-12));
    CHECK_THAT(ledger::carved_size(careful, worked(careful).body).relative,
               WithinRel(0.5 * size.relative, 1e-12));
    CHECK(ledger::carved_size_note(size, 1000.0).text(units::metric) ==
          "±0.2 mm all round is ±3.7 % of the volume: ±2.6 g of water pushed aside.");
}

TEST_CASE("a body carved larger all round is the drawing with its skin out: each segment by its own skin") {
    // The ends stay in this drawing, so its two end faces are taken off the skin.
    constexpr double out_m = 1e-6;
    const document::Document drawn = two_piece();
    const ledger::CarvedSize size = ledger::carved_size(drawn, worked(drawn).body);
    const double factor = 1.0 + out_m * size.skin_m2 / size.volume_m3;
    const document::Document larger = with(drawn, {{Cause::carved_size, {}, factor, {}}});
    const document::Document outside = two_piece(out_m);
    for (const int segment : {0, 1}) {
        const double end_m3 = out_m * 0.020 * 0.030;
        const double grown_m3 =
            wood_of(larger, segment).displaced_m3 - wood_of(drawn, segment).displaced_m3 - end_m3;
        const double drawn_m3 = wood_of(outside, segment).displaced_m3 - wood_of(drawn, segment).displaced_m3;
        CHECK_THAT(grown_m3, WithinRel(drawn_m3, 1e-3));
    }
    // The factor is that of the whole volume.
    CHECK_THAT(wood_of(larger).displaced_m3, WithinRel(factor * wood_of(drawn).displaced_m3, 1e-12));
}

TEST_CASE("wood denser towards the tail moves G aft by a twelfth of the length times the difference, and "
          "weighs the same") {
    const document::Document d = support::block();
    const Answers even = worked(d).answers;
    const Answers denser = worked(with(d, {{Cause::wood_gradient, {}, 1.03, {}}})).answers;
    CHECK_THAT(denser.mass.kg, WithinRel(even.mass.kg, 1e-12));
    CHECK_THAT(denser.g_m.x - even.g_m.x, WithinRel(0.03 * 0.120 / 12.0, 1e-9));
    CHECK(denser.b_m.x == even.b_m.x);
    // Cut in two, each piece has its own part in it: the integral of 0.03·(x − middle)/length, by hand.
    const document::Document cut = two_piece();
    const ledger::Sum wood = wood_of(cut);
    const ledger::Sum graded = wood_of(with(cut, {{Cause::wood_gradient, {}, 1.03, {}}}));
    const double middle = wood.g_m().x;
    const double gap = 0.5 * cut.joints[0].gap_m;
    const auto third = [&](double from, double to) {
        return (std::pow(to - middle, 3) - std::pow(from - middle, 3)) / 3.0;
    };
    const double moment =
        500.0 * 0.020 * 0.030 * 0.03 / 0.120 * (third(0.0, 0.030 - gap) + third(0.030 + gap, 0.120));
    CHECK_THAT(graded.mass_moment_kg_m.x - middle * graded.mass.kg, WithinRel(moment, 1e-9));
}

TEST_CASE("two corrections of size or gradient are one of their product") {
    for (const Cause cause : {Cause::carved_size, Cause::wood_gradient}) {
        const ledger::Sum twice = wood_of(with(two_piece(), {{cause, {}, 1.02, {}}, {cause, {}, 0.97, {}}}));
        const ledger::Sum once = wood_of(with(two_piece(), {{cause, {}, 1.02 * 0.97, {}}}));
        CHECK_THAT(twice.mass.kg, WithinRel(once.mass.kg, 1e-13));
        CHECK_THAT(twice.displaced_m3, WithinRel(once.displaced_m3, 1e-13));
        CHECK_THAT(twice.g_m().x, WithinRel(once.g_m().x, 1e-13));
    }
}

TEST_CASE("a hole at the tail takes away the denser wood there") {
    document::Document d = support::block();
    document::Hole hole = support::belly_hole(110, 8, 25);
    hole.use = document::HoleUse::fixed;
    hole.depth_m = 0.020;
    hole.cap.reset();
    hole.fill.reset();
    d.holes = {hole};
    const auto taken = [](const document::Document& of) {
        return ledger::sum_of(worked(of).ledger, ledger::Kind::hole_wood).mass.kg;
    };
    CHECK_THAT(taken(with(d, {{Cause::wood_gradient, {}, 1.03, {}}})),
               WithinRel((1.0 + 0.03 * 50.0 / 120.0) * taken(d), 1e-9));
}
