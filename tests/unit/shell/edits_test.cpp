#include "state/edits.hpp"

#include "body/bore.hpp"
#include "body/tail_loft.hpp"
#include "evenfall.hpp"
#include "reach.hpp"
#include "support/presets.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <algorithm>
#include <cmath>
#include <iterator>
#include <string>

using namespace evenfall;
using namespace evenfall::shell::state;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

TEST_CASE("a lure scaled by k holds k³ of the wood", "[shell][edits]") {
    document::Document plain = new_lure();
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
    const document::Document plain = new_lure();
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
    for (const char* name : {"millrace-170", "reedline-120", "quarry-230", "estuary-150"}) {
        const document::Document document = support::preset_named(name);
        const auto after = evaluate(scale_whole(1.1 * drawn_length_m(document))(document));
        CAPTURE(name,
                after.ok() ? std::string{} : after.problems().front().sentence.text(evenfall::units::metric));
        CHECK(after.ok());
    }
}

TEST_CASE("a tail drawn on any lure fits the slot that is there or one cut for it, and taken away leaves no "
          "trace of itself",
          "[shell][edits][tail]") {
    for (const char* name : {"millrace-170", "reedline-120", "quarry-230", "estuary-150"}) {
        const document::Document plain = support::preset_named(name);
        const document::Document tailed = add_tail()(plain);
        CAPTURE(name);
        REQUIRE(tailed.tail.has_value());
        CHECK(tailed.tail->tenon.has_value());
        const auto after = evaluate(tailed);
        CAPTURE(after.ok() ? std::string{}
                           : after.problems().front().path +
                                 after.problems().front().sentence.text(evenfall::units::metric));
        REQUIRE(after.ok());
        const bool had_slot =
            std::any_of(plain.pockets.begin(), plain.pockets.end(),
                        [&](const document::Pocket& p) { return p.x_to_m >= drawn_length_m(plain) - 1e-9; });
        CHECK(tailed.pockets.size() == plain.pockets.size() + (had_slot ? 0 : 1));
        if (had_slot) CHECK(write_document(remove_tail()(tailed)) == write_document(plain));
        CHECK(evaluate(scale_whole(1.2 * drawn_length_m(tailed))(tailed)).ok());
        CHECK(evaluate(scale_height(1.1 * drawn_height_m(tailed))(tailed)).ok());
    }
    CHECK(add_tail()(new_lure()).tail.has_value());
    CHECK(evaluate(add_tail()(new_lure())).ok());
}

TEST_CASE("a tail stretched keeps its form: its volume goes with each of its three sizes",
          "[shell][edits][tail]") {
    document::Document d = add_tail()(support::preset_named("millrace-170"));
    const double before = tail::shaped(*d.tail)->segments[0].volume_m3;
    stretch_tail(*d.tail, 1.5, 2.0, 1.2);
    CHECK_THAT(tail::shaped(*d.tail)->segments[0].volume_m3, WithinRel(1.5 * 2.0 * 1.2 * before, 1e-12));
}

TEST_CASE("a joint added and taken away again leaves the lure as it was", "[shell][edits]") {
    const document::Document document = support::preset_named("millrace-170");
    const document::Document cut = add_joint()(document);
    CHECK(cut.joints.size() == document.joints.size() + 1);
    CHECK(cut.segment_names.size() == cut.joints.size() + 1);
    CHECK(evaluate(cut).ok());
    std::size_t added = 0;
    while (added < document.joints.size() && cut.joints[added].at_m == document.joints[added].at_m)
        ++added;
    CHECK(write_document(remove_joint(static_cast<int>(added))(cut)) == write_document(document));
}

TEST_CASE(
    "a joint is copied into the middle of the segment behind it, with all that it is but what was weighed",
    "[shell][edits]") {
    document::Document document = support::preset_named("millrace-170");
    REQUIRE((document.joints.size() == 2 && document.joints[1].hinge));
    document.joints[1].gap_m = 0.0031;
    document.joints[1].hinge->mass_kg = 0.0011;
    const document::Document d = copy_joint(1)(document);
    REQUIRE(d.joints.size() == 3);
    const double aft_m = drawn_length_m(document);
    CHECK_THAT(d.joints[2].at_m, WithinAbs(0.5 * (document.joints[1].at_m + aft_m), 1e-4));
    CHECK(d.joints[2].gap_m == 0.0031);
    CHECK(d.joints[2].hinge->wire_m == document.joints[1].hinge->wire_m);
    CHECK_FALSE(d.joints[2].hinge->mass_kg);
    CHECK(d.joints[1].hinge->mass_kg == 0.0011);
    CHECK(d.segment_names.size() == 4);
    CHECK_THAT(copy_joint(0)(document).joints[1].at_m,
               WithinAbs(0.5 * (document.joints[0].at_m + document.joints[1].at_m), 1e-4));
    CHECK(write_document(copy_joint(7)(document)) == write_document(document));
}

TEST_CASE("segments that nobody named keep their numbers from the nose as joints come and go",
          "[shell][edits]") {
    using Names = std::vector<std::string>;
    document::Document d = support::preset_named("millrace-170");
    d.joints.clear();
    d.segment_names = {"Body"};
    for (int i = 0; i < 3; ++i)
        d = add_joint()(d);
    CHECK(d.segment_names == Names{"Body", "Segment 2", "Segment 3", "Segment 4"});
    d.segment_names[2] = "Waist";
    CHECK(remove_joint(0)(d).segment_names == Names{"Body", "Waist", "Segment 3"});
}

TEST_CASE(
    "a hole drilled by mistake is plugged: wood again but for its density, and no lead is planned for it",
    "[shell][edits]") {
    const document::Document d = support::preset_named("millrace-170");
    const document::Document plugged = plug_hole(2)(d);
    document::Document undrilled = d;
    undrilled.holes.erase(undrilled.holes.begin() + 2);
    const auto with_plug = evaluate(plugged);
    const auto without = evaluate(undrilled);
    REQUIRE((with_plug && without));
    CHECK(holes::is_plugged(plugged.holes[2]));
    CHECK(with_plug->answers.displaced_m3 == without->answers.displaced_m3);
    // π/4·d²·depth of dowel at 700 kg/m³ in place of basswood.
    const document::Hole& hole = d.holes[2];
    const ledger::Line& head = without->ledger.front();
    const double dowel_kg = 0.25 * 3.14159265358979 * hole.diameter_m * hole.diameter_m * hole.depth_m *
                            (700.0 - head.mass_kg / head.displaced_m3);
    CHECK_THAT(with_plug->answers.mass.kg - without->answers.mass.kg, WithinAbs(dowel_kg, 1e-5));
    const auto plan = plan_lead(plugged);
    REQUIRE(plan);
    for (const HolePlan& planned : plan->holes)
        CHECK(planned.hole != 2);
}

TEST_CASE("one joint's gap, reliefs and hinge for all: each keeps its place and its eyes' heights",
          "[shell][edits]") {
    document::Document d = support::preset_named("millrace-170");
    REQUIRE((d.joints.size() == 2 && d.joints[0].hinge && d.joints[1].hinge));
    d.joints[0].gap_m = 0.0031;
    d.joints[0].hinge->wire_m = 0.0011;
    d.joints[0].hinge->upper_z_m = 0.009;
    d.joints[1].hinge->upper_z_m = 0.004;
    document::Document expected = d;
    expected.joints[1] = d.joints[0];
    expected.joints[1].at_m = d.joints[1].at_m;
    expected.joints[1].hinge->upper_z_m = 0.004;
    expected.joints[1].hinge->lower_z_m = d.joints[1].hinge->lower_z_m;
    CHECK(write_document(same_for_all_joints(0)(d)) == write_document(expected));
    d.joints[1].hinge.reset();
    CHECK_FALSE(same_for_all_joints(1)(d).joints[0].hinge);
    CHECK(write_document(same_for_all_joints(7)(d)) == write_document(d));
}

TEST_CASE("parts told to belong to a segment stay with its wood when a joint comes or goes",
          "[shell][edits]") {
    document::Document document = support::preset_named("millrace-170");
    document::Part part;
    part.at_m.x = 0.15;
    part.segment = 2;
    document.parts = {part};
    document.holes.clear();
    // Without holes the first of the three segments has most room, and all behind it move up by one.
    const document::Document cut = add_joint()(document);
    REQUIRE(cut.joints[0].at_m < document.joints[0].at_m);
    CHECK(cut.parts[0].segment == 3);
    CHECK(remove_joint(0)(cut).parts[0].segment == 2);
}

TEST_CASE("a new hole keeps clear of joints, ends and other holes", "[shell][edits]") {
    const document::Document document = support::preset_named("millrace-170");
    const document::Document more = add_hole()(document);
    REQUIRE(more.holes.size() == document.holes.size() + 1);
    const auto& hole = more.holes.back();
    for (const auto& joint : document.joints)
        CHECK(std::abs(hole.x_m - joint.at_m) > hole.diameter_m);
    for (const auto& other : document.holes)
        CHECK(std::abs(hole.x_m - other.x_m) > hole.diameter_m);
    CHECK(evaluate(more).ok());
}

TEST_CASE("an edit of an entry that is not there changes nothing", "[shell][edits]") {
    const document::Document document = support::preset_named("millrace-170");
    const std::string before = write_document(document);
    for (int index : {-1, 99}) {
        CHECK(write_document(remove_hole(index)(document)) == before);
        CHECK(write_document(duplicate_hole(index)(document)) == before);
        CHECK(write_document(remove_joint(index)(document)) == before);
        CHECK(write_document(remove_part(index)(document)) == before);
        CHECK(write_document(move_coat(index, 1)(document)) == before);
        CHECK(write_document(remove_curve_point(CurveKind::back, index)(document)) == before);
        CHECK(write_document(on_hole(index, [](document::Hole& h) { h.x_m = 9.0; })(document)) == before);
    }
}

TEST_CASE("points of a curve keep their order and its ends their places", "[shell][edits]") {
    const document::Document plain = new_lure();
    const auto moved = move_curve_point(CurveKind::back, 2, 10.0, 0.012)(plain);
    CHECK(moved.shape.back[2].x_m < moved.shape.back[3].x_m);
    CHECK(moved.shape.back[2].value == 0.012);
    const auto end = move_curve_point(CurveKind::back, 0, 0.05, 0.003)(plain);
    CHECK(end.shape.back[0].x_m == 0.0);
    CHECK(end.shape.back[0].value == 0.003);
    CHECK(remove_curve_point(CurveKind::back, 0)(plain).shape.back.size() == plain.shape.back.size());
    const auto more = add_curve_point(CurveKind::belly)(plain);
    REQUIRE(more.shape.belly.size() == plain.shape.belly.size() + 1);
    for (std::size_t i = 1; i < more.shape.belly.size(); ++i) {
        CHECK(more.shape.belly[i - 1].x_m < more.shape.belly[i].x_m);
    }
}

TEST_CASE("the first coat of a stage is of the usual stuff for it", "[shell][edits]") {
    document::Document d = support::preset_named("millrace-170");
    d.coats.clear();
    for (const auto& [stage, material] :
         {std::pair{Stage::sealed, "ca"}, {Stage::painted, "acrylic_paint"}, {Stage::clear_coated, "epoxy"}})
        CHECK(add_coat(stage)(d).coats.at(0).material == material);
}

TEST_CASE("a new coat comes after those of its own stage and before later ones", "[shell][edits]") {
    document::Document document = support::preset_named("millrace-170");
    document = add_coat(Stage::painted)(document);
    for (std::size_t i = 1; i < document.coats.size(); ++i)
        CHECK(document.coats[i - 1].stage <= document.coats[i].stage);
    CHECK(evaluate(document).ok());
}

namespace {

using document::Cause;

document::Correction learnt(Cause of, std::optional<int> item, double factor = 1.5) {
    return {of, item, factor, 0.001};
}

/// The entries that corrections are of, as "cause:number" in their order.
std::string corrections_of(const document::Document& d) {
    std::string text;
    for (const auto& c : d.corrections)
        text += std::to_string(static_cast<int>(c.of)) + ":" + (c.item ? std::to_string(*c.item) : "-") + " ";
    return text;
}

std::string numbers(Cause of, std::initializer_list<int> items) {
    std::string text;
    for (const int i : items)
        text += std::to_string(static_cast<int>(of)) + ":" + std::to_string(i) + " ";
    return text;
}

document::Document lists_of_three(Cause of) {
    document::Document d = support::preset_named("millrace-170");
    d.coats.assign(3, d.coats.front());
    d.coats.back().stage = Stage::clear_coated;
    d.corrections = {learnt(of, 0), learnt(of, 1), learnt(of, 2)};
    return d;
}

} // namespace

TEST_CASE("what was learnt of a part, a hole or a coat stays with it when its list changes, and goes when it "
          "is taken away",
          "[shell][edits]") {
    struct List {
        Cause of;
        Edit remove;
        std::optional<Edit> duplicate;
    };
    const std::vector<List> lists{{Cause::part_mass, remove_part(1), duplicate_part(1)},
                                  {Cause::fill_mass, remove_hole(1), duplicate_hole(1)},
                                  {Cause::cap_mass, remove_hole(1), duplicate_hole(1)},
                                  {Cause::coat_amount, remove_coat(1), std::nullopt}};
    for (const List& list : lists) {
        const document::Document d = lists_of_three(list.of);
        CAPTURE(static_cast<int>(list.of));
        CHECK(corrections_of(list.remove(d)) == numbers(list.of, {0, 1}));
        // The copy has not been weighed.
        if (list.duplicate) CHECK(corrections_of((*list.duplicate)(d)) == numbers(list.of, {0, 1, 3}));
    }
    const document::Document coats = lists_of_three(Cause::coat_amount);
    CHECK(corrections_of(move_coat(0, 1)(coats)) == numbers(Cause::coat_amount, {1, 0, 2}));
    CHECK(corrections_of(move_coat(2, -1)(coats)) == numbers(Cause::coat_amount, {0, 2, 1}));
    CHECK(corrections_of(add_coat(coats.coats[0].stage)(coats)) == numbers(Cause::coat_amount, {0, 1, 3}));
    // Nobody else's numbers move.
    const document::Document mixed = [] {
        document::Document d = lists_of_three(Cause::part_mass);
        d.corrections = {learnt(Cause::wood_density, {}), learnt(Cause::drag, 2),
                         learnt(Cause::coat_amount, 2), learnt(Cause::fill_mass, 2),
                         learnt(Cause::carved_size, 2)};
        return d;
    }();
    CHECK(corrections_of(remove_part(0)(mixed)) == corrections_of(mixed));
    // Left out, the number stands for the first entry.
    document::Document first = lists_of_three(Cause::part_mass);
    first.corrections = {learnt(Cause::part_mass, {})};
    CHECK(remove_part(0)(first).corrections.empty());
    CHECK(corrections_of(remove_part(1)(first)) == corrections_of(first));
}

TEST_CASE("a correction adds the same to the lure's mass after another part is taken away, and as much to a "
          "coat's wherever it comes",
          "[shell][edits]") {
    const auto adds = [](document::Document d) {
        const auto with = evaluate(d);
        d.corrections.clear();
        const auto without = evaluate(d);
        REQUIRE(with.ok());
        REQUIRE(without.ok());
        return with->answers.mass.kg - without->answers.mass.kg;
    };
    document::Document d = support::preset_named("millrace-170");
    d.corrections = {learnt(Cause::part_mass, 1)};
    CHECK_THAT(adds(d), WithinRel(0.5 * d.parts[1].mass_kg, 1e-9));
    CHECK_THAT(adds(remove_part(0)(d)), WithinRel(0.5 * d.parts[1].mass_kg, 1e-9));
    d.corrections = {learnt(Cause::coat_amount, 0)};
    d.coats[0].kind = document::CoatKind::soaks;
    d.coats[0].thickness_m.reset();
    d.coats[0].mass_kg = 0.001;
    CHECK_THAT(adds(d), WithinRel(0.0005, 1e-9));
    CHECK_THAT(adds(move_coat(0, 1)(d)), WithinRel(0.0005, 1e-9));
}

TEST_CASE("what was learnt of a tail goes with it", "[shell][edits][tail]") {
    document::Document d = add_tail()(support::preset_named("millrace-170"));
    d.corrections = {learnt(Cause::tail, 0), learnt(Cause::part_mass, 0), learnt(Cause::tail, 1)};
    CHECK(corrections_of(remove_tail()(d)) == numbers(Cause::part_mass, {0}));
}

TEST_CASE("what was learnt and read of a segment stays with its wood when a joint comes or goes, and is "
          "believed of no other wood",
          "[shell][edits]") {
    document::Document d = support::preset_named("millrace-170");
    REQUIRE(d.joints.size() == 2);
    for (int s = 0; s < 3; ++s) {
        document::Reading r;
        r.segment = s;
        r.mass_kg = 0.01 + 0.001 * s;
        d.log.push_back(r);
        d.corrections.push_back(learnt(Cause::carved_size, s, 1.0 + 0.01 * s));
    }
    d.log.push_back({});
    d.log.back().mass_kg = 0.03;
    d.corrections.push_back(learnt(Cause::carved_size, {}));

    const document::Document glued = remove_joint(0)(d);
    CHECK(corrections_of(glued) ==
          numbers(Cause::carved_size, {1}) + std::to_string(static_cast<int>(Cause::carved_size)) + ":- ");
    CHECK(glued.corrections[0].factor == d.corrections[2].factor);
    // The readings of its two halves are kept, excluded, and say what they were of.
    REQUIRE(glued.log.size() == 4);
    for (std::size_t i : {0u, 1u}) {
        CHECK(glued.log[i].excluded);
        CHECK(glued.log[i].segment == 0);
        CHECK(glued.log[i].note.find(d.segment_names[i]) != std::string::npos);
    }
    CHECK((glued.log[2].segment == 1 && !glued.log[2].excluded && glued.log[2].note.empty()));
    CHECK((!glued.log[3].segment && !glued.log[3].excluded && glued.log[3].note.empty()));
    CHECK(evaluate(glued).ok());

    // Cut, both halves are of the wood that was measured; the joint taken away again, nothing has been learnt
    // anew.
    const document::Document cut = add_joint()(d);
    REQUIRE(cut.joints.size() == 3);
    int at = 0;
    while (at < 2 &&
           cut.joints[static_cast<std::size_t>(at)].at_m == d.joints[static_cast<std::size_t>(at)].at_m)
        ++at;
    CAPTURE(at);
    for (const auto& c : cut.corrections) {
        if (c.item)
            CHECK(c.factor ==
                  d.corrections[static_cast<std::size_t>(*c.item > at ? *c.item - 1 : *c.item)].factor);
    }
    CHECK(cut.corrections.size() == 5);
    for (int s = 0; s < 3; ++s) {
        const document::Reading& r = cut.log[static_cast<std::size_t>(s)];
        CHECK(r.excluded == (s == at));
        CHECK(r.segment == (s > at ? s + 1 : s));
    }
    CHECK(evaluate(cut).ok());
    CHECK(corrections_of(remove_joint(at)(cut)) == corrections_of(d));
}

TEST_CASE("a part told to belong to a segment that is cut goes with the half it sits in", "[shell][edits]") {
    document::Document document = support::preset_named("millrace-170");
    document.holes.clear();
    for (const double x : {-0.001, 0.001}) {
        document::Part part;
        part.segment = 0;
        part.at_m.x = add_joint()(document).joints[0].at_m + x;
        document.parts = {part};
        const document::Document cut = add_joint()(document);
        REQUIRE(cut.joints[0].at_m < document.joints[0].at_m);
        CHECK(cut.parts[0].segment == (x > 0.0 ? 1 : 0));
        CHECK(remove_joint(0)(cut).parts[0].segment == 0);
    }
}

TEST_CASE("pockets round a joint's pin go along with the joint, and the others stay", "[shell][edits]") {
    const document::Document d = support::preset_named("millrace-170");
    document::Joint joint = d.joints[0];
    joint.at_m -= 0.003;
    const document::Document moved = set_joint(0, joint)(d);
    CHECK_THAT(moved.pockets[0].x_from_m, WithinAbs(d.pockets[0].x_from_m - 0.003, 1e-12));
    CHECK_THAT(moved.pockets[1].x_to_m, WithinAbs(d.pockets[1].x_to_m - 0.003, 1e-12));
    for (std::size_t p = 2; p < d.pockets.size(); ++p)
        CHECK(moved.pockets[p].x_from_m == d.pockets[p].x_from_m);
    CHECK(write_document(set_joint(7, joint)(d)) == write_document(d));
}

TEST_CASE("joints spread evenly make segments of one length, each pin in its pockets as before",
          "[shell][edits]") {
    const document::Document d = support::preset_named("millrace-170");
    const document::Document even = spread_joints()(d);
    CHECK_THAT(even.joints[0].at_m, WithinAbs(0.0567, 1e-9)); // 170 mm in three, to 0.1 mm
    CHECK_THAT(even.joints[1].at_m, WithinAbs(0.1133, 1e-9));
    for (std::size_t p = 0; p < 4; ++p) {
        const std::size_t j = p / 2;
        CHECK_THAT(even.pockets[p].x_from_m - even.joints[j].at_m,
                   WithinAbs(d.pockets[p].x_from_m - d.joints[j].at_m, 1e-12));
    }
    CHECK(even.pockets[4].x_from_m == d.pockets[4].x_from_m);
}

TEST_CASE("a hinge that is drawn weighs itself, unless its wire is typed in as parts", "[shell][edits]") {
    document::Document d = support::preset_named("millrace-170");
    d.joints[0].hinge.reset();
    CHECK(draw_hinge(0)(d).joints[0].hinge->weighs);
    document::Part eyes;
    eyes.embedded = 0.6;
    eyes.at_m = {0.058, 0.0, 0.0};
    d.parts.push_back(eyes);
    CHECK_FALSE(draw_hinge(0)(d).joints[0].hinge->weighs);
}

TEST_CASE("what was learnt of a hinge's wire goes with its joint, and so does what was weighed",
          "[shell][edits]") {
    document::Document d = support::preset_named("millrace-170");
    d.joints[1].hinge->mass_kg = 0.0011;
    d.corrections = {{document::Cause::hinge_mass, 1, 1.1, std::nullopt}};
    CHECK_FALSE(same_for_all_joints(0)(d).joints[0].hinge->mass_kg);
    CHECK(same_for_all_joints(0)(d).joints[1].hinge->mass_kg == 0.0011);
    CHECK(remove_joint(0)(d).corrections.at(0).item == 0);
    CHECK(remove_joint(1)(d).corrections.empty());
}
