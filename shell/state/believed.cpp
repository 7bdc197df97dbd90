#include "state/believed.hpp"

#include "answers/evaluation.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::shell::state {

Answers believed(Answers answers, const Surety* surety) {
    if (surety == nullptr || !surety->has_readings) return answers;
    answers.mass_kg = surety->mass_kg.value;
    answers.mass_sigma_kg = surety->mass_kg.sigma;
    answers.in_water_kg = surety->in_water_kg.value;
    answers.in_water_sigma_kg = surety->in_water_kg.sigma;
    answers.bg_m = surety->bg_m.value;
    answers.pitch_rad.reset();
    if (std::isfinite(surety->pitch_rad.value))
        answers.pitch_rad = surety->pitch_rad.value;
    else
        answers.roll_rad.reset();
    answers.behaviour = behaviour_of(answers.in_water_kg);
    if (answers.behaviour != Behaviour::falls || !surety->fall_m_s) {
        answers.fall.reset();
        return answers;
    }
    Fall fall = answers.fall.value_or(Fall{});
    fall.speed_m_s = surety->fall_m_s->value;
    fall.slow_m_s = std::max(0.0, surety->fall_m_s->value - surety->fall_m_s->sigma);
    fall.fast_m_s = surety->fall_m_s->value + surety->fall_m_s->sigma;
    answers.fall = fall;
    return answers;
}

} // namespace evenfall::shell::state
