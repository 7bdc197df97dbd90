#include "steps/step_panels.hpp"

#include "drawing/chain_view.hpp"
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

std::string both(const Desk& desk, const std::array<double, 2>& rad) {
    const std::string port = number_of(desk, rad[0], Quantity::angle);
    const std::string starboard = number_of(desk, rad[1], Quantity::angle);
    return port == starboard ? port : port + " / " + starboard;
}

/// The chain bent as far as the slider says: −1 all to port, 1 all to starboard.
void bent_chain(Desk& desk, const joints::JointsAnswer& answer) {
    double& bend = desk.motion.bend;
    std::vector<joints::Pin> pins;
    std::vector<double> swings;
    for (const auto& j : answer.joints) {
        pins.push_back(j.place.pin);
        // Tail to starboard is a rotation towards positive y.
        swings.push_back(bend * (bend < 0.0 ? j.swing_rad[0] : j.swing_rad[1]));
    }
    drawing::draw_chain(desk.ui, desk.evaluation().body, pins, swings,
                        widgets::take_row(desk.ui.phone ? 130.0f : 170.0f));
    const widgets::Rect row = widgets::take_row(look::target + 4.0f);
    if (const auto share = widgets::slider_at(desk.ui, "joints.bend", row, 0.5 * (bend + 1.0))) {
        bend = 2.0 * *share - 1.0;
        if (std::abs(bend) < 0.04) bend = 0.0; // snaps to straight
    }
    double total = 0.0;
    for (const double s : swings)
        total += s;
    std::string text = bend == 0.0 ? std::string(words::swing_straight)
                                   : text_of(desk, std::abs(total), Quantity::angle) + ", " +
                                         (bend < 0.0 ? words::swing_to_port : words::swing_to_starboard);
    widgets::note(desk.ui, text);
}

} // namespace

void swing_rows(Desk& desk) {
    const joints::JointsAnswer* answer = desk.motion.joints.of(desk.session);
    if (answer == nullptr || answer->joints.empty()) return;
    widgets::subheading(desk.ui, words::swing_group);
    for (const auto& warning : answer->warnings)
        widgets::problem_line(desk.ui, warning.sentence);
    bent_chain(desk, *answer);
    const std::string_view degree = unit_of(desk, Quantity::angle);
    for (std::size_t k = 0; k < answer->joints.size(); ++k) {
        const auto& j = answer->joints[k];
        std::string below = std::string(words::swing_bare) + " " +
                            both(desk, {j.bare[0].angle_rad, j.bare[1].angle_rad}) + "°, " +
                            words::swing_coated + " " +
                            both(desk, {j.finished[0].angle_rad, j.finished[1].angle_rad}) + "°";
        if (std::min(j.wire_rad[0], j.wire_rad[1]) <
            std::min(j.finished[0].angle_rad, j.finished[1].angle_rad))
            below += std::string(", ") + words::swing_wire + " " + both(desk, j.wire_rad) + "°";
        if (j.stopped_by[0] == joints::StoppedBy::eyes || j.stopped_by[1] == joints::StoppedBy::eyes)
            below += std::string(", ") + words::swing_eyes + " " + both(desk, j.eyes_rad) + "°";
        widgets::figure_row(
            desk.ui, std::string(words::joint_title) + " " + std::to_string(k + 1) + " " + words::swing_row,
            both(desk, j.swing_rad), degree, below);
    }
    widgets::figure_row(desk.ui, words::wrap_row, both(desk, answer->wrap_rad), degree,
                        words::port_starboard);
    if (std::isfinite(answer->turn_radius_m[0]))
        widgets::figure_row(
            desk.ui, words::turn_row,
            number_of(desk, std::max(answer->turn_radius_m[0], answer->turn_radius_m[1]), Quantity::length),
            unit_of(desk, Quantity::length), words::turn_row_below);
}

} // namespace evenfall::shell::steps
