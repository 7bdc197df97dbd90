// Every sentence of the core, told to somebody who works in inches, is free of millimetres, and the other way
// round.

#include "base/trade.hpp"
#include "document/field_table.hpp"
#include "document/walk.hpp"
#include "evenfall.hpp"
#include "look/font_data.hpp"
#include "materials/moisture.hpp"
#include "output.hpp"
#include "picture.hpp"
#include "support/presets.hpp"
#include "water.hpp"
#include "workshop.hpp"

#include <catch2/catch_test_macros.hpp>

#include <nlohmann/json.hpp>

#include <regex>
#include <set>

using namespace evenfall;
using nlohmann::json;

namespace {

constexpr const char* demo_lures[] = {"millrace-170", "reedline-120", "quarry-230", "estuary-150"};

/// Sentences with where they were met, each once.
class Told {
public:
    void add(const Sentence& sentence) {
        if (sentence.empty()) return;
        inches_.insert(sentence.text(units::inches));
        metric_.insert(sentence.text(units::metric));
    }
    void add(const Problems& problems) {
        for (const Problem& problem : problems) {
            add(problem.limit);
            add(problem.sentence);
        }
    }
    template <class T>
    void add_refusal(const Outcome<T>& outcome) {
        if (!outcome.ok()) add(outcome.problems());
    }

    void check() const {
        REQUIRE(inches_.size() > 20);
        // N·mm is a torque; cm³ a volume.
        const std::regex of_metric("(^|[^·\\w])(mm|cm|µm|mm/s)([^\\w²³]|$)|°C|[0-9] m([^\\w]|$)|metre");
        const std::regex of_inches(
            "[0-9] in(?! [a-z])|[0-9] in (deep|wide|long|thick)|\\binch|°F|s/ft|\\bmil\\b");
        for (const std::string& one : inches_) {
            INFO(one);
            CHECK_FALSE(std::regex_search(one, of_metric));
        }
        for (const std::string& one : metric_) {
            INFO(one);
            CHECK_FALSE(std::regex_search(one, of_inches));
        }
    }
    [[nodiscard]] bool has(const std::string& part) const {
        return std::any_of(inches_.begin(), inches_.end(),
                           [&](const std::string& one) { return one.find(part) != std::string::npos; });
    }

private:
    std::set<std::string> inches_, metric_;
};

/// Each number of the tree in turn.
template <class Change>
void each_number(json& tree, const Change& change) {
    for (auto& node : tree) {
        if (node.is_number()) {
            const json kept = node;
            change(node);
            node = kept;
        } else if (node.is_structured()) {
            each_number(node, change);
        }
    }
}

/// All that is said of a lure that can be built.
void add_answers(Told& told, const document::Document& lure) {
    const auto evaluation = evaluate(lure);
    REQUIRE(evaluation.ok());
    told.add(evaluation->answers.warnings);
    if (const auto plan = plan_lead(lure); plan.ok())
        told.add(plan->shortfalls);
    else
        told.add(plan.problems());
    if (const auto now = do_now(lure); now.ok()) {
        told.add(now->shortfalls);
        for (const Sentence& step : now->steps)
            told.add(step);
    }
    if (const auto sure = uncertainty(lure); sure.ok()) {
        told.add(sure->trim.sentence);
        for (const ReadingFit& fit : sure->readings) {
            told.add(fit.warning);
            for (const Sentence& why : fit.explanations)
                told.add(why);
        }
        for (const NextReading& next : sure->next) {
            for (const Sentence& step : output::reading_steps(next.kind))
                told.add(step);
        }
    }
    if (const auto joints = joints::joint_answers(lure); joints.ok()) told.add(joints->warnings);
    glue::GlueRequest slow;
    slow.fitting_s = 3000.0;
    if (const auto glued = glue::glue(lure, evaluation->body, slow); glued.ok()) told.add(glued->warnings);
    if (const auto water = output::in_water(lure, *evaluation, 2.0); water.ok()) told.add(water->warnings);
}

document::Document asked(document::Document lure, double in_water_kg, double pitch_rad) {
    lure.targets.by = document::TargetBy::in_water;
    lure.targets.in_water_kg = in_water_kg;
    lure.targets.pitch_rad = pitch_rad;
    return lure;
}

document::Reading reading(document::ReadingKind kind, Stage stage, double mass_kg) {
    document::Reading r;
    r.kind = kind;
    r.stage = stage;
    r.mass_kg = mass_kg;
    return r;
}

} // namespace

TEST_CASE("what is said of the demo lures speaks the reader's units alone", "[units][sentence]") {
    Told told;
    for (const char* name : demo_lures) {
        const document::Document lure = support::preset_named(name);
        add_answers(told, lure);
        // What cannot be reached, and what has gone wrong at the bench.
        for (const double kg : {-0.5, 0.5})
            add_answers(told, asked(lure, kg, units::rad_from_deg(kg > 0.0 ? 40.0 : -40.0)));
        document::Document logged = lure;
        logged.log = {reading(document::ReadingKind::dry_weight, Stage::carved, 0.9),
                      reading(document::ReadingKind::hung_in_water, Stage::sealed, 0.03)};
        document::Reading shown;
        shown.kind = document::ReadingKind::freeboard;
        shown.stage = Stage::rigged;
        shown.freeboard_m = 0.05;
        logged.log.push_back(shown);
        add_answers(told, logged);
        for (document::Reading& r : logged.log)
            r.stands = true; // and the advice that rests on it
        add_answers(told, logged);
        // Hinges that bind, gape and stand in too little wood.
        document::Document tight = lure;
        for (document::Joint& joint : tight.joints) {
            if (!joint.hinge) continue;
            joint.hinge->glued_m = 0.03;
            joint.hinge->turns = 1.0;
            joint.hinge->pin_diameter_m = 0.5 * joint.hinge->eye_inside_m;
        }
        if (evaluate(tight).ok()) add_answers(told, tight);
    }
    for (const auto& kind : document::table::reading_kinds) {
        for (const Sentence& step : output::reading_steps(kind.value))
            told.add(step);
    }
    // Seen to be there, so that the walk is one.
    for (const char* part : {"is full at", "short", "bit ", "Keep the belly clear", "19 11/16 in",
                             "20 inches", "would fit", "that it is glued deep"}) {
        INFO(part);
        CHECK(told.has(part));
    }
    told.check();
}

TEST_CASE("refusals of documents speak the reader's units alone", "[units][sentence]") {
    Told told;
    for (const char* name : demo_lures) {
        json tree = json::parse(support::preset_text(name));
        each_number(tree, [&](json& number) {
            const double was = number.get<double>();
            for (const double other : {1e6, -1e6, 0.0, 1.7 * was, 0.3 * was, was + 4.0}) {
                number = other;
                const auto read = read_document(tree.dump());
                told.add_refusal(read);
                if (!read.ok()) continue;
                const auto evaluation = evaluate(*read);
                told.add_refusal(evaluation);
                if (evaluation.ok()) told.add(evaluation->answers.warnings);
            }
        });
    }
    CHECK(told.has("the limit is 0 to"));
    CHECK(told.has("of wood to the end of its segment"));
    told.check();
}

TEST_CASE("refusals of what is asked beside the document speak the reader's units alone",
          "[units][sentence]") {
    Told told;
    for (const double wire_m : {0.0, 0.5}) {
        wire::TwistedEye eye;
        eye.wire_m = wire_m;
        eye.inside_m = eye.leg_m = 4.0 * wire_m;
        eye.pitch_m = 1.0;
        told.add_refusal(wire::twisted_eye(eye, 7900.0, 0.0));
    }
    for (const double off : {-1.0, 1e6}) {
        told.add(materials::water_problems(off, off, "/water"));
        told.add_refusal(materials::density_at_moisture(off, off, off));
        materials::Board board;
        board.length_m = board.width_m = board.height_m = board.mass_kg = off;
        told.add_refusal(materials::weigh_board(board, *materials::find_wood("basswood"), off));
        resin::MixRequest mix;
        mix.ratio.resin = mix.ratio.hardener = 1.0;
        mix.on_lure_kg = mix.label.batch_kg = off;
        mix.mix_c = mix.room_c = mix.label.temperature_c = off;
        told.add_refusal(resin::mix(mix));
        told.add_refusal(finished_fall_for_tub(support::preset_named("millrace-170"), Stage::sealed, off));
    }
    resin::MixRequest thick;
    thick.on_lure_kg = 0.5;
    thick.lures = 2;
    thick.ratio.resin = thick.ratio.hardener = 1.0;
    if (const auto mix = resin::mix(thick); mix.ok()) told.add(mix->warnings);
    for (const double distance_m : {0.0, 0.01, 1.9}) {
        picture::Contour contour;
        for (int k = 0; k < 40; ++k)
            contour.points.push_back(
                {200.0 + 150.0 * std::cos(0.157 * k), 200.0 + 40.0 * std::sin(0.157 * k)});
        picture::Scale scale;
        scale.from = {0.0, 0.0};
        scale.to = {400.0, 0.0};
        scale.distance_m = distance_m;
        scale.tolerance_m = distance_m == 0.0 ? 1.0 : 0.0003;
        told.add_refusal(picture::profile_from(contour, scale));
    }
    const auto lure = support::preset_named("millrace-170");
    told.add_refusal(output::in_water(lure, *evaluate(lure), 1e6));
    told.check();
}

namespace {

SheetOptions sheet_in(const units::UnitSet& units) {
    SheetOptions options;
    options.units = units;
    options.lures = 3;
    options.typefaces = {
        {reinterpret_cast<const char*>(shell::look::font_regular), shell::look::font_regular_size},
        {reinterpret_cast<const char*>(shell::look::font_semibold), shell::look::font_semibold_size}};
    return options;
}

/// What is printed and what is read aloud.
std::vector<std::string> words_of(const sheet::Layout& layout) {
    std::vector<std::string> words;
    for (const sheet::Page& page : layout.pages) {
        for (const sheet::SpokenText& said : page.said)
            words.insert(words.end(), said.cells.begin(), said.cells.end());
        for (const sheet::Item& item : page.items) {
            if (const auto* text = std::get_if<sheet::Text>(&item)) words.push_back(text->words);
        }
    }
    return words;
}

} // namespace

TEST_CASE("a build sheet in inches has no millimetre on it", "[units][sheet]") {
    const std::regex of_metric("(^|[^·\\w])(mm|cm|µm|mm/s)([^\\w²³]|$)|°C|metre");
    for (const char* name : demo_lures) {
        const auto layout = sheet_layout(support::preset_named(name), sheet_in(units::inches));
        REQUIRE(layout.ok());
        const auto words = words_of(*layout);
        CHECK(words.size() > 300);
        for (const std::string& one : words) {
            INFO(name << ": " << one);
            CHECK_FALSE(std::regex_search(one, of_metric));
        }
    }
}

TEST_CASE("the sheet's paper is the usual one of the units, and another where it is chosen",
          "[units][sheet]") {
    const auto lure = support::preset_named("millrace-170");
    const auto width_mm = [&](const units::UnitSet& units, std::optional<SheetPaper> paper) {
        SheetOptions options = sheet_in(units);
        options.paper = paper;
        return sheet_layout(lure, options)->width_mm;
    };
    CHECK(width_mm(units::metric, {}) == 210.0);
    CHECK(width_mm(units::inches, {}) == 215.9);
    CHECK(width_mm(units::metric, SheetPaper::letter) == 215.9);
    CHECK(width_mm(units::inches, SheetPaper::a4) == 210.0);
}

TEST_CASE("on a sheet in inches a bit stands by its own name, and a depth as a fraction", "[units][sheet]") {
    document::Document lure = support::preset_named("millrace-170");
    REQUIRE_FALSE(lure.holes.empty());
    lure.holes[0].diameter_m = units::m_from_inch(0.25);
    lure.holes[0].depth_m = units::m_from_inch(0.375);
    lure.holes[0].fill.reset();
    const auto layout = sheet_layout(lure, sheet_in(units::inches));
    REQUIRE(layout.ok());
    bool found = false;
    for (const sheet::Page& page : layout->pages) {
        for (const sheet::SpokenText& row : page.said) {
            const auto& cells = row.cells;
            if (cells.size() != 10 || cells[1].find("BELLY") == std::string::npos) continue;
            found = found || (cells[2] == "0.250" && cells[3] == "1/4 in" && cells[4] == "3/8");
        }
    }
    CHECK(found);
}

TEST_CASE("JSON tells sentences in metric units unless asked for inches; its numbers never change",
          "[units][json]") {
    const auto plan = plan_lead(asked(support::preset_named("millrace-170"), 0.5, 0.0));
    REQUIRE(plan.ok());
    REQUIRE_FALSE(plan->met);
    json usual = json::parse(output::lead_json(*plan)),
         inches = json::parse(output::lead_json(*plan, units::inches));
    CHECK(usual == json::parse(output::lead_json(*plan, units::metric)));
    CHECK(usual["shortfalls"] != inches["shortfalls"]);
    usual.erase("shortfalls");
    inches.erase("shortfalls");
    for (json* tree : {&usual, &inches}) {
        (*tree).erase("warnings");
        (*tree)["before"].erase("warnings");
    }
    CHECK(usual == inches);
}
