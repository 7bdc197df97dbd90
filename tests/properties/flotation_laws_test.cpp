// Laws that hold for every lure afloat, on lures drawn at random from fixed seeds.

#include "evenfall.hpp"
#include "support/small_lures.hpp"
#include "unit/water/afloat/forms.hpp"
#include "water/afloat/float_answers.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <memory>
#include <random>

using namespace evenfall;
using namespace evenfall::afloat;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

/// A lure of random lines in one to three segments, relieved joints and a film, and where its G is put.
struct Drawn {
    document::Document document;
    double specific_gravity = 0.5;
    Vec3 g_off_m; ///< of the hull's centroid
};

class Drawer {
public:
    explicit Drawer(unsigned seed) : random_(seed) {}

    Drawn draw(bool mirrored) {
        Drawn d;
        const double length = between(0.08, 0.22);
        const double height = length * between(0.06, 0.14);
        const double width = height * between(0.4, 1.6);
        const double shares[] = {0.0, 0.06, 0.2, 0.45, 0.75, 1.0};
        for (const double s : shares) {
            const double full = s == 0.0   ? between(0.1, 0.4)
                                : s == 1.0 ? between(0.15, 0.4)
                                           : between(0.6, 1.0);
            d.document.shape.back.push_back({s * length, height * full * between(0.8, 1.2)});
            d.document.shape.belly.push_back({s * length, -height * full * between(0.8, 1.2)});
            d.document.shape.half_width.push_back({s * length, width * full});
        }
        d.document.shape.section.curve() = {{0.0, between(1.8, 3.5)}, {length, between(1.8, 3.5)}};
        const int joints = static_cast<int>(between(0.0, 2.99));
        for (int k = 0; k < joints; ++k) {
            d.document.joints.push_back(
                {length * (k + 1.0) / (joints + 1.0), 0.002, between(0.0, 0.3), between(0.0, 0.3)});
        }
        d.document.segment_names.assign(static_cast<std::size_t>(joints) + 1, "Segment");
        document::Coat coat;
        coat.thickness_m = between(0.0, 6e-4);
        d.document.coats = {coat};
        d.document.wood.density_kg_m3 = 500.0;
        d.specific_gravity = between(0.35, 0.97);
        d.g_off_m = {length * between(-0.12, 0.12), mirrored ? 0.0 : width * between(-0.2, 0.2),
                     -height * between(-0.1, 0.5)};
        return d;
    }

    double between(double low, double high) {
        return std::uniform_real_distribution<double>(low, high)(random_);
    }

    Vec3 direction() {
        const double x = between(-1.0, 1.0);
        const double angle = between(0.0, 6.283185307179586);
        const double r = std::sqrt(1.0 - x * x);
        return {x, r * std::cos(angle), r * std::sin(angle)};
    }

private:
    std::mt19937 random_;
};

struct Floating {
    Evaluation evaluation;
    FloatingHull hull;
    Afloat afloat;
};

/// Nothing where the random lines cannot be built (a relief that leaves no wood, say).
std::unique_ptr<Floating> floating(const Drawn& d) {
    auto e = evaluate(d.document);
    if (!e.ok()) {
        for (const Problem& p : e.problems())
            UNSCOPED_INFO(p.path << ": " << p.sentence.text(evenfall::units::metric));
        return nullptr;
    }
    FloatingHull hull(e->body, e->ledger, d.document);
    auto f = std::make_unique<Floating>(Floating{std::move(*e), std::move(hull), {}});
    f->afloat = {&f->hull, d.specific_gravity * 998.0 * f->hull.volume_m3(), f->hull.centroid_m() + d.g_off_m,
                 998.0};
    return f;
}

double angle_between(const Vec3& a, const Vec3& b) {
    return 2.0 * std::asin(std::min(1.0, 0.5 * length(a - b)));
}

} // namespace

TEST_CASE("at rest a lure pushes aside its own weight of water, and G is plumb with B") {
    Drawer drawer(11);
    int lures = 0;
    for (int k = 0; k < 40; ++k) {
        const auto f = floating(drawer.draw(k % 2 == 0));
        if (!f) continue;
        ++lures;
        const auto found = rests(f->afloat);
        REQUIRE_FALSE(found.empty());
        for (const Rest& rest : found) {
            const Immersion i = f->hull.immersed(rest.up, rest.depth_m);
            CHECK_THAT(998.0 * i.volume_m3, WithinRel(f->afloat.mass_kg, 2.5e-5));
            const Vec3 arm = i.b_m() - f->afloat.g_m;
            CHECK(length(arm - dot(arm, rest.up) * rest.up) < 4e-5 * f->hull.length_m());
            CHECK(rest.least_gm_m > -1e-4 * std::cbrt(f->hull.volume_m3()));
        }
    }
    CHECK(lures >= 30);
}

TEST_CASE("energy never rises on the way to a rest, from any start") {
    Drawer drawer(12);
    int arrived = 0;
    int walks = 0;
    for (int k = 0; k < 12; ++k) {
        const auto f = floating(drawer.draw(k % 2 == 0));
        if (!f) continue;
        for (int n = 0; n < 12; ++n) {
            const DescentTrace d = descent(f->afloat, drawer.direction());
            ++walks;
            arrived += d.arrived ? 1 : 0;
            CHECK(d.cuts < 120);
            // A step is taken on E alone far from rest; near it on the balance. Flotation is good to 1e-4 of
            // the volume; over the tenth of a millimetre of such a step that is worth:
            const double slack = 1e-4 * f->afloat.mass_kg * 9.80665 * 1e-4;
            for (std::size_t i = 1; i < d.energy_j.size(); ++i)
                CHECK(d.energy_j[i] <= d.energy_j[i - 1] + slack);
        }
    }
    CHECK(arrived == walks);
}

TEST_CASE("no start on the sphere leads to a rest that is not on the list") {
    Drawer drawer(13);
    int missed = 0;
    int walks = 0;
    for (int k = 0; k < 40; ++k) {
        const auto f = floating(drawer.draw(k % 2 == 0));
        if (!f) continue;
        const auto found = rests(f->afloat, headings_of(righting_curve(f->afloat, TrimMode::free)));
        for (int n = 0; n < 40; ++n) {
            const DescentTrace d = descent(f->afloat, drawer.direction());
            if (!d.arrived) continue;
            ++walks;
            const bool listed = std::any_of(found.begin(), found.end(), [&](const Rest& r) {
                const Vec3 twin{r.up.x, -r.up.y, r.up.z};
                return angle_between(r.up, d.up) < 0.03 || (r.has_twin && angle_between(twin, d.up) < 0.03);
            });
            if (listed) continue;
            ++missed;
            UNSCOPED_INFO("lure " << k << " missed pitch " << attitude_of(d.up).pitch_rad << " heel "
                                  << attitude_of(d.up).heel_rad);
        }
    }
    CHECK(walks > 1000);
    CHECK(missed == 0);
}

TEST_CASE("a lure moved along or up its own axes, mirrored, or drawn larger floats the same") {
    Drawer drawer(14);
    int compared = 0;
    for (int k = 0; k < 10; ++k) {
        const Drawn drawn = drawer.draw(true);
        const auto f = floating(drawn);
        if (!f) continue;
        const auto rest = upright_rest(f->afloat);
        if (!rest) continue;

        Drawn lifted = drawn;
        for (auto* curve : {&lifted.document.shape.back, &lifted.document.shape.belly}) {
            for (document::CurvePoint& p : *curve)
                p.value += 0.003;
        }
        const auto g = floating(lifted);
        REQUIRE(g);
        const auto same = upright_rest(g->afloat);
        REQUIRE(same.has_value());
        CHECK_THAT(same->pitch_rad, WithinAbs(rest->pitch_rad, 1e-6));
        CHECK_THAT(same->gm_transverse_m, WithinAbs(rest->gm_transverse_m, 1e-7));
        CHECK_THAT(same->draft_fore_m, WithinAbs(rest->draft_fore_m, 1e-7));

        Drawn larger = drawn;
        larger.g_off_m *= 1.5;
        for (auto* curve :
             {&larger.document.shape.back, &larger.document.shape.belly, &larger.document.shape.half_width}) {
            for (document::CurvePoint& p : *curve)
                p = {1.5 * p.x_m, 1.5 * p.value};
        }
        for (document::CurvePoint& p : larger.document.shape.section.curve())
            p.x_m *= 1.5;
        for (document::Joint& j : larger.document.joints) {
            j.at_m *= 1.5;
            j.gap_m *= 1.5;
        }
        for (document::Coat& c : larger.document.coats)
            *c.thickness_m *= 1.5;
        const auto l = floating(larger);
        REQUIRE(l);
        CHECK_THAT(l->hull.volume_m3(), WithinRel(3.375 * f->hull.volume_m3(), 1e-9));
        const auto large = upright_rest(l->afloat);
        REQUIRE(large.has_value());
        // Panels may fall differently; both rests balance to 2e-5.
        CHECK_THAT(large->pitch_rad, WithinAbs(rest->pitch_rad, 2e-5));
        CHECK_THAT(large->gm_transverse_m, WithinRel(1.5 * rest->gm_transverse_m, 3e-4));

        ++compared;

        // The port half of a curve is the starboard half.
        for (const double heel : {0.4, 1.3, 2.6}) {
            const double starboard = righting_arm(f->afloat, TrimMode::free, heel, rest->pitch_rad).arm_m;
            const double port = righting_arm(f->afloat, TrimMode::free, -heel, rest->pitch_rad).arm_m;
            CHECK_THAT(starboard, WithinAbs(-port, 1e-6 * f->hull.length_m()));
        }
    }
    CHECK(compared > 5);
}

TEST_CASE("more weight at G floats deeper, and a lower G stands stiffer") {
    Drawer drawer(15);
    int deeper = 0;
    int stiffer = 0;
    for (int k = 0; k < 10; ++k) {
        Drawn drawn = drawer.draw(true);
        drawn.g_off_m.x *= 0.1;
        const auto f = floating(drawn);
        if (!f) continue;
        Afloat a = f->afloat;
        double deepest = -1.0;
        for (const double gravity : {0.4, 0.5, 0.6, 0.7, 0.8, 0.9}) {
            a.mass_kg = gravity * 998.0 * f->hull.volume_m3();
            const auto rest = upright_rest(a);
            if (!rest) continue;
            CHECK(rest->deepest_m > deepest);
            deepest = rest->deepest_m;
            ++deeper;
        }
        a = f->afloat;
        const auto before = upright_rest(a);
        a.g_m.z -= 0.001;
        const auto after = upright_rest(a);
        if (!before || !after) continue;
        CHECK(after->gm_transverse_m > before->gm_transverse_m);
        ++stiffer;
    }
    CHECK(deeper > 30);
    CHECK(stiffer > 5);
}
