#include "bench/believed.hpp"

#include "answers/evaluation.hpp"

#include <algorithm>
#include <cmath>
#include <utility>

namespace evenfall {

Answers believed(Answers answers, const Uncertainty* uncertainty) {
    if (uncertainty == nullptr || !uncertainty->has_readings) return answers;
    answers.mass_kg = uncertainty->mass_kg.value;
    answers.mass_sigma_kg = uncertainty->mass_kg.sigma;
    answers.in_water_kg = uncertainty->in_water_kg.value;
    answers.in_water_sigma_kg = uncertainty->in_water_kg.sigma;
    answers.bg_m = uncertainty->bg_m.value;
    answers.pitch_rad.reset();
    if (std::isfinite(uncertainty->pitch_rad.value))
        answers.pitch_rad = uncertainty->pitch_rad.value;
    else
        answers.roll_rad.reset();
    answers.behaviour = behaviour_of(answers.in_water_kg);
    if (answers.behaviour != Behaviour::falls || !uncertainty->fall_m_s) {
        answers.fall.reset();
        return answers;
    }
    Fall fall = answers.fall.value_or(Fall{});
    fall.speed_m_s = uncertainty->fall_m_s->value;
    fall.slow_m_s = std::max(0.0, uncertainty->fall_m_s->value - uncertainty->fall_m_s->sigma);
    fall.fast_m_s = uncertainty->fall_m_s->value + uncertainty->fall_m_s->sigma;
    answers.fall = fall;
    return answers;
}

Outcome<BelievedAnswers> believed_answers(const document::Document& document) {
    Outcome<Evaluation> found = evaluate(document);
    if (!found.ok()) return found.problems();
    BelievedAnswers out{std::move(found->answers), {}};
    Outcome<Uncertainty> sure = uncertainty(document);
    if (!sure.ok()) return out;
    if (sure->has_readings) {
        // Segments and stages are of the same piece of wood as the whole.
        if (const auto piece = corrected(document)) {
            if (auto weighed = evaluate(*piece)) out.answers = std::move(weighed->answers);
        }
    }
    out.answers = believed(std::move(out.answers), &*sure);
    out.uncertainty = std::move(sure).value();
    return out;
}

} // namespace evenfall
