#include "cli/words.hpp"

#include "evenfall.hpp"

namespace evenfall::cli {

using units::number_text;
using units::Unit;

std::string grams(double kg, int decimals) {
    return number_text(kg, Unit::gram, decimals);
}

std::string signed_grams(double kg) {
    return units::with_plus(kg, grams(kg));
}

std::string millimetres(double m, int decimals) {
    return number_text(m, Unit::mm, decimals);
}

std::string degrees(const std::optional<double>& rad) {
    return rad ? number_text(*rad, Unit::degree, 1) + "°" : "–";
}

std::string fall_mm_s(const std::optional<Fall>& fall) {
    return fall ? number_text(fall->speed_m_s, Unit::mm_per_s, 0) : "–";
}

std::string fall_s_ft(const std::optional<Fall>& fall) {
    return fall ? number_text(fall->speed_m_s, Unit::s_per_ft, 2) : "–";
}

std::string no_fall_words(MassInWater in_water) {
    switch (behaviour_of(in_water)) {
    case Behaviour::floats:
        return "floats";
    case Behaviour::suspends:
        return "hangs still";
    case Behaviour::falls:
        break;
    }
    return "sinks, but finds no steady way of falling";
}

std::string fall_words(const Answers& answers) {
    if (!answers.fall) return no_fall_words(answers.in_water);
    const Fall& fall = *answers.fall;
    return fall_mm_s(fall) + " mm/s, " + fall_s_ft(fall) + " s/ft (" +
           number_text(fall.slow_m_s, Unit::mm_per_s, 0) + " to " +
           number_text(fall.fast_m_s, Unit::mm_per_s, 0) + " mm/s by the drag's own band), pitched " +
           degrees(fall.pitch_rad) + ", gliding " + number_text(fall.forward_m_s, Unit::mm_per_s, 0) +
           " mm/s forward";
}

std::string warnings_text(const Answers& answers) {
    std::string text;
    for (const Problem& warning : answers.warnings)
        text += "! " + warning.sentence + '\n';
    return text.empty() ? text : '\n' + text;
}

} // namespace evenfall::cli
