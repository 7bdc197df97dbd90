#include "cli/words.hpp"

#include "evenfall.hpp"

namespace evenfall::cli {

using units::number_text;
using units::Unit;

std::string degrees(const std::optional<double>& rad) {
    return rad ? number_text(*rad, Unit::degree, 1) + "°" : "–";
}

std::string fall_speed(const std::optional<Fall>& fall, const Numbers& in) {
    return fall ? in.speed(fall->speed_m_s) : "–";
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

std::string both_speeds(double m_s, const Numbers& in) {
    return in.speed(m_s) + " " + in.speed_symbol() + ", " + number_text(m_s, Unit::s_per_ft, 2) + " s/ft";
}

std::string fall_words(const Answers& answers, const Numbers& in) {
    if (!answers.fall) return no_fall_words(answers.in_water);
    const Fall& fall = *answers.fall;
    const std::string unit = std::string(1, ' ').append(in.speed_symbol());
    return both_speeds(fall.speed_m_s, in) + " (" + in.speed(fall.slow_m_s) + " to " +
           in.speed(fall.fast_m_s) + unit + " by the drag's own band), pitched " + degrees(fall.pitch_rad) +
           ", gliding " + in.speed(fall.forward_m_s) + unit + " forward";
}

std::string warnings_text(const Answers& answers, const Numbers& in) {
    std::string text;
    for (const Problem& warning : answers.warnings)
        text += "! " + warning.sentence.text(in.units) + '\n';
    return text.empty() ? text : '\n' + text;
}

} // namespace evenfall::cli
