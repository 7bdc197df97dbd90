#include "water/fall/hinge_loads.hpp"

#include "base/trade.hpp"
#include "evenfall.hpp"
#include "ledger/fold.hpp"
#include "support/small_lures.hpp"
#include "workshop/joint_answers.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double g = units::standard_gravity_m_s2;

/// The block, cut in its middle, with a lump of lead in the aft half.
document::Document cut_block(double lead_g) {
    document::Document d = support::block();
    document::Joint j;
    j.at_m = 0.060;
    j.gap_m = 0.002;
    d.joints = {j};
    d.segment_names = {"Fore", "Aft"};
    if (lead_g > 0.0) {
        document::Part p;
        p.material = "lead";
        p.mass_kg = lead_g / 1000.0;
        p.at_m = {0.100, 0.0, -0.010};
        p.embedded = 1.0;
        p.segment = 1;
        d.parts = {p};
    }
    return d;
}

struct Loaded {
    Evaluation evaluation;
    HingeLoads loads;
};
Loaded loaded(const document::Document& d, const materials::WaterProperties& water, double pitch_rad = 0.0) {
    auto e = evaluate(d);
    REQUIRE(e.ok());
    HingeLoads l = hinge_loads(e->body, e->ledger, d, water, pitch_rad);
    return {std::move(*e), std::move(l)};
}

constexpr materials::WaterProperties tap{998.2, 1.0e-3};

} // namespace

TEST_CASE("the segments' in-water masses are those of the answers and sum to the lure's", "[fall]") {
    const document::Document d = support::fish();
    auto e = evaluate(d);
    REQUIRE(e.ok());
    const HingeLoads l = hinge_loads(e->body, e->ledger, d, {e->answers.water_density_kg_m3, 1e-3}, 0.0);
    REQUIRE(l.segments.size() == 3);
    REQUIRE(l.joints.size() == 2);
    double sum = 0.0;
    for (std::size_t s = 0; s < 3; ++s) {
        CHECK_THAT(l.segments[s].in_water_kg, WithinAbs(e->answers.segments[s].in_water.kg, 1e-12));
        sum += l.segments[s].in_water_kg;
    }
    CHECK_THAT(sum, WithinAbs(e->answers.in_water.kg, 1e-12));
}

TEST_CASE("a bare block floats evenly, drawn under: next to no load on its joint", "[fall]") {
    const auto [e, l] = loaded(cut_block(0.0), tap);
    REQUIRE(l.joints.size() == 1);
    // Its halves alike, drag and lift are spread alike, but that the gap is counted as body for the drag
    // alone: the wood's middle lies a quarter of the gap further off than the drag's. Beside that, the
    // slicing of the drag into strips.
    CHECK_THAT(l.joints[0].shear_n, WithinAbs(0.0, 1e-3 * g * 0.018));
    CHECK_THAT(l.joints[0].moment_n_m,
               WithinAbs(g * l.segments[1].in_water_kg * 0.002 / 4.0, 2e-3 * g * 0.018 * 0.030));
    CHECK(l.warnings.empty());
}

TEST_CASE("where the lure hangs still at its hang pitch, the joint carries what hangs aft of it and the fore "
          "part's pull is its opposite",
          "[fall]") {
    const document::Document d = cut_block(20.0);
    auto e = evaluate(d);
    REQUIRE(e.ok());
    // Water in which it weighs nothing.
    const materials::WaterProperties water{e->answers.mass.kg / e->answers.displaced_m3, 1e-3};
    const double pitch = *e->answers.pitch_rad;
    const HingeLoads l = hinge_loads(e->body, e->ledger, d, water, pitch);
    const JointLoad& j = l.joints[0];
    CHECK_THAT(j.shear_n, WithinRel(g * l.segments[1].in_water_kg, 1e-9));
    CHECK(j.shear_n > 0.0);
    CHECK_THAT(l.segments[0].in_water_kg, WithinRel(-l.segments[1].in_water_kg, 1e-9));
    // The fore part's moment about the joint, by hand from its G and B.
    const ledger::StageSums stage_sums = ledger::stage_sums(e->ledger, 2);
    const ledger::Sum& fore = stage_sums.segments[0];
    const auto aft = [&](const Vec3& p) { return (p.x - 0.060) * std::cos(pitch) + p.z * std::sin(pitch); };
    const double fore_moment =
        g * (fore.mass.kg * aft(fore.g_m()) - water.density_kg_m3 * fore.displaced_m3 * aft(fore.b_m()));
    CHECK_THAT(j.moment_n_m, WithinRel(-fore_moment, 1e-6));
}

TEST_CASE("0.3 mm of play in each of two eyes 20 mm apart lets a joint sag by 0.9° to the side that its "
          "moment turns it",
          "[fall]") {
    const auto hung = [](document::Document d, double play_m) {
        document::Hinge hinge;
        hinge.eye_inside_m = hinge.pin_diameter_m + play_m;
        hinge.upper_z_m = 0.010;
        hinge.lower_z_m = -0.010;
        d.joints[0].hinge = hinge;
        return d;
    };
    const auto [heavy, sinks] = loaded(hung(cut_block(25.0), 0.3e-3), tap);
    CHECK_THAT(sinks.joints[0].eye_spacing_m, WithinRel(0.020, 1e-9));
    CHECK(sinks.joints[0].moment_n_m > 0.0);
    CHECK_THAT(units::deg_from_rad(sinks.joints[0].sag_rad), WithinAbs(0.86, 0.005));
    CHECK_THAT(sinks.joints[0].eye_force_n, WithinRel(std::abs(sinks.joints[0].moment_n_m) / 0.020, 1e-12));
    document::Document nose = hung(cut_block(25.0), 0.3e-3);
    nose.parts[0].at_m.x = 0.020;
    nose.parts[0].segment = 0;
    const auto [light, rises] = loaded(nose, tap);
    CHECK_THAT(rises.joints[0].sag_rad, WithinRel(-sinks.joints[0].sag_rad, 1e-12));
    CHECK(loaded(hung(cut_block(25.0), 0.0), tap).loads.joints[0].sag_rad == 0.0);
}

TEST_CASE("a joint under load sags by what its hinge lets it, by the same figure as the joint's own answers; "
          "one eye carries no couple",
          "[fall]") {
    document::Document d = cut_block(25.0);
    const auto told = [&] {
        const auto [e, l] = loaded(d, tap);
        const auto answers = joints::joint_answers(d, e.body);
        REQUIRE(answers.ok());
        CHECK_THAT(std::abs(l.joints[0].sag_rad), WithinRel(answers->joints[0].sag_rad, 1e-12));
        CHECK_THAT(l.joints[0].eye_spacing_m, WithinAbs(answers->joints[0].place.eye_spacing_m, 1e-15));
        return l.joints[0];
    };
    const JointLoad usual = told();
    document::Hinge hinge;
    hinge.upper_z_m = 0.001;
    hinge.lower_z_m = -0.001;
    d.joints[0].hinge = hinge;
    const JointLoad close = told();
    CHECK(close.eye_force_n > 5.0 * usual.eye_force_n);
    d.joints[0].hinge->kind = document::HingeKind::linked;
    told();
    d.joints[0].hinge->lower_z_m.reset();
    const JointLoad one = told();
    CHECK(one.eye_force_n == 0.0);
    CHECK(one.sag_rad == 0.0);
    CHECK(one.moment_n_m == close.moment_n_m);
}

TEST_CASE("a floating segment against a sinking one is warned of by name where the joint may stick, and not "
          "where both float",
          "[fall]") {
    const auto [e, l] = loaded(cut_block(40.0), tap);
    REQUIRE(l.warnings.size() == 1);
    CHECK(l.joints[0].may_bind);
    CHECK(l.warnings[0].code == ProblemCode::binds_joint);
    CHECK(l.warnings[0].path == "/joints/0");
    CHECK(l.warnings[0].sentence.text(evenfall::units::metric).find("Aft sinks by ") == 0);
    CHECK(l.warnings[0].sentence.text(evenfall::units::metric).find("while Fore floats by ") !=
          std::string::npos);
    CHECK(loaded(cut_block(5.0), tap).loads.warnings.empty());
}

TEST_CASE("a lure of one piece has no joint to load", "[fall]") {
    const auto [e, l] = loaded(support::block(), tap);
    CHECK(l.joints.empty());
    CHECK(l.segments.size() == 1);
}
