#include "state/edits.hpp"

#include "tail/loft.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>
#include <fstream>
#include <iterator>
#include <string>

using namespace evenfall;
using namespace evenfall::shell::state;
using Catch::Matchers::WithinRel;

namespace {

preset::Document demo(const char* name) {
    std::ifstream file(std::string(EVENFALL_PRESETS_DIR "/") + name, std::ios::binary);
    REQUIRE(file.good());
    const std::string text{std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
    auto read = read_document(text);
    REQUIRE(read.ok());
    return *read;
}

} // namespace

TEST_CASE("a lure scaled by k holds k³ of the wood", "[shell][edits]") {
    preset::Document plain = new_lure();
    const double k = 1.37;
    const auto before = evaluate(plain);
    const auto after = evaluate(scale_whole(k * drawn_length_m(plain))(plain));
    REQUIRE(before.ok());
    REQUIRE(after.ok());
    // Similar bodies: exact but for rounding and the quadrature, which scales as well.
    CHECK_THAT(after->answers.segments[0].wood_m3,
               WithinRel(k * k * k * before->answers.segments[0].wood_m3, 1e-9));
}

TEST_CASE("a body made k times as high, or as wide, holds k times the wood", "[shell][edits]") {
    const preset::Document plain = new_lure();
    const auto before = evaluate(plain);
    REQUIRE(before.ok());
    const double k = 1.25;
    for (const auto& edit :
         {scale_height(k * drawn_height_m(plain)), scale_width(k * drawn_width_m(plain))}) {
        const auto after = evaluate(edit(plain));
        REQUIRE(after.ok());
        CHECK_THAT(after->answers.segments[0].wood_m3,
                   WithinRel(k * before->answers.segments[0].wood_m3, 1e-9));
    }
}

TEST_CASE("every demo lure can still be built a tenth longer", "[shell][edits]") {
    for (const char* name :
         {"millrace-170.json", "reedline-120.json", "quarry-230.json", "estuary-150.json"}) {
        const preset::Document document = demo(name);
        const auto after = evaluate(scale_whole(1.1 * drawn_length_m(document))(document));
        CAPTURE(name, after.ok() ? std::string{} : after.problems().front().sentence);
        CHECK(after.ok());
    }
}

TEST_CASE("a tail drawn on any lure fits the slot that is there or one cut for it, and taken away leaves no trace of itself", "[shell][edits][tail]") {
    for (const char* name : {"millrace-170.json", "reedline-120.json", "quarry-230.json", "estuary-150.json"}) {
        const preset::Document plain = demo(name);
        const preset::Document tailed = add_tail()(plain);
        CAPTURE(name);
        REQUIRE(tailed.tail.has_value());
        CHECK(tailed.tail->tenon.has_value());
        const auto after = evaluate(tailed);
        CAPTURE(after.ok() ? std::string{} : after.problems().front().path + after.problems().front().sentence);
        REQUIRE(after.ok());
        const bool had_slot = std::any_of(plain.pockets.begin(), plain.pockets.end(), [&](const preset::Pocket& p) { return p.x_to_m >= drawn_length_m(plain) - 1e-9; });
        CHECK(tailed.pockets.size() == plain.pockets.size() + (had_slot ? 0 : 1));
        if (had_slot) CHECK(write_document(remove_tail()(tailed)) == write_document(plain));
        CHECK(evaluate(scale_whole(1.2 * drawn_length_m(tailed))(tailed)).ok());
        CHECK(evaluate(scale_height(1.1 * drawn_height_m(tailed))(tailed)).ok());
    }
    CHECK(add_tail()(new_lure()).tail.has_value());
    CHECK(evaluate(add_tail()(new_lure())).ok());
}

TEST_CASE("a tail stretched keeps its form: its volume goes with each of its three sizes", "[shell][edits][tail]") {
    preset::Document d = add_tail()(demo("millrace-170.json"));
    const double before = tail::shaped(*d.tail)->segments[0].volume_m3;
    stretch_tail(*d.tail, 1.5, 2.0, 1.2);
    CHECK_THAT(tail::shaped(*d.tail)->segments[0].volume_m3, WithinRel(1.5 * 2.0 * 1.2 * before, 1e-12));
}

TEST_CASE("a joint added and taken away again leaves the lure as it was", "[shell][edits]") {
    const preset::Document document = demo("millrace-170.json");
    const preset::Document cut = add_joint()(document);
    CHECK(cut.joints.size() == document.joints.size() + 1);
    CHECK(cut.segment_names.size() == cut.joints.size() + 1);
    CHECK(evaluate(cut).ok());
    std::size_t added = 0;
    while (added < document.joints.size() && cut.joints[added].at_m == document.joints[added].at_m)
        ++added;
    CHECK(write_document(remove_joint(static_cast<int>(added))(cut)) == write_document(document));
}

TEST_CASE("parts told to belong to a segment stay with its wood when a joint comes or goes",
          "[shell][edits]") {
    preset::Document document = demo("millrace-170.json");
    preset::Part part;
    part.at_m.x = 0.15;
    part.segment = 2;
    document.parts = {part};
    document.holes.clear();
    // Without holes the first of the three segments has most room, and all behind it move up by one.
    const preset::Document cut = add_joint()(document);
    REQUIRE(cut.joints[0].at_m < document.joints[0].at_m);
    CHECK(cut.parts[0].segment == 3);
    CHECK(remove_joint(0)(cut).parts[0].segment == 2);
}

TEST_CASE("a new hole keeps clear of joints, ends and other holes", "[shell][edits]") {
    const preset::Document document = demo("millrace-170.json");
    const preset::Document more = add_hole()(document);
    REQUIRE(more.holes.size() == document.holes.size() + 1);
    const auto& hole = more.holes.back();
    for (const auto& joint : document.joints)
        CHECK(std::abs(hole.x_m - joint.at_m) > hole.diameter_m);
    for (const auto& other : document.holes)
        CHECK(std::abs(hole.x_m - other.x_m) > hole.diameter_m);
    CHECK(evaluate(more).ok());
}

TEST_CASE("an edit of an entry that is not there changes nothing", "[shell][edits]") {
    const preset::Document document = demo("millrace-170.json");
    const std::string before = write_document(document);
    for (int index : {-1, 99}) {
        CHECK(write_document(remove_hole(index)(document)) == before);
        CHECK(write_document(duplicate_hole(index)(document)) == before);
        CHECK(write_document(remove_joint(index)(document)) == before);
        CHECK(write_document(remove_part(index)(document)) == before);
        CHECK(write_document(move_coat(index, 1)(document)) == before);
        CHECK(write_document(remove_curve_point(Curve::top, index)(document)) == before);
        CHECK(write_document(on_hole(index, [](preset::Hole& h) { h.x_m = 9.0; })(document)) == before);
    }
}

TEST_CASE("points of a curve keep their order and its ends their places", "[shell][edits]") {
    const preset::Document plain = new_lure();
    const auto moved = move_curve_point(Curve::top, 2, 10.0, 0.012)(plain);
    CHECK(moved.shape.top[2].x_m < moved.shape.top[3].x_m);
    CHECK(moved.shape.top[2].value == 0.012);
    const auto end = move_curve_point(Curve::top, 0, 0.05, 0.003)(plain);
    CHECK(end.shape.top[0].x_m == 0.0);
    CHECK(end.shape.top[0].value == 0.003);
    CHECK(remove_curve_point(Curve::top, 0)(plain).shape.top.size() == plain.shape.top.size());
    const auto more = add_curve_point(Curve::bottom)(plain);
    REQUIRE(more.shape.bottom.size() == plain.shape.bottom.size() + 1);
    for (std::size_t i = 1; i < more.shape.bottom.size(); ++i) {
        CHECK(more.shape.bottom[i - 1].x_m < more.shape.bottom[i].x_m);
    }
}

TEST_CASE("a new coat comes after those of its own stage and before later ones", "[shell][edits]") {
    preset::Document document = demo("millrace-170.json");
    document = add_coat(Stage::painted)(document);
    for (std::size_t i = 1; i < document.coats.size(); ++i)
        CHECK(document.coats[i - 1].stage <= document.coats[i].stage);
    CHECK(evaluate(document).ok());
}
