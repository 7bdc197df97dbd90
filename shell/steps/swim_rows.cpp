#include "steps/step_panels.hpp"

#include "drawing/swim_text.hpp"
#include "look/words_help.hpp"
#include "look/words_steps.hpp"
#include "look/words_swim.hpp"
#include "output.hpp"
#include "widgets/band_bar.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using state::Retrieve;
using state::RetrieveBy;
using widgets::Unit;

/// The verdict with its share. As many lines while more is tried as afterwards, so that nothing jumps.
void verdict(PanelContext& context, const swim::SwimAnswer& answer) {
    const std::string share = words::share_beats_in + std::to_string(answer.swims) + words::share_of +
                              std::to_string(answer.of) + words::share_assumptions;
    const std::string tried = answer.of < swim::all_draws
                                  ? std::to_string(answer.of) + words::share_of +
                                        std::to_string(swim::all_draws) + words::share_so_far
                                  : std::string(words::share_all);
    if (widgets::info_box(context.ui, words::ways[static_cast<std::size_t>(answer.way)], share + "\n" + tried,
                          help::Topic::swims)) {
        widgets::went_in(context.ui, words::went_assumptions, std::to_string(answer.of));
        widgets::went_in(context.ui, words::went_beating, std::to_string(answer.swims));
    }
    if (answer.caution.empty()) return;
    widgets::gap(8.0f);
    widgets::problem_line(context.ui, answer.caution);
}

void beats_bar(PanelContext& context, const bench::KnownBeats* known) {
    if (known == nullptr) {
        widgets::gap();
        widgets::note(context.ui, words::no_beats);
        return;
    }
    const Unit unit = context.ui.units.UnitSet::of(units::Quantity::beats);
    const auto shown = [unit](double per_m) { return widgets::to_unit(per_m, unit); };
    const swim::Beats& beats = known->per_m;
    if (widgets::band_bar(context.ui,
                          {.title = unit == Unit::per_m ? words::beats_a_metre : words::beats_in_ten_feet,
                           .number = widgets::number_text(beats.mid, unit),
                           .unit = widgets::number_text(beats.low, unit) + " " + words::to_word + " " +
                                   widgets::number_text(beats.high, unit),
                           .low = shown(beats.low),
                           .mid = shown(beats.mid),
                           .high = shown(beats.high),
                           .topic = help::Topic::beats}))
        widgets::went_in(context.ui, words::went_counts, std::to_string(known->counts));
    std::string note = words::beats_note;
    if (known->counts > 0)
        note += words::beats_counted;
    else if (known->is_learnt)
        note += words::beats_learnt;
    widgets::note(context.ui, note);
}

/// The speed of the chosen retrieve, by its own unit or by the handle.
void retrieve_fields(PanelContext& context, Retrieve& retrieve, int index) {
    double& speed_m_s = retrieve.speed_m_s[static_cast<std::size_t>(index)];
    if (retrieve.by != RetrieveBy::turns) {
        const NumberSpec spec{
            Quantity::retrieve, state::least_retrieve_m_s, state::most_retrieve_m_s, {}, -1};
        if (const auto set =
                widgets::number_field(context.ui, "swim.speed", words::retrieve_speed, speed_m_s, spec))
            speed_m_s = *set;
        return;
    }
    const double line_m = retrieve.line_per_turn_m;
    const NumberSpec turns{Quantity::number, state::least_retrieve_m_s / line_m,
                           state::most_retrieve_m_s / line_m, 0.1, 2};
    if (const auto set = widgets::number_field(context.ui, "swim.turns", words::retrieve_handle,
                                               speed_m_s / line_m, turns))
        speed_m_s = *set * line_m;
    const NumberSpec line{Quantity::depth, state::least_line_per_turn_m, state::most_line_per_turn_m, {}, -1};
    const auto set = widgets::number_field(context.ui, "swim.line", words::retrieve_line, line_m, line,
                                           words::retrieve_line_below);
    if (!set) return;
    // The hand turns as fast as before; another reel takes in another length.
    for (double& speed : retrieve.speed_m_s)
        speed = std::clamp(speed * *set / line_m, state::least_retrieve_m_s, state::most_retrieve_m_s);
    retrieve.line_per_turn_m = *set;
}

void retrieve_rows(PanelContext& context, const bench::KnownBeats* known) {
    const Retrieve& kept = context.session.settings.retrieve;
    Retrieve retrieve = kept;
    widgets::subheading(context.ui, words::retrieves_group, help::Topic::retrieves);
    const bool inches = context.ui.units.inches();
    const std::array<std::string_view, 3> ways{widgets::symbol(inches ? Unit::ft_per_s : Unit::m_per_s),
                                               widgets::symbol(inches ? Unit::mile_per_h : Unit::km_per_h),
                                               words::retrieve_turns};
    if (const auto by = widgets::choice(context.ui, "swim.by", ways, static_cast<int>(retrieve.by)))
        retrieve.by = static_cast<RetrieveBy>(*by);
    int& chosen = context.motion.swim.retrieve;
    for (int i = 0; i < static_cast<int>(words::retrieve_names.size()); ++i) {
        const auto index = static_cast<std::size_t>(i);
        const double speed_m_s = kept.speed_m_s[index];
        std::string below = drawing::retrieve_text(kept, speed_m_s, context.ui.units);
        std::string number = words::dash;
        if (known != nullptr) {
            const auto a_second = [speed_m_s](double per_m) {
                return drawing::beats_text(per_m * speed_m_s);
            };
            number = a_second(known->per_m.mid);
            below += std::string(words::separator) + a_second(known->per_m.low) + " " + words::to_word + " " +
                     a_second(known->per_m.high);
        }
        if (widgets::list_row(context.ui, "swim.row." + std::to_string(i),
                              {words::retrieve_names[index], below, number, words::a_second, i == chosen,
                               i != chosen, true}))
            chosen = i;
        if (i == chosen) retrieve_fields(context, retrieve, i);
    }
    if (!(retrieve == kept)) context.retrieve = retrieve;
}

/// How far each joint swings, and when the piece behind it follows.
void joint_rows(PanelContext& context, const swim::SwimAnswer& answer) {
    if (answer.joints.empty()) return;
    widgets::subheading(context.ui, words::wave_group);
    const std::string_view degree = unit_of(context, Quantity::angle);
    for (std::size_t j = 0; j < answer.joints.size(); ++j) {
        const swim::JointSwing& joint = answer.joints[j];
        std::string below = joint.at_stop ? words::at_stop : words::within_stop;
        if (j < answer.lag_rad.size()) {
            const double beat = answer.lag_rad[j] / units::rad_from_deg(360.0);
            below += std::string(words::separator) + widgets::number_text(beat, Unit::percent, 0) +
                     words::of_a_beat_behind;
        }
        widgets::figure_row(context.ui, std::string(words::joint_title) + " " + std::to_string(j + 1),
                            std::string(words::plus_minus) + " " +
                                number_of(context, joint.swing_rad, Quantity::angle),
                            degree, below, help::Topic::wave);
    }
}

void beside_rows(PanelContext& context) {
    widgets::subheading(context.ui, words::beside_group);
    widgets::note(context.ui, output::swim_left_out());
}

} // namespace

void swim_rows(PanelContext& context) {
    auto& swim = context.motion.swim.answers;
    // More frames are requested only while something is left to be worked out.
    bool more = swim.work(context.session);
    // While nothing moves, no one sees that frames are half as many.
    if (more && !context.motion.swim.clock.playing()) more = swim.work(context.session);
    if (more) context.ui.frames_wanted = std::max(context.ui.frames_wanted, 2);
    if (!swim.refusal().empty()) {
        Sentence why;
        for (const Problem& problem : swim.refusal())
            why += (why.empty() ? "" : "\n") + problem.sentence;
        widgets::info_box(context.ui, words::swim_no_answer, why);
        beside_rows(context);
        return;
    }
    const swim::SwimAnswer* answer = swim.answer();
    const auto beats = swim.known_beats(context.session);
    const bench::KnownBeats* known = beats ? &*beats : nullptr;
    if (answer == nullptr) {
        widgets::info_box(context.ui, words::swim_begins, words::share_begins);
    } else {
        verdict(context, *answer);
        beats_bar(context, known);
    }
    retrieve_rows(context, known);
    if (answer != nullptr) joint_rows(context, *answer);
    beside_rows(context);
}

} // namespace evenfall::shell::steps
