#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "answers/evaluation.hpp"
#include "base/trade.hpp"
#include "ledger/fold.hpp"
#include "look/words_steps.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <cmath>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using document::Targets;
using state::ItemKind;
using state::on_document;

std::string asked_sentence(const Desk& desk) {
    const auto& targets = desk.document().targets;
    const bool fall = targets.by == document::TargetBy::fall;
    const std::string first =
        fall ? std::string(words::lead_to_fall) + " " + text_of(desk, targets.fall_m_s, Quantity::fall)
             : std::string(words::lead_to_weigh) + " " + signed_mass(desk, targets.in_water_kg) + " " +
                   words::in_the_water;
    return first + ", " + words::lead_to_hang + " " + text_of(desk, targets.pitch_rad, Quantity::angle) + ".";
}

state::Edit put_targets(const Targets& targets) {
    return on_document([targets](document::Document& d) { d.targets = targets; });
}

void target_rows(Desk& desk) {
    Targets targets = desk.document().targets;
    widgets::subheading(desk.ui, words::targets_group);
    Fields f(desk, "lead");
    const std::array<std::string_view, 2> kinds{words::by_fall, words::by_in_water};
    int by = targets.by == document::TargetBy::fall ? 0 : 1;
    if (f.choice(".by", {}, kinds, by, words::targets_group)) {
        targets.by = by == 0 ? document::TargetBy::fall : document::TargetBy::in_water;
    } else if (by == 0) {
        f.number<&Targets::fall_m_s>(".fall", words::target_fall, targets, words::target_fall_below);
    } else {
        f.number<&Targets::in_water_kg>(".in_water", words::target_in_water, targets,
                                        words::target_in_water_below);
    }
    f.number<&Targets::pitch_rad>(".pitch", words::target_pitch, targets, words::target_pitch_below);
    f.put([&] { return put_targets(targets); });
}

void band_rows(Desk& desk) {
    Targets targets = desk.document().targets;
    Fields f(desk, "lead");
    f.number<&Targets::fall_band>(".fall_band", words::fall_band, targets, {}, {{}, 0.01, 0});
    f.number<&Targets::pitch_band_rad>(".pitch_band", words::pitch_band, targets);
    f.put([&] { return put_targets(targets); });
}

/// Its number on the drawing, then its name; a name that starts with that number is not numbered twice.
std::string hole_title(int index, const std::string& name) {
    const std::string number_text = std::to_string(index + 1);
    return name.rfind(number_text, 0) == 0 ? name : number_text + " " + name;
}

void hole_table(Desk& desk) {
    const auto& document = desk.document();
    widgets::subheading(desk.ui, words::holes_group);
    if (document.holes.empty()) {
        widgets::paragraph(desk.ui, words::no_holes);
        return;
    }
    const std::array<widgets::Column, 4> columns{{{0.0f, 0.38f, widgets::Align::left},
                                                  {0.38f, 0.56f, widgets::Align::right},
                                                  {0.56f, 0.75f, widgets::Align::right},
                                                  {0.75f, 1.0f, widgets::Align::right}}};
    const std::string bit = titled(desk, words::col_bit, Quantity::length);
    const std::string depth = titled(desk, words::col_depth, Quantity::length);
    const std::array<std::string_view, 4> titles{words::col_hole, bit, depth, words::col_fill};
    widgets::table_head(desk.ui, columns, titles);
    const auto& lines = desk.evaluation().ledger;
    for (int i = 0; i < static_cast<int>(document.holes.size()); ++i) {
        const auto& hole = document.holes[static_cast<std::size_t>(i)];
        const ledger::Sum fill = ledger::sum_of(lines, ledger::Kind::fill, i);
        const int segment = shape::nearest_segment(desk.evaluation().body, hole.x_m);
        const std::string title =
            hole_title(i, hole.name.empty() ? segment_name(document, segment) : hole.name);
        const std::string bit_text = number_of(desk, hole.diameter_m, Quantity::length);
        const std::string depth_text =
            hole.depth_m > 0.0 ? number_of(desk, hole.depth_m, Quantity::length) : words::dash;
        const std::string fill_text =
            fill.mass.kg > 0.0 ? number_of(desk, fill.mass.kg, Quantity::mass) : words::dash;
        const std::array<widgets::Cell, 4> cells{
            {{title, {}, false},
             {bit_text, {}, false},
             {depth_text, {}, false},
             {fill_text, fill.mass.kg > 0.0 ? unit_of(desk, Quantity::mass) : std::string_view{}, true}}};
        const bool chosen = desk.row_chosen(ItemKind::hole, i);
        if (widgets::table_row(desk.ui, "lead.hole." + std::to_string(i), columns, cells, chosen)) {
            desk.choose(ItemKind::hole, i);
        }
        if (chosen) hole_rows(desk, i);
    }
    const std::string total =
        number_of(desk, ledger::sum_of(lines, ledger::Kind::fill).mass.kg, Quantity::mass);
    const std::array<widgets::Cell, 4> cells{{{words::together, {}, false},
                                              {"", {}, false},
                                              {"", {}, false},
                                              {total, unit_of(desk, Quantity::mass), true}}};
    widgets::table_total(desk.ui, columns, cells);
}

/// The tub's own reading after sealing, and what is still to be added.
void tub_sentence(Desk& desk) {
    const auto& evaluation = desk.evaluation();
    const auto& sealed = evaluation.answers.stages[static_cast<std::size_t>(Stage::sealed)];
    const auto later = [&](bool coats) {
        return ledger::sum_if(evaluation.ledger, [coats](const ledger::Line& line) {
            return line.stage > Stage::sealed && (line.kind == ledger::Kind::coat) == coats;
        });
    };
    std::string text = std::string(words::tub_sealed) + " ";
    if (sealed.tub_fall) {
        text += std::string(words::tub_falls) + " " +
                text_of(desk, sealed.tub_fall->speed_m_s, Quantity::fall) + " " + words::tub_weighs + " " +
                signed_mass(desk, sealed.in_tub_kg) + " " + words::tub_in_tub;
    } else {
        text += std::string(words::tub_rests[static_cast<std::size_t>(behaviour_of(sealed.in_tub_kg))]) +
                " " + text_of(desk, std::abs(sealed.in_tub_kg), Quantity::mass) + ".";
    }
    const double water = evaluation.answers.water_density_kg_m3;
    const auto to_come = [&](const char* what, const ledger::Sum& sum) {
        if (sum.mass.kg == 0.0) return;
        text += std::string(" ") + what + " " + text_of(desk, sum.mass.kg, Quantity::mass) + ", " +
                signed_mass(desk, sum.in_water(water).kg) + " " + words::tub_felt + ".";
    };
    to_come(words::tub_coats, later(true));
    to_come(words::tub_dress, later(false));
    widgets::info_box(desk.ui, words::tub_title, text);
}

} // namespace

void lead_panel(Desk& desk) {
    widgets::heading(desk.ui, words::lead_head, asked_sentence(desk));
    plan_rows(desk);
    hole_table(desk);
    widgets::gap();
    const auto& holes = desk.document().holes;
    if (widgets::button(desk.ui, "lead.add", words::add_hole, widgets::ButtonKind::plain,
                        holes.size() < document::max_holes)) {
        desk.change(words::add_hole, state::add_hole());
        desk.view.selection = {ItemKind::hole, static_cast<int>(holes.size())};
    }
    widgets::gap();
    tub_sentence(desk);
    target_rows(desk);
    band_rows(desk);
    stock_rows(desk);
    metal_table_rows(desk);
    widgets::gap();
    widgets::caution_box(desk.ui, words::lead_title, words::lead_caution);
    widgets::gap();
    widgets::caution_box(desk.ui, words::ca_title, words::ca_caution);
}

} // namespace evenfall::shell::steps
