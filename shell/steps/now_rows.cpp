#include "steps/drill_steps.hpp"
#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_help.hpp"
#include "look/words_log.hpp"
#include "look/words_steps.hpp"
#include "output.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Unit;

void chance_rows(PanelContext& context, const Uncertainty& s, const DoNow& now) {
    const std::string_view unit = unit_of(context, Quantity::percent);
    const auto alone = [&](bool tapped, const Chances& chances) {
        if (!tapped) return;
        widgets::went_in(context.ui, words::went_fall_chance,
                         text_of(context, chances.fall, Quantity::percent));
        widgets::went_in(context.ui, words::went_hang_chance,
                         text_of(context, chances.pitch, Quantity::percent));
        widgets::went_in(context.ui, words::went_in_water_sigma,
                         text_of(context, s.in_water_kg.sigma, Quantity::mass));
        widgets::went_in(context.ui, words::went_readings, std::to_string(s.agreement.readings));
    };
    alone(widgets::figure_row(context.ui, words::chance_row,
                              number_of(context, s.chances_now.both, Quantity::percent), unit,
                              words::chance_row_below, help::Topic::chance),
          s.chances_now);
    alone(widgets::figure_row(context.ui, now.met ? words::put_right_row : words::nearest_row,
                              number_of(context, now.chances.both, Quantity::percent), unit,
                              now.met ? words::put_right_below : words::nearest_below,
                              help::Topic::chance_then),
          now.chances);
}

/// The most useful reading to take next, where one helps to put the lead right: a tap begins it.
void best_next(PanelContext& context, const Uncertainty& s, const DoNow& now) {
    if (!now.met || s.next.empty() || s.next.front().gain < 0.01) return;
    const NextReading& n = s.next.front();
    const std::string what = output::next_reading_name(n) + words::separator + stage_name(n.stage) +
                             (n.with_all ? output::with_all_words(context.document()) : "");
    const std::string chance = number_of(context, n.chance, Quantity::percent);
    if (!widgets::list_row(
            context.ui, "log.best_next",
            {words::best_next_row, what, chance, unit_of(context, Quantity::percent), false, true}))
        return;
    document::Reading r =
        state::new_reading(n.kind, &s, context.ui.host != nullptr ? context.ui.host->today() : std::string());
    r.stage = n.stage;
    if (n.each_segment && document::is_weighing(n.kind)) r.segment = 0;
    if (n.kind == document::ReadingKind::caliper)
        r.x_m = context.evaluation().body.segments.front().centroid_m.x;
    r.with = n.with_all ? document::all_hung_on() : document::HungList{};
    context.motion.draft.reading = std::move(r);
    context.view.log_view = state::LogView::readings;
}

void misfits(PanelContext& context, const Uncertainty& s) {
    for (const ReadingFit& v : s.readings) {
        if (v.warning.empty()) continue;
        Sentence text = v.warning;
        for (const Sentence& why : v.explanations)
            text += "\n" + why;
        widgets::caution_box(context.ui, {}, text);
        stands_button(context, static_cast<int>(v.index), &s);
        widgets::gap();
    }
}

void tub_test(PanelContext& context, const TubTest& test, const std::string& with) {
    widgets::subheading(context.ui,
                        std::string(words::tub_after_group) + ", " + stage_name(test.stage) + with);
    const auto in_tub = [&](bool tapped) {
        if (tapped)
            widgets::went_in(context.ui, words::went_tub_temperature,
                             text_of(context, context.document().tub.temperature_c, Quantity::temperature));
    };
    in_tub(widgets::figure_row(context.ui, words::tub_weight_row, signed_mass(context, test.in_water_kg), {},
                               {}, help::Topic::tub));
    if (!test.fall_m_s) {
        widgets::note(context.ui, words::tub_no_fall[static_cast<std::size_t>(test.behaviour)]);
        return;
    }
    in_tub(widgets::figure_row(context.ui, words::tub_speed_row,
                               number_of(context, *test.fall_m_s, Quantity::fall),
                               unit_of(context, Quantity::fall), {}, help::Topic::tub));
    if (test.half_metre_s)
        widgets::figure_row(
            context.ui, context.ui.units.inches() ? words::tub_half_row_inches : words::tub_half_row,
            widgets::number_text(*test.half_metre_s, Unit::one, 2), "s", {}, help::Topic::tub);
}

/// Today's tub fall → finished fall, without recording anything.
void tub_fall_row(PanelContext& context, const DoNow& now) {
    widgets::subheading(context.ui, words::tub_seen_group);
    const TubTest& test = now.with_all ? *now.with_all : now.tub;
    auto& seen = context.motion.draft.tub_seen_m_s;
    const widgets::NumberSpec spec{Quantity::fall, 0.005, 5.0, {}, -1};
    if (const auto set = widgets::optional_number_field(context.ui, "log.tub_seen", words::tub_seen_field,
                                                        seen, test.fall_m_s.value_or(0.15), spec,
                                                        words::tub_seen_absent, words::tub_seen_below)) {
        seen = *set;
    }
    if (!seen) return;
    const auto then = finished_fall_for_tub(context.document(), test.stage, *seen, now.with_all.has_value());
    if (!then) {
        for (const auto& problem : then.problems())
            widgets::problem_line(context.ui, problem.sentence);
    } else if (!*then) {
        widgets::note(context.ui, words::finished_floats);
    } else {
        const Estimate& e = **then;
        widgets::figure_row(context.ui, words::finished_then, number_of(context, e.value, Quantity::fall),
                            unit_of(context, Quantity::fall),
                            number_of(context, e.value + e.sigma, Quantity::fall) + " – " +
                                fall_end_text(context, e.value - e.sigma),
                            help::Topic::tub_seen);
    }
}

} // namespace

bool lead_can_be_put_right(PanelContext& context) {
    const DoNow* now = context.motion.bench.now(context.session);
    return now != nullptr && now->met;
}

void now_rows(PanelContext& context) {
    const Uncertainty* s = context.motion.bench.uncertainty(context.session);
    const DoNow* now = context.motion.bench.now(context.session);
    if (s == nullptr || now == nullptr) {
        widgets::note(context.ui, words::now_not_known);
        return;
    }
    chance_rows(context, *s, *now);
    best_next(context, *s, *now);
    misfits(context, *s);
    if (!s->agreement.warning.empty()) {
        widgets::caution_box(context.ui, {}, s->agreement.warning);
        widgets::gap();
    }
    widgets::subheading(context.ui, words::now_group);
    if (now->nothing_to_do) {
        constexpr double worth_a_reading = 0.05; // of chance
        const bool wait = !s->next.empty() && s->next.front().gain > worth_a_reading;
        widgets::paragraph(context.ui, wait ? words::nothing_yet : words::nothing_to_do);
    } else {
        if (output::works_lead(*now))
            widgets::caution_box(context.ui, words::lead_title, cautions::lead_chips);
        work_table(context, now->document, now->holes);
        for (const Sentence& step : now->steps)
            widgets::note(context.ui, step);
    }
    for (const auto& p : now->shortfalls)
        widgets::problem_line(context.ui, p.sentence);
    if (!now->changes.empty() && !now->nothing_to_do) {
        widgets::gap();
        if (widgets::button(context.ui, "log.apply", words::apply_now, widgets::ButtonKind::main))
            context.change(words::apply_label, state::done_now(*now));
        if (now->lead_is_in) widgets::note(context.ui, words::apply_note);
    }
    if (!now->nothing_to_do && !now->holes.empty()) {
        drill_button(context, "log.drill");
        advice_ticks(context, *now);
    }
    if (now->with_all) widgets::caution_box(context.ui, words::hooks_title, cautions::hooks);
    if (now->with_all) tub_test(context, *now->with_all, output::with_all_words(context.document()));
    if (now->stage >= Stage::sealed || !now->with_all) tub_test(context, now->tub, "");
    tub_fall_row(context, *now);
    if (!s->trim.sentence.empty()) {
        widgets::gap();
        widgets::info_box(context.ui, {}, s->trim.sentence);
    }
}

} // namespace evenfall::shell::steps
