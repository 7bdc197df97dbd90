// A log as long as it may be: gone through a bounded number of times, and still what it says.

#include "bench/uncertainty/posterior.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "support/invented_lures.hpp"
#include "support/limit_lures.hpp"

#include <catch2/catch_test_macros.hpp>

#include <cmath>
#include <utility>

using namespace evenfall;
using document::ReadingKind;

namespace {

document::Document full_log(const char* lure, ReadingKind kind, double about, double scatter) {
    document::Document full = support::with_full_log(invented::preset_named(lure), kind, about, scatter);
    for (document::Reading& r : full.log)
        r.stands = true; // at odds, and none of them left out
    return full;
}

/// How far the most likely inputs of any lure would move if every reading were looked at once more where they
/// are now.
double left_to_go(bench::Posterior& s) {
    const auto& log = s.model->document().log;
    bench::LinearReadings again;
    const auto n = static_cast<Eigen::Index>(s.fit.used.size());
    again.slope.resize(n, s.model->count());
    again.read.resize(n);
    again.sigma.resize(n);
    for (Eigen::Index row = 0; row < n; ++row) {
        const document::Reading& r = log[s.fit.used[static_cast<std::size_t>(row)]];
        const Eigen::VectorXd u = s.fit.posterior.mean(document::lure_of(r));
        const auto seen = s.observer->observe(r, u);
        REQUIRE(seen.has_value());
        again.lure.push_back(document::lure_of(r));
        again.slope.row(row) = seen->slope.transpose();
        again.read(row) = seen->read - seen->predicted + seen->slope.dot(u);
        again.sigma(row) = seen->sigma;
    }
    const bench::LinearPosterior next(s.prior, again);
    double most = 0.0;
    for (int lure = 0; lure < 10; ++lure) {
        const Eigen::VectorXd moved = next.mean(lure) - s.fit.posterior.mean(lure);
        const Eigen::VectorXd spread = next.covariance(lure).diagonal().cwiseMax(0.0).cwiseSqrt();
        most = std::max(most, moved.cwiseQuotient(spread).cwiseAbs().maxCoeff());
    }
    return most;
}

} // namespace

TEST_CASE("Two hundred timed falls that agree are believed as if they were searched for until they settle") {
    // Scatter as a stopwatch has it: 0.15 s. What the bound on searches leaves undone is a small part of the
    // spread that is left.
    auto s = bench::posterior_of(full_log("millrace-170", ReadingKind::tub_fall, 3.1, 0.2));
    REQUIRE(s.ok());
    CHECK(s->fit.used.size() == document::max_readings);
    CHECK(left_to_go(*s) < 0.01);
}

TEST_CASE("Two hundred waterlines that agree are believed as if they were searched for until they settle") {
    auto s = bench::posterior_of(full_log("reedline-120", ReadingKind::freeboard, 0.005, 0.001));
    REQUIRE(s.ok());
    CHECK(s->fit.used.size() > document::max_readings / 2);
    CHECK(left_to_go(*s) < 0.01);
}

TEST_CASE("Falls that no lure has are not searched for in every pass") {
    // Weighings at odds take all the passes that there are.
    document::Document document = full_log("millrace-170", ReadingKind::dry_weight, 0.1, 0.09);
    const auto with_falls = [&](std::size_t falls) {
        document::Document d = document;
        for (std::size_t i = 0; i < falls; ++i) {
            // Half a metre in a tenth of a second.
            d.log[i] = invented::timed(Stage::rigged, 0.5);
            d.log[i].time_s = 0.1;
        }
        auto s = bench::posterior_of(d);
        REQUIRE(s.ok());
        CHECK(s->fit.used.size() == document::max_readings - falls);
        CHECK(s->fit.passes == 10);
        return std::move(s).value();
    };
    CHECK(with_falls(2).fit.failed_searches == 2 * 10);
    const bench::Posterior many = with_falls(100);
    CHECK(many.fit.failed_searches == 100);
    const auto again = bench::fit_log(*many.model, *many.observer, many.prior, {150}, &many.fit);
    CHECK(again.failed_searches == 100);
}

TEST_CASE("A log at odds with itself ends after a few passes, in numbers") {
    for (const auto& [lure, kind, about, scatter] :
         {std::tuple{"millrace-170", ReadingKind::tub_fall, 3.0, 2.5},
          std::tuple{"quarry-230", ReadingKind::dry_weight, 0.1, 0.09},
          std::tuple{"reedline-120", ReadingKind::freeboard, 0.005, 0.0045}}) {
        INFO(lure);
        const document::Document document = full_log(lure, kind, about, scatter);
        const auto posterior = bench::posterior_of(document);
        REQUIRE(posterior.ok());
        CHECK(posterior->fit.passes <= 10);
        const auto s = uncertainty(document);
        REQUIRE(s.ok());
        CHECK(std::isfinite(s->mass_kg.value));
        CHECK(std::isfinite(s->in_water_kg.sigma));
        CHECK(s->readings.size() == document::max_readings);
    }
}
