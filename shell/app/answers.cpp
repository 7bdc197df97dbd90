#include "app/parts.hpp"

#include "look/words.hpp"
#include "look/words_log.hpp"
#include "state/missing.hpp"

#include <cmath>

namespace evenfall::shell {
namespace {

namespace words = look::words;
using widgets::Answer;
using widgets::Quantity;
using widgets::symbol;
using widgets::Unit;
using widgets::value_text;

std::string signed_number(double si, Unit unit, int decimals = -1) {
    return units::with_plus(si, widgets::number_text(si, unit, decimals));
}

std::string asked(const std::string& value) {
    return std::string(words::asked) + " " + value;
}

Answer finished(const Answers& answers, Unit unit) {
    const int decimals = unit == Unit::gram ? 1 : -1;
    return {.id = "answer.finished",
            .title = words::finished,
            .number = widgets::number_text(answers.mass.kg, unit, decimals),
            .unit = std::string(symbol(unit)),
            .below = "± " + widgets::number_text(answers.mass_sigma.kg, unit, decimals),
            .topic = help::Topic::finished};
}

Answer in_water(const Answers& answers, const document::Targets& targets, Unit unit) {
    Answer answer{.id = "answer.in_water",
                  .title = words::in_water,
                  .number = signed_number(answers.in_water.kg, unit),
                  .unit = std::string(symbol(unit)),
                  .below = "± " + widgets::number_text(answers.in_water_sigma.kg, unit),
                  .topic = help::Topic::in_water};
    if (targets.by == document::TargetBy::in_water)
        answer.below += " · " + asked(signed_number(targets.in_water_kg, unit));
    return answer;
}

Answer fall(const Answers& answers, const document::Targets& targets, Unit unit, Unit in_time) {
    Answer answer{.id = "answer.fall", .title = words::fall, .topic = help::Topic::fall};
    const bool wanted = targets.by == document::TargetBy::fall;
    if (wanted) answer.below = asked(widgets::number_text(targets.fall_m_s, unit));
    if (answers.behaviour == Behaviour::falls && answers.fall) {
        const Fall& found = *answers.fall;
        answer.number = widgets::number_text(found.speed_m_s, unit);
        answer.unit = symbol(unit);
        if (wanted) {
            answer.off_target = !fall_on_target(targets, found.speed_m_s);
        } else {
            answer.below = widgets::number_text(found.fast_m_s, unit) + " – " +
                           widgets::fall_end_text(found.slow_m_s, unit);
        }
    } else {
        answer.number = words::no_fall[static_cast<std::size_t>(answers.behaviour)];
        answer.off_target = wanted;
        if (!wanted && answers.under_water && answers.behaviour != Behaviour::falls) {
            const double down = answers.under_water->speed_m_s;
            answer.below = std::string(down < 0.0 ? words::rises_at : words::sinks_at) + " " +
                           widgets::value_text(std::abs(down), in_time);
        }
    }
    return answer;
}

Answer hang(const Answers& answers, const document::Targets& targets) {
    Answer answer{.id = "answer.hang",
                  .title = words::hang,
                  .below = asked(value_text(targets.pitch_rad, Unit::degree)),
                  .off_target = !pitch_on_target(targets, answers.pitch_rad),
                  .topic = help::Topic::hang};
    if (answers.pitch_rad) {
        answer.number = widgets::number_text(*answers.pitch_rad, Unit::degree);
        answer.unit = symbol(Unit::degree);
    } else {
        answer.number = words::no_hang;
    }
    return answer;
}

Answer righting(const Answers& answers, Unit unit) {
    const bool upright = answers.bg_m > 0.0;
    // A fraction of an inch is too coarse for this distance.
    const Unit shown = unit == Unit::inch_fraction ? Unit::inch : unit;
    return {.id = "answer.righting",
            .title = words::righting,
            .number = widgets::number_text(std::abs(answers.bg_m), shown),
            .unit = std::string(symbol(shown)),
            .below = upright ? words::b_above_g : words::will_roll,
            .off_target = !upright,
            .topic = help::Topic::righting};
}

/// How likely the first finished lure is right, and how likely with the lead put right for what is known.
Answer chance(const Uncertainty* uncertainty) {
    Answer answer{.id = "answer.chance",
                  .title = words::chance,
                  .number = "–",
                  .below = words::chance_below,
                  .topic = help::Topic::chance};
    if (uncertainty == nullptr) return answer;
    answer.number = widgets::number_text(uncertainty->chances_now.both, Unit::percent, 0);
    answer.unit = symbol(Unit::percent);
    return answer;
}

} // namespace

const Evaluation& evaluation_shown(const state::Session& session, const Uncertainty* uncertainty) {
    const bool has_log = uncertainty != nullptr && uncertainty->has_readings;
    return has_log ? uncertainty->evaluation : *session.evaluation();
}

std::vector<Answer> strip_answers(const state::Session& session, state::BenchAnswerCache& bench,
                                  const widgets::Units& units) {
    if (!session.evaluation()) {
        const auto unknown = [](const char* id, const char* title, help::Topic topic) {
            return Answer{.id = id, .title = title, .number = "–", .topic = topic};
        };
        return {unknown("answer.finished", words::finished, help::Topic::finished),
                unknown("answer.in_water", words::in_water, help::Topic::in_water),
                unknown("answer.fall", words::fall, help::Topic::fall),
                unknown("answer.hang", words::hang, help::Topic::hang),
                unknown("answer.righting", words::righting, help::Topic::righting),
                chance(nullptr)};
    }
    const Uncertainty* uncertainty = bench.uncertainty(session);
    const Answers& answers = evaluation_shown(session, uncertainty).answers;
    const document::Targets& targets = session.document().targets;
    const Unit mass = units.of(Quantity::mass);
    std::vector<Answer> strip{finished(answers, mass),
                              in_water(answers, targets, mass),
                              fall(answers, targets, units.of(Quantity::fall), units.way_in_time()),
                              hang(answers, targets),
                              righting(answers, units.of(Quantity::length)),
                              chance(uncertainty)};
    // Nobody asks yet how a lure without lead behaves: nothing is marked as wrong.
    if (!state::balance_counts(session.document())) {
        for (Answer& answer : strip) {
            answer.off_target = false;
            if (answer.below == words::will_roll) answer.below = words::g_above_b;
        }
    }
    return strip;
}

} // namespace evenfall::shell
