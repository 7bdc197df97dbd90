// The log in the document: read, written, refused.

#include "document/check.hpp"
#include "evenfall.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

using namespace evenfall;
using nlohmann::json;

namespace {

Problems refused(const json& reading) {
    json text = json::parse(write_document(support::fish()));
    text["log"] = json::array({reading});
    const auto read = read_document(text.dump());
    return read.ok() ? Problems{} : read.problems();
}

bool is_refused_at(const json& reading, const std::string& path) {
    for (const Problem& p : refused(reading)) {
        if (p.path == path) return true;
    }
    return false;
}

} // namespace

TEST_CASE("A document without a log writes no word of it, in text and in link") {
    const document::Document d = support::fish();
    CHECK(write_document(d).find("log") == std::string::npos);
    CHECK(write_document(d).find("corrections") == std::string::npos);
}

TEST_CASE("A log and corrections come back from text and link as they were") {
    document::Document d = support::fish();
    document::Reading r;
    r.kind = document::ReadingKind::held_under;
    r.stage = Stage::sealed;
    r.segment = 1;
    r.lure = 2;
    r.mass_kg = 0.0213;
    r.holder_kg = 0.0004;
    r.temperature_c = 18.0;
    r.mass_sigma_kg = 0.0002;
    r.date = "2026-02-28";
    r.note = "second try";
    r.excluded = true;
    d.log.push_back(r);
    d.corrections.push_back({document::Cause::carved_size, 1, 1.02, 0.003});
    d.corrections.push_back({document::Cause::drag, {}, 0.9, {}});
    REQUIRE(document::check(d).empty());
    for (const auto& read : {read_document(write_document(d)), read_link(write_link(d))}) {
        REQUIRE(read.ok());
        CHECK(write_document(*read) == write_document(d));
        const document::Reading& back = read->log.at(0);
        CHECK((back.kind == r.kind && back.segment == 1 && back.lure == 2 && back.excluded &&
               back.date == r.date && back.note == r.note));
        CHECK(document::group_of(read->corrections[0]) == 2);
        CHECK(document::group_of(read->corrections[1]) == 0);
    }
}

TEST_CASE("Each kind of reading is taken with its own fields and refused without or with others', by name") {
    const std::vector<json> sound{
        {{"kind", "dry_weight"}, {"stage", "sealed"}, {"mass_g", 31.2}},
        {{"kind", "held_under"}, {"stage", "sealed"}, {"mass_g", 56.1}, {"holder_g", 0.4}},
        {{"kind", "hung_in_water"}, {"stage", "rigged"}, {"mass_g", -1.5}},
        {{"kind", "board"}, {"mass_g", 130}, {"length_mm", 200}, {"width_mm", 30}, {"height_mm", 45}},
        {{"kind", "tub_fall"}, {"stage", "rigged"}, {"time_s", 4.2}, {"depth_mm", 500}},
        {{"kind", "suspends"}, {"stage", "sealed"}, {"mass_g", 1.5}, {"clip_material", "lead"}},
        {{"kind", "suspends"}, {"stage", "sealed"}, {"mass_g", 0}},
        {{"kind", "freeboard"}, {"stage", "sealed"}, {"freeboard_mm", 4}},
        {{"kind", "hang_angle"}, {"stage", "rigged"}, {"angle_deg", -4}},
        {{"kind", "caliper"}, {"stage", "sealed"}, {"x_mm", 60}, {"width_mm", 21.4}},
        {{"kind", "caliper"}, {"stage", "carved"}, {"x_mm", 60}, {"height_mm", 31.4}, {"sigma_mm", 0.1}},
        {{"kind", "beats"}, {"stage", "rigged"}, {"beats", 14}, {"travel_mm", 3000}, {"foretold_per_m", 4.2}},
        {{"kind", "beats"}, {"stage", "rigged"}, {"beats", 14}, {"time_s", 6}, {"speed_mm_s", 500}}};
    for (const json& reading : sound) {
        INFO(reading.dump());
        CHECK(refused(reading).empty());
        json struck_field = reading;
        for (const char* key :
             {"mass_g", "length_mm", "time_s", "depth_mm", "freeboard_mm", "angle_deg", "x_mm", "beats"}) {
            if (!reading.contains(key) || (reading["kind"] == "beats" && key == std::string("time_s")))
                continue;
            json without = reading;
            without.erase(key);
            CHECK(is_refused_at(without, std::string("/log/0/") + key));
        }
        json odd = reading;
        odd["angle_deg"] = 3;
        if (reading["kind"] != "hang_angle") CHECK(is_refused_at(odd, "/log/0/angle_deg"));
        json no_date = reading;
        no_date["date"] = "14 March";
        CHECK(is_refused_at(no_date, "/log/0/date"));
    }
}

TEST_CASE("Readings that cannot be are refused: no mass, an unknown clip, a segment that is not there, too "
          "many of them") {
    CHECK(is_refused_at({{"kind", "dry_weight"}, {"mass_g", 0}}, "/log/0/mass_g"));
    CHECK(is_refused_at({{"kind", "dry_weight"}, {"mass_g", 20}, {"segment", 9}}, "/log/0/segment"));
    CHECK(is_refused_at({{"kind", "suspends"}, {"mass_g", 1}, {"clip_material", "cheese"}},
                        "/log/0/clip_material"));
    CHECK(is_refused_at({{"kind", "tub_fall"}, {"time_s", 0}, {"depth_mm", 500}}, "/log/0/time_s"));
    CHECK(is_refused_at({{"kind", "caliper"}, {"x_mm", 60}}, "/log/0/width_mm"));
    CHECK(is_refused_at({{"kind", "caliper"}, {"x_mm", 60}, {"width_mm", 20}, {"height_mm", 30}},
                        "/log/0/width_mm"));
    CHECK(is_refused_at({{"kind", "beats"}, {"beats", 9}}, "/log/0/travel_mm"));
    CHECK(is_refused_at({{"kind", "beats"}, {"beats", 9}, {"time_s", 6}}, "/log/0/travel_mm"));
    CHECK(is_refused_at({{"kind", "beats"}, {"beats", 9}, {"travel_mm", 900}, {"speed_mm_s", 500}},
                        "/log/0/travel_mm"));
    CHECK(is_refused_at({{"kind", "guessed"}, {"mass_g", 1}}, "/log/0/kind"));
    json text = json::parse(write_document(support::fish()));
    text["log"] = json::array();
    for (int i = 0; i < 201; ++i)
        text["log"].push_back({{"kind", "dry_weight"}, {"mass_g", 20}});
    const auto read = read_document(text.dump());
    REQUIRE(!read.ok());
    CHECK(read.problems()[0].code == ProblemCode::too_large);
}
