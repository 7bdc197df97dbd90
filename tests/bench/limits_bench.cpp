// The worst that a valid document can ask of the bench. Measured, never tested on time.

#include "bench/uncertainty/uncertainty.hpp"
#include "evenfall.hpp"
#include "support/invented_lures.hpp"
#include "support/limit_lures.hpp"
#include "water/afloat/float_answers.hpp"
#include "workshop/joint_answers.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <string>

using namespace evenfall;
using document::ReadingKind;

TEST_CASE("limits", "[bench]") {
    const document::Document full = support::at_the_limits();
    const auto once = evaluate(full);
    for (const Problem& p : once.ok() ? Problems{} : once.problems())
        UNSCOPED_INFO(p.path << ": " << p.sentence.text(evenfall::units::metric));
    REQUIRE(once.ok());
    REQUIRE(once->answers.fall.has_value());
    BENCHMARK("evaluate at the limits") {
        return evaluate(full);
    };
    BENCHMARK("plan at the limits") {
        return plan_lead(full);
    };
    BENCHMARK("joints at the limits") {
        return joints::joint_answers(full, once->body);
    };
    BENCHMARK("uncertainty at the limits") {
        return uncertainty(full);
    };
    BENCHMARK("float answers at the limits") {
        return afloat::float_answers(once->body, once->ledger, full, once->answers.water_density_kg_m3);
    };
    const document::Document millrace = invented::preset_named("millrace-170");
    const document::Document reedline = invented::preset_named("reedline-120");
    // A search costs by its readings, and by how far they are from agreeing: the middle may be the worst.
    for (const int count : {10, 25, 50, 100, 200}) {
        const std::string readings = "uncertainty, " + std::to_string(count);
        const auto weighed = support::with_full_log(millrace, ReadingKind::dry_weight, 0.067, 0.005, count);
        BENCHMARK(readings + " weighings at odds") {
            return uncertainty(weighed);
        };
        const auto timed = support::with_full_log(millrace, ReadingKind::tub_fall, 3.0, 2.0, count);
        BENCHMARK(readings + " falls at odds") {
            return uncertainty(timed);
        };
        const auto afloat = support::with_full_log(reedline, ReadingKind::freeboard, 0.005, 0.004, count);
        BENCHMARK(readings + " waterlines at odds") {
            return uncertainty(afloat);
        };
    }
    const std::string longest = document::pack_link(std::string(document::max_document_bytes, '0'));
    BENCHMARK("unpack a link of the longest text") {
        return document::unpack_link(longest);
    };
}
