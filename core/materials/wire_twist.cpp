#include "materials/wire_twist.hpp"

#include "base/trade.hpp"

#include <array>
#include <cmath>
#include <limits>
#include <numbers>
#include <string>

namespace evenfall::wire {

namespace {

constexpr double youngs_modulus_pa = 193e9;
constexpr double half_turn_rad = std::numbers::pi;

struct Limit {
    double value;
    double least;
    double most;
    const char* key;
    const char* from; ///< words before the limit's text, where the limit is told alone
    Sentence (*text)(const Limit&);
    const char* before; ///< words around it in the sentence
    const char* after;
};

Problems outside_limits(const TwistedEye& eye, double pitch_m, const char* path) {
    const auto lengths = [](const Limit& l) { return range_text(l.least, l.most, units::Quantity::length); };
    const auto thickness = [](const Limit& l) {
        return range_text(l.least, l.most, units::Quantity::thickness);
    };
    const auto longest = [](const Limit& l) { return at_most_text(l.most, units::Quantity::length); };
    const auto half_to_whole = [](const Limit&) { return Sentence("180 to 360°"); };
    const auto to_forty = [](const Limit&) { return Sentence("0 to 40"); };
    const std::array limits{
        Limit{eye.wire_m, 0.2e-3, 3e-3, "wire_mm", "", thickness, "The wire must be ", " thick."},
        Limit{eye.inside_m, 0.5e-3, 30e-3, "eye_inside_mm", "", lengths, "The eye must be ", " wide inside."},
        Limit{eye.wrap_rad, half_turn_rad, 2.0 * half_turn_rad, "wrap_deg", "", half_to_whole,
              "The wire must go ", " round the eye before its legs meet."},
        Limit{eye.turns, 0.0, 40.0, "turns", "", to_forty, "A twist has ", " turns."},
        Limit{pitch_m, 2.0 * eye.wire_m, 0.1, "pitch_mm", "2 wires to ", longest,
              "One turn of a twist cannot be shorter than two wires lie side by side, nor longer than ", "."},
        Limit{eye.leg_m, 0.0, 0.1, "leg_mm", "", lengths, "The straight legs must be ", " long."},
    };
    Problems problems;
    for (const Limit& l : limits) {
        // A negated comparison also refuses NaN. The words are made only for what is refused.
        if (l.value >= l.least * (1.0 - 1e-12) && l.value <= l.most * (1.0 + 1e-12)) continue;
        const Sentence text = l.text(l);
        problems.push_back({ProblemCode::out_of_range, std::string(path) + '/' + l.key,
                            Sentence(l.from) + text, Sentence(l.before) + text + l.after});
    }
    return problems;
}

double pitch(const TwistedEye& eye) {
    return eye.pitch_m == 0.0 ? usual_pitch_in_wires * eye.wire_m : eye.pitch_m;
}

} // namespace

Outcome<TwistAnswer> twisted_eye(const TwistedEye& eye, double density_kg_m3, double yield_pa,
                                 const char* path) {
    const double pitch_m = pitch(eye);
    Problems problems = outside_limits(eye, pitch_m, path);
    if (!problems.empty()) return problems;

    TwistAnswer a;
    const double round_m = (eye.inside_m + eye.wire_m) * 0.5 * eye.wrap_rad;
    const double turn_m = std::hypot(pitch_m, std::numbers::pi * eye.wire_m);
    a.cut_m = round_m + 2.0 * eye.turns * turn_m + 2.0 * eye.leg_m;
    a.twist_m = eye.turns * pitch_m;
    a.eye_outside_m = eye.inside_m + 2.0 * eye.wire_m;
    a.twist_outside_m = twist_outside(2) * eye.wire_m;
    a.finished_m = finished_m(eye);
    a.mass_kg = density_kg_m3 * 0.25 * std::numbers::pi * eye.wire_m * eye.wire_m * a.cut_m;
    a.mandrel_m = mandrel_m(eye.inside_m, eye.wire_m, yield_pa);
    a.overbend = (eye.inside_m + eye.wire_m) / (a.mandrel_m + eye.wire_m) - 1.0;
    return a;
}

double mandrel_m(double inside_m, double wire_m, double yield_pa) {
    const double middle_m = 0.5 * (inside_m + wire_m);
    const double opens_per_m = 32.0 * yield_pa / (3.0 * std::numbers::pi * youngs_modulus_pa * wire_m);
    return 2.0 / (1.0 / middle_m + opens_per_m) - wire_m;
}

double finished_m(const TwistedEye& eye) {
    return eye.inside_m + 2.0 * eye.wire_m + eye.turns * pitch(eye) + eye.leg_m;
}

double twist_outside(int wires) {
    if (wires == 2) return 2.0;
    if (wires == 3) return 1.0 + 2.0 / std::numbers::sqrt3;
    return std::numeric_limits<double>::quiet_NaN();
}

double awg_m(int number) {
    return units::m_from_inch(0.005) * std::pow(92.0, (36.0 - number) / 39.0);
}

} // namespace evenfall::wire
