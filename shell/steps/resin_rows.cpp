#include "steps/step_panels.hpp"

#include "evenfall.hpp"
#include "look/words_choice.hpp"
#include "look/words_help.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"
#include "workshop.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Unit;

void plain(PanelContext& context, const char* id, const char* label, double& value, NumberSpec spec,
           const std::string& below = {}) {
    if (const auto set = widgets::number_field(context.ui, id, label, value, spec, below)) value = *set;
}

void parts(PanelContext& context, const char* id, const char* label, std::optional<double>& value) {
    const NumberSpec spec{Quantity::number, 0.1, 100.0, 0.5, 1};
    if (const auto set = widgets::optional_number_field(context.ui, id, label, value, 1.0, spec,
                                                        words::resin_parts_absent))
        value = *set;
}

void minutes(PanelContext& context, const char* id, const char* label, double& seconds, double least,
             double most, const std::string& below = {}) {
    double value = units::min_from_s(seconds);
    plain(context, id, label, value, {Quantity::number, least, most, 1.0, 0}, below);
    seconds = units::s_from_min(value);
}

void hours(PanelContext& context, const char* id, const char* label, double& seconds, double least,
           double most) {
    double value = units::hour_from_s(seconds);
    plain(context, id, label, value, {Quantity::number, least, most, 1.0, 1});
    seconds = units::s_from_hour(value);
}

void amount_rows(PanelContext& context, const resin::Mix& mix) {
    const resin::MixRequest& wish = context.motion.mix;
    const auto row = [&](const char* label, double kg) {
        if (!widgets::figure_row(context.ui, label, number_of(context, kg, Quantity::mass),
                                 unit_of(context, Quantity::mass), {}, help::Topic::resin_amount))
            return;
        widgets::went_in(context.ui, words::went_on_lure, text_of(context, wish.on_lure_kg, Quantity::mass));
        widgets::went_in(context.ui, words::went_lures, std::to_string(wish.lures));
        widgets::went_in(context.ui, words::went_loss, text_of(context, wish.loss, Quantity::percent));
        if (wish.ratio.resin && wish.ratio.hardener)
            widgets::went_in(context.ui, words::went_ratio,
                             widgets::number_text(*wish.ratio.resin, Unit::one, 1) + " : " +
                                 widgets::number_text(*wish.ratio.hardener, Unit::one, 1));
    };
    row(words::resin_all, mix.all.mixed_kg);
    row(words::resin_a, mix.all.resin_kg);
    row(words::resin_b, mix.all.hardener_kg);
}

void time_rows(PanelContext& context, const resin::Mix& mix) {
    const resin::MixRequest& wish = context.motion.mix;
    const auto span = [](double from_s, double to_s) {
        return widgets::number_text(from_s, Unit::hour, 1) + " – " +
               widgets::number_text(to_s, Unit::hour, 1);
    };
    if (widgets::figure_row(context.ui, words::resin_lasts,
                            widgets::number_text(mix.working_s, Unit::minute, 0), words::resin_minutes,
                            words::resin_lasts_below, help::Topic::resin_time)) {
        widgets::went_in(context.ui, words::went_label_time,
                         widgets::number_text(wish.label.working_s, Unit::minute, 0));
        widgets::went_in(context.ui, words::went_label_temperature,
                         text_of(context, wish.label.temperature_c, Quantity::temperature));
        widgets::went_in(context.ui, words::resin_warmth,
                         text_of(context, wish.mix_c, Quantity::temperature));
    }
    if (widgets::figure_row(context.ui, words::resin_recoat, span(mix.recoat_from_s, mix.recoat_to_s),
                            words::resin_hours, words::resin_recoat_below, help::Topic::resin_time)) {
        widgets::went_in(context.ui, words::went_label_recoat,
                         span(wish.label.recoat_from_s, wish.label.recoat_to_s));
        widgets::went_in(context.ui, words::went_room, text_of(context, wish.room_c, Quantity::temperature));
    }
    if (mix.mixes <= 1) return;
    if (widgets::figure_row(context.ui, words::resin_mixes, std::to_string(mix.mixes), {},
                            std::to_string(mix.lures_a_mix) + words::resin_lures_each,
                            help::Topic::resin_amount)) {
        widgets::went_in(context.ui, words::went_lures_by_time, std::to_string(mix.lures_by_time));
        widgets::went_in(context.ui, words::went_lures_by_batch, std::to_string(mix.lures_by_batch));
    }
}

} // namespace

void resin_rows(PanelContext& context) {
    const int coat = resin::resin_coat(context.document());
    if (coat < 0) return;
    resin::MixRequest& wish = context.motion.mix;
    const auto coats = resin::schedule(context.document(), context.evaluation());
    wish.on_lure_kg = coats[static_cast<std::size_t>(coat)].together_kg();
    if (!section(context, {"section.finish.resin", words::resin_group})) return;
    widgets::note(context.ui, words::resin_below);
    wish.lures += widgets::stepper(context.ui, "resin.lures", words::resin_lures, wish.lures, 1, 200);
    const std::array<std::string_view, 2> ways{words::resin_by_weight, words::resin_by_volume};
    if (const auto tapped =
            widgets::choice(context.ui, "resin.by", words::resin_by, ways, wish.ratio.by_volume ? 1 : 0))
        wish.ratio.by_volume = *tapped == 1;
    parts(context, "resin.a", words::resin_parts, wish.ratio.resin);
    parts(context, "resin.b", words::hardener_parts, wish.ratio.hardener);
    if (wish.ratio.by_volume) {
        plain(context, "resin.a_density", words::resin_density, wish.ratio.resin_kg_m3,
              {Quantity::density, 800.0, 2000.0, {}, -1});
        plain(context, "resin.b_density", words::hardener_density, wish.ratio.hardener_kg_m3,
              {Quantity::density, 800.0, 2000.0, {}, -1});
    }
    plain(context, "resin.loss", words::resin_loss, wish.loss, {Quantity::percent, 0.0, 0.9, 0.05, 0},
          words::resin_loss_below);
    const Sentence by_label = words::resin_working_below + plain_text(23.0, units::Quantity::temperature) +
                              words::resin_working_up_to + mass_text(wish.label.batch_kg, 0);
    minutes(context, "resin.working", words::resin_working, wish.label.working_s, 1.0, 600.0,
            by_label.text(context.ui.units));
    wish.label.pot_life_s = std::max(wish.label.pot_life_s, wish.label.working_s);
    plain(context, "resin.warmth", words::resin_warmth, wish.mix_c,
          {Quantity::temperature, 5.0, 40.0, {}, -1});
    minutes(context, "resin.per_lure", words::resin_per_lure, wish.per_lure_s, 1.0, 200.0);
    hours(context, "resin.from", words::resin_from_label, wish.label.recoat_from_s, 0.0, 168.0);
    wish.label.recoat_to_s = std::max(wish.label.recoat_to_s, wish.label.recoat_from_s);
    hours(context, "resin.to", words::resin_to_label, wish.label.recoat_to_s,
          units::hour_from_s(wish.label.recoat_from_s), 720.0);

    const Outcome<resin::Mix> mix = resin::mix(wish);
    if (!mix.ok()) {
        widgets::problem_line(context.ui, mix.problems().front().sentence);
        return;
    }
    amount_rows(context, *mix);
    time_rows(context, *mix);
    for (const Problem& warning : mix->warnings)
        widgets::problem_line(context.ui, warning.sentence);
    widgets::note(context.ui, words::resin_note);
}

} // namespace evenfall::shell::steps
