#include "steps/fields.hpp"
#include "steps/step_panels.hpp"

#include "look/words_reach.hpp"
#include "reach.hpp"
#include "widgets/words_of_panel.hpp"

#include <utility>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;

/// The answer as one change, or why there is none.
void take(PanelContext& context, const char* label, const Outcome<document::Document>& made) {
    if (!made.ok())
        context.refusal = made.problems().front().sentence.text(context.ui.units);
    else
        context.change(label, [lure = *made](const document::Document&) { return lure; });
}

void take(PanelContext& context, const char* label, Outcome<reach::Scaled> scaled) {
    if (!scaled.ok()) return take(context, label, Outcome<document::Document>(scaled.problems()));
    context.motion.chosen = {std::move(scaled->chosen), {}};
    take(context, label, Outcome<document::Document>(std::move(scaled->document)));
}

/// What the last change of this kind chose anew, until there is another change.
void chosen_notes(PanelContext& context) {
    auto& chosen = context.motion.chosen;
    if (chosen.says.empty()) return;
    if (!chosen.revision) chosen.revision = context.session.revision();
    if (chosen.revision != context.session.revision()) {
        chosen = {};
        return;
    }
    for (const Sentence& says : chosen.says)
        widgets::note(context.ui, says);
}

} // namespace

void by_hand_rows(PanelContext& context) {
    widgets::subheading(context.ui, words::by_hand_group);
    chosen_notes(context);
    const document::Document& lure = context.document();
    const Answers& answers = context.evaluation().answers;
    const auto field = [&](const char* id, const char* label, const char* below, double now,
                           const NumberSpec& spec, const auto& ask) {
        if (const auto set = widgets::number_field(context.ui, id, label, now, spec, below))
            take(context, label, ask(lure, *set));
    };
    field("shape.for_weight", words::by_hand_weight, words::by_hand_weight_below, answers.in_water.kg,
          spec_of(document::field_of<&document::Targets::in_water_kg>), reach::thickness_for);
    field("shape.for_mass", words::by_hand_mass, words::by_hand_mass_below, answers.mass.kg,
          {Quantity::mass, 0.0005, 2.0, {}, -1}, reach::length_for);
    field("shape.at_length", words::by_hand_length, words::by_hand_length_below, state::drawn_length_m(lure),
          {Quantity::length,
           0.02,
           document::most_si(document::points_of<&document::Shape::back>.first),
           {},
           -1},
          reach::at_length);
}

} // namespace evenfall::shell::steps
