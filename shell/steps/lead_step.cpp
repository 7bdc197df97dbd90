#include "steps/drill_steps.hpp"
#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_steps.hpp"
#include "output.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using document::Targets;
using state::ItemKind;
using state::on_document;

std::string asked_sentence(const PanelContext& context) {
    const auto& targets = context.document().targets;
    const bool fall = targets.by == document::TargetBy::fall;
    const std::string first =
        fall ? std::string(words::lead_to_fall) + " " + text_of(context, targets.fall_m_s, Quantity::fall)
             : std::string(words::lead_to_weigh) + " " + signed_mass(context, targets.in_water_kg) + " " +
                   words::in_the_water;
    return first + ", " + words::lead_to_hang + " " + text_of(context, targets.pitch_rad, Quantity::angle) +
           ".";
}

state::Edit put_targets(const Targets& targets) {
    return on_document([targets](document::Document& d) { d.targets = targets; });
}

void target_rows(PanelContext& context) {
    Targets targets = context.document().targets;
    widgets::subheading(context.ui, words::targets_group);
    Fields f(context, "lead");
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

void band_rows(PanelContext& context) {
    Targets targets = context.document().targets;
    Fields f(context, "lead");
    f.number<&Targets::fall_band>(".fall_band", words::fall_band, targets, {}, {{}, 0.01, 0});
    f.number<&Targets::pitch_band_rad>(".pitch_band", words::pitch_band, targets);
    const bool by_fall = targets.by == document::TargetBy::fall;
    const std::array<std::string_view, 3> which{
        words::matters_both, by_fall ? words::matters_fall : words::matters_weight, words::matters_hang};
    f.choice(".matters", words::matters_more, which, targets.matters_more);
    f.put([&] { return put_targets(targets); });
}

void hole_table(PanelContext& context) {
    const auto& document = context.document();
    widgets::subheading(context.ui, words::holes_group);
    if (document.holes.empty()) {
        widgets::paragraph(context.ui, words::no_holes);
        return;
    }
    const std::array<widgets::TableColumn, 4> columns{{{0.0f, 0.38f, widgets::Align::left},
                                                       {0.38f, 0.56f, widgets::Align::right},
                                                       {0.56f, 0.75f, widgets::Align::right},
                                                       {0.75f, 1.0f, widgets::Align::right}}};
    const std::string bit = titled(context, words::col_bit, Quantity::length);
    const std::string depth = titled(context, words::col_depth, Quantity::length);
    const std::array<std::string_view, 4> titles{words::col_hole, bit, depth, words::col_fill};
    widgets::table_head(context.ui, columns, titles, help::Topic::hole_fill);
    const auto& lines = context.evaluation().ledger;
    for (int i = 0; i < static_cast<int>(document.holes.size()); ++i) {
        const auto& hole = document.holes[static_cast<std::size_t>(i)];
        const ledger::Sum fill = ledger::sum_of(lines, ledger::Kind::fill, i);
        const std::string title = hole_label(context, document, i);
        const std::string bit_text = number_of(context, hole.diameter_m, Quantity::length);
        const std::string depth_text =
            hole.depth_m > 0.0 ? number_of(context, hole.depth_m, Quantity::length) : words::dash;
        const std::string fill_text =
            fill.mass.kg > 0.0 ? number_of(context, fill.mass.kg, Quantity::mass) : words::dash;
        const std::array<widgets::Cell, 4> cells{
            {{title, {}, false},
             {bit_text, {}, false},
             {depth_text, {}, false},
             {fill_text, fill.mass.kg > 0.0 ? unit_of(context, Quantity::mass) : std::string_view{}, true}}};
        const bool chosen = context.row_chosen(ItemKind::hole, i);
        if (widgets::table_row(context.ui, "lead.hole." + std::to_string(i), columns, cells, chosen)) {
            context.choose(ItemKind::hole, i);
        }
        if (chosen) hole_rows(context, i);
    }
    const std::string total =
        number_of(context, ledger::sum_of(lines, ledger::Kind::fill).mass.kg, Quantity::mass);
    const std::array<widgets::Cell, 4> cells{{{words::together, {}, false},
                                              {"", {}, false},
                                              {"", {}, false},
                                              {total, unit_of(context, Quantity::mass), true}}};
    widgets::table_total(context.ui, columns, cells);
}

/// Ahead of the holes: of what is in them, and of lead until something else is.
void lead_cautions(PanelContext& context) {
    const auto& holes = context.document().holes;
    const auto any = [&](auto of) { return std::any_of(holes.begin(), holes.end(), of); };
    const bool filled = any([](const document::Hole& h) { return h.fill.has_value(); });
    const bool with_lead =
        any([](const document::Hole& h) { return h.fill && cautions::is_lead(h.fill->material); });
    const auto capped = [&](std::string_view material) {
        return any([material](const document::Hole& h) { return h.cap && h.cap->material == material; });
    };
    std::vector<Caution> list{{words::drilling_title, cautions::drilling}};
    if (with_lead || !filled) list.push_back({words::lead_title, cautions::lead});
    if (capped("ca_soda")) list.push_back({words::ca_on_soda_title, cautions::ca_on_soda});
    if (capped("ca")) list.push_back({words::ca_title, cautions::ca});
    if (capped("epoxy")) list.push_back({words::epoxy_title, cautions::epoxy});
    caution_section(context, "section.lead.cautions", list);
}

/// The tub's own reading after sealing, and what is still to be added.
void tub_sentence(PanelContext& context) {
    const auto& evaluation = context.evaluation();
    const std::vector<StageAnswer> tests = stages_with_all(context.document(), evaluation);
    const auto with_all = std::find_if(tests.begin(), tests.end(),
                                       [](const StageAnswer& test) { return test.stage == Stage::sealed; });
    const bool hung_on = with_all != tests.end();
    const StageAnswer& sealed =
        hung_on ? *with_all : evaluation.answers.stages[static_cast<std::size_t>(Stage::sealed)];
    const auto later = [&](bool coats) {
        return ledger::sum_if(evaluation.ledger, [coats](const ledger::Line& line) {
            return line.stage > Stage::sealed && (line.kind == ledger::Kind::coat) == coats;
        });
    };
    std::string text = std::string(words::tub_sealed) +
                       (hung_on ? output::with_all_words(context.document()) : "") + words::tub_sealed_it;
    if (sealed.tub_fall) {
        text += std::string(words::tub_falls) + " " +
                text_of(context, sealed.tub_fall->speed_m_s, Quantity::fall) + " " + words::tub_weighs + " " +
                signed_mass(context, sealed.in_tub.kg) + " " + words::tub_in_tub;
    } else {
        text += std::string(words::tub_rests[static_cast<std::size_t>(sealed.tub_behaviour)]) + " " +
                text_of(context, std::abs(sealed.in_tub.kg), Quantity::mass) + ".";
    }
    const double water = evaluation.answers.water_density_kg_m3;
    const auto to_come = [&](const char* what, const ledger::Sum& sum) {
        if (sum.mass.kg == 0.0) return;
        text += std::string(" ") + what + " " + text_of(context, sum.mass.kg, Quantity::mass) + ", " +
                signed_mass(context, sum.in_water(water).kg) + " " + words::tub_felt + ".";
    };
    to_come(words::tub_coats, later(true));
    if (!hung_on) to_come(words::tub_dress, later(false));
    if (hung_on) widgets::caution_box(context.ui, words::hooks_title, cautions::hooks);
    widgets::info_box(context.ui, words::tub_title, text, help::Topic::tub);
}

} // namespace

void lead_panel(PanelContext& context) {
    widgets::heading(context.ui, words::lead_head, asked_sentence(context));
    plan_rows(context);
    ways_rows(context);
    reach_map_rows(context);
    lead_cautions(context);
    hole_table(context);
    widgets::gap();
    const auto& holes = context.document().holes;
    if (widgets::button(context.ui, "lead.add", words::add_hole, widgets::ButtonKind::plain,
                        holes.size() < document::max_holes)) {
        context.change(words::add_hole, state::add_hole());
        context.view.selection = {ItemKind::hole, static_cast<int>(holes.size())};
    }
    widgets::gap();
    done_rows(context);
    tub_sentence(context);
    target_rows(context);
    band_rows(context);
    family_rows(context);
    stock_rows(context);
    metal_table_rows(context);
}

} // namespace evenfall::shell::steps
