// Every field of a document has its row on the page.

#include "document/walk.hpp"
#include "unit/shell/bench_of_tests.hpp"
#include "unit/shell/full_lure.hpp"

#include <nlohmann/json.hpp>

#include <map>
#include <set>

using namespace evenfall;
using namespace evenfall::shell::bench_of_tests;

namespace {

/// Fields that a builder does not set on the page, each with its reason.
const std::map<std::string, const char*> excuses{
    {"evenfall", "the version of the form, no decision of the builder"},
    {"corrections.of", "learnt from readings, never typed"},
    {"corrections.item", "learnt from readings, never typed"},
    {"corrections.factor", "learnt from readings, never typed"},
    {"corrections.spread_percent", "learnt from readings, never typed"},
    {"log.date", "the device dates a reading"},
    {"log.foretold_per_m", "written by what foretells the beats"},
    {"log.before_change", "kept when the bench's advice is followed"},
    {"holes.before.change", "kept when the bench's advice is followed"},
    {"holes.before.depth_mm", "kept when the bench's advice is followed"},
    {"holes.before.fill.material", "kept when the bench's advice is followed"},
    {"holes.before.fill.mass_g", "kept when the bench's advice is followed"},
    {"holes.before.fill.length_mm", "kept when the bench's advice is followed"},
    {"holes.before.fill.stock_diameter_mm", "kept when the bench's advice is followed"},
};

/// Where the others are set. Of a choice its first word, of a curve the button that shows its points.
const std::map<std::string, std::string> rows{
    {"name", "shape.name"},
    {"note", "shape.note"},
    {"wood.species", "shape.wood"},
    {"wood.moisture_percent", "shape.moisture"},
    {"wood.density_kg_m3", "shape.density"},
    {"wood.density_spread_percent", "shape.density_spread"},
    {"water.temperature_C", "water.temperature"},
    {"water.salinity_g_kg", "water.salinity"},
    {"tub.temperature_C", "water.tub.temperature"},
    {"tub.salinity_g_kg", "water.tub.salinity"},
    {"air_cm3", "water.air"},
    {"shape.back_mm", "shape.curve.0"},
    {"shape.belly_mm", "shape.curve.1"},
    {"shape.half_width_mm", "shape.curve.2"},
    {"shape.section.kind", "shape.section.0"},
    {"shape.section.exponent", "shape.exponent"},
    {"shape.section.corner_cut", "shape.corner_cut"},
    {"shape.section.half_outline", "shape.section.add"},
    {"shape.carving", "shape.carving.0"},
    {"shape.measured.x_mm", "shape.measured.0.x"},
    {"shape.measured.width_mm", "shape.measured.0.width"},
    {"shape.measured.height_mm", "shape.measured.0.height"},
    {"segments", "joints.segment.0"},
    {"joints.at_mm", "joints.0.at"},
    {"joints.gap_mm", "joints.0.gap"},
    {"joints.relief_fore_deg", "joints.0.relief_fore"},
    {"joints.relief_aft_deg", "joints.0.relief_aft"},
    {"joints.hinge.kind", "joints.0.hinge.kind.0"},
    {"joints.hinge.eyes_on", "joints.0.hinge.eyes_on.0"},
    {"joints.hinge.pin_aft_mm", "joints.0.hinge.pin_aft"},
    {"joints.hinge.pin_off_mm", "joints.0.hinge.pin_off"},
    {"joints.hinge.pin_diameter_mm", "joints.0.hinge.pin"},
    {"joints.hinge.temper", "joints.0.hinge.temper.0"},
    {"joints.hinge.wire_mm", "joints.0.hinge.wire"},
    {"joints.hinge.eye_inside_mm", "joints.0.hinge.eye"},
    {"joints.hinge.turns", "joints.0.hinge.turns.more"},
    {"joints.hinge.glued_mm", "joints.0.hinge.glued"},
    {"joints.hinge.upper_z_mm", "joints.0.hinge.upper"},
    {"joints.hinge.lower_z_mm", "joints.0.hinge.lower"},
    {"joints.hinge.glue", "joints.0.hinge.glue.0"},
    {"joints.hinge.lean_deg", "joints.0.hinge.lean"},
    {"joints.hinge.weighs", "joints.0.hinge.weighs"},
    {"joints.hinge.mass_g", "joints.0.hinge.mass"},
    {"hangers.name", "hangers.0.name"},
    {"hangers.kind", "hangers.0.kind.0"},
    {"hangers.on", "hangers.0.on.0"},
    {"hangers.x_mm", "hangers.0.x"},
    {"hangers.z_mm", "hangers.1.z"},
    {"hangers.wire_mm", "hangers.0.wire"},
    {"hangers.eye_inside_mm", "hangers.0.eye"},
    {"hangers.turns", "hangers.0.turns.more"},
    {"hangers.depth_mm", "hangers.0.depth"},
    {"hangers.glue", "hangers.0.glue.0"},
    {"hangers.mass_g", "hangers.0.mass"},
    {"holes.name", "lead.hole.0.name"},
    {"holes.use", "lead.hole.0.use.0"},
    {"holes.from", "lead.hole.0.from.0"},
    {"holes.x_mm", "lead.hole.0.x"},
    {"holes.y_mm", "lead.hole.0.y"},
    {"holes.diameter_mm", "lead.hole.0.diameter"},
    {"holes.depth_mm", "lead.hole.0.depth"},
    {"holes.end", "lead.hole.0.end.0"},
    {"holes.fill.material", "lead.hole.0.fill"},
    {"holes.fill.mass_g", "lead.hole.0.mass"},
    {"holes.fill.length_mm", "lead.hole.0.length"},
    {"holes.fill.stock_diameter_mm", "lead.hole.0.rod"},
    {"holes.cap.material", "lead.hole.0.cap"},
    {"holes.cap.length_mm", "lead.hole.0.cap_length"},
    {"holes.max_depth_mm", "lead.hole.0.max_depth"},
    {"holes.wall_mm", "lead.hole.0.wall"},
    {"pockets.name", "pockets.0.name"},
    {"pockets.x_from_mm", "pockets.0.from"},
    {"pockets.x_to_mm", "pockets.0.to"},
    {"pockets.y_mm", "pockets.0.y"},
    {"pockets.width_mm", "pockets.0.width"},
    {"pockets.z_from_mm", "pockets.0.low"},
    {"pockets.z_to_mm", "pockets.0.high"},
    {"pockets.floods", "pockets.0.floods"},
    {"parts.name", "hardware.0.name"},
    {"parts.stage", "hardware.0.stage.0"},
    {"parts.material", "hardware.0.material"},
    {"parts.mass_g", "hardware.0.mass"},
    {"parts.mass_sigma_g", "hardware.0.sigma"},
    {"parts.x_mm", "hardware.0.x"},
    {"parts.y_mm", "hardware.0.y"},
    {"parts.z_mm", "hardware.0.z"},
    {"parts.embedded_percent", "hardware.0.embedded"},
    {"parts.segment", "hardware.0.segment"},
    {"parts.reach_mm", "hardware.0.reach"},
    {"coats.name", "finish.0.name"},
    {"coats.stage", "finish.0.stage.0"},
    {"coats.kind", "finish.0.kind.0"},
    {"coats.material", "finish.0.material"},
    {"coats.thickness_mm", "finish.0.thickness"},
    {"coats.mass_g", "finish.0.mass"},
    {"coats.spread_percent", "finish.0.spread"},
    {"coats.surfaces", "finish.0.skin"},
    {"coats.note", "finish.0.note"},
    {"targets.fall_mm_s", "lead.fall"},
    {"targets.in_water_g", "lead.in_water"},
    {"targets.pitch_deg", "lead.pitch"},
    {"targets.fall_band_percent", "lead.fall_band"},
    {"targets.pitch_band_deg", "lead.pitch_band"},
    {"targets.matters_more", "lead.matters.0"},
    {"targets.line_lb", "joints.line"},
    {"log.kind", "log.kind.0"},
    {"log.stage", "log.0.stage"},
    {"log.segment", "log.0.segment"},
    {"log.with.what", "log.3.with.all"},
    {"log.with.part", "log.3.with.part.2"},
    {"log.with.mass_g", "log.3.with.weight"},
    {"log.with.material", "log.3.with.material"},
    {"log.lure", "log.0.lure.more"},
    {"log.mass_g", "log.0.mass"},
    {"log.holder_g", "log.1.holder"},
    {"log.length_mm", "log.2.length"},
    {"log.width_mm", "log.2.width"},
    {"log.height_mm", "log.2.height"},
    {"log.x_mm", "log.7.station"},
    {"log.time_s", "log.3.time"},
    {"log.depth_mm", "log.3.depth"},
    {"log.clip_material", "log.4.clip"},
    {"log.freeboard_mm", "log.5.showing"},
    {"log.angle_deg", "log.6.angle"},
    {"log.beats", "log.8.beats"},
    {"log.travel_mm", "log.8.travel"},
    {"log.speed_mm_s", "log.8.speed"},
    {"log.temperature_C", "log.3.temperature"},
    {"log.sigma_g", "log.0.sigma"},
    {"log.sigma_s", "log.3.sigma"},
    {"log.sigma_mm", "log.5.sigma"},
    {"log.sigma_deg", "log.6.sigma"},
    {"log.sigma_beats", "log.8.sigma"},
    {"log.note", "log.0.note"},
    {"log.excluded", "log.0.exclude"},
    {"log.stands", "log.0.stands"},
    {"board.length_mm", "shape.board.length"},
    {"board.height_mm", "shape.board.height"},
    {"board.thickness_mm", "shape.board.thickness"},
    {"board.saw_mm", "shape.board.saw"},
    {"tail.material", "tail.material"},
    {"tail.density_kg_m3", "tail.density"},
    {"tail.density_spread_percent", "tail.density_spread"},
    {"tail.x_mm", "tail.x"},
    {"tail.z_mm", "tail.z"},
    {"tail.back_mm", "tail.line.0"},
    {"tail.belly_mm", "tail.line.1"},
    {"tail.half_thickness_mm", "tail.line.2"},
    {"tail.exponent", "tail.exponent"},
    {"tail.tenon.length_mm", "tail.tenon.length"},
    {"tail.tenon.thickness_mm", "tail.tenon.thickness"},
    {"tail.tenon.height_mm", "tail.tenon.height"},
};

/// Visits the table for the places of all its fields: "holes.fill.mass_g".
class Places {
public:
    explicit Places(std::set<std::string>& all, std::string before = {}) : all_(all), before_(before) {}

    void version(std::string_view key, int) { add(key); }
    void number(const document::NumberField& field, double) { add(field.key); }
    void optional_number(const document::NumberField& field, std::optional<double>) { add(field.key); }
    void ordinal(const document::NumberField& field, std::optional<int>) { add(field.key); }
    void text(const document::TextField& field, const std::string&) { add(field.key); }
    void wood(std::string_view key, const std::string&) { add(key); }
    void material(std::string_view key, materials::Use, const std::string&) { add(key); }
    void choice(std::string_view key, const auto&, auto) { add(key); }
    void yes_no(std::string_view key, bool) { add(key); }
    void flags(std::string_view key, const auto&, const auto&) { add(key); }
    void exactly_one(const auto&, const auto&, const auto&, const auto&) {}
    void either(const document::NumberField& a, double, auto, const document::NumberField& b, double, auto,
                auto) {
        add(a.key);
        add(b.key);
    }
    void number_or_points(const document::PointsField& field, const auto&) { add(field.key); }
    void points(const document::PointsField& field, const auto&, auto, auto) { add(field.key); }
    void names(const document::ListField& field, const auto&) { add(field.key); }
    template <class T>
    void object(std::string_view key, std::string_view, bool, const T&) {
        within<T>(key);
    }
    template <class T>
    void optional_object(std::string_view key, std::string_view, const std::optional<T>&) {
        within<T>(key);
    }
    template <class T>
    void list(const document::ListField& field, const std::vector<T>&) {
        within<T>(field.key);
    }

private:
    void add(std::string_view key) { all_.insert(before_ + std::string(key)); }
    template <class T>
    void within(std::string_view key) {
        Places inner(all_, before_ + std::string(key) + '.');
        walk(inner, document::defaults<T>());
    }

    std::set<std::string>& all_;
    std::string before_;
};

std::set<std::string> all_places() {
    std::set<std::string> all;
    Places places(all);
    walk(places, document::defaults<document::Document>());
    return all;
}

/// The ids of all widgets that are drawn while every entry is opened once.
std::set<std::string> drawn_ids(const document::Document& lure) {
    Bench bench;
    REQUIRE(bench.app.open_json(write_document(lure)) == "");
    std::set<std::string> ids;
    open_everything(bench, lure, [&] {
        const auto items = nlohmann::json::parse(bench.app.items_json());
        for (const auto& item : items)
            ids.insert(item.at("id").get<std::string>());
    });
    return ids;
}

} // namespace

TEST_CASE("every field of a document has its row on the page or a reason to have none", "[shell][fields]") {
    std::set<std::string> ids = drawn_ids(full_lure(false));
    ids.merge(drawn_ids(full_lure(true)));
    document::Document chamfered = full_lure(false);
    chamfered.shape.section.kind = document::SectionKind::chamfered;
    chamfered.shape.section.corner_cut = {{0.0, 0.3}};
    ids.merge(drawn_ids(chamfered));
    const std::set<std::string> places = all_places();
    for (const std::string& place : places) {
        CAPTURE(place);
        const auto row = rows.find(place);
        if (row == rows.end()) {
            CHECK(excuses.count(place) == 1);
            continue;
        }
        CAPTURE(row->second);
        CHECK(excuses.count(place) == 0);
        CHECK(ids.count(row->second) == 1);
    }
    for (const auto& [place, reason] : excuses) {
        CAPTURE(place, reason);
        CHECK(places.count(place) == 1);
    }
    for (const auto& [place, row] : rows) {
        CAPTURE(place, row);
        CHECK(places.count(place) == 1);
    }
}
