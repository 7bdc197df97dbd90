#include "steps/step_panels.hpp"

#include "look/words_help.hpp"
#include "look/words_steps.hpp"
#include "look/words_water.hpp"
#include "output.hpp"
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

std::string angle_band(const PanelContext& context, const fall::Band& band) {
    return between(number_of(context, band.low, Quantity::angle),
                   text_of(context, band.high, Quantity::angle));
}

void speed_row(PanelContext& context, const fall::SteadyFall& fall) {
    // A rise is shown as a positive speed.
    const bool rises = fall.vertical_m_s < 0.0;
    const double speed = std::abs(fall.vertical_m_s);
    const fall::Band& band = fall.vertical_band_m_s;
    // Low to high as displayed: as a time per length the faster one comes first.
    std::string low = fall_end_text(context, rises ? -band.high : band.low);
    std::string high = fall_end_text(context, rises ? -band.low : band.high);
    if (context.ui.units.of(Quantity::fall) != widgets::Unit::mm_per_s) std::swap(low, high);
    if (!widgets::figure_row(context.ui, rises ? words::speed_up : words::speed_down,
                             number_of(context, speed, Quantity::fall), unit_of(context, Quantity::fall),
                             between(low, high), help::Topic::fall))
        return;
    const Answers& answers = context.evaluation().answers;
    widgets::went_in(context.ui, words::went_in_water, signed_mass(context, answers.in_water.kg));
    widgets::went_in(context.ui, words::went_angle, text_of(context, fall.pitch_rad, Quantity::angle));
    widgets::went_in(context.ui, words::went_temperature,
                     text_of(context, context.document().water.temperature_c, Quantity::temperature));
}

void steady_rows(PanelContext& context, const fall::SteadyFalls& falls, std::size_t index) {
    const fall::SteadyFall& fall = falls.falls[index];
    std::string manner = fall::fall_attitude_text(fall);
    if (!manner.empty())
        manner.front() = static_cast<char>(std::toupper(static_cast<unsigned char>(manner.front())));
    widgets::subheading(context.ui, manner);
    widgets::note(context.ui, fall.stable ? words::way_stays : words::way_leaves);
    speed_row(context, fall);
    std::string below = angle_band(context, fall.pitch_band_rad);
    if (falls.hang_pitch_rad) {
        below += std::string(words::separator) + words::hangs_at + " " +
                 text_of(context, *falls.hang_pitch_rad, Quantity::angle);
    }
    widgets::figure_row(context.ui, words::fall_pitch, number_of(context, fall.pitch_rad, Quantity::angle),
                        unit_of(context, Quantity::angle), below, help::Topic::fall_attitude);
    widgets::figure_row(context.ui, words::glide_angle, number_of(context, fall.glide_rad, Quantity::angle),
                        unit_of(context, Quantity::angle), angle_band(context, fall.glide_band_rad),
                        help::Topic::fall_attitude);
    if (!fall.holds_over_band) widgets::note(context.ui, words::not_over_band);
}

/// The depth is not part of the lure: it is set in the view, not by an edit.
void depth_rows(PanelContext& context) {
    widgets::subheading(context.ui, words::depth_group);
    const NumberSpec spec{Quantity::depth, state::least_fall_depth_m, state::most_fall_depth_m, {}, -1};
    if (const auto set = widgets::number_field(context.ui, "water.depth", words::depth_field,
                                               context.view.fall_depth_m, spec, words::depth_below)) {
        context.view.fall_depth_m = *set;
    }
    const fall::Track* track = context.motion.answers.track(context.session);
    if (track == nullptr) {
        widgets::note(context.ui, words::no_track);
        return;
    }
    if (!track->reached_s) {
        widgets::figure_row(context.ui, words::time_to_depth, words::not_reached, {}, {},
                            help::Topic::fall_time);
        return;
    }
    if (widgets::figure_row(context.ui, words::time_to_depth,
                            widgets::number_text(*track->reached_s, widgets::Unit::one, 2), words::second, {},
                            help::Topic::fall_time)) {
        widgets::went_in(context.ui, words::depth_field,
                         text_of(context, context.view.fall_depth_m, Quantity::depth));
        if (const auto& fall = context.evaluation().answers.fall)
            widgets::went_in(context.ui, words::went_speed,
                             text_of(context, fall->speed_m_s, Quantity::fall));
    }
    widgets::figure_row(
        context.ui, words::glide_distance, number_of(context, track->forward_m, Quantity::length),
        unit_of(context, Quantity::length), words::glide_distance_below, help::Topic::fall_time);
    if (!track->start_up_share) return;
    widgets::figure_row(context.ui, words::start_up,
                        widgets::number_text(*track->start_up_share, widgets::Unit::percent, 0),
                        unit_of(context, Quantity::percent), words::start_up_below, help::Topic::fall_time);
}

} // namespace

void fall_rows(PanelContext& context) {
    if (const Uncertainty* sure = context.motion.bench.uncertainty(context.session)) {
        const Sentence near = output::near_neutral_sentence(sure->under_water);
        if (!near.empty()) widgets::note(context.ui, near.text(context.ui.units));
    }
    const fall::SteadyFalls* falls = context.motion.answers.falls(context.session);
    if (falls == nullptr) {
        widgets::note(context.ui, words::not_known);
        return;
    }
    const Behaviour behaviour = context.evaluation().answers.behaviour;
    if (behaviour == Behaviour::suspends) {
        widgets::note(context.ui, words::no_way);
        if (falls->falls.empty()) return;
    }
    if (behaviour == Behaviour::falls) depth_rows(context);
    if (falls->falls.empty()) {
        widgets::note(context.ui, words::no_steady_way);
        return;
    }
    if (behaviour == Behaviour::floats) widgets::note(context.ui, words::rises_like_this);
    // The main fall first, then the other stable ones, then the unstable ones.
    if (falls->main) steady_rows(context, *falls, *falls->main);
    for (const bool stable : {true, false}) {
        for (std::size_t i = 0; i < falls->falls.size(); ++i) {
            if (falls->main != i && falls->falls[i].stable == stable) steady_rows(context, *falls, i);
        }
    }
    widgets::gap();
    widgets::note(context.ui, words::model_note);
}

} // namespace evenfall::shell::steps
