#include "output/log_csv.hpp"

#include "document/field_table.hpp"
#include "output/bench_text.hpp"
#include "output/uncertainty_json.hpp"
#include "support/presets.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>

using namespace evenfall;

TEST_CASE("a plan says which coats are still to come, and nothing where all are there", "[output]") {
    document::Document d = support::preset_named("millrace-170");
    CHECK(output::missing_coats_text(d).empty());
    std::erase_if(d.coats, [](const document::Coat& coat) { return coat.stage != Stage::painted; });
    CHECK(output::missing_coats_text(d) ==
          "No sealer, no clear coat yet: the lead plan does not count what is still to come.");
}

TEST_CASE("The log's table keeps to RFC 4180: CRLF, a head row, fields with commas, quotes and line breaks "
          "quoted") {
    document::Document d = support::block();
    document::Reading r;
    r.mass_kg = 0.0312;
    r.stage = Stage::sealed;
    r.date = "2026-03-14";
    r.note = "dry, \"very\"\nso";
    d.log.push_back(r);
    r.note = "=1+1";
    r.excluded = true;
    d.log.push_back(r);
    const std::string csv = output::log_csv(d);
    CHECK(csv.rfind("reading,kind,stage,segment,with,lure,mass_g,", 0) == 0);
    CHECK(csv.find(",\"dry, \"\"very\"\"\nso\",no,no,\r\n") != std::string::npos);
    CHECK(csv.find("1,dry_weight,sealed,,,1,31.2,") != std::string::npos);
    CHECK(csv.find(",'=1+1,yes,no,\r\n") != std::string::npos);
    // As many commas outside quotes in each line as in the head.
    const std::string head = csv.substr(0, csv.find("\r\n"));
    const std::string last = csv.substr(csv.rfind("\r\n", csv.size() - 3) + 2);
    CHECK(std::count(head.begin(), head.end(), ',') == std::count(last.begin(), last.end(), ','));
}

TEST_CASE("Every kind of reading has a name and steps; under water the wire and the bubbles are told of, "
          "with lead its caution") {
    using document::ReadingKind;
    for (const auto& kind : document::table::reading_kinds) {
        CHECK(!output::reading_name(kind.value).empty());
        CHECK(output::reading_steps(kind.value).size() >= 2);
    }
    const auto tells = [](ReadingKind kind, const char* word) {
        const auto steps = output::reading_steps(kind);
        return std::any_of(steps.begin(), steps.end(), [&](const Sentence& s) {
            return s.text(units::metric).find(word) != std::string::npos;
        });
    };
    CHECK(tells(ReadingKind::held_under, "fork alone"));
    CHECK(tells(ReadingKind::held_under, "bubbles"));
    CHECK(tells(ReadingKind::hung_in_water, "empty hook"));
    CHECK(tells(ReadingKind::suspends, "wash your hands"));
}

TEST_CASE("Uncertainty as JSON is JSON, and holds a stage for each and the chances") {
    const document::Document d = support::fish();
    const auto s = uncertainty(d);
    const auto now = do_now(d);
    REQUIRE((s.ok() && now.ok()));
    const auto tree =
        nlohmann::json::parse(output::uncertainty_json(d, *s, *now, uncertainty_by_draws(d, 50).value()));
    CHECK(tree["stages"].size() == 8);
    CHECK(tree["chance_now"]["both"].is_number());
    CHECK(tree["do_now"]["steps"].size() == 1); // what the tub should read
    CHECK(tree["do_now"]["holes"].size() == d.holes.size());
    CHECK(tree["draws"]["count"] == 50);
}
