#include "steps/step_panels.hpp"

#include "drawing/chain_view.hpp"
#include "look/words_help.hpp"
#include "look/words_joints.hpp"
#include "look/words_steps.hpp"
#include "widgets/rows.hpp"
#include "widgets/slider.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <cmath>
#include <string>
#include <vector>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;

std::string both(const PanelContext& context, const std::array<double, 2>& rad) {
    const std::string port = number_of(context, rad[0], Quantity::angle);
    const std::string starboard = number_of(context, rad[1], Quantity::angle);
    return port == starboard ? port : port + " / " + starboard;
}

/// What stops a joint, port and starboard.
void swing_went_in(PanelContext& context, const joints::JointAnswer& j, std::size_t index) {
    widgets::Ui& ui = context.ui;
    const document::Joint& joint = context.document().joints[index];
    const auto angles = [&](const std::array<double, 2>& rad) { return both(context, rad) + "°"; };
    widgets::went_in(ui, words::went_bare, angles({j.bare[0].angle_rad, j.bare[1].angle_rad}));
    widgets::went_in(ui, words::went_coated, angles({j.finished[0].angle_rad, j.finished[1].angle_rad}));
    const auto stops = [](double rad) { return rad < joints::most_swing_rad; };
    if (stops(j.wire_rad[0]) || stops(j.wire_rad[1]))
        widgets::went_in(ui, words::went_twist, angles(j.wire_rad));
    if (stops(j.eyes_rad[0]) || stops(j.eyes_rad[1]))
        widgets::went_in(ui, words::went_linked, angles(j.eyes_rad));
    widgets::went_in(ui, words::went_gap, text_of(context, joint.gap_m, Quantity::length));
    widgets::went_in(ui, words::went_reliefs,
                     number_of(context, joint.relief_fore_rad, Quantity::angle) + "° / " +
                         text_of(context, joint.relief_aft_rad, Quantity::angle));
}

/// The chain bent as far as the slider says: −1 all to port, 1 all to starboard.
void bent_chain(PanelContext& context, const joints::JointsAnswer& answer) {
    double& bend = context.motion.bend;
    std::vector<joints::Pin> pins;
    std::vector<double> swings;
    for (const auto& j : answer.joints) {
        pins.push_back(j.place.pin);
        // Tail to starboard is a rotation towards positive y.
        swings.push_back(bend * (bend < 0.0 ? j.swing_rad[0] : j.swing_rad[1]));
    }
    drawing::draw_chain(context.ui, context.evaluation().body, pins, swings,
                        widgets::take_row(context.ui.phone ? 130.0f : 170.0f));
    const widgets::Rect row = widgets::take_row(look::target + 4.0f);
    if (const auto share = widgets::slider_at(context.ui, "joints.bend", row, 0.5 * (bend + 1.0))) {
        bend = 2.0 * *share - 1.0;
        if (std::abs(bend) < 0.04) bend = 0.0; // snaps to straight
    }
    double total = 0.0;
    for (const double s : swings)
        total += s;
    std::string text = bend == 0.0 ? std::string(words::swing_straight)
                                   : text_of(context, std::abs(total), Quantity::angle) + ", " +
                                         (bend < 0.0 ? words::swing_to_port : words::swing_to_starboard);
    widgets::note(context.ui, text);
}

} // namespace

void swing_rows(PanelContext& context) {
    const joints::JointsAnswer* answer = context.motion.joints.of(context.session);
    if (answer == nullptr || answer->joints.empty()) return;
    widgets::subheading(context.ui, words::swing_group);
    for (const auto& warning : answer->warnings)
        widgets::problem_line(context.ui, warning.sentence);
    bent_chain(context, *answer);
    const std::string_view degree = unit_of(context, Quantity::angle);
    for (std::size_t k = 0; k < answer->joints.size(); ++k) {
        const auto& j = answer->joints[k];
        std::string below = std::string(words::swing_bare) + " " +
                            both(context, {j.bare[0].angle_rad, j.bare[1].angle_rad}) + "°, " +
                            words::swing_coated + " " +
                            both(context, {j.finished[0].angle_rad, j.finished[1].angle_rad}) + "°";
        if (std::min(j.wire_rad[0], j.wire_rad[1]) <
            std::min(j.finished[0].angle_rad, j.finished[1].angle_rad))
            below += std::string(", ") + words::swing_wire + " " + both(context, j.wire_rad) + "°";
        if (j.stopped_by[0] == joints::StoppedBy::eyes || j.stopped_by[1] == joints::StoppedBy::eyes)
            below += std::string(", ") + words::swing_eyes + " " + both(context, j.eyes_rad) + "°";
        if (widgets::figure_row(context.ui,
                                std::string(words::joint_title) + " " + std::to_string(k + 1) + " " +
                                    words::swing_row,
                                both(context, j.swing_rad), degree, below, help::Topic::swing))
            swing_went_in(context, j, k);
    }
    widgets::figure_row(context.ui, words::wrap_row, both(context, answer->wrap_rad), degree,
                        words::port_starboard, help::Topic::wrap);
    if (std::isfinite(answer->turn_radius_m[0]))
        widgets::figure_row(context.ui, words::turn_row,
                            number_of(context, std::max(answer->turn_radius_m[0], answer->turn_radius_m[1]),
                                      Quantity::length),
                            unit_of(context, Quantity::length), words::turn_row_below, help::Topic::turn);
}

} // namespace evenfall::shell::steps
