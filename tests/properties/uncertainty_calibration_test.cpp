// What is said of spread, held against invented lures whose truth is known.

#include "bench/uncertainty/uncertainty.hpp"
#include "support/invented_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <array>
#include <cmath>
#include <vector>

using namespace evenfall;
using Catch::Matchers::WithinRel;
using document::ReadingKind;

namespace {

/// Standard normal's half widths for 50, 80 and 95 % (NIST/SEMATECH e-Handbook of Statistical Methods,
/// table 1.3.6.7.1; from memory).
constexpr std::array<double, 3> half_width{0.67449, 1.28155, 1.95996};
constexpr std::array<double, 3> stated{0.50, 0.80, 0.95};

document::Reading across(double x_m) {
    document::Reading r = invented::calipered(Stage::carved, x_m);
    r.width_m = 0.02;
    return r;
}

struct Coverage {
    std::array<int, 3> inside{};
    int count = 0;
    void add(double truth, const Estimate& e) {
        ++count;
        for (std::size_t i = 0; i < inside.size(); ++i)
            inside[i] += std::abs(truth - e.value) <= half_width[i] * e.sigma ? 1 : 0;
    }
    [[nodiscard]] double share(std::size_t i) const { return static_cast<double>(inside[i]) / count; }
};

} // namespace

TEST_CASE("Of 2000 invented lures with readings, the 50, 80 and 95 % intervals hold that share of the truths "
          "within 3 points") {
    const document::Document recipe = invented::preset_named("millrace-170");
    invented::Recipe bench_of(recipe);
    Coverage mass, in_water, pitch, fall;
    std::array<int, 3> fall_count{};
    for (std::uint64_t n = 0; n < 2000; ++n) {
        bench::Random random(20260314, n);
        const Eigen::VectorXd u = bench_of.truth(random);
        document::Document document = recipe;
        // Every lure gets another set of readings, by the bits of its number.
        const std::array<document::Reading, 8> possible{
            invented::weighed(ReadingKind::dry_weight, Stage::carved),
            invented::board(),
            invented::weighed(ReadingKind::dry_weight, Stage::sealed),
            invented::weighed(ReadingKind::held_under, Stage::sealed),
            invented::clipped(Stage::sealed),
            invented::timed(Stage::rigged, 0.5),
            invented::with_all(invented::timed(Stage::sealed, 1.0)),
            across(0.09)};
        for (std::size_t k = 0; k < possible.size(); ++k) {
            document::Reading r = possible[k];
            if ((n >> k & 1u) != 0u && bench_of.take(r, u, random)) document.log.push_back(r);
        }
        const auto s = uncertainty(document);
        REQUIRE(s.ok());
        const auto truth = evaluate(bench_of.as_built(u));
        REQUIRE(truth.ok());
        mass.add(truth->answers.mass.kg, s->mass_kg);
        in_water.add(truth->answers.in_water.kg, s->in_water_kg);
        if (truth->answers.pitch_rad) pitch.add(*truth->answers.pitch_rad, s->pitch_rad);
        // The fall, floaters and all: its own bounds, which keep the root's bend.
        const double v = truth->answers.fall ? truth->answers.fall->speed_m_s : 0.0;
        for (std::size_t i = 0; i < 3; ++i) {
            const Interval& bounds = s->fall_50_80_95_m_s[i];
            // A bound at nothing has all floaters behind it, more than its share: no interval of that size
            // exists then.
            if (bounds.low <= 0.0) continue;
            ++fall_count[i];
            fall.inside[i] += v >= bounds.low && v <= bounds.high ? 1 : 0;
        }
    }
    for (std::size_t i = 0; i < stated.size(); ++i) {
        const double of_fall = static_cast<double>(fall.inside[i]) / fall_count[i];
        INFO("stated " << stated[i] << ": mass " << mass.share(i) << ", in water " << in_water.share(i)
                       << ", pitch " << pitch.share(i) << ", fall " << of_fall << " of " << fall_count[i]);
        CHECK(fall_count[i] > 900);
        CHECK(std::abs(mass.share(i) - stated[i]) < 0.03);
        CHECK(std::abs(in_water.share(i) - stated[i]) < 0.03);
        CHECK(std::abs(pitch.share(i) - stated[i]) < 0.03);
        CHECK(std::abs(of_fall - stated[i]) < 0.03);
    }
}

namespace {

/// Of invented lures that are read so and then put right: the share foretold to come right, and the share
/// that does.
struct PutRight {
    double foretold = 0.0;
    double came_right = 0.0;
};
PutRight put_right(std::uint64_t seed, const std::vector<document::Reading>& readings) {
    const document::Document recipe = invented::preset_named("millrace-170");
    invented::Recipe bench_of(recipe);
    PutRight all;
    constexpr int lures = 400;
    for (std::uint64_t n = 0; n < lures; ++n) {
        bench::Random random(seed, n);
        const Eigen::VectorXd u = bench_of.truth(random);
        document::Document document = recipe;
        for (document::Reading r : readings) {
            if (bench_of.take(r, u, random)) document.log.push_back(r);
        }
        const auto now = do_now(document);
        REQUIRE(now.ok());
        document::Document built = bench_of.as_built(u);
        built.holes = now->document.holes;
        const auto truth = evaluate(built);
        REQUIRE(truth.ok());
        all.foretold += now->chances.both / lures;
        all.came_right += invented::is_right(built, truth->answers).both / lures;
    }
    return all;
}

} // namespace

TEST_CASE("The chance foretold for a lure put right is the share of invented lures that come right, within 6 "
          "points") {
    const PutRight all = put_right(7, {invented::weighed(ReadingKind::dry_weight, Stage::carved),
                                       invented::weighed(ReadingKind::dry_weight, Stage::drilled),
                                       invented::weighed(ReadingKind::held_under, Stage::drilled)});
    INFO("foretold " << all.foretold << ", came right " << all.came_right);
    CHECK(std::abs(all.foretold - all.came_right) < 0.06);
}

TEST_CASE(
    "The chance foretold of the tub test, sealed with hooks and tail on, is the share of invented lures "
    "that come right, within 4 points") {
    const PutRight all = put_right(11, {invented::weighed(ReadingKind::dry_weight, Stage::sealed),
                                        invented::weighed(ReadingKind::held_under, Stage::sealed),
                                        invented::with_all(invented::timed(Stage::sealed, 1.0))});
    INFO("foretold " << all.foretold << ", came right " << all.came_right);
    CHECK(std::abs(all.foretold - all.came_right) < 0.04);
}

TEST_CASE("Wood that differs from head to tail as believed: the hang's intervals hold their share within 3 "
          "points, and weighing the segments one by one tells the difference") {
    const document::Document recipe = invented::preset_named("millrace-170");
    invented::Recipe bench_of(recipe);
    const auto gradient = bench_of.index_of(document::Cause::wood_gradient, 0);
    REQUIRE(gradient);
    // Nothing but the gradient differs from what was believed.
    document::Document only = recipe;
    for (Eigen::Index i = 0; i < bench_of.model().count(); ++i) {
        const bench::Input& input = bench_of.model().input(i);
        if (i == *gradient || input.cause == document::Cause::drag) continue;
        document::Correction known{input.cause, {}, 1.0, 0.0};
        if (input.cause == document::Cause::carved_size) {
            if (input.group > 0) known.item = input.group - 1;
        } else if (input.cause != document::Cause::wood_density && input.cause != document::Cause::moisture) {
            known.item = input.group;
        }
        only.corrections.push_back(known);
    }
    const auto believed = uncertainty(only);
    REQUIRE(believed.ok());
    Coverage pitch;
    Eigen::VectorXd u = Eigen::VectorXd::Zero(bench_of.model().count());
    for (std::uint64_t n = 0; n < 2000; ++n) {
        bench::Random random(77, n);
        u(*gradient) = random.normal();
        const auto truth = evaluate(bench_of.as_built(u));
        REQUIRE((truth.ok() && truth->answers.pitch_rad));
        pitch.add(*truth->answers.pitch_rad, believed->pitch_rad);
    }
    for (std::size_t i = 0; i < stated.size(); ++i) {
        INFO("stated " << stated[i] << ": pitch " << pitch.share(i));
        CHECK(std::abs(pitch.share(i) - stated[i]) < 0.03);
    }
    // One standard deviation either way moves the hang by what is said of it.
    const auto hang_at = [&](double sigmas) {
        u(*gradient) = sigmas;
        return *evaluate(bench_of.as_built(u))->answers.pitch_rad;
    };
    CHECK_THAT(0.5 * std::abs(hang_at(1.0) - hang_at(-1.0)), WithinRel(believed->pitch_rad.sigma, 0.02));

    bench::Random random(78, 0);
    u(*gradient) = 1.5;
    document::Document weighed = only;
    for (int segment = 0; segment < static_cast<int>(recipe.segment_names.size()); ++segment) {
        document::Reading r = invented::weighed(ReadingKind::dry_weight, Stage::carved);
        r.segment = segment;
        r.mass_sigma_kg = 1e-5; // a scale that reads 0.01 g
        REQUIRE(bench_of.take(r, u, random));
        weighed.log.push_back(r);
    }
    const auto told = uncertainty(weighed);
    REQUIRE(told.ok());
    INFO("hang spread " << believed->pitch_rad.sigma << ", after weighing the segments "
                        << told->pitch_rad.sigma);
    CHECK(told->pitch_rad.sigma < 0.3 * believed->pitch_rad.sigma);
    CHECK(std::abs(told->pitch_rad.value - hang_at(1.5)) < 3.0 * told->pitch_rad.sigma);
}

namespace {

/// The share of invented lures whose log is told to disagree with the spreads believed, the true inputs of
/// wood and size being so many times as wide.
double share_warned(double times, int lures) {
    const document::Document recipe = invented::preset_named("millrace-170");
    invented::Recipe bench_of(recipe);
    int warned = 0;
    for (int n = 0; n < lures; ++n) {
        bench::Random random(5, static_cast<std::uint64_t>(n));
        Eigen::VectorXd u = bench_of.truth(random);
        for (Eigen::Index i = 0; i < u.size(); ++i) {
            const document::Cause cause = bench_of.model().input(i).cause;
            if (cause == document::Cause::carved_size || cause == document::Cause::wood_density ||
                cause == document::Cause::wood_gradient)
                u(i) *= times;
        }
        document::Document document = recipe;
        std::vector<document::Reading> readings{invented::board(), across(0.035), across(0.09),
                                                across(0.135)};
        for (int segment = 0; segment < static_cast<int>(recipe.segment_names.size()); ++segment) {
            for (const ReadingKind kind : {ReadingKind::dry_weight, ReadingKind::held_under}) {
                readings.push_back(invented::weighed(kind, Stage::carved));
                readings.back().segment = segment;
            }
        }
        for (document::Reading r : readings) {
            if (bench_of.take(r, u, random)) document.log.push_back(r);
        }
        const auto s = uncertainty(document);
        REQUIRE(s.ok());
        warned += s->agreement.warning.empty() ? 0 : 1;
    }
    return static_cast<double>(warned) / lures;
}

} // namespace

TEST_CASE(
    "A log of lures as believed is told to disagree in about one of a hundred, of wood and carving three "
    "times as wide in most") {
    const double as_believed = share_warned(1.0, 2000);
    const double wide = share_warned(3.0, 300);
    INFO("as believed " << as_believed << ", three times as wide " << wide);
    CHECK(as_believed > 0.004);
    CHECK(as_believed < 0.017);
    CHECK(wide > 0.5);
}
