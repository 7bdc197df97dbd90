#include "steps/step_panels.hpp"

#include "look/words_swim.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <array>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;

/// "more, 1.1 to 1.3 times", or that nothing can be told.
std::string told_text(swim::Told told, const char* up, const char* down, const std::array<double, 3>& ratio) {
    if (told == swim::Told::not_told) return words::change_not_told;
    const auto shown = [](double value) { return widgets::number_text(value, widgets::Unit::one, 1); };
    return std::string(told == swim::Told::more ? up : down) + ", " + shown(ratio.front()) + " " +
           words::to_word + " " + shown(ratio.back()) + words::change_times;
}

} // namespace

void swim_change_rows(PanelContext& context) {
    auto& swim = context.motion.swim.answers;
    if (!swim.can_tell_changes(context.session)) return;
    const bool more = swim.work(context.session) && swim.work(context.session); // nothing moves here
    if (more) context.ui.frames_wanted = std::max(context.ui.frames_wanted, 2);
    // Two lines in every case, so that the rows below stay where the finger is.
    const auto both = [](const char* word) {
        return std::string(words::change_beats) + word + "\n" + words::change_swing + word;
    };
    Sentence text = both(words::change_none_yet);
    if (!swim.refusal().empty()) {
        text = std::string(words::swim_no_answer) + ".\n" + swim.refusal().front().sentence;
    } else if (const swim::Change* change = swim.change()) {
        text = words::change_beats +
               told_text(change->beats, words::change_more, words::change_fewer, change->beats_ratio) + "\n" +
               words::change_swing +
               told_text(change->swing, words::change_wider, words::change_narrower, change->swing_ratio);
    } else if (more || context.session.unfinished()) {
        text = both(words::change_working);
    }
    widgets::info_box(context.ui, words::change_title, text, help::Topic::swim_change);
    widgets::gap();
}

} // namespace evenfall::shell::steps
