#include "steps/step_panels.hpp"

#include "look/words_steps.hpp"
#include "look/words_water.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;

std::string between(const std::string& low, const std::string& high) {
    return std::string(words::model_between) + " " + low + " " + words::and_word + " " + high;
}

std::string angle_band(const Desk& desk, const fall::Band& band) {
    return between(number_of(desk, band.low, Quantity::angle), text_of(desk, band.high, Quantity::angle));
}

void speed_row(Desk& desk, const fall::SteadyFall& fall) {
    // A rise is shown as a positive speed.
    const bool rises = fall.vertical_m_s < 0.0;
    const double speed = std::abs(fall.vertical_m_s);
    const fall::Band& band = fall.vertical_band_m_s;
    // Low to high as displayed: as a time per length the faster one comes first.
    std::string low = fall_end_text(desk, rises ? -band.high : band.low);
    std::string high = fall_end_text(desk, rises ? -band.low : band.high);
    if (desk.ui.units.of(Quantity::fall) != widgets::Unit::mm_per_s) std::swap(low, high);
    widgets::figure_row(desk.ui, rises ? words::speed_up : words::speed_down,
                        number_of(desk, speed, Quantity::fall), unit_of(desk, Quantity::fall),
                        between(low, high));
}

void steady_rows(Desk& desk, const fall::SteadyFalls& falls, std::size_t index) {
    const fall::SteadyFall& fall = falls.falls[index];
    std::string manner = fall::manner_text(fall);
    if (!manner.empty())
        manner.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(manner.front())));
    widgets::subheading(desk.ui, manner);
    widgets::note(desk.ui, fall.stable ? words::way_stays : words::way_leaves);
    speed_row(desk, fall);
    std::string below = angle_band(desk, fall.pitch_band_rad);
    if (falls.hang_pitch_rad) {
        below += std::string(words::separator) + words::hangs_at + " " +
                 text_of(desk, *falls.hang_pitch_rad, Quantity::angle);
    }
    widgets::figure_row(desk.ui, words::fall_pitch, number_of(desk, fall.pitch_rad, Quantity::angle),
                        unit_of(desk, Quantity::angle), below);
    widgets::figure_row(desk.ui, words::glide_angle, number_of(desk, fall.glide_rad, Quantity::angle),
                        unit_of(desk, Quantity::angle), angle_band(desk, fall.glide_band_rad));
    if (!fall.holds_over_band) widgets::note(desk.ui, words::not_over_band);
}

/// The depth is not part of the lure: it is set in the view, not by an edit.
void depth_rows(Desk& desk) {
    widgets::subheading(desk.ui, words::depth_group);
    const NumberSpec spec{Quantity::depth, state::least_fall_depth_m, state::most_fall_depth_m, {}, -1};
    if (const auto set = widgets::number_field(desk.ui, "water.depth", words::depth_field,
                                               desk.view.fall_depth_m, spec, words::depth_below)) {
        desk.view.fall_depth_m = *set;
    }
    const fall::Track* track = desk.motion.answers.track(desk.session);
    if (track == nullptr) {
        widgets::note(desk.ui, words::no_track);
        return;
    }
    if (!track->reached_s) {
        widgets::figure_row(desk.ui, words::time_to_depth, words::not_reached, {});
        return;
    }
    widgets::figure_row(desk.ui, words::time_to_depth,
                        widgets::number_text(*track->reached_s, widgets::Unit::one, 2), words::second);
    widgets::figure_row(desk.ui, words::glide_distance, number_of(desk, track->forward_m, Quantity::length),
                        unit_of(desk, Quantity::length), words::glide_distance_below);
    if (!track->start_up_share) return;
    widgets::figure_row(desk.ui, words::start_up,
                        widgets::number_text(*track->start_up_share, widgets::Unit::percent, 0),
                        unit_of(desk, Quantity::percent), words::start_up_below);
}

} // namespace

void fall_rows(Desk& desk) {
    const fall::SteadyFalls* falls = desk.motion.answers.falls(desk.session);
    if (falls == nullptr) {
        widgets::note(desk.ui, words::not_known);
        return;
    }
    const Behaviour behaviour = desk.evaluation().answers.behaviour;
    if (behaviour == Behaviour::suspends) {
        widgets::note(desk.ui, words::no_way);
        return;
    }
    if (behaviour == Behaviour::falls) depth_rows(desk);
    if (falls->falls.empty()) {
        widgets::note(desk.ui, words::no_steady_way);
        return;
    }
    if (behaviour == Behaviour::floats) widgets::note(desk.ui, words::rises_like_this);
    // The main fall first, then the other stable ones, then the unstable ones.
    if (falls->main) steady_rows(desk, *falls, *falls->main);
    for (const bool stable : {true, false}) {
        for (std::size_t i = 0; i < falls->falls.size(); ++i) {
            if (falls->main != i && falls->falls[i].stable == stable) steady_rows(desk, *falls, i);
        }
    }
    widgets::gap();
    widgets::note(desk.ui, words::model_note);
}

} // namespace evenfall::shell::steps
