#include "steps/step_panels.hpp"

#include "answers/evaluation.hpp"
#include "look/words_log.hpp"
#include "look/words_steps.hpp"
#include "output/bench_text.hpp"
#include "widgets/button.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Unit;

std::string percent(double share) {
    return widgets::number_text(share, Unit::percent, 0);
}

void chance_rows(Desk& desk, const Uncertainty& s) {
    const std::string_view unit = unit_of(desk, Quantity::percent);
    widgets::figure_row(desk.ui, words::chance_row, percent(s.chances_now.both), unit,
                        words::chance_row_below);
    widgets::figure_row(desk.ui, words::put_right_row, percent(s.chances_corrected.both), unit,
                        words::put_right_below);
}

/// The most useful reading to take next, where one helps.
void best_next(Desk& desk, const Uncertainty& s) {
    if (s.next.empty() || s.next.front().gain < 0.01) return;
    const NextReading& n = s.next.front();
    const std::string below = output::reading_name(n.kind) + (n.with_dry_weight ? words::and_dry : "") +
                              words::separator + std::string(stage_words(n.stage));
    widgets::figure_row(desk.ui, words::best_next_row, percent(n.chance), unit_of(desk, Quantity::percent),
                        below);
}

void misfits(Desk& desk, const Uncertainty& s) {
    for (const ReadingFit& v : s.readings) {
        if (v.warning.empty()) continue;
        std::string text = v.warning;
        for (const std::string& why : v.explanations)
            text += "\n" + why;
        widgets::caution_box(desk.ui, {}, text);
        widgets::gap();
    }
}

void tub_after(Desk& desk, const DoNow& now) {
    widgets::subheading(desk.ui,
                        std::string(words::tub_after_group) + ", " + std::string(stage_words(now.stage)));
    widgets::figure_row(desk.ui, words::tub_weight_row, signed_mass(desk, now.tub_in_water_kg), {});
    if (!now.tub_fall_m_s) {
        widgets::note(desk.ui,
                      words::tub_no_fall[static_cast<std::size_t>(behaviour_of(now.tub_in_water_kg))]);
        return;
    }
    widgets::figure_row(desk.ui, words::tub_speed_row, number_of(desk, *now.tub_fall_m_s, Quantity::fall),
                        unit_of(desk, Quantity::fall));
    if (now.tub_half_metre_s)
        widgets::figure_row(desk.ui, words::tub_half_row,
                            widgets::number_text(*now.tub_half_metre_s, Unit::one, 2), "s");
}

/// Today's tub fall → finished fall, without recording anything.
void tub_seen(Desk& desk, const DoNow& now) {
    widgets::subheading(desk.ui, words::tub_seen_group);
    auto& seen = desk.motion.draft.tub_seen_m_s;
    const widgets::NumberSpec spec{Quantity::fall, 0.005, 5.0, {}, -1};
    if (const auto set = widgets::optional_number_field(desk.ui, "log.tub_seen", words::tub_seen_field, seen,
                                                        now.tub_fall_m_s.value_or(0.15), spec,
                                                        words::tub_seen_absent, words::tub_seen_below)) {
        seen = *set;
    }
    if (!seen) return;
    const auto then = finished_fall_for_tub(desk.document(), now.stage, *seen);
    if (!then) {
        for (const auto& problem : then.problems())
            widgets::problem_line(desk.ui, problem.sentence);
    } else if (!*then) {
        widgets::note(desk.ui, words::finished_floats);
    } else {
        const Estimate& e = **then;
        widgets::figure_row(desk.ui, words::finished_then, number_of(desk, e.value, Quantity::fall),
                            unit_of(desk, Quantity::fall),
                            number_of(desk, e.value + e.sigma, Quantity::fall) + " – " +
                                fall_end_text(desk, e.value - e.sigma));
    }
}

} // namespace

void now_rows(Desk& desk) {
    const Uncertainty* s = desk.motion.bench.uncertainty(desk.session);
    const DoNow* now = desk.motion.bench.now(desk.session);
    if (s == nullptr || now == nullptr) {
        widgets::note(desk.ui, words::now_not_known);
        return;
    }
    chance_rows(desk, *s);
    best_next(desk, *s);
    misfits(desk, *s);
    widgets::subheading(desk.ui, words::now_group);
    if (now->nothing_to_do) {
        widgets::paragraph(desk.ui, words::nothing_to_do);
    } else {
        for (const std::string& step : now->steps)
            widgets::paragraph(desk.ui, step);
    }
    for (const auto& p : now->shortfalls)
        widgets::problem_line(desk.ui, p.sentence);
    if (!now->changes.empty() && !now->nothing_to_do) {
        widgets::gap();
        if (widgets::button(desk.ui, "log.apply", words::apply_now, widgets::ButtonKind::main))
            desk.change(words::apply_label, state::done_now(*now, words::struck_note));
        if (s->stage >= Stage::leaded && s->has_readings) widgets::note(desk.ui, words::apply_note);
    }
    tub_after(desk, *now);
    tub_seen(desk, *now);
    if (!s->trim.sentence.empty()) {
        widgets::gap();
        widgets::info_box(desk.ui, {}, s->trim.sentence);
    }
    widgets::gap();
    widgets::caution_box(desk.ui, words::lead_title, words::lead_caution);
}

} // namespace evenfall::shell::steps
