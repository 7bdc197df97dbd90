#include "water/fall/balance.hpp"
#include "water/fall/descent.hpp"

#include "answers/answers.hpp"
#include "base/trade.hpp"
#include "evenfall.hpp"
#include "support/falling_bodies.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <array>
#include <cmath>
#include <limits>
#include <string>
#include <vector>

using namespace evenfall;
using namespace evenfall::fall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;
using support::prototype_lure;
using units::rad_from_deg;

TEST_CASE("a lure whose G lies forward of B hangs nose-down, falls flatter than it hangs, and glides forward",
          "[fall]") {
    for (const double forward : {0.0005, 0.001, 0.002, 0.004}) {
        const SteadyFalls all = prototype_lure(0.002, forward, 0.004).steady();
        REQUIRE(all.main);
        const SteadyFall& f = all.falls[*all.main];
        CHECK_THAT(*all.hang_pitch_rad, WithinAbs(std::atan2(-forward, 0.004), 1e-12));
        CHECK((f.pitch_rad < 0.0 && f.pitch_rad > *all.hang_pitch_rad));
        CHECK(f.forward_m_s > 0.0);
        CHECK(f.vertical_m_s > 0.0);
        CHECK_THAT(std::tan(f.glide_rad), WithinRel(f.forward_m_s / f.vertical_m_s, 1e-9));
    }
}

TEST_CASE(
    "a lure falls rolled as it hangs: turned about its long axis it weighs, leans and pitches as before",
    "[fall]") {
    const auto turned = [](double roll_rad) {
        ledger::Ledger lines(4);
        const std::array<Vec3, 4> at{
            {{0.0, 0.0, 0.0}, {0.02, 0.004, -0.03}, {-0.05, -0.007, -0.001}, {0.03, 0.001, 0.009}}};
        for (std::size_t i = 0; i < at.size(); ++i) {
            const double c = std::cos(roll_rad), s = std::sin(roll_rad);
            lines[i].at_m = {at[i].x, c * at[i].y - s * at[i].z, s * at[i].y + c * at[i].z};
            lines[i].mass_kg = 0.004 + 0.003 * static_cast<double>(i);
        }
        lines[0].displaced_m3 = 2e-5;
        return mass_properties_of(lines, Stage::rigged);
    };
    const MassProperties upright = turned(0.0);
    for (const double roll_deg : {-70.0, -25.0, 40.0, 85.0}) {
        INFO(roll_deg);
        const MassProperties rolled = turned(rad_from_deg(roll_deg));
        CHECK_THAT(rolled.g_m.x, WithinAbs(upright.g_m.x, 1e-15));
        CHECK_THAT(rolled.g_m.z, WithinAbs(upright.g_m.z, 1e-15));
        CHECK_THAT(rolled.pitch_inertia_kg_m2, WithinRel(upright.pitch_inertia_kg_m2, 1e-12));
        // Nothing pitches more easily than its mass would at its centre of gravity.
        CHECK(rolled.pitch_inertia_kg_m2 >
              rolled.mass_kg * (rolled.g_m.x * rolled.g_m.x + rolled.g_m.z * rolled.g_m.z));
    }
}

TEST_CASE("the usual figures lie within their bands, and the bands have two sides of their own", "[fall]") {
    const SteadyFalls all = prototype_lure(0.002, 0.002, 0.004).steady();
    REQUIRE(all.main);
    const SteadyFall& f = all.falls[*all.main];
    CHECK(f.holds_over_band);
    for (const auto& [band, usual] :
         {std::pair{f.pitch_band_rad, f.pitch_rad}, std::pair{f.vertical_band_m_s, f.vertical_m_s},
          std::pair{f.forward_band_m_s, f.forward_m_s}, std::pair{f.glide_band_rad, f.glide_rad}}) {
        CHECK(band.low < usual);
        CHECK(band.high > usual);
    }
    // The end effect alone moves a level fall by −8 and +9 %; the rest may add, not take away.
    CHECK(f.vertical_band_m_s.high / f.vertical_m_s > 1.05);
    CHECK(f.vertical_band_m_s.high / f.vertical_m_s < 1.25);
}

TEST_CASE("a stable fall is where a lure let go a little aside comes to; an unstable one it leaves",
          "[fall]") {
    int stable = 0;
    int unstable = 0;
    for (const double below : {0.004, -0.006}) {
        const FallingLure d = prototype_lure(0.0005, 0.0, below);
        const SteadyFalls all = d.steady();
        for (const SteadyFall& f : all.falls) {
            // Linear motion from a small knock for a time in which the slowest mode changes by a factor e³ or
            // more.
            const double rate = std::abs(f.modes_1_s[0].real());
            const double time = 3.0 / rate;
            const Motion motion = d.motion();
            std::array<double, 6> v{f.along_m_s, f.across_m_s, 0.0, f.pitch_rad + 1e-3, 0.0, 0.0};
            const auto away = [&] {
                return std::abs(v[0] - f.along_m_s) + std::abs(v[1] - f.across_m_s) + 0.02 * std::abs(v[2]) +
                       std::abs(v[3] - f.pitch_rad);
            };
            const double before = away();
            const int steps = static_cast<int>(time / 2e-3) + 1;
            for (int i = 0; i < steps; ++i)
                v = support::rk4_step(motion, v, time / steps);
            INFO("pitch " << f.pitch_rad << " growth " << f.modes_1_s[0].real());
            CHECK(f.stable == (f.modes_1_s[0].real() < 0.0));
            if (f.stable) {
                ++stable;
                CHECK(away() < 0.5 * before);
            } else {
                ++unstable;
                CHECK(away() > 2.0 * before);
            }
        }
    }
    CHECK(stable > 0);
    CHECK(unstable > 0);
}

TEST_CASE("no steady fall is missed: a scan of a fiftieth of a degree finds the same ones", "[fall]") {
    std::size_t most = 0;
    for (const double kg : {0.0003, 0.002, 0.02, -0.004}) {
        for (const double below : {-0.004, -0.001, 0.0, 0.0005, 0.004}) {
            for (const double forward : {-0.006, -0.001, 0.0, 0.0007, 0.01}) {
                const FallingLure d = prototype_lure(kg, forward, below);
                const Motion motion = d.motion();
                std::vector<double> found;
                double last = motion.sums().moment_n_m(rad_from_deg(-89.99));
                for (int i = 1; i <= 8999; ++i) {
                    const double now = motion.sums().moment_n_m(rad_from_deg(-89.99 + i / 50.0));
                    if ((now < 0.0) != (last < 0.0)) found.push_back(rad_from_deg(-89.99 + (i - 0.5) / 50.0));
                    last = now;
                }
                const auto falls = d.steady().falls;
                INFO(kg << " kg, G " << forward << " forward, " << below << " below");
                REQUIRE(falls.size() == found.size());
                for (std::size_t i = 0; i < found.size(); ++i)
                    CHECK_THAT(falls[i].pitch_rad, WithinAbs(found[i], rad_from_deg(0.011)));
                most = std::max(most, found.size());
            }
        }
    }
    CHECK(most >= 3); // among them lures with several
}

TEST_CASE(
    "the four eigenvalues sum to the trace of the linearised equations and multiply to their determinant",
    "[fall]") {
    const FallingLure d = prototype_lure(0.002, 0.001, 0.004);
    const SteadyFalls all = d.steady();
    REQUIRE(all.main);
    const SteadyFall* const f = &all.falls[*all.main];
    const Motion motion = d.motion();
    const double h = 1e-6;
    const auto rate = [&](double du, double dw, double dq) {
        return motion.rates({f->along_m_s + du, f->across_m_s + dw, dq, f->pitch_rad});
    };
    const double trace = ((rate(h, 0, 0)[0] - rate(-h, 0, 0)[0]) + (rate(0, h, 0)[1] - rate(0, -h, 0)[1]) +
                          (rate(0, 0, h)[2] - rate(0, 0, -h)[2])) /
                         (2.0 * h);
    std::complex<double> sum = 0.0;
    for (const auto& mode : f->modes_1_s)
        sum += mode;
    CHECK_THAT(sum.real(), WithinRel(trace, 1e-5));
    CHECK_THAT(sum.imag(), WithinAbs(0.0, 1e-9));

    // The pitch turns as fast as the lure pitches, so that along the last row the determinant is a minor of
    // three rows.
    const auto column = [&](double du, double dw, double dpitch) {
        const auto plus = motion.rates({f->along_m_s + du, f->across_m_s + dw, 0.0, f->pitch_rad + dpitch});
        const auto minus = motion.rates({f->along_m_s - du, f->across_m_s - dw, 0.0, f->pitch_rad - dpitch});
        return Vec3{plus[0] - minus[0], plus[1] - minus[1], plus[2] - minus[2]} * (0.5 / h);
    };
    const Vec3 a = column(h, 0, 0), b = column(0, h, 0), c = column(0, 0, h);
    const double minor =
        a.x * (b.y * c.z - b.z * c.y) - b.x * (a.y * c.z - a.z * c.y) + c.x * (a.y * b.z - a.z * b.y);
    std::complex<double> product = 1.0;
    for (const auto& mode : f->modes_1_s)
        product *= mode;
    CHECK_THAT(product.real(), WithinRel(-minor, 1e-4));
}

TEST_CASE("falls have the names of their attitudes", "[fall]") {
    const auto manner = [](double forward_mm, double below_mm) {
        return prototype_lure(0.002, forward_mm / 1000.0, below_mm / 1000.0).main_fall().value().manner;
    };
    CHECK(manner(0.0, 4.0) == FallAttitude::level);
    CHECK(manner(4.0, 4.0) == FallAttitude::nose_down);
    CHECK(manner(30.0, 4.0) == FallAttitude::nose_first);
    CHECK(manner(-4.0, 4.0) == FallAttitude::tail_down);
    CHECK(manner(-30.0, 4.0) == FallAttitude::tail_first);
    CHECK(std::string(fall_attitude_text(prototype_lure(0.002, 0.004, 0.004).main_fall().value())) ==
          "nose-down glide");
}

TEST_CASE("the end that leads gives a steep fall its name, and so a steep rise; which way it goes along "
          "names the others",
          "[fall]") {
    int steep = 0;
    int rises = 0;
    for (const double kg : {0.002, -0.002, -0.01}) {
        for (const double forward : {-0.05, -0.006, 0.006, 0.05}) {
            for (const SteadyFall& f : prototype_lure(kg, forward, 0.004).steady().falls) {
                const std::string text = fall_attitude_text(f);
                INFO(text << ", pitch " << f.pitch_rad << ", down " << f.vertical_m_s);
                rises += f.vertical_m_s < 0.0 ? 1 : 0;
                if (text.ends_with("first")) {
                    ++steep;
                    // The nose lies u·sin θ lower: it leads where it lies on the side that the lure goes to.
                    CHECK(text.starts_with("nose") == ((f.pitch_rad < 0.0) == (f.vertical_m_s > 0.0)));
                    CHECK(text.starts_with("nose") == (f.along_m_s > 0.0));
                } else if (text != "level") {
                    CHECK(text.starts_with("nose-down") == (f.pitch_rad < 0.0));
                    CHECK(text.ends_with("glide") == (f.forward_m_s > 0.0));
                }
            }
        }
    }
    CHECK(steep > 0);
    CHECK(rises > 0);
}

TEST_CASE("a band is that of its own fall, stable or not: the next root of each changed closure, by a search "
          "of all of them",
          "[fall]") {
    int unstable = 0;
    for (const double below : {0.004, -0.003, -0.006}) {
        for (const double forward : {0.0, 0.001, 0.004}) {
            const FallingLure d = prototype_lure(0.002, forward, below);
            for (const SteadyFall& f : d.steady().falls) {
                if (!f.holds_over_band) continue;
                double down = 0.0;
                double up = 0.0;
                bool near = true;
                const auto speed = [&](auto change) {
                    ModelFactors closure;
                    change(closure);
                    double best = 9.0;
                    double v = f.vertical_m_s;
                    for (const SteadyFall& other :
                         FallingLure(d.hull(), d.weights(), d.items(), support::fresh_20, closure)
                             .steady()
                             .falls) {
                        if (std::abs(other.pitch_rad - f.pitch_rad) >= best) continue;
                        best = std::abs(other.pitch_rad - f.pitch_rad);
                        v = other.vertical_m_s;
                    }
                    near = near && best < rad_from_deg(4.0);
                    return v;
                };
                const auto add = [&](double one, double other) {
                    const double least = std::min({one, other, f.vertical_m_s}) - f.vertical_m_s;
                    const double most = std::max({one, other, f.vertical_m_s}) - f.vertical_m_s;
                    down += least * least;
                    up += most * most;
                };
                add(speed([](ModelFactors& c) { c.ends = -1.0; }),
                    speed([](ModelFactors& c) { c.ends = 1.0; }));
                add(speed([](ModelFactors& c) { c.parts = -1.0; }),
                    speed([](ModelFactors& c) { c.parts = 1.0; }));
                add(speed([](ModelFactors& c) { c.munk = 0.7; }), f.vertical_m_s);
                add(speed([](ModelFactors& c) { c.along = 0.6; }),
                    speed([](ModelFactors& c) { c.along = 1.4; }));
                if (!near) continue;
                INFO("G " << forward << ", " << below << ", pitch " << f.pitch_rad
                          << (f.stable ? " stable" : " not stable"));
                CHECK_THAT(f.vertical_band_m_s.low, WithinAbs(f.vertical_m_s - std::sqrt(down), 1e-6));
                CHECK_THAT(f.vertical_band_m_s.high, WithinAbs(f.vertical_m_s + std::sqrt(up), 1e-6));
                unstable += f.stable ? 0 : 1;
            }
        }
    }
    CHECK(unstable > 0);
}

TEST_CASE("the main fall by itself is the main one of all, near plumb as elsewhere", "[fall]") {
    int plumb = 0;
    for (const double kg : {0.0005, 0.005, 0.02, -0.004}) {
        for (const double forward : {-0.06, -0.02, 0.0005, 0.004, 0.01, 0.03, 0.05, 0.08}) {
            for (const double below : {2e-5, 1e-4, 0.001, 0.004}) {
                const FallingLure d = prototype_lure(kg, forward, below);
                const auto alone = d.main_fall();
                const SteadyFalls all = d.steady();
                INFO(kg << " kg, G " << forward << " forward, " << below << " below");
                REQUIRE(alone.has_value() == all.main.has_value());
                if (!alone) continue;
                CHECK_THAT(alone->pitch_rad, WithinAbs(all.falls[*all.main].pitch_rad, 1e-8));
                plumb += std::abs(alone->pitch_rad) > rad_from_deg(89.0) ? 1 : 0;
            }
        }
    }
    CHECK(plumb > 0);
}

TEST_CASE("what weighs nothing in water, or is no number, has no steady fall", "[fall]") {
    CHECK(prototype_lure(0.0, 0.001, 0.004).steady().falls.empty());
    CHECK(prototype_lure(5e-7, 0.001, 0.004).steady().falls.empty());
    CHECK_FALSE(prototype_lure(0.0, 0.001, 0.004).steady().main);
    CHECK(prototype_lure(0.0, 0.001, 0.004).steady().hang_pitch_rad);
    CHECK_FALSE(prototype_lure(0.002, 0.001, -0.004).hang_pitch_rad());
    CHECK(prototype_lure(std::nan(""), 0.001, 0.004).steady().falls.empty());
    CHECK_FALSE(prototype_lure(std::nan(""), 0.001, 0.004).track().ok());
}

TEST_CASE(
    "in-water mass for a speed and speed for an in-water mass are each other's inverse, falling and rising",
    "[fall]") {
    for (const double forward : {0.0, 0.001, 0.004}) {
        const FallingLure d = prototype_lure(0.002, forward, 0.004);
        for (const double speed : {0.03, 0.08, 0.15, 0.22, 0.4, -0.05, -0.2}) {
            INFO("G " << forward << " m forward, " << speed << " m/s");
            const auto kg = d.in_water_for(speed);
            REQUIRE(kg);
            CHECK((*kg > 0.0) == (speed > 0.0));
            const auto back = d.with_in_water(*kg).main_fall();
            REQUIRE(back);
            CHECK(back->stable);
            CHECK_THAT(back->vertical_m_s, WithinRel(speed, 1e-6));
        }
    }
}

TEST_CASE("a speed that some in-water mass has is met, though the manner of falling leaps on the way to it",
          "[fall]") {
    int asked = 0;
    for (const double forward : {-0.01, -0.004, 0.002, 0.006, 0.012}) {
        for (const double below : {2e-5, 1e-4, 5e-4, 0.002, 0.006}) {
            for (const double kg : {2e-5, 2e-4, 0.001, 0.004, 0.012, 0.03, -0.001, -0.01}) {
                const FallingLure d = prototype_lure(kg, forward, below);
                const auto fall = d.main_fall();
                if (!fall || fall->vertical_m_s * kg <= 0.0) continue;
                ++asked;
                INFO("G " << forward << " forward, " << below << " below, " << kg << " kg, "
                          << fall->vertical_m_s << " m/s");
                const auto found = d.in_water_for(fall->vertical_m_s);
                REQUIRE(found);
                CHECK_THAT(d.with_in_water(*found).main_fall().value().vertical_m_s,
                           WithinRel(fall->vertical_m_s, 1e-5));
                // Of several masses, one that falls near its hang pitch; else the nearest, which is its own.
                const FallingLure again = d.with_in_water(d.in_water_for(fall->vertical_m_s, kg).value());
                if (std::abs(again.main_fall()->pitch_rad - again.hang_pitch_rad().value()) > near_hang_rad)
                    CHECK_THAT(again.in_water_kg(), WithinRel(kg, 1e-6));
            }
        }
    }
    CHECK(asked > 100);
}

TEST_CASE("no mass is below nothing: the fastest rise asked for in warm water is met by none, or by a lure "
          "that weighs something",
          "[fall]") {
    const FallingLure warm = prototype_lure(-0.004, 0.0, 0.004, {992.0, 0.65e-3});
    for (double speed = -0.5; speed > -3.0; speed -= 0.1) {
        const auto kg = warm.in_water_for(speed);
        if (kg) CHECK(*kg + 992.0 * warm.weights().displaced_m3 > 0.0);
    }
}

TEST_CASE("no in-water mass answers to no speed", "[fall]") {
    const FallingLure d = prototype_lure(0.002, 0.001, 0.004);
    for (const double speed :
         {0.0, -0.0, std::nan(""), std::numeric_limits<double>::infinity(), 100.0, 1e-9}) {
        CHECK_FALSE(d.in_water_for(speed));
    }
}

TEST_CASE("a lure with weight off the middle falls from the hang that its answers tell, and the slower the "
          "nearer to it",
          "[fall]") {
    document::Document d = support::block();
    document::Part lead;
    lead.name = "lead";
    lead.material = "lead";
    lead.embedded = 1.0;
    lead.mass_kg = 0.042;
    lead.at_m = {0.056, 0.006, -0.004};
    d.parts = {lead};
    const auto e = evaluate(d);
    REQUIRE(e.ok());
    REQUIRE((e->answers.pitch_rad && std::abs(*e->answers.roll_rad) > 0.5));
    const FallingLure lure(e->body, e->ledger, d, support::fresh_20);
    CHECK_THAT(*lure.hang_pitch_rad(), WithinAbs(*e->answers.pitch_rad, 1e-12));
    CHECK_THAT(lure.with_in_water(2e-6).main_fall().value().pitch_rad,
               WithinAbs(*e->answers.pitch_rad, 0.02));
}

TEST_CASE("in colder water the same in-water mass falls slower, and a denser water takes in-water mass away",
          "[fall]") {
    const FallingLure d = prototype_lure(0.002, 0.001, 0.004);
    const FallingLure thick = d.in({support::fresh_20.density_kg_m3, 1.5e-3});
    CHECK_THAT(thick.in_water_kg(), WithinAbs(0.002, 1e-12));
    CHECK(thick.main_fall()->vertical_m_s < d.main_fall()->vertical_m_s);
    const FallingLure salt = d.in({1025.0, 1.08e-3});
    CHECK_THAT(salt.in_water_kg(),
               WithinAbs(0.002 - (1025.0 - 998.207) * support::prototype_volume_m3, 1e-12));
}
