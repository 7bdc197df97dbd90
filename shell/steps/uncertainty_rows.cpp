#include "steps/step_panels.hpp"

#include "look/words.hpp"
#include "look/words_help.hpp"
#include "look/words_log.hpp"
#include "look/words_steps.hpp"
#include "output.hpp"
#include "widgets/button.hpp"
#include "widgets/plot.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Unit;

std::string with_doubt(const PanelContext& context, const Estimate& e, Quantity quantity) {
    return number_of(context, e.value, quantity) + " ± " + number_of(context, e.sigma, quantity);
}

std::string before_text(const PanelContext& context, const Estimate& e, Quantity quantity) {
    return "± " + number_of(context, e.sigma_before, quantity) + " " + words::before_any;
}

/// A fall shown as a time per length has an asymmetric range, so its ends are shown.
std::string fall_ends(const PanelContext& context, const Estimate& e) {
    return number_of(context, e.value + e.sigma, Quantity::fall) + " – " +
           fall_end_text(context, e.value - e.sigma);
}

void fall_row(PanelContext& context, const Uncertainty& s) {
    const auto end = [&](double m_s) {
        return m_s > 0.0 ? text_of(context, m_s, Quantity::fall) : std::string(words::nothing_floats);
    };
    if (widgets::figure_row(context.ui, words::sure_fall, fall_ends(context, *s.fall_m_s),
                            unit_of(context, Quantity::fall), {}, help::Topic::spread)) {
        const auto& [half, eighty, most] = s.fall_50_80_95_m_s;
        widgets::went_in(context.ui, words::went_80_low, end(eighty.low));
        widgets::went_in(context.ui, words::went_80_high, end(eighty.high));
        widgets::went_in(context.ui, words::went_95_low, end(most.low));
        widgets::went_in(context.ui, words::went_95_high, end(most.high));
    }
    const Interval& eighty = s.fall_50_80_95_m_s[1];
    const std::string low = eighty.low > 0.0 ? number_of(context, eighty.low, Quantity::fall)
                                             : std::string(words::nothing_floats);
    widgets::note(context.ui, std::string(words::four_in_five) + " " + low + " " + words::to + " " +
                                  text_of(context, eighty.high, Quantity::fall));
}

void finished_rows(PanelContext& context, const Uncertainty& s) {
    widgets::subheading(context.ui, words::finished_group);
    const std::string_view gram = unit_of(context, Quantity::mass);
    const auto known = [&](bool tapped, const Estimate& e, Quantity quantity) {
        if (!tapped) return;
        widgets::went_in(context.ui, words::went_before, text_of(context, e.sigma_before, quantity));
        widgets::went_in(context.ui, words::went_readings, std::to_string(s.agreement.readings));
    };
    known(widgets::figure_row(context.ui, words::sure_mass, with_doubt(context, s.mass_kg, Quantity::mass),
                              gram, before_text(context, s.mass_kg, Quantity::mass), help::Topic::spread),
          s.mass_kg, Quantity::mass);
    std::string in_water = with_doubt(context, s.in_water_kg, Quantity::mass);
    if (s.in_water_kg.value > 0.0) in_water.insert(0, 1, '+');
    known(widgets::figure_row(context.ui, words::sure_in_water, in_water, gram,
                              before_text(context, s.in_water_kg, Quantity::mass), help::Topic::spread),
          s.in_water_kg, Quantity::mass);
    if (s.fall_m_s) fall_row(context, s);
    if (std::isfinite(s.pitch_rad.value))
        known(widgets::figure_row(context.ui, words::sure_pitch,
                                  with_doubt(context, s.pitch_rad, Quantity::angle),
                                  unit_of(context, Quantity::angle),
                                  before_text(context, s.pitch_rad, Quantity::angle), help::Topic::spread),
              s.pitch_rad, Quantity::angle);
}

void stage_plot(PanelContext& context, const Uncertainty& s, std::string_view id, const char* title,
                Estimate StagePrediction::*of) {
    const Unit mass = context.ui.units.of(Quantity::mass);
    widgets::Plot plot;
    plot.topic = help::Topic::stage_spread;
    plot.title = std::string(title) + ", " + std::string(widgets::symbol(mass));
    plot.x_step = 1.0;
    plot.x_least = 1.0;
    plot.x_most = static_cast<double>(stage_count);
    widgets::PlotLine now;
    widgets::PlotLine before;
    before.dashed = true;
    for (int k = 0; k < stage_count; ++k) {
        const Estimate& e = s.stages[static_cast<std::size_t>(k)].*of;
        now.points.push_back({k + 1.0, widgets::to_unit(e.sigma, mass)});
        before.points.push_back({k + 1.0, widgets::to_unit(e.sigma_before, mass)});
    }
    plot.lines.push_back(std::move(now));
    if (s.has_readings) {
        plot.lines.push_back(std::move(before));
        plot.marks.push_back({static_cast<int>(s.stage) + 1.0, words::here_mark});
    }
    auto& read_at = context.motion.read_off;
    std::optional<double> at;
    if (const auto found = read_at.find(id); found != read_at.end()) at = std::round(found->second);
    std::string read;
    if (at) {
        const int stage = std::clamp(static_cast<int>(*at) - 1, 0, stage_count - 1);
        read = stage_name(static_cast<Stage>(stage)) + ": ± " +
               number_of(context, (s.stages[static_cast<std::size_t>(stage)].*of).sigma, Quantity::mass);
    }
    if (const auto moved = widgets::plot(context.ui, id, plot, at, read))
        read_at.insert_or_assign(std::string(id), *moved);
}

void next_rows(PanelContext& context, const Uncertainty& s) {
    widgets::subheading(context.ui, words::next_group);
    if (s.next.empty()) {
        widgets::note(context.ui, words::next_none);
        return;
    }
    const bool can_be_met = lead_can_be_put_right(context);
    widgets::note(context.ui, can_be_met ? words::next_below : words::next_out_of_reach);
    constexpr std::size_t shown = 5;
    for (std::size_t k = 0; k < std::min(shown, s.next.size()); ++k) {
        const NextReading& n = s.next[k];
        const std::string name = output::next_reading_name(n);
        const std::string below =
            stage_name(n.stage) + (n.with_all ? output::with_all_words(context.document()) : "") +
            words::separator + "± " + text_of(context, n.in_water_sigma_kg, Quantity::mass) + " " +
            words::in_the_water;
        if (can_be_met)
            widgets::figure_row(context.ui, name, number_of(context, n.chance, Quantity::percent),
                                unit_of(context, Quantity::percent), below, help::Topic::next_reading);
        else
            widgets::figure_row(context.ui, name, words::dash, {}, below, help::Topic::next_reading);
    }
}

void input_rows(PanelContext& context, const Uncertainty& s) {
    widgets::subheading(context.ui, words::inputs_group);
    for (const InputEstimate& b : s.inputs) {
        const std::string now = widgets::number_text(b.factor - 1.0, Unit::percent, 1) + " ± " +
                                widgets::number_text(b.spread, Unit::percent, 1);
        widgets::figure_row(context.ui, b.name, now, unit_of(context, Quantity::percent),
                            "± " + widgets::value_text(b.spread_before, Unit::percent, 1) + " " +
                                words::before_any,
                            help::Topic::inputs);
    }
}

void draw_rows(PanelContext& context) {
    auto& bench = context.motion.bench;
    widgets::subheading(context.ui, words::draws_group);
    // More frames are requested only while draws are left.
    if (bench.continue_draws(context.session))
        context.ui.frames_wanted = std::max(context.ui.frames_wanted, 2);
    const auto draws = bench.draws();
    if (draws) {
        const std::string_view unit = unit_of(context, Quantity::percent);
        widgets::note(context.ui, std::to_string(draws->count) + " " + words::draws_of);
        widgets::figure_row(context.ui, words::draws_right,
                            number_of(context, draws->chances.both, Quantity::percent), unit, {},
                            help::Topic::simulation);
        widgets::figure_row(context.ui, words::draws_half,
                            fall_end_text(context, draws->fall_m_s.high_50) + " – " +
                                fall_end_text(context, draws->fall_m_s.low_50),
                            unit_of(context, Quantity::fall), {}, help::Topic::simulation);
        widgets::figure_row(context.ui, words::draws_float,
                            number_of(context, draws->floats, Quantity::percent), unit, {},
                            help::Topic::simulation);
    }
    widgets::gap();
    if (bench.drawing()) {
        if (widgets::button(context.ui, "log.draw", words::draws_stop)) bench.stop_draws();
    } else if (widgets::button(context.ui, "log.draw", words::draws_start)) {
        bench.start_draws(context.session);
        context.ui.frames_wanted = std::max(context.ui.frames_wanted, 2);
    }
    widgets::note(context.ui, words::draws_note);
}

} // namespace

void uncertainty_rows(PanelContext& context) {
    const Uncertainty* s = context.motion.bench.uncertainty(context.session);
    if (s == nullptr) {
        widgets::note(context.ui, words::now_not_known);
        return;
    }
    finished_rows(context, *s);
    stage_plot(context, *s, "log.doubt.mass", words::doubt_mass_title, &StagePrediction::mass_kg);
    stage_plot(context, *s, "log.doubt", words::doubt_title, &StagePrediction::in_tub_kg);
    widgets::note(context.ui, words::doubt_note);
    next_rows(context, *s);
    draw_rows(context);
    input_rows(context, *s);
}

} // namespace evenfall::shell::steps
