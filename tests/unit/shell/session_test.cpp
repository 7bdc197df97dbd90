#include "state/edits.hpp"
#include "state/session.hpp"
#include "state/session_json.hpp"
#include "support/limit_lures.hpp"
#include "support/presets.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <string>

using namespace evenfall;
using namespace evenfall::shell::state;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

Session millrace() {
    return Session(support::preset_named("millrace-170"));
}

Change length_of_first_gap(double gap_m, bool finished = true) {
    return {"Gap of joint 1", on_joint(0, [gap_m](document::Joint& joint) { joint.gap_m = gap_m; }),
            finished};
}

} // namespace

TEST_CASE("the plain starter lure can be built", "[shell][session]") {
    const Session session(new_lure());
    REQUIRE(session.evaluation());
    CHECK(session.problems().empty());
    CHECK(session.evaluation()->answers.mass.kg > 0.0);
}

TEST_CASE("a finished change is one entry of the history, with its label and new answers",
          "[shell][session]") {
    Session session = millrace();
    const double before_kg = session.evaluation()->answers.mass.kg;
    REQUIRE(session.apply(length_of_first_gap(0.004)));
    CHECK(session.history().size() == 2);
    CHECK(session.history().undo_label() == "Gap of joint 1");
    CHECK(session.document().joints[0].gap_m == 0.004);
    // A wider gap is sawn out of wood: the lure gets lighter.
    CHECK(session.evaluation()->answers.mass.kg < before_kg);
    session.undo();
    CHECK(session.evaluation()->answers.mass.kg == before_kg);
}

TEST_CASE("a refused change leaves document, answers, history and revision alone and says why",
          "[shell][session]") {
    Session session = millrace();
    const std::string before = write_document(session.document());
    const double before_kg = session.evaluation()->answers.mass.kg;
    const unsigned revision = session.revision();
    CHECK_FALSE(session.apply(
        {"Joint beyond the tail", on_joint(0, [](document::Joint& j) { j.at_m = 0.9; }), true}));
    REQUIRE_FALSE(session.problems().empty());
    CHECK_FALSE(session.problems().front().sentence.empty());
    CHECK(write_document(session.document()) == before);
    CHECK(session.evaluation()->answers.mass.kg == before_kg);
    CHECK(session.history().size() == 1);
    CHECK(session.revision() == revision);
    REQUIRE(session.apply(length_of_first_gap(0.003)));
    CHECK(session.problems().empty());
}

TEST_CASE("a held finger shows every value at once and leaves one entry when it lets go",
          "[shell][session]") {
    Session session = millrace();
    const double first = session.kept().joints[0].gap_m;
    for (double gap_m : {0.0026, 0.0028, 0.0030}) {
        REQUIRE(session.apply(length_of_first_gap(gap_m, false)));
        CHECK(session.document().joints[0].gap_m == gap_m);
        CHECK(session.kept().joints[0].gap_m == first);
    }
    CHECK(session.history().size() == 1);
    session.finish();
    CHECK(session.history().size() == 2);
    CHECK(session.kept().joints[0].gap_m == 0.0030);
    session.undo();
    CHECK(session.kept().joints[0].gap_m == first);
}

TEST_CASE("a held finger that reaches what cannot be built stays at the last value that can",
          "[shell][session]") {
    Session session = millrace();
    REQUIRE(session.apply(length_of_first_gap(0.003, false)));
    CHECK_FALSE(session.apply(length_of_first_gap(0.5, false)));
    CHECK(session.document().joints[0].gap_m == 0.003);
    session.finish();
    CHECK(session.kept().joints[0].gap_m == 0.003);
}

TEST_CASE("an abandoned change is gone from document and answers", "[shell][session]") {
    Session session = millrace();
    const double before_kg = session.evaluation()->answers.mass.kg;
    REQUIRE(session.apply(length_of_first_gap(0.004, false)));
    session.abandon();
    CHECK(session.evaluation()->answers.mass.kg == before_kg);
    CHECK(session.history().size() == 1);
    session.finish();
    CHECK(session.history().size() == 1);
}

TEST_CASE("a plan is shown, not kept, until it is kept", "[shell][session]") {
    Session session = millrace();
    REQUIRE(session.apply({"Empty the holes", on_document([](document::Document& d) {
                               for (auto& hole : d.holes) {
                                   hole.depth_m = 0.0;
                                   hole.fill.reset();
                               }
                           }),
                           true}));
    const double empty_kg = session.evaluation()->answers.mass.kg;
    const unsigned revision = session.revision();
    REQUIRE(session.plan_lead());
    REQUIRE(session.offer());
    CHECK(session.evaluation()->answers.mass.kg > empty_kg);
    CHECK_FALSE(session.kept().holes[0].fill);
    CHECK(session.revision() == revision);

    session.abandon();
    CHECK_FALSE(session.offer());
    CHECK(session.evaluation()->answers.mass.kg == empty_kg);

    REQUIRE(session.plan_lead());
    const double planned_kg = session.evaluation()->answers.mass.kg;
    session.keep_offer();
    CHECK_FALSE(session.offer());
    CHECK(session.revision() == revision + 1);
    CHECK(session.evaluation()->answers.mass.kg == planned_kg);
    session.undo();
    CHECK(session.evaluation()->answers.mass.kg == empty_kg);
}

TEST_CASE("saved work comes back with its document, step, units and look", "[shell][session]") {
    Session session = millrace();
    REQUIRE(session.apply(length_of_first_gap(0.0031)));
    session.view.step = Step::finish;
    session.view.section_x_m = 0.031;
    session.settings.units.length = evenfall::units::Unit::inch_fraction;
    session.settings.theme = Theme::dark;
    session.settings.large_text = true;
    session.settings.left_handed = true;
    session.view.sections = {{"section.shape.size", false}, {"section.shape.wood", true}};
    Session other(new_lure());
    REQUIRE(restore_session(other, write_session(session)).empty());
    CHECK(write_document(other.document()) == write_document(session.document()));
    CHECK(other.view.step == Step::finish);
    CHECK_THAT(other.view.section_x_m,
               WithinAbs(0.031, 1e-12)); // written as millimetres: rounding of two products
    CHECK(other.settings == session.settings);
    CHECK(other.view.sections == session.view.sections);
    // Its own history comes with it; that of the lure that was here does not stay.
    CHECK(other.history().size() == 2);
}

TEST_CASE("saved work that is damaged is refused and the bench stays as it is", "[shell][session]") {
    Session session = millrace();
    const std::string before = write_document(session.document());
    const std::string good = write_session(session);
    for (const std::string& text :
         {std::string{}, std::string("no json"), std::string("{}"), std::string("{\"session\": 1}"),
          std::string("{\"session\": 7, \"document\": {}}"),
          std::string("{\"session\": 1, \"document\": {\"evenfall\": 2}}"), good.substr(0, good.size() / 2),
          std::string(600000, ' '), std::string(4000, '[')}) {
        const Problems problems = restore_session(session, text);
        REQUIRE_FALSE(problems.empty());
        CHECK_FALSE(problems.front().sentence.empty());
        CHECK(write_document(session.document()) == before);
    }
}

TEST_CASE("an odd word in saved settings costs that setting, not the lure", "[shell][session]") {
    Session session = millrace();
    std::string text = write_session(session);
    const auto at = text.find("\"s_per_ft\"");
    REQUIRE(at != std::string::npos);
    text.replace(at, 10, "\"furlongs\"");
    Session other(new_lure());
    REQUIRE(restore_session(other, text).empty());
    CHECK(other.document().name == session.document().name);
    CHECK(other.settings.units.fall == evenfall::units::Unit::s_per_ft);
}

TEST_CASE("odd words among the saved sections cost those, not the others", "[shell][session]") {
    Session session = millrace();
    session.view.sections = {{"section.shape.wood", true}};
    std::string text = write_session(session);
    const auto at = text.find("\"section.shape.wood\"");
    REQUIRE(at != std::string::npos);
    text.insert(at, "\"section.a\":7,\"" + std::string(300, 'x') + "\":true,");
    Session other(new_lure());
    REQUIRE(restore_session(other, text).empty());
    CHECK(other.view.sections == session.view.sections);
}

TEST_CASE("work that takes the place of other work is told apart from it, kept and shown",
          "[shell][session]") {
    Session session = millrace();
    const unsigned kept = session.revision();
    const unsigned shown = session.shown_revision();
    REQUIRE(restore_session(session, write_session(Session(support::preset_named("quarry-230")))).empty());
    CHECK(session.revision() != kept);
    CHECK(session.shown_revision() != shown);
}

TEST_CASE("nothing chosen, held or begun on one lure is so on the next", "[shell][session]") {
    Session session = millrace();
    session.view.selection = {ItemKind::hole, 4};
    session.view.touch.down = true;
    session.view.adding_reading = true;
    REQUIRE(restore_session(session, write_session(Session(support::preset_named("reedline-120")))).empty());
    CHECK(session.view.selection == Selection{});
    CHECK(session.view.touch == DragState{});
    CHECK_FALSE(session.view.adding_reading);
}

TEST_CASE("a change that is refused while a plan is shown leaves the plan to be kept or dropped",
          "[shell][session]") {
    Session session = millrace();
    REQUIRE(session.plan_lead());
    const std::string planned = write_document(session.document());
    CHECK_FALSE(session.apply(
        {"Gap of joint 1", on_joint(0, [](document::Joint& joint) { joint.gap_m = -1.0; }), true}));
    CHECK(session.offer());
    CHECK(write_document(session.document()) == planned);
    CHECK(session.history().size() == 1);
    // Another lure is no work on this one: the plan is dropped.
    REQUIRE(session.open(support::preset_named("quarry-230"), "Open"));
    CHECK(session.history().size() == 2);
}

TEST_CASE("what is taken in can be opened again, and what would be too long as it is saved is refused",
          "[shell][session]") {
    int taken = 0;
    int refused = 0;
    for (std::size_t letters = 0; letters <= document::max_text; letters += 10) {
        document::Document large =
            support::with_full_log(support::at_the_limits(), document::ReadingKind::dry_weight, 0.1, 0.0);
        const std::string note(letters, '"'); // two characters each in a file
        large.note = note;
        for (document::Reading& reading : large.log)
            reading.note = note;
        for (document::Part& part : large.parts)
            part.name = note;
        for (document::Hole& hole : large.holes)
            hole.name = note;
        for (document::Pocket& pocket : large.pockets)
            pocket.name = note;
        Session session = millrace();
        const std::string before = write_document(session.document());
        if (!session.open_link(write_link(large))) {
            ++refused;
            CHECK(session.problems().front().code == ProblemCode::too_large);
            CHECK(write_document(session.document()) == before);
            continue;
        }
        ++taken;
        Session again = millrace();
        CHECK(restore_session(again, write_session(session)).empty());
        CHECK(write_document(again.document()) == write_document(session.document()));
        Session from_file = millrace();
        CHECK(from_file.open_json(write_document(session.document())));
    }
    CHECK(taken > 0);
    CHECK(refused > 0);
}
