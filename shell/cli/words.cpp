#include "cli/words.hpp"

#include "document_fields.hpp"
#include "evenfall.hpp"

#include <cmath>

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

std::string no_fall_words(Behaviour behaviour) {
    switch (behaviour) {
    case Behaviour::floats:
        return "floats";
    case Behaviour::suspends:
        return "suspends";
    case Behaviour::falls:
        break;
    }
    return "sinks, but finds no steady way of falling";
}

std::string both_speeds(double m_s, const Numbers& in) {
    return in.speed(m_s) + " " + in.speed_symbol() + ", " + number_text(m_s, Unit::s_per_ft, 2) + " s/ft";
}

std::string fall_words(const Answers& answers, const Numbers& in) {
    const std::string unit = std::string(1, ' ').append(in.speed_symbol());
    if (!answers.fall) {
        std::string words = no_fall_words(answers.behaviour);
        if (!answers.under_water || answers.behaviour == Behaviour::falls) return words;
        const double down = answers.under_water->speed_m_s;
        const char* drift = down < 0.0 ? "rises " : "sinks ";
        return words + (answers.behaviour == Behaviour::floats ? "; under water it " : ": it ") + drift +
               in.speed(std::abs(down)) + unit;
    }
    const Fall& fall = *answers.fall;
    return both_speeds(fall.speed_m_s, in) + " (" + in.speed(fall.slow_m_s) + " to " +
           in.speed(fall.fast_m_s) + unit + " by the drag's own band), pitched " + degrees(fall.pitch_rad) +
           ", gliding " + in.speed(fall.forward_m_s) + unit + " forward";
}

std::string near_neutral_text(document::Document document, const Numbers& in) {
    document.log.clear();
    const Outcome<Uncertainty> s = uncertainty(document);
    if (!s.ok()) return {};
    const Sentence sentence = output::near_neutral_sentence(s->under_water);
    return sentence.empty() ? std::string() : sentence.text(in.units) + '\n';
}

std::string warnings_text(const Answers& answers, const Numbers& in) {
    std::string text;
    for (const Problem& warning : answers.warnings)
        text += "! " + warning.sentence.text(in.units) + '\n';
    return text.empty() ? text : '\n' + text;
}

std::string for_terminal(std::string_view text) {
    return document::printable(text, text.size());
}

} // namespace evenfall::cli
