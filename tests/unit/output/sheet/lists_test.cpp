// The lists of the sheet against the sums they stand for.

#include "body/keep_out.hpp"
#include "document/link.hpp"
#include "look/font_data.hpp"
#include "materials/solids.hpp"
#include "output/sheet/parts.hpp"
#include "support/small_lures.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <cmath>
#include <map>
#include <numbers>
#include <string>
#include <variant>
#include <vector>

using namespace evenfall;
using Catch::Matchers::WithinAbs;
using Catch::Matchers::WithinRel;

namespace {

SheetOptions with_faces() {
    SheetOptions options;
    options.typefaces = {
        {reinterpret_cast<const char*>(shell::look::font_regular), shell::look::font_regular_size},
        {reinterpret_cast<const char*>(shell::look::font_semibold), shell::look::font_semibold_size}};
    return options;
}

struct Worked {
    document::Document document;
    SheetOptions options;
    Evaluation evaluation;
    sheet::SheetInput job;

    explicit Worked(document::Document d)
        : document(std::move(d)), evaluation(*evaluate(document)),
          job{document, evaluation, options, {}, *joints::joint_answers(document), {}} {}
};

bool any_covers(const std::vector<fittings::KeepOut>& zones, double x, double y, double z) {
    for (const auto& zone : zones) {
        const shape::Box box = zone.with_wall();
        if (x > box.x_from_m && x < box.x_to_m && y > box.y_from_m && y < box.y_to_m && z > box.z_from_m &&
            z < box.z_to_m)
            return true;
    }
    return false;
}

document::Document hinged() {
    document::Document d = support::fish();
    for (auto& joint : d.joints) {
        joint.hinge = document::Hinge{};
        joint.hinge->pin_aft_m = 0.004;
    }
    return d;
}

} // namespace

TEST_CASE("a fill's stock holds the mass of the fill, and stock half as wide is four times as long",
          "[sheet]") {
    document::Document d = support::fish();
    for (auto& hole : d.holes) {
        hole.depth_m = 0.008;
        hole.fill = document::Fill{"lead", 0.001, {}, {}};
    }
    const Worked whole(d);
    const auto pieces = sheet::fill_pieces(whole.job);
    REQUIRE(pieces.size() == d.holes.size());
    const double density = materials::find_solid("lead")->density_kg_m3.value;
    for (const auto& piece : pieces) {
        const double volume = piece.cut_m * 0.25 * std::numbers::pi * piece.diameter_m * piece.diameter_m;
        CHECK_THAT(volume * density, WithinRel(0.001, 1e-9));
    }
    d.holes[0].fill->mass_kg = 0.0002;
    const double wide = sheet::fill_pieces(Worked(d).job)[0].cut_m;
    d.holes[0].fill->stock_diameter_m = 0.5 * d.holes[0].diameter_m;
    CHECK_THAT(sheet::fill_pieces(Worked(d).job)[0].cut_m, WithinRel(4.0 * wide, 1e-9));
}

TEST_CASE("every hinge drawn has its eyes and its pin in the cut list, with the lengths of the Joints step",
          "[sheet]") {
    const Worked worked(hinged());
    const auto pieces = sheet::hinge_pieces(worked.job);
    REQUIRE(pieces.size() == 2 * worked.document.joints.size());
    for (std::size_t j = 0; j < worked.document.joints.size(); ++j) {
        const auto& joint = worked.job.joints.joints[j];
        CHECK(pieces[2 * j].count == static_cast<int>(joint.eyes.size()));
        CHECK(pieces[2 * j].cut_m == joint.eye.cut_m);
        CHECK(pieces[2 * j].finished_m == joint.eye.finished_m);
        CHECK(pieces[2 * j + 1].diameter_m == worked.document.joints[j].hinge->pin_diameter_m);
        // A pin ends 2 mm inside belly and back.
        const double half = worked.evaluation.body.lines->at(joint.place.pin.x_m).half_height_m;
        CHECK_THAT(pieces[2 * j + 1].cut_m, WithinAbs(2.0 * half - 0.004, 1e-12));
    }
}

TEST_CASE("eyes that hang in each other are cut for both sides and have no pin", "[sheet]") {
    document::Document d = hinged();
    d.joints.resize(1);
    d.segment_names.resize(2);
    d.joints[0].hinge->kind = document::HingeKind::linked;
    const Worked worked(d);
    const auto pieces = sheet::hinge_pieces(worked.job);
    REQUIRE(pieces.size() == 1);
    CHECK(pieces[0].count == 2 * static_cast<int>(worked.job.joints.joints[0].eyes.size()));
}

TEST_CASE("no bit may come nearer to a pin, a twist or a pocket than a thin wall", "[sheet]") {
    const Worked worked(hinged());
    const auto zones = fittings::keep_out(worked.document, worked.evaluation.body);
    const auto covered = [&](double x, double y, double z) { return any_covers(zones, x, y, z); };
    constexpr double inside = 1e-6;
    for (std::size_t j = 0; j < worked.document.joints.size(); ++j) {
        const auto& place = worked.job.joints.joints[j].place;
        const double reach = 0.5 * place.hinge.pin_diameter_m + joints::thin_wall_m;
        for (const double side : {-1.0, 1.0}) {
            CHECK(covered(place.pin.x_m + side * (reach - inside), place.pin.y_m, 0.0));
            CHECK(covered(place.pin.x_m, place.pin.y_m + side * (reach - inside), 0.0));
        }
        const double face = worked.evaluation.body.segments[j].x_to_m;
        for (const auto& eye : place.eyes) {
            CHECK(covered(face - inside, place.pin.y_m, eye.z_m));
            CHECK(covered(face - place.hinge.glued_m - joints::thin_wall_m + inside, place.pin.y_m, eye.z_m));
        }
    }
    for (const auto& pocket : worked.document.pockets) {
        CHECK(covered(pocket.x_from_m - joints::thin_wall_m + inside, pocket.y_m,
                      pocket.z_from_m.value_or(0.0) + inside));
        CHECK(covered(pocket.x_to_m + joints::thin_wall_m - inside, pocket.y_m,
                      pocket.z_from_m.value_or(0.0) + inside));
    }
    CHECK_FALSE(covered(0.5 * worked.document.joints[0].at_m, 0.02, 0.05));
}

TEST_CASE("no bit may come nearer than a thin wall to the legs of linked eyes, which stand in both segments",
          "[sheet]") {
    for (const auto eyes_on : {document::EyesOn::fore, document::EyesOn::aft}) {
        document::Document d = hinged();
        d.pockets.clear();
        for (auto& joint : d.joints) {
            joint.hinge->kind = document::HingeKind::linked;
            joint.hinge->eyes_on = eyes_on;
        }
        const Worked worked(d);
        const auto zones = fittings::keep_out(worked.document, worked.evaluation.body);
        constexpr double inside = 1e-6;
        for (std::size_t j = 0; j < d.joints.size(); ++j) {
            const auto& place = worked.job.joints.joints[j].place;
            const double end = place.hinge.glued_m + joints::thin_wall_m - inside;
            const double fore_face = worked.evaluation.body.segments[j].x_to_m;
            const double aft_face = worked.evaluation.body.segments[j + 1].x_from_m;
            for (const auto& eye : place.eyes) {
                for (const double x :
                     {fore_face - inside, fore_face - end, aft_face + inside, aft_face + end})
                    CHECK(any_covers(zones, x, place.pin.y_m, eye.z_m));
            }
        }
    }
}

TEST_CASE("beside a pin off the middle the legs go in where the relieved face has fallen back to, and so "
          "does what no bit may meet",
          "[sheet]") {
    document::Document d = hinged();
    d.pockets.clear();
    d.holes.clear();
    constexpr double off_m = 0.004;
    d.joints[0].relief_fore_rad = d.joints[0].relief_aft_rad = std::atan(0.5);
    d.joints[0].hinge->kind = document::HingeKind::linked;
    d.joints[0].hinge->pin_off_m = off_m;
    const Worked worked(d);
    const auto zones = fittings::keep_out(worked.document, worked.evaluation.body);
    const auto& place = worked.job.joints.joints[0].place;
    // Half of what one goes aside: 2 mm behind the face's middle on either side of the joint.
    const double reach_m = 0.5 * off_m + place.hinge.glued_m + joints::thin_wall_m - 1e-6;
    for (const auto& eye : place.eyes) {
        CHECK(any_covers(zones, worked.evaluation.body.segments[0].x_to_m - reach_m, off_m, eye.z_m));
        CHECK(any_covers(zones, worked.evaluation.body.segments[1].x_from_m + reach_m, off_m, eye.z_m));
    }
}

TEST_CASE("every table of the paper is a table for those who hear it, and every word of a table is there",
          "[sheet]") {
    const SheetOptions options = with_faces();
    const auto layout = sheet_layout(hinged(), options);
    REQUIRE(layout.ok());
    int rows = 0;
    for (const auto& page : layout->pages) {
        std::string said;
        for (const auto& one : page.said) {
            rows += one.kind == sheet::SpokenText::Kind::row;
            for (const auto& cell : one.cells) {
                said += cell;
                said += ' ';
            }
        }
        CHECK_FALSE(said.empty());
        // Semibold words of table heads and headings are all heard; the frame's own title and subject are not
        // part of it.
        for (const auto& item : page.items) {
            const auto* text = std::get_if<sheet::Text>(&item);
            if (text == nullptr || text->size_mm != 2.9 || text->weight != sheet::Weight::semibold) continue;
            INFO(page.title << ": " << text->words);
            CHECK(said.find(text->words) != std::string::npos);
        }
    }
    CHECK(rows > 30);
}

TEST_CASE("an address stands before the share text, and one that is none is refused", "[sheet]") {
    SheetOptions options = with_faces();
    options.address = "https://bench.example/evenfall/";
    const auto html = build_sheet(support::fish(), options);
    REQUIRE(html.ok());
    CHECK(html->find("https://bench.example/evenfall/#" + write_link(support::fish())) != std::string::npos);
    for (const char* bad : {"https://bench.example/#x", "two words", "line\nbreak"}) {
        options.address = bad;
        const auto refused = build_sheet(support::fish(), options);
        REQUIRE_FALSE(refused.ok());
        CHECK(refused.problems().front().path == "/address");
    }
}

TEST_CASE("the pages for a page hold no style and are those of the file", "[sheet]") {
    SheetOptions options = with_faces();
    const auto file = build_sheet(support::fish(), options);
    options.format = SheetFormat::html_pages;
    const auto leaves = build_sheet(support::fish(), options);
    REQUIRE(file.ok());
    REQUIRE(leaves.ok());
    CHECK(file->find(*leaves) != std::string::npos);
    CHECK(leaves->find("style") == std::string::npos);
}

TEST_CASE("the sheet names the surfaces that a coat lies on", "[sheet]") {
    document::Document d = support::fish();
    d.pockets = {{"Slot", 0.052, 0.058, 0.0, 0.004, -0.004, 0.004, true}};
    document::Coat coat;
    coat.thickness_m = 0.0003;
    const auto says = [&](const char* words) {
        d.coats = {coat};
        const auto layout = sheet_layout(d, with_faces());
        REQUIRE(layout.ok());
        for (const auto& page : layout->pages) {
            for (const auto& item : page.items) {
                if (const auto* text = std::get_if<sheet::Text>(&item); text && text->words == words)
                    return true;
            }
        }
        return false;
    };
    CHECK(says("skin, joints"));
    CHECK_FALSE(says("pockets"));
    coat.on_skin = coat.on_joint_faces = false;
    coat.on_pockets = true;
    CHECK(says("pockets"));
    CHECK_FALSE(says("skin, joints"));
    CHECK_FALSE(says("joints"));
}

TEST_CASE("the sheet prints what is noted of a coat, and nothing for a coat without a note", "[sheet]") {
    document::Document d = support::fish();
    document::Coat coat;
    coat.name = "Back";
    coat.thickness_m = 0.0003;
    const auto says = [&](const char* words) {
        d.coats = {coat};
        const auto layout = sheet_layout(d, with_faces());
        REQUIRE(layout.ok());
        for (const auto& page : layout->pages) {
            for (const auto& item : page.items) {
                if (const auto* text = std::get_if<sheet::Text>(&item); text && text->words == words)
                    return true;
            }
        }
        return false;
    };
    CHECK_FALSE(says("Back: olive, two thin coats"));
    coat.note = "olive, two thin coats";
    CHECK(says("Back: olive, two thin coats"));
}

TEST_CASE("the sheet parts the epoxy of each film by the usual ratios, loss included, and the parts add up "
          "to the mix",
          "[sheet]") {
    document::Document d = support::fish();
    document::Coat clear;
    clear.name = "Clear";
    clear.thickness_m = 0.0003;
    d.coats = {clear};
    const Worked worked(d);
    const double on_four_kg = 4.0 * sheet::ledger_kg(worked.job, ledger::Kind::coat, 0);
    REQUIRE(on_four_kg > 0.0);
    SheetOptions options = with_faces();
    options.lures = 4;
    const auto layout = sheet_layout(d, options);
    REQUIRE(layout.ok());
    // What stands in the table beside a ratio, from left to right.
    const auto beside = [&](const std::string& label) {
        std::map<double, double> figures;
        for (const auto& page : layout->pages) {
            const sheet::Text* found = nullptr;
            for (const auto& item : page.items) {
                if (const auto* text = std::get_if<sheet::Text>(&item); text && text->words == label)
                    found = text;
            }
            if (found == nullptr) continue;
            for (const auto& item : page.items) {
                const auto* text = std::get_if<sheet::Text>(&item);
                if (text && text->at.y_mm == found->at.y_mm && text->at.x_mm > found->at.x_mm)
                    figures[text->at.x_mm] = std::stod(text->words);
            }
        }
        std::vector<double> row;
        for (const auto& [x, figure] : figures)
            row.push_back(figure);
        return row;
    };
    // One figure for what is lost, wherever it is told.
    int told = 0;
    for (const auto& page : layout->pages) {
        for (const auto& said : page.said) {
            for (const std::string& cell : said.cells) {
                CHECK(cell.find("third of") == std::string::npos);
                if (cell.find("cup and brush") == std::string::npos) continue;
                CHECK(cell.find("35 %") != std::string::npos);
                ++told;
            }
        }
    }
    CHECK(told == 2);
    const double mixed_g = 1000.0 * on_four_kg / 0.65;
    const auto weight = beside("2 : 1 by weight");
    REQUIRE(weight.size() == 4);
    CHECK_THAT(weight[0], WithinAbs(mixed_g * 2.0 / 3.0, 0.051));
    CHECK_THAT(weight[1], WithinAbs(mixed_g / 3.0, 0.051));
    const auto volume = beside("1 : 1 by volume");
    REQUIRE(volume.size() == 4);
    CHECK_THAT(volume[2], WithinAbs(volume[3], 0.051));
    CHECK_THAT(volume[0] + volume[1], WithinAbs(mixed_g, 0.11));
    CHECK_THAT(volume[0] / volume[1], WithinAbs(1.15 / 0.98, 0.03));
}

TEST_CASE(
    "a lure that hangs still is said to do so on the cover, in the batch and where it hangs still in the tub",
    "[sheet]") {
    // A sinker where the lure has its middle makes it as heavy as its water.
    document::Document d = support::fish();
    d.tub = d.water;
    document::Part sinker;
    sinker.name = "Sinker";
    sinker.material = "lead";
    sinker.stage = Stage::rigged;
    sinker.mass_kg = 0.001;
    sinker.at_m = {0.05, 0.0, 0.0};
    for (auto& hole : d.holes)
        hole.fill.reset();
    d.parts.push_back(sinker);
    const auto in_water_kg = [&](double mass_kg) {
        d.parts.back().mass_kg = mass_kg;
        return evaluate(d)->answers.in_water.kg;
    };
    const double at_1 = in_water_kg(0.001), at_2 = in_water_kg(0.002);
    REQUIRE(at_1 < 0.0);
    const double still = in_water_kg(0.001 - at_1 * 0.001 / (at_2 - at_1));
    REQUIRE(std::abs(still) < 1e-8);
    SheetOptions options = with_faces();
    options.format = SheetFormat::html_pages;
    const auto times_said = [](const std::string& html, const std::string& words) {
        int found = 0;
        for (std::size_t at = html.find(words); at != std::string::npos; at = html.find(words, at + 1))
            ++found;
        return found;
    };
    const auto sheet = build_sheet(d, options);
    REQUIRE(sheet.ok());
    CHECK(times_said(*sheet, "<td>suspends</td>") == 2);
    const auto batch = build_batch_sheet({{d, 3}}, options);
    REQUIRE(batch.ok());
    CHECK(times_said(*batch, "<td>suspends</td>") == 1);
    CHECK(times_said(*batch, "<td>floats</td>") == 0);
}

TEST_CASE("the weigh-in card has a line for beats counted, in metres or in feet", "[sheet]") {
    SheetOptions options = with_faces();
    options.format = SheetFormat::html_pages;
    const auto card_says = [&](const std::string& words) {
        const auto sheet = build_sheet(support::fish(), options);
        REQUIRE(sheet.ok());
        return sheet->find(words) != std::string::npos;
    };
    CHECK(card_says("______ beats over ______ m."));
    options.units = units::inches;
    CHECK(card_says("______ beats over ______ ft."));
}
