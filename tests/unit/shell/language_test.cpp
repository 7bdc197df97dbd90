// The page in another language: chosen by the device or in the shelf, and nothing left in English.

#include "look/said.hpp"
#include "unit/shell/full_lure.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <set>

using namespace evenfall;
using namespace evenfall::shell;
using namespace evenfall::shell::bench_of_tests;

namespace {

/// Every text that somebody has typed into this document or that stands in it.
void collect(const nlohmann::json& tree, std::set<std::string>& into) {
    if (tree.is_string()) into.insert(tree.get<std::string>());
    if (tree.is_structured()) {
        for (const auto& value : tree)
            collect(value, into);
    }
}

/// What was drawn in English, names left out.
std::set<std::string> left_in_english(const Bench& bench, const document::Document& lure) {
    std::set<std::string> names{"Millrace 170"};
    collect(nlohmann::json::parse(write_document(lure)), names);
    std::set<std::string> out;
    for (const auto& text : nlohmann::json::parse(bench.app.untranslated_json())) {
        if (!names.contains(text.get<std::string>())) out.insert(text.get<std::string>());
    }
    return out;
}

std::string joined(const std::set<std::string>& texts) {
    std::string out;
    for (const std::string& text : texts)
        out += text + "\n";
    return out;
}

} // namespace

TEST_CASE("the page speaks the device's language until another is chosen, and keeps the choice",
          "[shell][words]") {
    Bench bench;
    CHECK(bench.app.said("Shape") == "Shape");
    bench.app.set_locale("de-AT");
    bench.frames(2);
    CHECK(bench.app.said("Shape") == "Form");
    CHECK(bench.app.said("2.5 mm") == "2,5 mm");
    bench.tap("shelf.open");
    bench.reach("shelf.language.0");
    CHECK(bench.app.said("Shape") == "Shape");
    bench.tap("shelf.close");
    const std::string session = bench.app.session_json();
    bench.app.set_locale("de");
    REQUIRE(bench.app.start(session));
    bench.frames(2);
    CHECK(bench.app.said("Shape") == "Shape");
}

TEST_CASE("English has the decimal sign of the device, in sentences as in fields", "[shell][words]") {
    Bench bench;
    bench.app.set_decimal_sign(',');
    bench.frames(2);
    CHECK(bench.app.said("Hole 2 is full at 18.0 mm.") == "Hole 2 is full at 18,0 mm.");
    CHECK(bench.app.said("Version 1.5.0") == "Version 1.5.0");
}

TEST_CASE("every step, section and entry of a full lure is said in German", "[shell][words]") {
    for (const bool other : {false, true}) {
        for (const bool inches : {false, true}) {
            const document::Document lure = full_lure(other);
            Bench bench;
            bench.app.set_locale("de");
            REQUIRE(bench.app.open_json(write_document(lure)) == "");
            if (inches) {
                bench.tap("shelf.open");
                bench.reach("shelf.length.1");
                bench.tap("shelf.close");
            }
            std::set<std::string> english;
            open_everything(bench, lure, [&] { english.merge(left_in_english(bench, lure)); });
            INFO(joined(english));
            CHECK(english.empty());
        }
    }
}
