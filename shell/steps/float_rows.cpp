#include "steps/step_panels.hpp"

#include "drawing/water_sheet.hpp"
#include "look/words_help.hpp"
#include "look/words_steps.hpp"
#include "look/words_water.hpp"
#include "widgets/plot.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <numbers>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Unit;

/// Arms and metacentric heights are too small for a fraction of an inch.
Unit fine_length(const PanelContext& context) {
    const Unit unit = context.ui.units.of(Quantity::length);
    return unit == Unit::inch_fraction ? Unit::inch : unit;
}
int fine_decimals_of(Unit unit) {
    return unit == Unit::mm ? 2 : -1;
}

void rest_rows(PanelContext& context, const afloat::Rest& rest) {
    const Unit unit = fine_length(context);
    const auto length_row = [&](const char* label, double value_m, std::string_view below = {},
                                int decimals = -1, help::Topic topic = help::Topic::waterline) {
        widgets::figure_row(context.ui, label, widgets::number_text(value_m, unit, decimals),
                            widgets::symbol(unit), below, topic);
    };
    widgets::subheading(context.ui, std::string(words::rest_group) + " " + drawing::posture_words(rest));
    std::string heel;
    if (!afloat::stands(rest.posture))
        heel = std::string(words::heel_word) + " " + text_of(context, rest.heel_rad, Quantity::angle);
    widgets::figure_row(context.ui, words::figure_pitch, number_of(context, rest.pitch_rad, Quantity::angle),
                        unit_of(context, Quantity::angle), heel, help::Topic::waterline);
    length_row(words::draft_fore_row, rest.draft_fore_m);
    length_row(words::draft_aft_row, rest.draft_aft_m);
    length_row(words::freeboard_row, rest.freeboard_m, words::freeboard_below);
    widgets::figure_row(context.ui, words::back_row,
                        widgets::number_text(rest.back_line_out, Unit::percent, 0),
                        unit_of(context, Quantity::percent), {}, help::Topic::back_showing);
    length_row(words::gm_row, rest.gm_transverse_m, words::gm_below, fine_decimals_of(unit),
               help::Topic::metacentre);
}

/// That it rolls over is reported at the head of every step.
void advice_rows(PanelContext& context, const afloat::UprightAdvice& advice) {
    if (!advice.is_known || !advice.is_stable) return;
    widgets::gap();
    widgets::paragraph(context.ui, words::stays_upright);
}

void arm_plot(PanelContext& context, const afloat::RightingCurve& curve) {
    const Unit unit = fine_length(context);
    const auto degrees = [](double rad) { return widgets::to_unit(rad, Unit::degree); };
    widgets::Plot plot;
    plot.title = std::string(words::arm_title) + ", " + std::string(widgets::symbol(unit));
    plot.x_unit = widgets::symbol(Unit::degree);
    plot.x_step = 45.0;
    plot.x_most = 180.0;
    plot.hatched = true;
    plot.topic = help::Topic::righting_arm;
    // Interrupted where no pitch balances.
    bool is_broken = true;
    for (const auto& p : curve.points) {
        if (is_broken && p.is_trimmed) plot.lines.emplace_back();
        if (p.is_trimmed)
            plot.lines.back().points.push_back({degrees(p.heel_rad), widgets::to_unit(p.arm_m, unit)});
        is_broken = !p.is_trimmed;
    }
    if (plot.lines.empty()) return;
    if (curve.vanishing_rad && *curve.vanishing_rad < std::numbers::pi - 1e-6) {
        plot.marks.push_back(
            {degrees(*curve.vanishing_rad), std::string(words::vanishes) + " " +
                                                widgets::value_text(*curve.vanishing_rad, Unit::degree, 0)});
    }
    constexpr std::string_view id = "water.arm";
    auto& read_at = context.motion.read_off;
    std::optional<double> at;
    if (const auto found = read_at.find(id); found != read_at.end()) at = found->second;
    std::string read;
    for (const auto& line : plot.lines) {
        if (const auto arm = at ? widgets::read_off(line, *at) : std::nullopt) {
            read = widgets::number_text(*at, Unit::one, 0) +
                   "°: " + widgets::number_text(*arm, Unit::one, unit == Unit::mm ? 2 : 3) + " " +
                   std::string(widgets::symbol(unit));
        }
    }
    if (const auto moved = widgets::plot(context.ui, id, plot, at, read))
        read_at.insert_or_assign(std::string(id), *moved);
    widgets::note(context.ui, words::arm_note);
}

} // namespace

void float_rows(PanelContext& context) {
    const afloat::FloatAnswers* afloat = context.motion.answers.afloat(context.session);
    if (afloat == nullptr) {
        widgets::note(context.ui, words::not_known);
        return;
    }
    for (const auto& warning : afloat->warnings)
        widgets::problem_line(context.ui, warning.sentence);
    if (!afloat->floats) widgets::note(context.ui, words::sinks_note);
    if (afloat->floats) {
        advice_rows(context, afloat->advice);
        if (!afloat->rests.empty()) rest_rows(context, afloat->rests.front());
        arm_plot(context, afloat->righting);
        for (std::size_t i = 1; i < afloat->rests.size(); ++i)
            rest_rows(context, afloat->rests[i]);
    }
    widgets::subheading(context.ui, words::under_group);
    const Unit unit = fine_length(context);
    widgets::figure_row(context.ui, words::bg_row,
                        widgets::number_text(afloat->under_water.bg_m, unit, fine_decimals_of(unit)),
                        widgets::symbol(unit), words::bg_row_below, help::Topic::righting);
    if (widgets::figure_row(context.ui, words::righting_row,
                            widgets::number_text(1e3 * afloat->under_water.righting_nm_per_deg, Unit::one, 3),
                            words::newton_millimetre, words::righting_below, help::Topic::righting_moment)) {
        widgets::went_in(context.ui, words::went_mass,
                         text_of(context, context.evaluation().answers.mass.kg, Quantity::mass));
        widgets::went_in(context.ui, words::went_bg,
                         widgets::value_text(afloat->under_water.bg_m, unit, fine_decimals_of(unit)));
    }
}

} // namespace evenfall::shell::steps
