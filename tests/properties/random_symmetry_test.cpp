// One lure seen otherwise is the same lure. Lures drawn by chance; a failure names seed and draw.

#include "support/changed_lures.hpp"
#include "support/random_lures.hpp"
#include "support/worked.hpp"
#include "workshop/joint_answers.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr int lures = 220;

/// Sums of the same terms in another order or sign: some hundred roundings of a lure's own mass and length.
constexpr double rounding = 1e-13;

void same_place(const Vec3& a, const Vec3& b) {
    CHECK_THAT(a.x, WithinAbs(b.x, rounding));
    CHECK_THAT(a.y, WithinAbs(b.y, rounding));
    CHECK_THAT(a.z, WithinAbs(b.z, rounding));
}

void same_angle(const std::optional<double>& a, const std::optional<double>& b, double within) {
    REQUIRE(a.has_value() == b.has_value());
    if (a) CHECK_THAT(*a, WithinAbs(*b, within));
}

document::Document carved_as_drawn(document::Document document) {
    const auto certain = [&](std::optional<int> segment) {
        document.corrections.push_back({document::Cause::carved_size, segment, 1.0, 0.0});
    };
    certain({});
    for (int s = 0; s <= static_cast<int>(document.joints.size()); ++s)
        certain(s);
    return document;
}

} // namespace

TEST_CASE("a lure in the mirror weighs, hangs and falls the same, and heels the other way",
          "[properties][random]") {
    int heeled = 0;
    support::each_random_lure(101, lures, [&](const support::RandomLure& lure, int) {
        const Answers& a = lure.evaluation.answers;
        const Answers b = support::worked(support::mirrored(lure.document)).answers;
        CHECK_THAT(b.mass.kg, WithinRel(a.mass.kg, rounding));
        CHECK_THAT(b.displaced_m3, WithinRel(a.displaced_m3, rounding));
        CHECK_THAT(b.in_water_sigma.kg, WithinRel(a.in_water_sigma.kg, 1e-12));
        same_place(b.g_m, {a.g_m.x, -a.g_m.y, a.g_m.z});
        same_place(b.b_m, {a.b_m.x, -a.b_m.y, a.b_m.z});
        // An angle is a distance over BG, and BG may be small.
        const double within = 1e-12 / std::max(1e-6, std::abs(a.bg_m));
        same_angle(b.pitch_rad, a.pitch_rad, within);
        same_angle(b.roll_rad, a.roll_rad ? std::optional(-*a.roll_rad) : std::nullopt, within);
        heeled += a.roll_rad && std::abs(*a.roll_rad) > 0.01 ? 1 : 0;
        REQUIRE(b.fall.has_value() == a.fall.has_value());
        // The pitch of a fall is found to 1e-10 rad.
        if (a.fall) CHECK_THAT(b.fall->speed_m_s, WithinRel(a.fall->speed_m_s, 1e-9));
    });
    CHECK(heeled > lures / 4);
}

TEST_CASE("a joint in the mirror swings to port as it swung to starboard", "[properties][random][joints]") {
    int joints = 0;
    support::each_random_lure(102, lures, [&](const support::RandomLure& lure, int) {
        const auto a = joints::joint_answers(lure.document);
        const auto b = joints::joint_answers(support::mirrored(lure.document));
        REQUIRE(a.ok() == b.ok());
        if (!a.ok()) return;
        for (std::size_t j = 0; j < a->joints.size(); ++j) {
            for (const std::size_t way : {0u, 1u}) {
                // Where a corner grazes an edge, an angle goes with the root of a rounding.
                CHECK_THAT(b->joints[j].swing_rad[1 - way], WithinAbs(a->joints[j].swing_rad[way], 1e-7));
                CHECK_THAT(b->joints[j].bare[1 - way].angle_rad,
                           WithinAbs(a->joints[j].bare[way].angle_rad, 1e-7));
            }
            ++joints;
        }
    });
    CHECK(joints > lures);
}

TEST_CASE("drawn larger by s, a lure holds s³ of everything, hangs at the same angle and swings as far",
          "[properties][random]") {
    int compared = 0;
    int swung = 0;
    support::each_random_lure(103, lures, [&](const support::RandomLure& lure, int n) {
        const double s = n % 2 == 0 ? 1.5 : 0.8;
        INFO(s << " times");
        // A hand is off by the same millimetres, whatever it carves: the law is of everything else.
        const auto own = evaluate(carved_as_drawn(lure.document));
        const auto larger = evaluate(carved_as_drawn(support::scaled(lure.document, s)));
        REQUIRE(own.ok());
        // Only what leaves the limits of its field may be refused: a gap under 0.2 mm, wire over 3 mm.
        if (!larger.ok()) {
            for (const Problem& p : larger.problems())
                CHECK(p.code == ProblemCode::out_of_range);
            return;
        }
        ++compared;
        const Answers& a = own->answers;
        const Answers& b = larger->answers;
        const double s3 = s * s * s;
        CHECK_THAT(b.mass.kg, WithinRel(s3 * a.mass.kg, 1e-9));
        CHECK_THAT(b.displaced_m3, WithinRel(s3 * a.displaced_m3, 1e-9));
        CHECK_THAT(b.in_water.kg, WithinAbs(s3 * a.in_water.kg, 1e-9 * s3 * a.mass.kg));
        CHECK_THAT(b.mass_sigma.kg, WithinRel(s3 * a.mass_sigma.kg, 1e-9));
        CHECK_THAT(b.g_m.x, WithinRel(s * a.g_m.x, 1e-9));
        CHECK_THAT(b.b_m.x, WithinRel(s * a.b_m.x, 1e-9));
        CHECK_THAT(b.bg_m, WithinAbs(s * a.bg_m, 1e-9 * s * a.b_m.x));
        const double within = 1e-9 / std::max(1e-5, std::abs(a.bg_m));
        same_angle(b.pitch_rad, a.pitch_rad, within);
        same_angle(b.roll_rad, a.roll_rad, within);
        const auto small = joints::joint_answers(lure.document);
        const auto large = joints::joint_answers(support::scaled(lure.document, s));
        if (!small.ok() || !large.ok()) return;
        for (std::size_t j = 0; j < small->joints.size(); ++j) {
            CHECK_THAT(large->joints[j].bare[0].angle_rad,
                       WithinAbs(small->joints[j].bare[0].angle_rad, 1e-6));
            ++swung;
        }
    });
    CHECK(compared > lures * 9 / 10);
    CHECK(swung > lures);
}

TEST_CASE("the order of holes, pockets and parts changes no sum", "[properties][random]") {
    support::each_random_lure(104, lures, [&](const support::RandomLure& lure, int) {
        const Answers& a = lure.evaluation.answers;
        const Answers b = support::worked(support::reordered(lure.document)).answers;
        CHECK_THAT(b.mass.kg, WithinRel(a.mass.kg, rounding));
        CHECK_THAT(b.displaced_m3, WithinRel(a.displaced_m3, rounding));
        CHECK_THAT(b.mass_sigma.kg, WithinRel(a.mass_sigma.kg, 1e-12));
        CHECK_THAT(b.in_water_sigma.kg, WithinRel(a.in_water_sigma.kg, 1e-12));
        same_place(b.g_m, a.g_m);
        same_place(b.b_m, a.b_m);
        for (std::size_t s = 0; s < a.segments.size(); ++s) {
            CHECK_THAT(b.segments[s].mass.kg, WithinRel(a.segments[s].mass.kg, rounding));
            CHECK_THAT(b.segments[s].displaced_m3, WithinRel(a.segments[s].displaced_m3, rounding));
        }
        for (std::size_t s = 0; s < a.stages.size(); ++s)
            CHECK_THAT(b.stages[s].mass.kg, WithinRel(a.stages[s].mass.kg, rounding));
    });
}
