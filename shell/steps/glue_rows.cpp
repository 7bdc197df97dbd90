#include "steps/step_panels.hpp"

#include "base/trade.hpp"
#include "look/words_glue.hpp"
#include "look/words_joints.hpp"
#include "look/words_steps.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"
#include "workshop/glue.hpp"

#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Unit;

constexpr std::array<const char*, glue::sort_count> glue_names{words::glue_thin, words::glue_thick,
                                                               words::glue_epoxy};

void plain(Desk& desk, const char* id, const char* label, double& value, const NumberSpec& spec) {
    if (const auto set = widgets::number_field(desk.ui, id, label, value, spec)) value = *set;
}

std::string millilitres(double m3, int decimals) {
    return widgets::number_text(units::cm3_from_m3(m3), Unit::one, decimals);
}

} // namespace

void glue_rows(Desk& desk) {
    glue::GlueRequest& wish = desk.motion.glue;
    const auto answer = glue::glue(desk.document(), desk.evaluation().body, wish);
    if (answer.ok() && answer->rows.empty() && answer->caps.empty()) return;
    widgets::subheading(desk.ui, words::glue_group);
    widgets::note(desk.ui, words::glue_below);
    wish.lures += widgets::stepper(desk.ui, "glue.lures", words::glue_lures, wish.lures, 1, 200);
    plain(desk, "glue.loss", words::glue_loss, wish.loss, {Quantity::percent, 0.0, 0.9, 0.05, 0});
    plain(desk, "glue.fitting", words::glue_fitting, wish.fitting_s,
          {Quantity::number, 1.0, 7200.0, 10.0, 0});
    plain(desk, "glue.thin", words::glue_thin_time, wish.times.thin_ca_s,
          {Quantity::number, 1.0, 3600.0, 1.0, 0});
    plain(desk, "glue.thick", words::glue_thick_time, wish.times.thick_ca_s,
          {Quantity::number, 1.0, 3600.0, 5.0, 0});
    double minutes = units::min_from_s(wish.times.epoxy_s);
    plain(desk, "glue.epoxy", words::glue_epoxy_time, minutes, {Quantity::number, 1.0, 1440.0, 5.0, 0});
    wish.times.epoxy_s = units::s_from_min(minutes);
    if (!answer.ok()) {
        widgets::problem_line(desk.ui, answer.problems().front().sentence);
        return;
    }
    for (const auto& warning : answer->warnings)
        widgets::problem_line(desk.ui, warning.sentence);
    for (const glue::GluedRow& row : answer->rows) {
        const std::string title = row.joint
                                      ? std::string(words::joint_title) + " " + std::to_string(*row.joint + 1)
                                      : std::string(words::glue_hangers);
        const std::string below = std::to_string(row.eyes) + " × " + millilitres(row.gap_m3, 3) + " " +
                                  words::glue_millilitre + ", " + words::glue_gap + " " +
                                  widgets::number_text(units::mm_from_m(row.width_m), Unit::one, 2) + " mm";
        widgets::figure_row(desk.ui, title, glue_names[static_cast<std::size_t>(row.sort)], {}, below);
    }
    for (std::size_t k = 0; k < glue::sort_count; ++k) {
        if (answer->take_m3[k] <= 0.0) continue;
        widgets::figure_row(desk.ui, std::string(words::glue_take) + " " + glue_names[k],
                            millilitres(answer->take_m3[k], 2), words::glue_millilitre,
                            text_of(desk, answer->take_kg[k], Quantity::mass));
    }
    if (answer->soda_kg > 0.0)
        widgets::figure_row(desk.ui, words::glue_soda, number_of(desk, answer->soda_kg, Quantity::mass),
                            unit_of(desk, Quantity::mass));
    widgets::gap();
    widgets::caution_box(desk.ui, words::glue_caution_title, words::glue_caution);
}

} // namespace evenfall::shell::steps
