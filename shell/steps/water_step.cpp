#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "look/words_steps.hpp"
#include "look/words_water.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::on_document;
using widgets::Align;
using widgets::Cell;
using widgets::Column;

void water_rows(Desk& desk, const std::string& id, const char* title, const document::Water& water,
                document::Water document::Document::*member) {
    widgets::subheading(desk.ui, title);
    document::Water held = water;
    Fields f(desk, id);
    f.number<&document::Water::temperature_c>(".temperature", words::temperature, held);
    f.number<&document::Water::salinity_g_kg>(".salinity", words::salinity, held, words::salinity_below);
    f.put([&] { return on_document([member, held](document::Document& d) { d.*member = held; }); }, title);
}

void stage_table(Desk& desk) {
    widgets::subheading(desk.ui, words::stages_group);
    widgets::note(desk.ui, words::stages_note);
    constexpr std::array<Column, 4> columns{{{0.0f, 0.30f, Align::left},
                                             {0.30f, 0.58f, Align::right},
                                             {0.58f, 0.79f, Align::right},
                                             {0.79f, 1.0f, Align::right}}};
    const std::string scale = titled(desk, words::col_mass, Quantity::mass);
    const std::string in_tub = titled(desk, words::col_in_tub, Quantity::mass);
    const std::string fall = std::string(unit_of(desk, Quantity::fall));
    const std::array<std::string_view, 4> titles{words::col_stage, scale, in_tub, fall};
    widgets::table_head(desk.ui, columns, titles);
    for (const auto& stage : desk.evaluation().answers.stages) {
        const std::string mass = widgets::number_text(stage.mass_kg, desk.ui.units.of(Quantity::mass)) + " " +
                                 words::plus_minus + " " +
                                 number_of(desk, stage.mass_sigma_kg, Quantity::mass);
        const std::string tub = number_of(desk, stage.in_tub_kg, Quantity::mass);
        const std::string speed =
            stage.tub_fall ? number_of(desk, stage.tub_fall->speed_m_s, Quantity::fall)
                           : std::string(stage.in_tub_kg < 0.0 ? words::floats_short : words::dash);
        const std::array<Cell, 4> cells{
            {{stage_words(stage.stage), {}, false}, {mass, {}, false}, {tub, {}, false}, {speed, {}, true}}};
        widgets::table_row(desk.ui, {}, columns, cells);
    }
}

void segment_table(Desk& desk) {
    widgets::subheading(desk.ui, words::segments_table_group);
    constexpr std::array<Column, 3> columns{
        {{0.0f, 0.40f, Align::left}, {0.40f, 0.70f, Align::right}, {0.70f, 1.0f, Align::right}}};
    const std::array<std::string_view, 3> titles{words::col_segment, words::col_segment_mass,
                                                 words::col_in_water};
    widgets::table_head(desk.ui, columns, titles);
    const auto& segments = desk.evaluation().answers.segments;
    for (int s = 0; s < static_cast<int>(segments.size()); ++s) {
        const auto& segment = segments[static_cast<std::size_t>(s)];
        const std::string name = segment_name(desk.document(), s);
        const std::string mass = number_of(desk, segment.mass_kg, Quantity::mass);
        const std::string wet = number_of(desk, segment.in_water_kg, Quantity::mass);
        const std::string_view unit = unit_of(desk, Quantity::mass);
        const std::array<Cell, 3> cells{{{name, {}, false}, {mass, unit, false}, {wet, unit, true}}};
        widgets::table_row(desk.ui, {}, columns, cells);
    }
}

std::string place_text(const Desk& desk, const Vec3& at) {
    const auto one = [&](double v) { return number_of(desk, v, Quantity::length); };
    return one(at.x) + " / " + one(at.y) + " / " + one(at.z);
}

void centre_rows(Desk& desk) {
    const auto& answers = desk.evaluation().answers;
    const std::string_view unit = unit_of(desk, Quantity::length);
    widgets::subheading(desk.ui, words::centres_group);
    widgets::figure_row(desk.ui, words::centre_g, place_text(desk, answers.g_m), unit);
    widgets::figure_row(desk.ui, words::centre_b, place_text(desk, answers.b_m), unit);
    widgets::note(desk.ui, words::centre_below);
    widgets::figure_row(desk.ui, words::bg_row, number_of(desk, answers.bg_m, Quantity::length), unit,
                        words::bg_row_below);
    const auto angle = [&](const std::optional<double>& value) {
        return value ? number_of(desk, *value, Quantity::angle) : std::string(words::no_answer);
    };
    const std::string_view degree = unit_of(desk, Quantity::angle);
    widgets::figure_row(desk.ui, words::pitch_row, angle(answers.pitch_rad),
                        answers.pitch_rad ? degree : std::string_view{}, words::target_pitch_below);
    widgets::figure_row(desk.ui, words::roll_row, angle(answers.roll_rad),
                        answers.roll_rad ? degree : std::string_view{}, words::roll_row_below);
}

void waters_view(Desk& desk) {
    const auto& document = desk.document();
    const auto& answers = desk.evaluation().answers;
    water_rows(desk, "water", words::fishing_group, document.water, &document::Document::water);
    widgets::figure_row(desk.ui, words::water_density,
                        number_of(desk, answers.water_density_kg_m3, Quantity::density),
                        unit_of(desk, Quantity::density));
    water_rows(desk, "water.tub", words::tub_group, document.tub, &document::Document::tub);
    widgets::gap();
    if (widgets::button(desk.ui, "water.tub.same", words::tub_as_fishing, widgets::ButtonKind::plain)) {
        desk.change(words::tub_as_fishing, on_document([](document::Document& d) { d.tub = d.water; }));
    }
}

void ledger_view(Desk& desk) {
    stage_table(desk);
    segment_table(desk);
    centre_rows(desk);
    ledger_rows(desk);
}

} // namespace

void water_panel(Desk& desk) {
    using state::WaterView;
    // A phone's step bar already names the step, and the fields need the height.
    if (!desk.ui.phone) widgets::heading(desk.ui, words::water_head, words::water_below);
    constexpr std::array<std::string_view, 6> views{words::view_waters, words::view_fall,
                                                    words::view_afloat, words::view_season,
                                                    words::view_hinges, words::view_ledger};
    if (!desk.ui.phone) widgets::gap();
    if (const auto chosen =
            widgets::choice(desk.ui, "water.view", views, static_cast<int>(desk.view.water_view)))
        desk.view.water_view = static_cast<WaterView>(*chosen);
    widgets::gap();
    switch (desk.view.water_view) {
    case WaterView::waters:
        waters_view(desk);
        break;
    case WaterView::fall:
        fall_rows(desk);
        break;
    case WaterView::afloat:
        float_rows(desk);
        break;
    case WaterView::season:
        season_rows(desk);
        break;
    case WaterView::hinges:
        hinge_rows(desk);
        break;
    case WaterView::ledger:
        ledger_view(desk);
        break;
    }
}

} // namespace evenfall::shell::steps
