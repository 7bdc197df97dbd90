#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_glue.hpp"
#include "look/words_help.hpp"
#include "look/words_joints.hpp"
#include "look/words_steps.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"
#include "workshop.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Unit;

constexpr std::array<const char*, glue::glue_kind_count> glue_names{words::glue_thin, words::glue_thick,
                                                                    words::glue_epoxy};

void plain(PanelContext& context, const char* id, const char* label, double& value, const NumberSpec& spec) {
    if (const auto set = widgets::number_field(context.ui, id, label, value, spec)) value = *set;
}

std::string millilitres(double m3, int decimals) {
    return widgets::number_text(m3, Unit::cm3, decimals);
}

/// Of the glues that are taken.
void glue_cautions(PanelContext& context, const glue::GlueAnswer& answer) {
    using glue::GlueKind;
    const auto takes = [&](GlueKind kind) { return answer.take_m3[static_cast<std::size_t>(kind)] > 0.0; };
    if (takes(GlueKind::thin_ca) || takes(GlueKind::thick_ca))
        widgets::caution_box(context.ui, words::ca_title, cautions::ca);
    if (takes(GlueKind::epoxy)) widgets::caution_box(context.ui, words::epoxy_title, cautions::epoxy);
    widgets::gap();
}

void glue_went_in(PanelContext& context, const glue::GlueRequest& wish) {
    widgets::went_in(context.ui, words::went_lures, std::to_string(wish.lures));
    widgets::went_in(context.ui, words::went_loss, text_of(context, wish.loss, Quantity::percent));
    widgets::went_in(context.ui, words::went_fitting_time,
                     widgets::number_text(wish.fitting_s, widgets::Unit::one, 0));
}

} // namespace

void glue_rows(PanelContext& context) {
    glue::GlueRequest& wish = context.motion.glue;
    const auto answer = glue::glue(context.document(), context.evaluation().body, wish);
    if (answer.ok() && answer->rows.empty() && answer->caps.empty()) return;
    if (!section(context, {"section.joints.glue", words::glue_group})) return;
    widgets::note(context.ui, words::glue_below);
    if (answer.ok()) glue_cautions(context, *answer);
    wish.lures += widgets::stepper(context.ui, "glue.lures", words::glue_lures, wish.lures, 1, 200);
    plain(context, "glue.loss", words::glue_loss, wish.loss, {Quantity::percent, 0.0, 0.9, 0.05, 0});
    plain(context, "glue.fitting", words::glue_fitting, wish.fitting_s,
          {Quantity::number, 1.0, 7200.0, 10.0, 0});
    plain(context, "glue.thin", words::glue_thin_time, wish.times.thin_ca_s,
          {Quantity::number, 1.0, 3600.0, 1.0, 0});
    plain(context, "glue.thick", words::glue_thick_time, wish.times.thick_ca_s,
          {Quantity::number, 1.0, 3600.0, 5.0, 0});
    double minutes = units::min_from_s(wish.times.epoxy_s);
    plain(context, "glue.epoxy", words::glue_epoxy_time, minutes, {Quantity::number, 1.0, 1440.0, 5.0, 0});
    wish.times.epoxy_s = units::s_from_min(minutes);
    if (!answer.ok()) {
        widgets::problem_line(context.ui, answer.problems().front().sentence);
        return;
    }
    for (const auto& warning : answer->warnings)
        widgets::problem_line(context.ui, warning.sentence);
    for (const glue::GluedRow& row : answer->rows) {
        const std::string title = row.joint
                                      ? std::string(words::joint_title) + " " + std::to_string(*row.joint + 1)
                                      : std::string(words::glue_hangers);
        const std::string below = std::to_string(row.eyes) + " × " + millilitres(row.gap_m3, 3) + " " +
                                  words::glue_millilitre + ", " + words::glue_gap + " " +
                                  text_of(context, row.width_m, Quantity::thickness);
        if (widgets::figure_row(context.ui, title, glue_names[static_cast<std::size_t>(row.sort)], {}, below,
                                help::Topic::glue))
            glue_went_in(context, wish);
    }
    for (std::size_t k = 0; k < glue::glue_kind_count; ++k) {
        if (answer->take_m3[k] <= 0.0) continue;
        if (widgets::figure_row(context.ui, std::string(words::glue_take) + " " + glue_names[k],
                                millilitres(answer->take_m3[k], 2), words::glue_millilitre,
                                text_of(context, answer->take_kg[k], Quantity::mass), help::Topic::glue))
            glue_went_in(context, wish);
    }
    if (answer->soda_kg > 0.0)
        widgets::figure_row(context.ui, words::glue_soda, number_of(context, answer->soda_kg, Quantity::mass),
                            unit_of(context, Quantity::mass), {}, help::Topic::glue);
}

} // namespace evenfall::shell::steps
