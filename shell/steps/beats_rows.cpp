#include "steps/step_panels.hpp"

#include "look/words_log.hpp"
#include "look/words_steps.hpp"
#include "look/words_swim.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <string>

namespace evenfall::shell::steps {

namespace words = look::words;

std::string beats_counted_text(const PanelContext& context, const document::Reading& r) {
    std::string text = words::beats_over;
    if (r.travel_m) return text + text_of(context, *r.travel_m, Quantity::depth);
    text += text_of(context, r.time_s.value_or(0.0), Quantity::time) + words::beats_at;
    return text + text_of(context, r.speed_m_s.value_or(0.0), Quantity::retrieve);
}

void foretold_row(PanelContext& context, std::optional<double> per_m, std::string_view below) {
    const widgets::Unit unit = context.ui.units.UnitSet::of(units::Quantity::beats);
    widgets::figure_row(
        context.ui, unit == widgets::Unit::per_m ? words::foretold_a_metre : words::foretold_in_ten_feet,
        per_m ? widgets::number_text(*per_m, unit) : std::string(words::dash), {}, below, help::Topic::beats);
}

void foretell_count(PanelContext& context, document::Reading& r) {
    auto& swim = context.motion.swim.answers;
    const bool more = swim.work(context.session);
    if (more) context.ui.frames_wanted = std::max(context.ui.frames_wanted, 2);
    r.foretold_per_m = swim.foretold_per_m();
    if (!more && !r.foretold_per_m) {
        widgets::note(context.ui, words::foretold_nothing);
        return;
    }
    foretold_row(context, r.foretold_per_m, more ? words::change_working : words::foretold_below);
}

} // namespace evenfall::shell::steps
