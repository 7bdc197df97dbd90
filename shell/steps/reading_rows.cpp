#include "steps/fields.hpp"
#include "steps/hung_on_rows.hpp"
#include "steps/step_panels.hpp"

#include "document_fields.hpp"
#include "evenfall.hpp"
#include "look/words_help.hpp"
#include "look/words_log.hpp"
#include "look/words_steps.hpp"
#include "output.hpp"
#include "widgets/button.hpp"
#include "widgets/choice.hpp"
#include "widgets/pick_field.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using document::Reading;
using document::ReadingKind;
using state::ItemKind;
using widgets::Unit;

bool is_under_water(ReadingKind kind) {
    return kind == ReadingKind::held_under || kind == ReadingKind::hung_in_water;
}

std::string value_text(const PanelContext& context, const Reading& r) {
    const document::ReadingNumber number = document::number_of(r);
    return text_of(context, (r.*number.value).value_or(0.0) - r.holder_kg.value_or(0.0),
                   quantity_in(units::symbol(number.unit)));
}

/// One value of a reading; it may still be missing. True when it was set.
bool amount(PanelContext& context, const std::string& id, const char* label, std::optional<double>& value,
            const NumberSpec& spec, const char* absent, std::string_view below = {}, bool may_clear = true) {
    const auto set = widgets::optional_number_field(context.ui, id, label, value,
                                                    value.value_or(std::max(0.0, spec.least)), spec, absent,
                                                    below, may_clear);
    if (set) value = *set;
    return set.has_value();
}
template <auto Member>
bool amount(PanelContext& context, const std::string& id, const char* label, Reading& r, const char* absent,
            std::string_view below = {}, const Shown& shown = {}) {
    return amount(context, id, label, r.*Member, spec_of(document::field_of<Member>, shown), absent, below);
}

/// One that the reading cannot do without.
template <auto Member>
bool needed(PanelContext& context, const std::string& id, const char* label, Reading& r,
            std::string_view below = {}, const Shown& shown = {}) {
    return amount(context, id, label, r.*Member, spec_of(document::field_of<Member>, shown), words::type_it,
                  below, false);
}

/// What a scale reads: only of a piece hung in water may it be less than nothing.
bool mass_field(PanelContext& context, const std::string& id, const char* label, Reading& r,
                std::string_view below = {}) {
    NumberSpec spec = spec_of(document::field_of<&Reading::mass_kg>);
    if (r.kind != ReadingKind::hung_in_water) spec.least = 0.0;
    return amount(context, id + ".mass", label, r.mass_kg, spec, words::type_it, below, false);
}

bool stage_field(PanelContext& context, const std::string& id, Reading& r) {
    if (r.kind == ReadingKind::board) return false;
    std::vector<widgets::PickOption> options;
    for (int s = 0; s < stage_count; ++s) {
        options.push_back({std::to_string(s), stage_name(static_cast<Stage>(s)), {}});
    }
    const auto picked = widgets::pick_field(context.ui, id + ".stage", words::at_stage, options,
                                            std::to_string(static_cast<int>(r.stage)));
    if (picked) r.stage = static_cast<Stage>(std::stoi(*picked));
    return picked.has_value();
}

bool segment_field(PanelContext& context, const std::string& id, Reading& r) {
    const auto& names = context.document().segment_names;
    if (!document::is_weighing(r.kind) || names.size() < 2) return false;
    std::vector<widgets::PickOption> options{{"0", words::whole_piece, {}}};
    for (int s = 0; s < static_cast<int>(names.size()); ++s)
        options.push_back({std::to_string(s + 1), segment_name(context.document(), s), {}});
    const auto picked = widgets::pick_field(context.ui, id + ".segment", words::of_what, options,
                                            std::to_string(r.segment ? *r.segment + 1 : 0));
    if (!picked) return false;
    const int chosen = std::stoi(*picked);
    r.segment = chosen > 0 ? std::optional<int>(chosen - 1) : std::nullopt;
    return true;
}

bool clip_field(PanelContext& context, const std::string& id, Reading& r) {
    std::vector<widgets::PickOption> options;
    for (const materials::Solid& solid : materials::solids()) {
        if (solid.serves(materials::Use::ballast))
            options.push_back({std::string(solid.id), std::string(solid.name), {}});
    }
    const auto picked =
        widgets::pick_field(context.ui, id + ".clip", words::clip_material_field, options, r.clip_material);
    if (picked) r.clip_material = *picked;
    return picked.has_value();
}

/// Where a caliper lay, and what it reads across the width or the height: the one set last.
bool caliper_fields(PanelContext& context, const std::string& id, Reading& r) {
    bool set = needed<&Reading::x_m>(context, id + ".station", words::caliper_at, r);
    if (amount<&Reading::width_m>(context, id + ".width", words::reading_width, r, words::type_it)) {
        if (r.width_m) r.height_m.reset();
        set = true;
    }
    if (amount<&Reading::height_m>(context, id + ".height", words::reading_height, r, words::caliper_or,
                                   words::caliper_below)) {
        if (r.height_m) r.width_m.reset();
        set = true;
    }
    return set;
}

/// How many beats, and over what: a way, or a time at a speed. What is set last puts the other out.
bool beats_fields(PanelContext& context, const std::string& id, Reading& r) {
    bool set = needed<&Reading::beats>(context, id + ".beats", words::beats_field, r, words::beats_below);
    if (amount<&Reading::travel_m>(context, id + ".travel", words::beats_travel, r, words::type_it, {},
                                   {Quantity::depth})) {
        if (r.travel_m) {
            r.time_s.reset();
            r.speed_m_s.reset();
        }
        set = true;
    }
    bool timed = amount<&Reading::time_s>(context, id + ".time", words::beats_time, r, words::type_it);
    // Until another is typed, the usual retrieve of this reel.
    if (timed && r.time_s && !r.speed_m_s) r.speed_m_s = context.session.settings.retrieve.speed_m_s[1];
    timed |= amount<&Reading::speed_m_s>(context, id + ".speed", words::beats_speed, r, words::type_it,
                                         words::beats_speed_below, {Quantity::retrieve});
    if (timed && (r.time_s || r.speed_m_s)) r.travel_m.reset();
    return set || timed;
}

/// The values of a kind of reading. True when one was changed.
bool amount_fields(PanelContext& context, const std::string& id, Reading& r) {
    bool set = false;
    switch (r.kind) {
    case ReadingKind::dry_weight:
    case ReadingKind::hung_in_water:
        set |= mass_field(context, id, words::scale_field, r);
        break;
    case ReadingKind::held_under:
        set |= mass_field(context, id, words::gains_field, r, words::gains_below);
        break;
    case ReadingKind::board:
        set |= mass_field(context, id, words::scale_field, r);
        set |= needed<&Reading::length_m>(context, id + ".length", words::reading_length, r);
        set |= needed<&Reading::width_m>(context, id + ".width", words::reading_width, r);
        set |= needed<&Reading::height_m>(context, id + ".height", words::reading_height, r);
        break;
    case ReadingKind::tub_fall:
        set |= needed<&Reading::time_s>(context, id + ".time", words::time_field, r);
        set |=
            needed<&Reading::depth_m>(context, id + ".depth", words::depth_of_fall, r, {}, {Quantity::depth});
        break;
    case ReadingKind::suspends:
        set |= mass_field(context, id, words::clip_field, r);
        set |= clip_field(context, id, r);
        break;
    case ReadingKind::freeboard:
        set |= needed<&Reading::freeboard_m>(context, id + ".showing", words::freeboard_field, r);
        break;
    case ReadingKind::hang_angle:
        set |= needed<&Reading::angle_rad>(context, id + ".angle", words::angle_field, r, words::angle_below);
        break;
    case ReadingKind::caliper:
        set |= caliper_fields(context, id, r);
        break;
    case ReadingKind::beats:
        set |= beats_fields(context, id, r);
        break;
    }
    if (is_under_water(r.kind))
        set |= amount<&Reading::holder_kg>(context, id + ".holder", words::holder_field, r,
                                           words::holder_absent, words::holder_below);
    if (r.kind != ReadingKind::dry_weight && r.kind != ReadingKind::board && r.kind != ReadingKind::caliper &&
        !document::is_of_swim(r.kind))
        set |= amount<&Reading::temperature_c>(context, id + ".temperature", words::temperature, r,
                                               words::temperature_of_tub);
    return set;
}

bool sigma_field(PanelContext& context, const std::string& id, Reading& r) {
    const auto field = [&]<auto Member>() {
        return document::number_of(r.kind).sigma == Member &&
               amount<Member>(context, id + ".sigma", words::sigma_field, r, words::sigma_absent,
                              words::sigma_below);
    };
    return field.template operator()<&Reading::mass_sigma_kg>() ||
           field.template operator()<&Reading::time_sigma_s>() ||
           field.template operator()<&Reading::length_sigma_m>() ||
           field.template operator()<&Reading::angle_sigma_rad>() ||
           field.template operator()<&Reading::beats_sigma>();
}

bool lure_field(PanelContext& context, const std::string& id, Reading& r) {
    const int by = widgets::stepper(context.ui, id + ".lure", words::lure_field, document::lure_of(r) + 1, 1,
                                    document::max_lures);
    if (by == 0) return false;
    const int lure = document::lure_of(r) + by;
    r.lure = lure > 0 ? std::optional<int>(lure) : std::nullopt;
    return true;
}

bool note_field(PanelContext& context, const std::string& id, Reading& r) {
    const auto note = widgets::text_field(context.ui, id + ".note", words::log_note_field, r.note);
    if (note) r.note = document::printable(*note, document::max_text);
    return note.has_value();
}

/// All fields of a reading; all are drawn, whichever changed. True when one was changed.
bool fields(PanelContext& context, const std::string& id, Reading& r) {
    bool set = stage_field(context, id, r);
    set |= segment_field(context, id, r);
    set |= hung_on_rows(context, id, r);
    set |= amount_fields(context, id, r);
    set |= sigma_field(context, id, r);
    set |= lure_field(context, id, r);
    set |= note_field(context, id, r);
    return set;
}

void how(PanelContext& context, ReadingKind kind) {
    widgets::subheading(context.ui, words::how_group);
    int number = 0;
    for (const Sentence& step : output::reading_steps(kind))
        widgets::paragraph(context.ui, std::to_string(++number) + ". " + step);
}

void verdict_rows(PanelContext& context, const Reading& r, const ReadingFit& v) {
    if (!v.used && !v.left_out) {
        if (!v.warning.empty()) widgets::problem_line(context.ui, v.warning);
        for (const Sentence& why : v.explanations)
            widgets::note(context.ui, why);
        return;
    }
    const Quantity quantity = quantity_in(units::symbol(document::number_of(r.kind).judged_in));
    const std::string expected =
        number_of(context, v.predicted, quantity) + " ± " + text_of(context, v.predicted_sigma, quantity);
    if (widgets::figure_row(context.ui, words::others_expect, expected, {},
                            std::string(v.warning.empty() ? words::fits : words::does_not_fit) + ": " +
                                widgets::number_text(v.z_score, Unit::one, 1) + " " + words::off_word,
                            help::Topic::reading_fit)) {
        widgets::went_in(context.ui, words::went_read, text_of(context, v.read, quantity));
        widgets::went_in(context.ui, words::went_reading_sigma, text_of(context, v.sigma, quantity));
    }
    if (!v.warning.empty()) widgets::problem_line(context.ui, v.warning);
    for (const Sentence& why : v.explanations)
        widgets::note(context.ui, why);
}

void editor(PanelContext& context, int index, const Uncertainty* uncertainty) {
    const Reading& kept = context.document().log[static_cast<std::size_t>(index)];
    const std::string id = "log." + std::to_string(index);
    Reading r = kept;
    if (fields(context, id, r) && document::is_complete(r)) {
        context.change(label_of(words::view_readings, words::reading_word, index),
                       state::on_reading(index, [r](document::Reading& now) { now = r; }));
    }
    if (kept.foretold_per_m) foretold_row(context, kept.foretold_per_m, words::foretold_then);
    if (uncertainty != nullptr && static_cast<std::size_t>(index) < uncertainty->readings.size())
        verdict_rows(context, kept, uncertainty->readings[static_cast<std::size_t>(index)]);
    stands_button(context, index, uncertainty);
    widgets::gap();
    const int tapped = widgets::button_row(
        context.ui,
        {{id + ".exclude", kept.excluded ? words::include : words::exclude, widgets::ButtonKind::plain, true},
         {id + ".remove", words::remove, widgets::ButtonKind::danger, true}});
    if (tapped == 0)
        context.change(label_of(kept.excluded ? words::include : words::exclude, words::reading_word, index),
                       state::toggle_excluded(index));
    if (tapped == 1) {
        context.change(label_of(words::take_away, words::reading_word, index), state::remove_reading(index));
        context.view.selection = {};
    }
    widgets::gap();
}

std::string line_below(const PanelContext& context, const Reading& r) {
    std::string text;
    const auto part = [&text](std::string_view more) {
        if (more.empty()) return;
        if (!text.empty()) text += words::separator;
        text += more;
    };
    if (r.excluded) part(words::excluded_word);
    if (document::is_of_swim(r.kind)) part(beats_counted_text(context, r));
    if (r.kind != ReadingKind::board) part(stage_name(r.stage));
    part(output::hung_words(context.document(), r.with).text(context.ui.units));
    if (r.before_change) part(words::before_change_word);
    if (r.segment) part(segment_name(context.document(), *r.segment));
    if (document::lure_of(r) > 0)
        part(std::string(words::lure_field) + " " + std::to_string(document::lure_of(r) + 1));
    part(r.date);
    part(r.note);
    return text;
}

/// A row of the log. Excluded readings have a line through their figure as well as a word below.
void log_row(PanelContext& context, int index, const Uncertainty* uncertainty) {
    const Reading& r = context.document().log[static_cast<std::size_t>(index)];
    const bool chosen = context.row_chosen(ItemKind::reading, index);
    const bool odd = uncertainty != nullptr &&
                     static_cast<std::size_t>(index) < uncertainty->readings.size() &&
                     !uncertainty->readings[static_cast<std::size_t>(index)].warning.empty();
    std::string below = line_below(context, r);
    if (odd)
        below = std::string("! ") + words::does_not_fit + (below.empty() ? "" : words::separator + below);
    if (widgets::list_row(context.ui, "log." + std::to_string(index),
                          {output::reading_name(r.kind),
                           below,
                           value_text(context, r),
                           {},
                           chosen,
                           !chosen,
                           true,
                           r.excluded}))
        context.choose(ItemKind::reading, index);
    if (chosen) editor(context, index, uncertainty);
}

/// By how much such a reading would reduce the uncertainty of this lure.
void reading_gain(PanelContext& context, const Reading& r, const Uncertainty* uncertainty) {
    if (uncertainty == nullptr) return;
    const NextReading* found = nullptr;
    for (const NextReading& n : uncertainty->next) {
        const bool with_all = r.with == document::all_hung_on();
        const bool same = n.kind == r.kind && n.stage == r.stage && n.with_all == with_all && !n.each_segment;
        // Of two, the one with a dry weight is meant for a log that has none.
        if (same && (found == nullptr || n.chance > found->chance)) found = &n;
    }
    if (found == nullptr) return;
    const std::string chance =
        lead_can_be_put_right(context)
            ? words::sharpens_chance + widgets::value_text(found->chance, Unit::percent, 0)
            : "";
    widgets::note(context.ui, std::string(words::sharpens_to) +
                                  text_of(context, found->in_water_sigma_kg, Quantity::mass) +
                                  words::sharpens_from +
                                  text_of(context, uncertainty->in_water_kg.sigma, Quantity::mass) +
                                  (found->with_dry_weight ? words::sharpens_dry : "") + chance + ".");
}

void draft_rows(PanelContext& context, const Uncertainty* uncertainty) {
    Reading& r = *context.motion.draft.reading;
    widgets::subheading(context.ui, output::reading_name(r.kind));
    fields(context, "log.new", r);
    if (document::is_of_swim(r.kind)) foretell_count(context, r);
    widgets::gap();
    const int tapped = widgets::button_row(
        context.ui, {{"log.new.put", words::put_down, widgets::ButtonKind::main, document::is_complete(r)},
                     {"log.new.cancel", words::not_now, widgets::ButtonKind::plain, true}});
    reading_gain(context, r, uncertainty);
    if (!r.with.empty()) widgets::caution_box(context.ui, words::hooks_title, cautions::hooks);
    how(context, r.kind);
    if (tapped == 0) {
        context.change(words::put_down_label, state::add_reading(r));
        context.put_down_draft = true;
    }
    if (tapped == 1) {
        context.view.adding_reading = false;
        context.motion.draft.reading.reset();
    }
}

void kind_rows(PanelContext& context, const Uncertainty* uncertainty) {
    widgets::subheading(context.ui, words::which_reading);
    for (const auto& kind : document::table::reading_kinds) {
        if (widgets::list_row(context.ui, "log.kind." + std::to_string(static_cast<int>(kind.value)),
                              {output::reading_name(kind.value), {}, {}, {}, false, true}))
            context.motion.draft.reading =
                state::new_reading(kind.value, uncertainty,
                                   context.ui.host != nullptr ? context.ui.host->today() : std::string());
    }
    widgets::gap();
    if (widgets::button(context.ui, "log.kind.cancel", words::not_now)) context.view.adding_reading = false;
}

} // namespace

void stands_button(PanelContext& context, int index, const Uncertainty* uncertainty) {
    const auto at = static_cast<std::size_t>(index);
    const bool stands = context.document().log[at].stands;
    const bool left_out =
        uncertainty != nullptr && at < uncertainty->readings.size() && uncertainty->readings[at].left_out;
    if (!stands && !left_out) return;
    widgets::gap();
    const char* label = stands ? words::stands_no_longer : words::stands;
    if (widgets::button(context.ui, "log." + std::to_string(index) + ".stands", label))
        context.change(label_of(label, words::reading_word, index), state::toggle_stands(index));
}

void reading_rows(PanelContext& context) {
    const Uncertainty* uncertainty = context.motion.bench.uncertainty(context.session);
    if (context.motion.draft.reading) {
        draft_rows(context, uncertainty);
        return;
    }
    if (context.view.adding_reading) {
        kind_rows(context, uncertainty);
        return;
    }
    const auto& log = context.document().log;
    const bool room = log.size() < document::max_readings;
    if (widgets::button(context.ui, "log.add", words::add_reading, widgets::ButtonKind::main, room))
        context.view.adding_reading = true;
    widgets::gap();
    if (log.empty()) widgets::paragraph(context.ui, words::no_readings);
    for (int i = static_cast<int>(log.size()); i-- > 0;)
        log_row(context, i, uncertainty);
    if (context.ui.host != nullptr && context.ui.host->has_album()) {
        widgets::gap();
        if (widgets::button(context.ui, "log.album", words::album)) context.ui.host->show_album();
        widgets::note(context.ui, words::album_note);
    }
    if (log.empty() || context.ui.host == nullptr) return;
    widgets::gap();
    if (widgets::button(context.ui, "log.next", words::next_lure)) {
        if (const auto next = for_next_lure(context.document())) {
            context.change(words::next_lure,
                           state::on_document([next = *next](document::Document& d) { d = next; }));
            context.view.selection = {};
        }
    }
    widgets::note(context.ui, words::next_lure_note);
    if (widgets::button(context.ui, "log.csv", words::export_csv))
        context.ui.host->save_file(context.document().name + " log.csv", output::log_csv(context.document()));
}

} // namespace evenfall::shell::steps
