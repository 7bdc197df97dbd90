// Files and links as version 1 of the form was written. They open for ever: never change what lies in
// version-1.

#include "document/write.hpp"
#include "evenfall.hpp"
#include "unit/document/documents.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <fstream>
#include <iterator>
#include <string>

using namespace evenfall;
using namespace evenfall::testing;
using Catch::Matchers::WithinAbs;

namespace {

struct Frozen {
    const char* file;
    double mass_g; ///< as the program that wrote the file gave it
    double in_water_g;
};

constexpr Frozen lures[] = {{"millrace-170", 66.770011, 3.116447},
                            {"reedline-120", 41.91369, -1.499999},
                            {"quarry-230", 150.866399, 0.0},
                            {"estuary-150", 62.909207, 10.381873}};

std::string frozen_text(const std::string& name) {
    std::ifstream file(EVENFALL_TESTS_DIR "/regression/version-1/" + name, std::ios::binary);
    REQUIRE(file.good());
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

} // namespace

TEST_CASE("documents and links of version 1 open, say the same, and weigh what they weighed", "[document]") {
    for (const Frozen& lure : lures) {
        CAPTURE(lure.file);
        const auto read = read_document(frozen_text(lure.file + std::string(".json")));
        const auto linked = read_link(frozen_text(lure.file + std::string(".link")));
        REQUIRE(read.ok());
        REQUIRE(linked.ok());
        CHECK(document::same(*read, *linked));
        const auto evaluation = evaluate(*read);
        REQUIRE(evaluation.ok());
        // Half of the last digit that was printed.
        CHECK_THAT(evaluation->answers.mass.kg * 1e3, WithinAbs(lure.mass_g, 0.5e-6));
        CHECK_THAT(evaluation->answers.in_water.kg * 1e3, WithinAbs(lure.in_water_g, 0.5e-6));
    }
}

TEST_CASE("every word of version 1 that has another in version 2 is read as that", "[document]") {
    const document::Document old = document_of(frozen_text("every-key.json"));
    document::Document now = document_of(tailed_text());
    now.shape.section.exponent = document::Section{}.exponent; // a drawn section's fullness said nothing
    for (document::Coat& coat : now.coats)
        coat.note.clear();                                       // version 1 had none
    now.targets.matters_more = document::Targets{}.matters_more; // nor this
    now.air_m3.reset();                                          // nor this
    now.shape.carving = document::Shape{}.carving;               // nor this
    now.board = document::Board{0.210, 0.055, 0.027, 0.002};
    using document::ReadingKind;
    const auto reading = [&](ReadingKind kind, Stage stage) -> document::Reading& {
        document::Reading& r = now.log.emplace_back();
        r.kind = kind;
        r.stage = stage;
        return r;
    };
    document::Reading& board = reading(ReadingKind::board, Stage::carved);
    board.mass_kg = 0.130;
    board.length_m = 0.2;
    board.width_m = 0.03;
    board.height_m = 0.045;
    document::Reading& fall = reading(ReadingKind::tub_fall, Stage::rigged);
    fall.time_s = 4.2;
    fall.depth_m = 0.5;
    fall.excluded = true;
    document::Reading& clip = reading(ReadingKind::suspends, Stage::sealed);
    clip.mass_kg = 0.0015;
    clip.clip_material = "lead";
    reading(ReadingKind::freeboard, Stage::sealed).freeboard_m = 0.004;
    CHECK(write_document(old) == write_document(now));
}

TEST_CASE("a section's fullness of version 1 is exponent or corner cut, by its kind", "[document]") {
    const auto section = [](const char* kind, const char* fullness) {
        return document_of(
                   R"({"evenfall":1,"shape":{"top_mm":[[0,10],[100,10]],"bottom_mm":[[0,-10],[100,-10]],
            "half_width_mm":[[0,8],[100,8]],"section":{"kind":")" +
                   std::string(kind) + R"(","fullness":)" + fullness + R"(}},"segments":["Body"]})")
            .shape.section;
    };
    CHECK(section("superellipse", "3.5").exponent.front().value == 3.5);
    const document::Section cut = section("chamfered", "[[0,0.2],[100,0.4]]");
    CHECK(cut.corner_cut.back().value == 0.4);
    CHECK(cut.exponent.front().value == document::Section{}.exponent.front().value);
}

TEST_CASE("version 1 does not take a key twice, under its old name and its new one", "[document]") {
    std::string text = frozen_text("every-key.json");
    text = with(text, R"("blank":)", R"("board":{},"blank":)");
    CHECK(refusal_of(text).front().path == "/blank");
}
