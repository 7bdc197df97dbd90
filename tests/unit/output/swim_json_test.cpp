#include "output/swim_json.hpp"

#include <catch2/catch_approx.hpp>
#include <catch2/catch_test_macros.hpp>

#include <nlohmann/json.hpp>

using namespace evenfall;

TEST_CASE("JSON of how a lure swims has its verdict, band, joints and lags", "[swim]") {
    swim::SwimAnswer a;
    a.way = swim::Way::swims_once_jerked;
    a.swims = 23;
    a.of = 24;
    a.beats_per_m = swim::Beats{1.1, 1.4, 1.8};
    a.joints = {{0.3, true}, {0.2, false}};
    a.lag_rad = {0.5, 0.6};
    const auto t = nlohmann::json::parse(output::swim_json({}, a));
    CHECK(t["verdict"] == "swims once jerked");
    CHECK(t["swims"] == 23);
    CHECK(t["of"] == 24);
    CHECK(t["beats_per_m"]["mid"] == 1.4);
    CHECK(t["joints"].size() == 2);
    CHECK(t["joints"][0]["at_stop"] == true);
    CHECK(t["joints"][0]["swing_deg"] == 17.188734);
    CHECK(t["lag_deg"].size() == 2);
    CHECK(!t.contains("against"));
    CHECK(t["counts"] == 0);
    CHECK(t["beats_per_m_worked_out"]["high"] == 1.8);
    CHECK(t["caution"].is_null());

    swim::Change change;
    change.beats = swim::Told::more;
    const auto with = nlohmann::json::parse(output::swim_json({}, a, &change));
    CHECK(with["against"]["beats"] == "more");
    CHECK(with["against"]["swing"] == "no change that can be told");

    a.beats_per_m.reset();
    CHECK(nlohmann::json::parse(output::swim_json({}, a))["beats_per_m"].is_null());
}

TEST_CASE("JSON of how a lure swims has the band before its counts and after", "[swim]") {
    swim::SwimAnswer a;
    a.beats_per_m = swim::Beats{1.12, 1.42, 1.81};
    a.caution = "Wide.";
    document::Document d;
    document::Reading r;
    r.kind = document::ReadingKind::beats;
    r.beats = 16.0;
    r.travel_m = 10.0;
    d.log = {r, r};
    const auto t = nlohmann::json::parse(output::swim_json(d, a, nullptr, 2.0));
    CHECK(t["counts"] == 2);
    CHECK(t["beats_per_m_worked_out"]["mid"] == 1.42);
    CHECK(t["beats_per_m"]["low"] > 1.42);
    CHECK(t["beats_per_m"]["high"] < 1.81);
    CHECK(t["beats_per_s"]["mid"].get<double>() ==
          Catch::Approx(2.0 * t["beats_per_m"]["mid"].get<double>()).epsilon(1e-5)); // both rounded
    CHECK(t["caution"] == "Wide.");
}
