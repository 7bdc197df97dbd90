// The help: its table, its search, and the figures that offer it.

#include "help/help.hpp"

#include "document_fields.hpp"
#include "output.hpp"
#include "unit/shell/walk_of_tests.hpp"

#include <array>
#include <set>

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;
using help::Entry;
using help::Topic;

namespace {

constexpr bool is_way_of_working(const Entry& entry) {
    return entry.topic >= Topic::weigh_dry;
}

void check_sentences(const char* text) {
    const std::string sentences = text;
    CAPTURE(sentences);
    REQUIRE(sentences.size() > 3);
    CHECK((sentences.ends_with('.') || sentences.ends_with('?')));
    CHECK(sentences.find("  ") == std::string::npos);
    CHECK((std::isupper(static_cast<unsigned char>(sentences.front())) != 0 || sentences.front() == '\xC2'));
}

std::string best(const char* question) {
    const auto found = help::found(question);
    return found.empty() ? std::string() : found.front()->id;
}

} // namespace

TEST_CASE("every topic of the help has one entry, and every entry is whole", "[shell][help]") {
    std::set<std::string> ids;
    std::set<Topic> topics;
    for (const Entry& entry : help::entries()) {
        CAPTURE(entry.id);
        CHECK(ids.insert(entry.id).second);
        CHECK(topics.insert(entry.topic).second);
        CHECK(help::entry_of(entry.topic) == &entry);
        CHECK(std::string(entry.id).find_first_not_of("abcdefghijklmnopqrstuvwxyz_") == std::string::npos);
        CHECK(std::string(entry.title).size() > 2);
        check_sentences(entry.what);
        check_sentences(entry.how);
        CHECK(std::string(entry.find).size() > 3);
        if (is_way_of_working(entry)) {
            CHECK(std::string(entry.source).empty());
            CHECK(std::string(entry.trust).empty());
        } else {
            check_sentences(entry.source);
            check_sentences(entry.trust);
            CHECK_FALSE(entry.reading);
        }
    }
    CHECK(topics.size() == help::topic_count - 1);
    CHECK(help::entry_of(Topic::none) == nullptr);
}

TEST_CASE("every kind of reading has its entry, which tells its steps", "[shell][help]") {
    std::set<document::ReadingKind> kinds;
    for (const Entry& entry : help::entries()) {
        if (!entry.reading) continue;
        kinds.insert(*entry.reading);
        const auto told = nlohmann::json::parse(help::told_by_id(entry.id, units::metric));
        CHECK(told.at("steps").size() == output::reading_steps(*entry.reading).size());
    }
    CHECK(kinds.size() == document::table::reading_kinds.size());
}

TEST_CASE("a question in plain words finds its entry", "[shell][help]") {
    CHECK(best("how do I weigh under water?") == "weigh_under");
    CHECK(best("Weighing it DRY on a scale") == "weigh_dry");
    CHECK(best("why does it roll over") == "righting");
    CHECK(best("how strong is the hinge") == "strength");
    CHECK(best("melting lead") == "lead_safety");
    CHECK(best("sink rate") == "fall");
    CHECK(best("which drill bit") == "bits");
    CHECK(best("how much epoxy to mix") == "resin_amount");
    CHECK(best("when can the next coat go on") == "resin_time");
    CHECK(best("tungsten instead of lead") == "metals");
    CHECK(best("what does plus minus mean") == "spread");
    CHECK(best("inches") == "units");
    CHECK(best("send it to a friend") == "share");
    CHECK(best("probability") == "chance");
    CHECK(best("caliper") == "read_caliper");
    CHECK(best("how do I count beats") == "count_beats");
}

TEST_CASE("a question without a word to go by lists all, one that nothing answers finds nothing",
          "[shell][help]") {
    CHECK(help::found("").size() == help::entries().size());
    CHECK(help::found("how do I?").size() == help::entries().size());
    CHECK(help::found("xylophone").empty());
    CHECK(help::found("weigh").size() <= 10);
    CHECK(nlohmann::json::parse(help::found_json("weigh under water")).front().front() == "weigh_under");
    CHECK(help::told_by_id("nothing", units::metric).empty());
}

TEST_CASE(
    "an answer of the strip that is tapped tells the figures it was made from, in the units that are set",
    "[shell][help]") {
    Bench bench;
    for (const bool inches : {false, true}) {
        bench.tap("shelf.open");
        bench.reach(inches ? "shelf.length.1" : "shelf.length.0");
        bench.reach(inches ? "shelf.mass.1" : "shelf.mass.0");
        bench.tap("shelf.close");
        for (const char* id : {"finished", "in_water", "fall", "hang", "righting", "chance"}) {
            CAPTURE(id);
            bench.host.explained.clear();
            bench.tap(std::string("answer.") + id);
            const auto told = nlohmann::json::parse(bench.host.explained);
            CHECK(told.at("id") == id);
            CHECK(told.at("figures").size() >= 3);
        }
        bench.tap("answer.finished");
        const auto figures = nlohmann::json::parse(bench.host.explained).at("figures");
        for (const auto& figure : figures)
            CHECK(figure.at(1).get<std::string>().ends_with(inches ? "oz" : "g"));
    }
}

TEST_CASE("the parts that are told of the finished weight add up to it", "[shell][help]") {
    Bench bench;
    bench.tap("answer.finished");
    const auto figures = nlohmann::json::parse(bench.host.explained).at("figures");
    const auto grams = [&](std::size_t i) { return std::stod(figures.at(i).at(1).get<std::string>()); };
    double sum = 0.0;
    for (std::size_t i = 1; i + 1 < figures.size(); ++i)
        sum += grams(i);
    CHECK(std::abs(sum - grams(0)) < 0.1);
}

TEST_CASE(
    "every figure that explains itself has an entry, is large enough for a finger, and tells its own value",
    "[shell][help]") {
    std::set<std::string> seen;
    for (const char* demo : {"millrace-170.json", "quarry-230.json"}) {
        Bench bench(390.0f, 844.0f);
        REQUIRE(bench.app.open_json(demo_text(demo)).empty());
        walk_panels(bench, [&](const std::string& where) {
            for (const Item& item : bench.items("help.")) {
                CAPTURE(demo, where, item.id);
                CHECK(item.place.w >= 44.0f);
                CHECK(item.place.h >= 44.0f);
                const std::string id = item.id.substr(5, item.id.find('.', 5) - 5);
                CHECK_FALSE(help::told_by_id(id, units::metric).empty());
                seen.insert(id);
            }
        });
    }
    // Shown in the strip alone, only after more touches than the walk makes, or by other lures.
    const std::set<std::string> elsewhere{"finished",     "in_water",   "tub_seen",    "weighed_board",
                                          "reading_fit",  "metacentre", "waterline",   "back_showing",
                                          "righting_arm", "ways",       "swim_change", "resin_amount",
                                          "resin_time"};
    for (const Entry& entry : help::entries()) {
        if (is_way_of_working(entry)) continue;
        CAPTURE(entry.id);
        CHECK((seen.count(entry.id) + elsewhere.count(entry.id)) == 1);
    }
}
