#include "workshop/tail_pour.hpp"

#include "answers/answers.hpp"
#include "base/trade.hpp"
#include "body/tail_loft.hpp"
#include "evenfall.hpp"
#include "support/soft_tails.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <limits>
#include <string>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// The tail's lines, nothing learnt.
ledger::Ledger lines_of(const document::Tail& t) {
    ledger::Ledger lines(t.tenon ? 2 : 1);
    const double volumes[] = {tail::shaped(t)->segments[0].volume_m3, tail::tenon_m3(t)};
    for (std::size_t i = 0; i < lines.size(); ++i) {
        lines[i].kind = ledger::Kind::tail;
        lines[i].item = static_cast<int>(i);
        lines[i].mass_kg = volumes[i] * tail::density_kg_m3(t);
        lines[i].displaced_m3 = volumes[i];
    }
    return lines;
}

tail::TailCasting poured(const document::Tail& t, const tail::PourRequest& request) {
    const auto p = tail::pour(t, lines_of(t), request);
    REQUIRE(p.ok());
    return *p;
}

double together_kg(const tail::TailCasting& p) {
    double sum = 0.0;
    for (const tail::MassAndVolume& portion : p.blend)
        sum += portion.mass_kg;
    return sum;
}

} // namespace

TEST_CASE("plastic to heat: casts, sprue and loss by hand", "[tail]") {
    // 40 × 4 × 18 mm elliptic: π·2·9·40 = 2261.947 mm³ and a tenon of 10 × 2 × 8 = 160 mm³, of 1.0
    // g/cm³: 2.421947 g.
    document::Tail t = support::straight_tail(0.040, 0.002, 0.009);
    t.tenon = document::Tenon{0.010, 0.002, 0.008};
    t.density_kg_m3 = 1000.0;
    tail::PourRequest r;
    r.tails = 10;
    r.sprue = 0.20;
    r.loss = 0.10;
    const auto p = poured(t, r);
    CHECK_THAT(units::g_from_kg(p.cast.mass_kg), WithinAbs(2.421947, 1e-6));
    CHECK_THAT(units::g_from_kg(p.poured_kg), WithinAbs(24.21947 / 0.8, 1e-5));
    CHECK_THAT(units::g_from_kg(p.heated_kg), WithinAbs(24.21947 / 0.72, 1e-5));
    CHECK_THAT(together_kg(p), WithinRel(p.heated_kg, 1e-14));
}

TEST_CASE("mould: the cavity is the cast before it shrank, rubber is the box less the cavity (by hand)",
          "[tail]") {
    document::Tail t = support::straight_tail(0.040, 0.002, 0.009);
    tail::PourRequest r;
    r.shrink = 0.0;
    r.wall_m = 0.008;
    r.rubber_kg_m3 = 1100.0;
    const auto two = poured(t, r);
    // 56 × 20 × 34 mm = 38080 mm³ less 2261.947 = 35818.053 mm³, 39.399858 g.
    CHECK_THAT(two.cavity_m3, WithinRel(two.cast.volume_m3, 1e-14));
    CHECK_THAT(units::cm3_from_m3(two.rubber.volume_m3), WithinAbs(35.818053, 1e-6));
    CHECK_THAT(units::g_from_kg(two.rubber.mass_kg), WithinAbs(39.399858, 1e-6));
    r.open = true;
    // One wall less across: 56 × 12 × 34 = 22848 mm³.
    CHECK_THAT(units::cm3_from_m3(poured(t, r).rubber.volume_m3), WithinAbs(22.848 - 2.261947, 1e-6));
    r.shrink = 0.05;
    CHECK_THAT(poured(t, r).cavity_m3, WithinRel(two.cast.volume_m3 / 0.95, 1e-14));
    // What a cast weighs does not depend on how it shrinks.
    CHECK(poured(t, r).cast.mass_kg == two.cast.mass_kg);
}

TEST_CASE("a blend by weight keeps its parts in grams, one by volume in millilitres", "[tail]") {
    const document::Tail t = support::paddle(0.1);
    tail::PourRequest r;
    r.blend.of = {{{30.0, 1065.0}, {60.0, 1050.0}, {8.0, 985.0}, {0.0, 1050.0}, {2.0, 1200.0}}};
    const auto by_weight = poured(t, r);
    CHECK_THAT(by_weight.blend[0].mass_kg, WithinRel(0.30 * by_weight.heated_kg, 1e-14));
    CHECK_THAT(by_weight.blend[2].mass_kg, WithinRel(0.08 * by_weight.heated_kg, 1e-14));
    CHECK(by_weight.blend[3].mass_kg == 0.0);
    r.blend.by_volume = true;
    const auto by_volume = poured(t, r);
    CHECK_THAT(by_volume.blend[1].volume_m3, WithinRel(2.0 * by_volume.blend[0].volume_m3, 1e-13));
    CHECK_THAT(by_volume.blend[4].mass_kg, WithinRel(by_volume.blend[4].volume_m3 * 1200.0, 1e-14));
    CHECK_THAT(together_kg(by_volume), WithinRel(by_volume.heated_kg, 1e-14));
    for (tail::Share& share : r.blend.of)
        share.kg_m3 = 1000.0;
    CHECK_THAT(poured(t, r).blend[2].mass_kg, WithinRel(by_weight.blend[2].mass_kg, 1e-13));
}

TEST_CASE("twice the tails take twice the plastic and the same mould", "[tail][properties]") {
    const document::Tail t = support::paddle(0.1);
    tail::PourRequest r;
    const auto one = poured(t, r);
    r.tails = 2;
    const auto two = poured(t, r);
    CHECK_THAT(two.heated_kg, WithinRel(2.0 * one.heated_kg, 1e-14));
    CHECK(two.rubber.mass_kg == one.rubber.mass_kg);
}

TEST_CASE("a cast weighs what the ledger says of the tail, with what was learnt of its size and its plastic",
          "[tail]") {
    document::Document d = support::block_with_tail();
    const tail::PourRequest r;
    const auto cast_of = [&] {
        const auto e = evaluate(d);
        REQUIRE(e.ok());
        double kg = 0.0;
        for (const ledger::Line& line : e->ledger)
            kg += line.kind == ledger::Kind::tail ? line.mass_kg : 0.0;
        const auto p = tail::pour(*d.tail, e->ledger, r);
        REQUIRE(p.ok());
        CHECK_THAT(p->cast.mass_kg, WithinRel(kg, 1e-12));
        return *p;
    };
    const auto drawn = cast_of();
    document::Correction plastic;
    plastic.of = document::Cause::tail;
    plastic.item = 0;
    plastic.factor = 1.05;
    document::Correction size = plastic;
    size.item = 1;
    size.factor = 1.1;
    d.corrections = {plastic, size};
    const auto learnt = cast_of();
    CHECK_THAT(learnt.cast.mass_kg, WithinRel(1.05 * 1.1 * drawn.cast.mass_kg, 1e-12));
    CHECK_THAT(learnt.cast.volume_m3, WithinRel(1.1 * drawn.cast.volume_m3, 1e-12));
    CHECK_THAT(learnt.tenon_m3, WithinRel(1.1 * tail::tenon_m3(*d.tail), 1e-12));
    CHECK_THAT(learnt.cavity_m3, WithinRel(1.1 * drawn.cavity_m3, 1e-12));
    CHECK_THAT(learnt.heated_kg, WithinRel(1.05 * 1.1 * drawn.heated_kg, 1e-12));
    CHECK(learnt.box_m.x > drawn.box_m.x);
}

TEST_CASE("a pour's number off its limits is refused by its name, once each", "[tail]") {
    const document::Tail t = support::paddle(0.1);
    const auto path = [&](auto change) {
        tail::PourRequest r;
        change(r);
        const auto p = tail::pour(t, lines_of(t), r);
        REQUIRE_FALSE(p.ok());
        REQUIRE(p.problems().size() == 1);
        CHECK_FALSE(p.problems()[0].sentence.empty());
        return p.problems()[0].path;
    };
    using R = tail::PourRequest;
    CHECK(path([](R& r) { r.tails = 0; }) == "/tails");
    CHECK(path([](R& r) { r.shrink = 0.5; }) == "/shrink");
    CHECK(path([](R& r) { r.sprue = 1.0; }) == "/sprue");
    CHECK(path([](R& r) { r.loss = std::numeric_limits<double>::quiet_NaN(); }) == "/loss");
    CHECK(path([](R& r) { r.wall_m = 0.0; }) == "/wall_mm");
    CHECK(path([](R& r) { r.rubber_kg_m3 = 10.0; }) == "/rubber_g_cm3");
    CHECK(path([](R& r) { r.blend.of[0].parts = -1.0; }) == "/blend/old");
    CHECK(path([](R& r) { r.blend.of[2].kg_m3 = 1.0; }) == "/blend/softener_g_cm3");
    CHECK(path([](R& r) { r.blend.of[1].parts = 0.0; }) == "/blend");
}
