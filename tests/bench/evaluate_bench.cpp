// How long an answer takes. Measured, never tested on time.

#include "body/body.hpp"
#include "body/tail_loft.hpp"
#include "evenfall.hpp"
#include "support/presets.hpp"
#include "support/soft_tails.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <string>

using namespace evenfall;

TEST_CASE("evaluate", "[bench]") {
    for (const std::string name : {"millrace-170", "quarry-230"}) {
        const std::string text = support::preset_text(name);
        const auto document = read_document(text);
        REQUIRE(document.ok());
        const auto before = evaluate(*document);
        REQUIRE(before.ok());
        BENCHMARK("evaluate " + name) {
            return evaluate(*document);
        };
        BENCHMARK("edit of lead " + name) {
            return evaluate(*document, &before->kept);
        };
        BENCHMARK("shape and cut " + name) {
            return shape::cut(*shape::drawn_lines(document->shape), document->joints);
        };
        BENCHMARK("read " + name) {
            return read_document(text);
        };
        BENCHMARK("plan " + name) {
            return plan_lead(*document);
        };
        BENCHMARK("write link " + name) {
            return write_link(*document);
        };
        const std::string link = write_link(*document);
        BENCHMARK("read link " + name) {
            return read_link(link);
        };
    }
    const document::Document tailed = support::block_with_tail();
    BENCHMARK("a tail's shape alone") {
        return tail::shaped(*tailed.tail);
    };
    BENCHMARK("evaluate a block with a tail") {
        return evaluate(tailed);
    };
    BENCHMARK("evaluate the block without it") {
        document::Document bare = tailed;
        bare.tail.reset();
        return evaluate(bare);
    };
}
