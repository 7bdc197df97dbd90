#include "steps/step_panels.hpp"

#include "base/trade.hpp"
#include "look/words_choice.hpp"
#include "widgets/choice.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"
#include "workshop/coat_schedule.hpp"
#include "workshop/resin_mix.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Unit;

void plain(Desk& desk, const char* id, const char* label, double& value, NumberSpec spec,
           const char* below = "") {
    if (const auto set = widgets::number_field(desk.ui, id, label, value, spec, below)) value = *set;
}

void minutes(Desk& desk, const char* id, const char* label, double& seconds, double least, double most,
             const char* below = "") {
    double value = units::min_from_s(seconds);
    plain(desk, id, label, value, {Quantity::number, least, most, 1.0, 0}, below);
    seconds = units::s_from_min(value);
}

void hours(Desk& desk, const char* id, const char* label, double& seconds, double least, double most) {
    double value = units::hour_from_s(seconds);
    plain(desk, id, label, value, {Quantity::number, least, most, 1.0, 1});
    seconds = units::s_from_hour(value);
}

} // namespace

void resin_rows(Desk& desk) {
    const int coat = resin::resin_coat(desk.document());
    if (coat < 0) return;
    resin::MixRequest& wish = desk.motion.mix;
    const auto coats = resin::schedule(desk.document(), desk.evaluation());
    wish.on_lure_kg = coats[static_cast<std::size_t>(coat)].together_kg();
    widgets::subheading(desk.ui, words::resin_group);
    widgets::note(desk.ui, words::resin_below);
    wish.lures += widgets::stepper(desk.ui, "resin.lures", words::resin_lures, wish.lures, 1, 200);
    const std::array<std::string_view, 2> ways{words::resin_by_weight, words::resin_by_volume};
    if (const auto tapped =
            widgets::choice(desk.ui, "resin.by", words::resin_by, ways, wish.ratio.by_volume ? 1 : 0))
        wish.ratio.by_volume = *tapped == 1;
    plain(desk, "resin.a", words::resin_parts, wish.ratio.resin, {Quantity::number, 0.1, 100.0, 0.5, 1});
    plain(desk, "resin.b", words::hardener_parts, wish.ratio.hardener,
          {Quantity::number, 0.1, 100.0, 0.5, 1});
    if (wish.ratio.by_volume) {
        plain(desk, "resin.a_density", words::resin_density, wish.ratio.resin_kg_m3,
              {Quantity::density, 800.0, 2000.0, {}, -1});
        plain(desk, "resin.b_density", words::hardener_density, wish.ratio.hardener_kg_m3,
              {Quantity::density, 800.0, 2000.0, {}, -1});
    }
    plain(desk, "resin.loss", words::resin_loss, wish.loss, {Quantity::percent, 0.0, 0.9, 0.05, 0},
          words::resin_loss_below);
    minutes(desk, "resin.working", words::resin_working, wish.label.working_s, 1.0, 600.0,
            words::resin_working_below);
    wish.label.pot_life_s = std::max(wish.label.pot_life_s, wish.label.working_s);
    plain(desk, "resin.warmth", words::resin_warmth, wish.mix_c, {Quantity::temperature, 5.0, 40.0, {}, -1});
    minutes(desk, "resin.per_lure", words::resin_per_lure, wish.per_lure_s, 1.0, 200.0);
    hours(desk, "resin.from", words::resin_from_label, wish.label.recoat_from_s, 0.0, 168.0);
    wish.label.recoat_to_s = std::max(wish.label.recoat_to_s, wish.label.recoat_from_s);
    hours(desk, "resin.to", words::resin_to_label, wish.label.recoat_to_s,
          units::hour_from_s(wish.label.recoat_from_s), 720.0);

    const Outcome<resin::Mix> mix = resin::mix(wish);
    if (!mix.ok()) {
        widgets::problem_line(desk.ui, mix.problems().front().sentence);
        return;
    }
    const std::string_view grams = unit_of(desk, Quantity::mass);
    widgets::figure_row(desk.ui, words::resin_all, number_of(desk, mix->all.mixed_kg, Quantity::mass), grams);
    widgets::figure_row(desk.ui, words::resin_a, number_of(desk, mix->all.resin_kg, Quantity::mass), grams);
    widgets::figure_row(desk.ui, words::resin_b, number_of(desk, mix->all.hardener_kg, Quantity::mass),
                        grams);
    widgets::figure_row(desk.ui, words::resin_lasts, widgets::number_text(mix->working_s, Unit::minute, 0),
                        words::resin_minutes, words::resin_lasts_below);
    widgets::figure_row(desk.ui, words::resin_recoat,
                        widgets::number_text(mix->recoat_from_s, Unit::hour, 1) + " – " +
                            widgets::number_text(mix->recoat_to_s, Unit::hour, 1),
                        words::resin_hours, words::resin_recoat_below);
    if (mix->mixes > 1) {
        widgets::figure_row(desk.ui, words::resin_mixes, std::to_string(mix->mixes), {},
                            std::to_string(mix->lures_a_mix) + words::resin_lures_each);
    }
    for (const Problem& warning : mix->warnings)
        widgets::problem_line(desk.ui, warning.sentence);
    widgets::note(desk.ui, words::resin_note);
}

} // namespace evenfall::shell::steps
