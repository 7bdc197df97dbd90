#include "steps/step_panels.hpp"

#include "look/words_help.hpp"
#include "look/words_steps.hpp"
#include "look/words_water.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <cmath>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Unit;

std::string millinewtons(double newtons) {
    return widgets::number_text(1e3 * std::abs(newtons), Unit::one, 1);
}

void joint_rows(PanelContext& context, const fall::JointLoad& load, int joint) {
    widgets::subheading(context.ui, segment_name(context.document(), joint) + " – " +
                                        segment_name(context.document(), joint + 1));
    widgets::figure_row(context.ui, load.shear_n >= 0.0 ? words::pulls_down : words::pulls_up,
                        millinewtons(load.shear_n), words::millinewton, {}, help::Topic::hinge_load);
    const auto spacing = [&](bool tapped) {
        if (tapped && load.eye_spacing_m > 0.0)
            widgets::went_in(context.ui, words::went_spacing,
                             text_of(context, load.eye_spacing_m, Quantity::length));
    };
    spacing(widgets::figure_row(context.ui, words::eyes_row, millinewtons(load.eye_force_n),
                                words::millinewton, {}, help::Topic::hinge_load));
    spacing(widgets::figure_row(context.ui, words::sag_row, number_of(context, load.sag_rad, Quantity::angle),
                                unit_of(context, Quantity::angle), words::sag_below, help::Topic::sag));
    widgets::figure_row(context.ui, words::swings_row,
                        widgets::number_text(load.swings_from_m_s, context.ui.units.way_in_time()),
                        widgets::symbol(context.ui.units.way_in_time()), words::swings_below,
                        help::Topic::swings_from);
}

} // namespace

void hinge_rows(PanelContext& context) {
    const fall::HingeLoads* loads = context.motion.answers.hinges(context.session);
    if (loads == nullptr) {
        widgets::note(context.ui, words::not_known);
        return;
    }
    if (loads->joints.empty()) {
        widgets::note(context.ui, words::one_piece);
        return;
    }
    widgets::note(context.ui, words::hinge_note);
    for (const auto& warning : loads->warnings)
        widgets::problem_line(context.ui, warning.sentence);
    widgets::subheading(context.ui, words::alone_group);
    for (int s = 0; s < static_cast<int>(loads->segments.size()); ++s) {
        const double wet = loads->segments[static_cast<std::size_t>(s)].in_water_kg;
        widgets::figure_row(context.ui, segment_name(context.document(), s),
                            number_of(context, wet, Quantity::mass), unit_of(context, Quantity::mass),
                            wet < 0.0 ? words::alone_floats : words::alone_sinks, help::Topic::segment_alone);
    }
    for (int j = 0; j < static_cast<int>(loads->joints.size()); ++j)
        joint_rows(context, loads->joints[static_cast<std::size_t>(j)], j);
}

} // namespace evenfall::shell::steps
