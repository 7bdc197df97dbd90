#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "look/words_help.hpp"
#include "look/words_steps.hpp"
#include "look/words_swim.hpp"
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
using widgets::TableColumn;

void water_rows(PanelContext& context, const std::string& id, const char* title, const document::Water& water,
                document::Water document::Document::*member) {
    widgets::subheading(context.ui, title);
    document::Water held = water;
    Fields f(context, id);
    f.number<&document::Water::temperature_c>(".temperature", words::temperature, held);
    f.number<&document::Water::salinity_g_kg>(".salinity", words::salinity, held, words::salinity_below);
    f.put([&] { return on_document([member, held](document::Document& d) { d.*member = held; }); }, title);
}

void stage_table(PanelContext& context) {
    widgets::subheading(context.ui, words::stages_group);
    widgets::note(context.ui, words::stages_note);
    constexpr std::array<TableColumn, 4> columns{{{0.0f, 0.30f, Align::left},
                                                  {0.30f, 0.58f, Align::right},
                                                  {0.58f, 0.79f, Align::right},
                                                  {0.79f, 1.0f, Align::right}}};
    const std::string scale = titled(context, words::col_mass, Quantity::mass);
    const std::string in_tub = titled(context, words::col_in_tub, Quantity::mass);
    const std::string fall = std::string(unit_of(context, Quantity::fall));
    const std::array<std::string_view, 4> titles{words::col_stage, scale, in_tub, fall};
    if (widgets::table_head(context.ui, columns, titles, help::Topic::stages))
        widgets::went_in(context.ui, words::went_tub_temperature,
                         text_of(context, context.document().tub.temperature_c, Quantity::temperature));
    const auto row = [&](const StageAnswer& stage, const std::string& name) {
        const std::string mass = widgets::number_text(stage.mass.kg, context.ui.units.of(Quantity::mass)) +
                                 " " + words::plus_minus + " " +
                                 number_of(context, stage.mass_sigma.kg, Quantity::mass);
        const std::string tub = number_of(context, stage.in_tub.kg, Quantity::mass);
        const std::string speed =
            stage.tub_fall ? number_of(context, stage.tub_fall->speed_m_s, Quantity::fall)
                           : std::string(stage.tub_behaviour == Behaviour::floats     ? words::floats_short
                                         : stage.tub_behaviour == Behaviour::suspends ? words::hangs_short
                                                                                      : words::dash);
        const std::array<Cell, 4> cells{
            {{name, {}, false}, {mass, {}, false}, {tub, {}, false}, {speed, {}, true}}};
        widgets::table_row(context.ui, {}, columns, cells);
    };
    const auto tests = stages_with_all(context.document(), context.evaluation());
    for (const StageAnswer& stage : context.evaluation().answers.stages) {
        row(stage, stage_name(stage.stage));
        for (const StageAnswer& test : tests) {
            if (test.stage == stage.stage && test.stage >= Stage::sealed)
                row(test, words::with_rigging + ledger::rigging_words(context.document()));
        }
    }
}

void segment_table(PanelContext& context) {
    widgets::subheading(context.ui, words::segments_table_group);
    constexpr std::array<TableColumn, 3> columns{
        {{0.0f, 0.40f, Align::left}, {0.40f, 0.70f, Align::right}, {0.70f, 1.0f, Align::right}}};
    const std::array<std::string_view, 3> titles{words::col_segment, words::col_segment_mass,
                                                 words::col_in_water};
    widgets::table_head(context.ui, columns, titles, help::Topic::segments);
    const auto& segments = context.evaluation().answers.segments;
    for (int s = 0; s < static_cast<int>(segments.size()); ++s) {
        const auto& segment = segments[static_cast<std::size_t>(s)];
        const std::string name = segment_name(context.document(), s);
        const std::string mass = number_of(context, segment.mass.kg, Quantity::mass);
        const std::string wet = number_of(context, segment.in_water.kg, Quantity::mass);
        const std::string_view unit = unit_of(context, Quantity::mass);
        const std::array<Cell, 3> cells{{{name, {}, false}, {mass, unit, false}, {wet, unit, true}}};
        widgets::table_row(context.ui, {}, columns, cells);
    }
}

std::string place_text(const PanelContext& context, const Vec3& at) {
    const auto one = [&](double v) { return number_of(context, v, Quantity::length); };
    return one(at.x) + " / " + one(at.y) + " / " + one(at.z);
}

void centre_rows(PanelContext& context) {
    const auto& answers = context.evaluation().answers;
    const std::string_view unit = unit_of(context, Quantity::length);
    widgets::subheading(context.ui, words::centres_group);
    widgets::figure_row(context.ui, words::centre_g, place_text(context, answers.g_m), unit, {},
                        help::Topic::centres);
    widgets::figure_row(context.ui, words::centre_b, place_text(context, answers.b_m), unit, {},
                        help::Topic::centres);
    widgets::note(context.ui, words::centre_below);
    const auto length = [&](double m) { return text_of(context, m, Quantity::length); };
    if (widgets::figure_row(context.ui, words::bg_row, number_of(context, answers.bg_m, Quantity::length),
                            unit, words::bg_row_below, help::Topic::righting)) {
        widgets::went_in(context.ui, words::went_b_up, length(answers.b_m.z));
        widgets::went_in(context.ui, words::went_g_up, length(answers.g_m.z));
    }
    const auto angle = [&](const std::optional<double>& value) {
        return value ? number_of(context, *value, Quantity::angle) : std::string(words::no_answer);
    };
    const std::string_view degree = unit_of(context, Quantity::angle);
    if (widgets::figure_row(context.ui, words::pitch_row, angle(answers.pitch_rad),
                            answers.pitch_rad ? degree : std::string_view{}, words::target_pitch_below,
                            help::Topic::hang)) {
        widgets::went_in(context.ui, words::went_g_aft, length(answers.g_m.x));
        widgets::went_in(context.ui, words::went_b_aft, length(answers.b_m.x));
        widgets::went_in(context.ui, words::went_bg, length(answers.bg_m));
    }
    if (widgets::figure_row(context.ui, words::roll_row, angle(answers.roll_rad),
                            answers.roll_rad ? degree : std::string_view{}, words::roll_row_below,
                            help::Topic::lean)) {
        widgets::went_in(context.ui, words::went_g_side, length(answers.g_m.y));
        widgets::went_in(context.ui, words::went_b_side, length(answers.b_m.y));
        widgets::went_in(context.ui, words::went_bg, length(answers.bg_m));
    }
}

void waters_view(PanelContext& context) {
    const auto& document = context.document();
    const auto& answers = context.evaluation().answers;
    water_rows(context, "water", words::fishing_group, document.water, &document::Document::water);
    if (widgets::figure_row(context.ui, words::water_density,
                            number_of(context, answers.water_density_kg_m3, Quantity::density),
                            unit_of(context, Quantity::density), {}, help::Topic::water_density)) {
        widgets::went_in(context.ui, words::temperature,
                         text_of(context, document.water.temperature_c, Quantity::temperature));
        widgets::went_in(context.ui, words::salinity,
                         text_of(context, document.water.salinity_g_kg, Quantity::salinity));
    }
    water_rows(context, "water.tub", words::tub_group, document.tub, &document::Document::tub);
    widgets::gap();
    if (widgets::button(context.ui, "water.tub.same", words::tub_as_fishing, widgets::ButtonKind::plain)) {
        context.change(words::tub_as_fishing, on_document([](document::Document& d) { d.tub = d.water; }));
    }
    widgets::subheading(context.ui, words::air_group);
    constexpr double usual_air_m3 = 0.1e-6;
    document::Document held{};
    held.air_m3 = document.air_m3;
    Fields f(context, "water");
    f.optional_number<&document::Document::air_m3>(".air", words::air_caught, held, usual_air_m3,
                                                   words::air_none, words::air_below);
    f.put([&] { return on_document([air = held.air_m3](document::Document& d) { d.air_m3 = air; }); });
}

void ledger_view(PanelContext& context) {
    stage_table(context);
    segment_table(context);
    centre_rows(context);
    ledger_rows(context);
}

} // namespace

void water_panel(PanelContext& context) {
    using state::WaterView;
    // A phone's step bar already names the step, and the fields need the height.
    if (!context.ui.phone) widgets::heading(context.ui, words::water_head, words::water_below);
    constexpr std::array<std::string_view, 7> views{
        words::view_waters, words::view_fall,   words::view_afloat, words::view_swim,
        words::view_season, words::view_hinges, words::view_ledger};
    if (!context.ui.phone) widgets::gap();
    if (const auto chosen =
            widgets::choice(context.ui, "water.view", views, static_cast<int>(context.view.water_view)))
        context.view.water_view = static_cast<WaterView>(*chosen);
    widgets::gap();
    switch (context.view.water_view) {
    case WaterView::waters:
        waters_view(context);
        break;
    case WaterView::fall:
        fall_rows(context);
        break;
    case WaterView::afloat:
        float_rows(context);
        break;
    case WaterView::swim:
        swim_rows(context);
        break;
    case WaterView::season:
        season_rows(context);
        break;
    case WaterView::hinges:
        hinge_rows(context);
        break;
    case WaterView::ledger:
        ledger_view(context);
        break;
    }
}

} // namespace evenfall::shell::steps
