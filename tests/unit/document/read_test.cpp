#include "document/check.hpp"
#include "document/fields.hpp"
#include "unit/document/documents.hpp"

#include <catch2/generators/catch_generators.hpp>
#include <catch2/generators/catch_generators_range.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

using namespace evenfall;
using namespace evenfall::testing;
using Catch::Matchers::WithinULP;

namespace {

struct Refused {
    const char* what; // replaced in full_text …
    const char* by;   // … by this
    ProblemCode code;
    const char* path;
    const char* sentence; // whole
};

} // namespace

TEST_CASE("a document is read in trade units and held in SI") {
    const document::Document d = document_of(full_text);
    CHECK(d.name == "Every key");
    CHECK(d.note == "first line\nsecond line");
    CHECK(d.wood.density_kg_m3 == 690.25);
    CHECK_THAT(*d.wood.density_spread, WithinULP(0.015, 1));
    CHECK(d.water.salinity_g_kg == 3.25);
    CHECK(d.shape.back[1].value == 12.345678 / 1000.0);
    CHECK(d.shape.section.kind == document::SectionKind::drawn);
    CHECK(d.shape.section.curve().size() == 2);
    CHECK(d.joints[0].at_m == 0.055);
    CHECK_THAT(d.joints[0].relief_fore_rad, WithinULP(12.5 * 3.14159265358979323846 / 180.0, 2));
    CHECK(d.holes[0].use == document::HoleUse::drilled);
    CHECK(d.holes[0].from == document::HoleFrom::back);
    CHECK(d.holes[0].end == document::HoleEnd::point_118);
    CHECK(d.holes[0].diameter_m == 0.0079375);
    CHECK(d.holes[0].fill->length_m == 0.004);
    CHECK_FALSE(d.holes[0].fill->mass_kg.has_value());
    CHECK(d.holes[1].fill->mass_kg == 0.00125);
    CHECK_FALSE(d.holes[1].cap.has_value());
    CHECK(d.pockets[0].z_from_m == -0.004);
    CHECK_FALSE(d.pockets[0].floods);
    CHECK_FALSE(d.pockets[1].z_from_m.has_value());
    CHECK(d.parts[0].stage == Stage::rigged);
    CHECK(d.parts[0].at_m.x == -0.003);
    CHECK(d.parts[0].segment == 1); // counted from 1 in the text, from 0 in the core
    CHECK(d.coats[0].kind == document::CoatKind::soaks);
    CHECK(d.coats[0].on_skin);
    CHECK_FALSE(d.coats[0].on_joint_faces);
    CHECK(d.targets.by == document::TargetBy::in_water);
    CHECK(d.targets.in_water_kg == -0.00075);
}

TEST_CASE("keys left out of a document hold their defaults") {
    const document::Document d = document_of(least_text);
    const document::Document fresh;
    CHECK(d.name == fresh.name);
    CHECK(d.wood.species == "basswood");
    CHECK(d.wood.moisture_percent == 12.0);
    CHECK(d.water.temperature_c == 15.0);
    CHECK(d.targets.by == document::TargetBy::fall);
    CHECK(d.targets.fall_m_s == 0.15);
    CHECK(d.holes.empty());
    const document::Document holed =
        document_of(with(least_text, R"("segments")", R"("holes":[{"x_mm":50}],"segments")"));
    REQUIRE(holed.holes[0].cap.has_value());
    CHECK(holed.holes[0].cap->material == "ca_soda");
    CHECK(holed.holes[0].diameter_m == 0.00635);
    CHECK_FALSE(holed.holes[0].fill.has_value());
}

TEST_CASE("the demo presets are read") {
    const auto* file = GENERATE(from_range(std::begin(demo_presets), std::end(demo_presets)));
    INFO(file);
    const document::Document d = document_of(preset_text(file));
    CHECK(d.segment_names.size() == d.joints.size() + 1);
}

TEST_CASE("bad input is refused with the field's path and one clear sentence") {
    const auto refused = GENERATE(
        Refused{R"("depth_mm":9,)", R"("depth_mm":145,)", ProblemCode::out_of_range, "/holes/0/depth_mm",
                "Hole 1 is drilled 145 mm deep; the limit is 0 to 100 mm."},
        Refused{R"("depth_mm":6,)", R"("depth_mm":-1,)", ProblemCode::out_of_range, "/holes/1/depth_mm",
                "Hole 2 is drilled -1 mm deep; the limit is 0 to 100 mm."},
        Refused{R"("depth_mm":9,)", R"("depth_mm":"9",)", ProblemCode::wrong_type, "/holes/0/depth_mm",
                "The “depth_mm” of hole 1 must be a number."},
        Refused{R"("depth_mm":9,)", R"("depht_mm":9,)", ProblemCode::unknown_key, "/holes/0/depht_mm",
                "Hole 1 has a key “depht_mm” that this version does not know; did you mean “depth_mm”?"},
        Refused{R"("note":)", R"("colour":)", ProblemCode::unknown_key, "/colour",
                "The document has a key “colour” that this version does not know."},
        Refused{R"("x_mm":35,)", "", ProblemCode::missing_key, "/holes/1/x_mm",
                "Hole 2 lacks its “x_mm”, which must be given."},
        Refused{R"("species":"hard_maple")", R"("species":"ironwood")", ProblemCode::unknown_name,
                "/wood/species",
                "The wood is called “ironwood”, which is not in the table of woods; take the nearest one and "
                "give the density you weighed."},
        Refused{R"("moisture_percent":9.5)", R"("moisture_percent":31)", ProblemCode::out_of_range,
                "/wood/moisture_percent", "The wood holds 31 % moisture; the limit is 0 to 30 %."},
        Refused{R"("temperature_C":11.5)", R"("temperature_C":40.1)", ProblemCode::out_of_range,
                "/water/temperature_C", "The fishing water is at 40.1 °C; the limit is 0 to 40 °C."},
        Refused{R"("temperature_C":21)", R"("temperature_C":null)", ProblemCode::wrong_type,
                "/tub/temperature_C", "The “temperature_C” of the tub's water must be a number."},
        Refused{R"([50,12.345678])", R"([50,1234])", ProblemCode::out_of_range, "/shape/back_mm/1/1",
                "Point 2 of the back line lies 1234 mm above the datum line; the limit is -300 to 300 mm."},
        Refused{R"([50,12.345678])", R"([50])", ProblemCode::wrong_type, "/shape/back_mm/1",
                "Point 2 of the back line must be a pair of numbers."},
        Refused{R"([[0,6],[50,9],[100,4]])", R"([[0,6]])", ProblemCode::too_large, "/shape/half_width_mm",
                "The width line has 1 point; the limit is 2 to 64 points."},
        Refused{R"("relief_fore_deg":12.5)", R"("relief_fore_deg":60.5)", ProblemCode::out_of_range,
                "/joints/0/relief_fore_deg", "Joint 1 has a fore relief of 60.5°; the limit is 0 to 60°."},
        Refused{R"("from":"back")", R"("from":"side")", ProblemCode::unknown_name, "/holes/0/from",
                "The “from” of hole 1 is “side”; it may be one of belly, back."},
        Refused{R"("material":"dowel")", R"("material":"lead")", ProblemCode::unknown_name,
                "/holes/0/cap/material", nullptr},
        Refused{R"("length_mm":4,)", R"("length_mm":4,"mass_g":1,)", ProblemCode::unknown_key,
                "/holes/0/fill/length_mm",
                "The fill of hole 1 gives both mass_g and length_mm; give one of them."},
        Refused{R"("length_mm":4,)", "", ProblemCode::missing_key, "/holes/0/fill/mass_g",
                "The fill of hole 1 needs mass_g or length_mm."},
        Refused{R"("floods":false)", R"("floods":0)", ProblemCode::wrong_type, "/pockets/0/floods",
                "The “floods” of pocket 1 must be true or false."},
        Refused{R"("segment":2)", R"("segment":3)", ProblemCode::out_of_range, "/parts/0/segment",
                "Part 1 belongs to segment 3, but the lure has 2."},
        Refused{R"("segment":2)", R"("segment":0)", ProblemCode::out_of_range, "/parts/0/segment",
                "Part 1 belongs to segment 0; the limit is 1 to 12."},
        Refused{R"("segment":2)", R"("segment":1.5)", ProblemCode::wrong_type, "/parts/0/segment",
                "The “segment” of part 1 must be a whole number."},
        Refused{R"("stage":"rigged")", R"("stage":"leaded")", ProblemCode::unknown_name, "/parts/0/stage",
                "The “stage” of part 1 is “leaded”; it may be one of hardware, painted, rigged."},
        Refused{R"("surfaces":["skin"])", R"("surfaces":[])", ProblemCode::missing_key, "/coats/0/surfaces",
                "Coat 1 names none of its surfaces; name at least one."},
        Refused{R"("mass_g":1.1)", R"("thickness_mm":0.2)", ProblemCode::unknown_key, "/coats/0/thickness_mm",
                "Coat 1 soaks in, so it has no thickness; give its mass_g."},
        Refused{R"("segments":["Fore","Aft"])", R"("segments":["Fore","Aft","More"])",
                ProblemCode::missing_key, "/segments", "With 1 joint the lure needs 2 segment names, not 3."},
        Refused{R"("in_water_g":-0.75)", R"("in_water_g":-0.75,"fall_mm_s":100)", ProblemCode::unknown_key,
                "/targets/in_water_g", "The targets give both fall_mm_s and in_water_g; give one of them."},
        Refused{R"("in_water_g":-0.75)", R"("fall_mm_s":0)", ProblemCode::out_of_range, "/targets/fall_mm_s",
                "The targets ask for a fall of 0 mm/s; the limit is 1 to 5000 mm/s."},
        Refused{R"("name":"slot")", R"("name":"slo\u0007t")", ProblemCode::out_of_range, "/pockets/1/name",
                "The name of pocket 2 holds a control character; use letters, digits and signs only."},
        Refused{R"("name":"slot")", R"("name":"a\u202eb")", ProblemCode::out_of_range, "/pockets/1/name",
                "The name of pocket 2 holds a control character; use letters, digits and signs only."},
        Refused{R"("name":"slot")", R"("name":"slot\uffff")", ProblemCode::out_of_range, "/pockets/1/name",
                "The name of pocket 2 holds a code that is no letter; use letters, digits and signs only."},
        Refused{R"("name":"slot")", R"("name":"slot\u200b")", ProblemCode::out_of_range, "/pockets/1/name",
                "The name of pocket 2 holds an invisible letter; use letters, digits and signs only."},
        Refused{R"("name":"slot")", R"("name":"\u200d\ufe0f")", ProblemCode::out_of_range, "/pockets/1/name",
                "The name of pocket 2 holds invisible letters alone; use letters, digits and signs only."},
        Refused{R"("half_outline":[[0,-1],[0.8,-0.5],[1,0.1],[0.6,0.7],[0,1]])",
                R"("half_outline":[[0,-1],[0,1]])", ProblemCode::missing_key, "/shape/section/half_outline",
                "A drawn section needs a half outline of at least 3 points."});
    const Problems problems = refusal_of(with(full_text, refused.what, refused.by));
    INFO(problems.front().path << ": " << problems.front().sentence.text(evenfall::units::metric));
    REQUIRE(problems.size() == 1);
    CHECK(problems[0].code == refused.code);
    CHECK(problems[0].path == refused.path);
    if (refused.sentence != nullptr)
        CHECK(problems[0].sentence.text(evenfall::units::metric) == refused.sentence);
}

TEST_CASE("each kind of section has the limits of its own curve") {
    const std::string round =
        with(least_text, R"("half_width_mm")", R"("section":{"exponent":1.1},"half_width_mm")");
    CHECK(refusal_of(round)[0].sentence.text(evenfall::units::metric) ==
          "Point 1 of the section's exponent has an exponent of 1.1; the limit is 1.2 to 12.");
    const std::string chamfered = with(least_text, R"("half_width_mm")",
                                       R"("section":{"kind":"chamfered","corner_cut":1.1},"half_width_mm")");
    CHECK(refusal_of(chamfered)[0].limit.text(evenfall::units::metric) == "0 to 1");
    const std::string uncut =
        with(least_text, R"("half_width_mm")", R"("section":{"kind":"chamfered"},"half_width_mm")");
    CHECK(refusal_of(uncut)[0].path == "/shape/section/corner_cut");
}

TEST_CASE("a cap of lead is refused and the fitting materials are named") {
    const Problem problem = refusal_of(with(full_text, R"("material":"dowel")", R"("material":"lead")"))[0];
    CHECK(problem.sentence.text(evenfall::units::metric)
              .rfind("The cap of hole 1 is made of “lead”, which is not meant for a cap; choose one of ",
                     0) == 0);
    CHECK(problem.limit.text(units::metric).find("ca_soda") != std::string::npos);
}

TEST_CASE("every fault of a document is told at once, up to twenty") {
    std::string text = with(full_text, R"("gap_mm":2.2)", R"("gap_mm":99)");
    text = with(text, R"("floods":false)", R"("floods":"no")");
    text = with(text, R"("depth_mm":6)", R"("depth_mm":600)");
    CHECK(refusal_of(text).size() == 3);

    std::string holes;
    for (int i = 0; i < 30; ++i)
        holes += std::string(i == 0 ? "" : ",") + R"({"x_mm":-1})";
    CHECK(refusal_of(with(least_text, R"("segments")", R"("holes":[)" + holes + R"(],"segments")")).size() ==
          document::max_problems);
}

TEST_CASE("text that is not JSON is refused with line and column") {
    CHECK(refusal_of("{\n  \"evenfall\": 2,\n  oops }")[0].sentence.text(evenfall::units::metric) ==
          "This is not JSON: it goes wrong at line 3, column 3.");
    for (const char* text : {"", " ", "{", "[", "\"", "{\"evenfall\":2,}", "{\"evenfall\":NaN}",
                             "{\"evenfall\":01}", "\xFF\xFE{}", "{\"a\":\"\xC3\"}", "nul"}) {
        INFO(text);
        CHECK(refusal_of(text)[0].code == ProblemCode::not_json);
    }
}

TEST_CASE("a number too large for a double is refused, not read as infinity") {
    const Problem problem = refusal_of(with(full_text, R"("depth_mm":9,)", R"("depth_mm":1e999,)"))[0];
    CHECK(problem.code == ProblemCode::not_a_number);
    CHECK(problem.sentence.text(evenfall::units::metric).rfind("The number “1e999” at line", 0) == 0);
    CHECK(refusal_of(with(full_text, R"("depth_mm":9,)", R"("depth_mm":1e308,)"))[0].code ==
          ProblemCode::out_of_range);
    CHECK(document_of(with(full_text, R"("depth_mm":9,)", R"("depth_mm":1e-308,)")).holes[0].depth_m == 0.0);
}

TEST_CASE("a document of another version, or of none, is refused for that alone") {
    CHECK(refusal_of(with(full_text, R"("evenfall":2)", R"("evenfall":3)"))[0].sentence.text(
              evenfall::units::metric) == "The document's version is 3; this build reads versions 1 to 2.");
    CHECK(refusal_of(with(full_text, R"("evenfall":2)", R"("evenfall":"2")"))[0].code ==
          ProblemCode::unknown_version);
    CHECK(refusal_of(with(full_text, R"("evenfall":2,)", ""))[0].code == ProblemCode::missing_key);
    CHECK(refusal_of("{}").size() == 1);
    CHECK(refusal_of("[]")[0].code == ProblemCode::wrong_type);
    CHECK(refusal_of("1")[0].code == ProblemCode::wrong_type);
}

TEST_CASE("no part of a document takes an empty key, or one named like a coordinate of its points") {
    for (const std::string key : {"", "0", "1"}) {
        for (const char* at : {R"("evenfall":2,)", R"("back_mm":)", R"("depth_mm":9,)"}) {
            CAPTURE(key, at);
            const Problem problem = refusal_of(with(full_text, at, "\"" + key + "\":1," + at))[0];
            CHECK(problem.code == ProblemCode::unknown_key);
        }
    }
}

TEST_CASE("a key that stands twice is refused") {
    const Problem problem =
        refusal_of(with(full_text, R"("depth_mm":9,)", R"("depth_mm":9,"depth_mm":8,)"))[0];
    CHECK(problem.sentence.text(evenfall::units::metric) ==
          "The key “/holes/0/depth_mm” stands twice in one object.");
    CHECK(problem.path == "/holes/0/depth_mm");
}

TEST_CASE("an object of more keys than any of ours is stopped while it is read") {
    std::string keys;
    for (int i = 0; i < 20'000; ++i)
        keys.append(i == 0 ? "" : ",").append("\"k").append(std::to_string(i)).append("\":1");
    const auto problems = refusal_of("{" + keys + "}");
    CHECK(problems.size() == 1);
    CHECK(problems[0].code == ProblemCode::too_large);
    CHECK(problems[0].limit.text(evenfall::units::metric) == "256 keys");
    CHECK(problems[0].sentence.text(evenfall::units::metric) ==
          "The object at “/” has more than 256 keys; no lure needs that.");
    CHECK(refusal_of("{\"a\":[1,{\"b\":{" + keys + "}}]}")[0].path == "/a/1/b");
}

TEST_CASE("deep nesting and huge texts are stopped before a tree is built") {
    const std::string deep = std::string(100'000, '[') + std::string(100'000, ']');
    CHECK(refusal_of(deep)[0].sentence.text(evenfall::units::metric) ==
          "The document is nested deeper than 16 levels, at “/0/0/0/0/0/0/0/0/0/0/0/0/0/0/0”; no lure needs "
          "that.");
    const std::string huge(document::max_document_bytes + 1, ' ');
    CHECK(refusal_of(huge)[0].code == ProblemCode::too_large);
    CHECK(refusal_of("\n\n" + huge)[0].sentence.text(evenfall::units::metric) ==
          "The document is 257 kB long; the limit is 256 kB, which it passes at line 3, column 262143.");
    // Columns are letters, not bytes.
    CHECK(refusal_of("{\"größe\":x}")[0].sentence.text(evenfall::units::metric) ==
          "This is not JSON: it goes wrong at line 1, column 10.");
    CHECK(document_of(least_text + std::string(document::max_document_bytes - least_text.size(), ' '))
              .segment_names.size() == 1);
}

TEST_CASE("lists and texts longer than their caps are refused") {
    std::string points;
    for (int i = 0; i < 65; ++i)
        points += std::string(i == 0 ? "" : ",") + "[" + std::to_string(i) + ",5]";
    CHECK(refusal_of(with(least_text, "[[0,10],[100,10]]", "[" + points + "]"))[0].sentence.text(
              evenfall::units::metric) == "The back line has 65 points; the limit is 2 to 64 points.");
    CHECK(refusal_of(with(full_text, "Every key", std::string(401, 'x')))[0].sentence.text(
              evenfall::units::metric) ==
          "The name of the document is 401 bytes long; the limit is 400 bytes.");
    std::string holes;
    for (int i = 0; i < 41; ++i)
        holes += std::string(i == 0 ? "" : ",") + R"({"x_mm":1})";
    CHECK(refusal_of(with(least_text, R"("segments")", R"("holes":[)" + holes + R"(],"segments")"))[0]
              .sentence.text(evenfall::units::metric) == "There are 41 holes; the limit is at most 40.");
}

TEST_CASE("what a stranger wrote is quoted cut short and without control characters") {
    const std::string key = std::string(500, 'k') + "\\n\\u0000~/";
    const Problem problem = refusal_of(with(full_text, R"("note":)", "\"" + key + "\":"))[0];
    CHECK(problem.sentence.text(evenfall::units::metric).size() < 200);
    CHECK(problem.path.size() < 100);
    CHECK(document::quotable("a\x01\nb\xFF"
                             "c") == "abc");
    CHECK(document::quotable("größe") == "größe");
    // C1 controls, and what turns the writing about or breaks a line (code points U+0085, U+202E, U+2028,
    // U+2066).
    CHECK(document::quotable("a\xC2\x85"
                             "b\xE2\x80\xAE"
                             "c\xE2\x80\xA8"
                             "d\xE2\x81\xA6"
                             "e") == "abcde");
    // Zero width space, word joiner, no letter at all, and joiners with nothing to join (U+200B, U+2060,
    // U+FFFE, U+200D); a family of four keeps what joins it.
    CHECK(document::quotable("a\xE2\x80\x8B"
                             "b\xE2\x81\xA0"
                             "c\xEF\xBF\xBE"
                             "d") == "abcd");
    CHECK(document::quotable("\xE2\x80\x8D\xEF\xB8\x8F").empty());
    const std::string two = "\xF0\x9F\x91\xA8\xE2\x80\x8D\xF0\x9F\x91\xA9";
    CHECK(document::quotable(two) == two);
    CHECK(document::quotable("“5 €” – ½ · \xF0\x9F\x90\x9F") == "“5 €” – ½ · \xF0\x9F\x90\x9F");
}

TEST_CASE("a text that is no UTF-8 is refused wherever it stands, so that whatever is taken can be written "
          "and read (RFC 3629, section 4)") {
    // Both ends of each row of the table there, and what lies just beyond them. U+0080 and U+2028 are control
    // characters here, U+FFFF and U+10FFFF no letters.
    const std::pair<const char*, bool> texts[] = {{"\xC2\xA0", true},
                                                  {"\xDF\xBF", true},
                                                  {"\xE0\xA0\x80", true},
                                                  {"\xED\x9F\xBF", true},
                                                  {"\xEE\x80\x80", true},
                                                  {"\xEF\xBF\xBD", true},
                                                  {"\xF0\x90\x80\x80", true},
                                                  {"\xF4\x8F\xBF\xBD", true},
                                                  {"\xC3", false},
                                                  {"\xC3\xC3", false},
                                                  {"\x80", false},
                                                  {"\xC1\xBF", false},
                                                  {"\xE0\x9F\xBF", false},
                                                  {"\xED\xA0\x80", false},
                                                  {"\xE2\x82", false},
                                                  {"\xF0\x8F\xBF\xBF", false},
                                                  {"\xF4\x90\x80\x80", false},
                                                  {"\xF0\x9F\x90", false},
                                                  {"\xF5\x80\x80\x80", false},
                                                  {"\xFF", false}};
    const auto plain = read_document(preset_text("millrace-170.json"));
    REQUIRE(plain.ok());
    for (const auto& [text, sound] : texts) {
        for (int place = 0; place < 7; ++place) {
            document::Document d = *plain;
            d.log.push_back({});
            d.log[0].mass_kg = 0.02;
            std::string* const held[] = {&d.name,          &d.note,          &d.segment_names[0],
                                         &d.parts[0].name, &d.holes[0].name, &d.coats[0].name,
                                         &d.log[0].note};
            *held[place] = std::string("a") + text;
            CAPTURE(text, place);
            CHECK(document::check(d).empty() == sound);
            const auto again = read_document(write_document(d));
            REQUIRE(again.ok());
            CHECK((write_document(*again) == write_document(d) &&
                   (again->name + again->note + again->log[0].note == d.name + d.note + d.log[0].note ||
                    !sound)));
        }
    }
}
