// A caliper across the carved body as a reading of its size.

#include "base/trade.hpp"
#include "bench/uncertainty/posterior.hpp"
#include "unit/bench/uncertainty/bench_readings.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>

using namespace evenfall;
using namespace evenfall::support;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

constexpr double at_m = 0.060;

double drawn_width_m(const document::Document& d) {
    return 2.0 * evaluate(d)->body.lines->at(at_m).half_width_m;
}

document::Reading across(Stage stage, double width_m, double x_m = at_m) {
    document::Reading r = invented::calipered(stage, x_m);
    r.width_m = width_m;
    return r;
}

double predicted_m(const document::Document& d, const document::Reading& r) {
    const bench::Model model = bench::Model::of(d).value();
    bench::Observer observer(model);
    return observer.observe(r, Eigen::VectorXd::Zero(model.count()))->predicted;
}

const InputEstimate& input_of(const Uncertainty& s, document::Cause cause, int group) {
    return *std::find_if(s.inputs.begin(), s.inputs.end(),
                         [&](const InputEstimate& i) { return i.cause == cause && i.group == group; });
}

} // namespace

TEST_CASE("a caliper should read the drawing, twice what the skin stands out, and twice each film by then") {
    document::Document d = millrace();
    document::Coat film;
    film.stage = Stage::clear_coated;
    film.thickness_m = 0.0004;
    d.coats = {film};
    const double drawn_m = drawn_width_m(d);
    CHECK_THAT(predicted_m(d, across(Stage::carved, 0.02)), WithinAbs(drawn_m, 1e-12));
    // To the third power of its thickness.
    CHECK_THAT(predicted_m(d, across(Stage::clear_coated, 0.02)), WithinAbs(drawn_m + 0.0008, 1e-5));
    const ledger::CarvedSize size = ledger::carved_size(d, evaluate(d)->body);
    const double out_m = 0.0003;
    d.corrections = {{document::Cause::carved_size, {}, 1.0 + out_m * size.skin_m2 / size.volume_m3, {}}};
    CHECK_THAT(predicted_m(d, across(Stage::carved, 0.02)), WithinAbs(drawn_m + 2.0 * out_m, 1e-12));
    document::Reading high = across(Stage::carved, 0.02);
    high.width_m.reset();
    high.height_m = 0.03;
    CHECK_THAT(predicted_m(d, high),
               WithinAbs(2.0 * evaluate(d)->body.lines->at(at_m).half_height_m + 2.0 * out_m, 1e-12));
}

TEST_CASE("a body that reads wider is believed larger, all of it and that segment most") {
    const double drawn_m = drawn_width_m(millrace());
    const auto s = uncertainty(with({across(Stage::carved, drawn_m + 0.0005)}));
    REQUIRE(s);
    const InputEstimate& all = input_of(*s, document::Cause::carved_size, 0);
    const int here = shape::segment_at(evaluate(millrace())->body, at_m) + 1;
    REQUIRE(here > 0);
    const InputEstimate& own = input_of(*s, document::Cause::carved_size, here);
    const InputEstimate& other = input_of(*s, document::Cause::carved_size, here == 1 ? 2 : 1);
    // The reading's own ±0.15 mm against ±0.4 mm and ±0.3 mm of the width: by hand.
    const double variance = 0.4 * 0.4 + 0.3 * 0.3 + 0.15 * 0.15;
    const double all_u = 0.4 * 0.5 / variance;
    CHECK_THAT(all.factor, WithinRel(1.0 + all.spread_before * all_u, 1e-9));
    CHECK_THAT(own.factor, WithinRel(1.0 + own.spread_before * 0.3 * 0.5 / variance, 1e-9));
    CHECK(other.factor == 1.0);
    CHECK_THAT(all.spread * all.factor / all.spread_before,
               WithinRel(std::sqrt(1.0 - 0.4 * 0.4 / variance), 1e-9));
}

TEST_CASE("a caliper on every segment narrows the weight in water of wood that was weighed dry") {
    const auto weighed = uncertainty(with({dry(Stage::carved, 23.4)}));
    std::vector<document::Reading> log{dry(Stage::carved, 23.4)};
    for (const double x : {0.035, 0.090, 0.135})
        log.push_back(across(Stage::carved, 2.0 * evaluate(millrace())->body.lines->at(x).half_width_m, x));
    const auto both = uncertainty(with(log));
    REQUIRE((weighed && both));
    for (const ReadingFit& r : both->readings)
        CHECK(r.used);
    CHECK(both->in_water_kg.sigma < 0.6 * weighed->in_water_kg.sigma);
}

TEST_CASE("a caliper over a joint's gap says nothing, and says so") {
    const auto s = uncertainty(with({across(Stage::carved, 0.02, millrace().joints[0].at_m)}));
    REQUIRE(s);
    CHECK_FALSE(s->readings[0].used);
    CHECK(s->readings[0].warning.text(units::metric).find("no wood at that place") != std::string::npos);
}
