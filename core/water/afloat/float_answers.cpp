#include "water/afloat/float_answers.hpp"

#include "base/sentence.hpp"
#include "ledger/fold.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::afloat {

namespace {

ledger::Sum total_of(const ledger::Ledger& ledger) {
    ledger::Sum total;
    for (const ledger::Line& line : ledger)
        total += line;
    return total;
}

Afloat afloat_of(const FloatingHull& hull, const ledger::Sum& total, double water_kg_m3) {
    return {&hull, total.mass.kg, total.g_m(), water_kg_m3};
}

bool is_positive(double value) {
    return std::isfinite(value) && value > 0.0;
}

const char* lying(Posture posture) {
    switch (posture) {
    case Posture::on_its_side:
        return "on its side";
    case Posture::on_its_back:
        return "on its back";
    case Posture::nose_up:
        return "nose up";
    case Posture::nose_down:
        return "nose down";
    case Posture::upright:
        break;
    }
    return "upright";
}

Problem rolls_over(const UprightAdvice& advice) {
    Sentence sentence = "Afloat this lure does not stay upright: ";
    if (advice.gm_m > 0.0) {
        sentence += "G lies " + length_text(std::abs(advice.g_off_m)) + " to " +
                    (advice.g_off_m > 0.0 ? "starboard" : "port") + " of B.";
        return {ProblemCode::capsizes, "", "G in the middle", sentence};
    }
    sentence += "its metacentre lies " + length_text(-advice.gm_m) + " under G. G must come down by " +
                length_text(advice.lower_g_m);
    if (advice.heavier_kg) {
        sentence += ", or the lure must be " + mass_text(*advice.heavier_kg) + " heavier";
    } else {
        sentence += "; more weight at the same height does not help";
    }
    return {ProblemCode::capsizes, "", "metacentre over G", sentence + "."};
}

Problems warnings_of(const FloatAnswers& a) {
    Problems out;
    if (a.advice.is_known && !a.advice.is_stable) return out; // roll_over_warning() reports it
    bool is_another = std::any_of(a.rests.begin(), a.rests.end(),
                                  [](const Rest& r) { return r.posture == Posture::upright; });
    for (const Rest& rest : a.rests) {
        if (rest.posture == Posture::upright) continue;
        Sentence sentence = "Afloat this lure ";
        sentence += is_another ? "can also come to rest " : "comes to rest ";
        sentence += lying(rest.posture);
        sentence += ", at a ";
        if (!stands(rest.posture)) sentence += "heel of " + angle_text(std::abs(rest.heel_rad)) + " and a ";
        sentence += "pitch of " + angle_text(rest.pitch_rad) + ".";
        out.push_back({ProblemCode::capsizes, "", "", std::move(sentence)});
        is_another = true;
    }
    return out;
}

} // namespace

Outcome<FloatAnswers> float_answers(const shape::Body& body, const ledger::Ledger& ledger,
                                    const document::Document& document, double water_kg_m3) {
    if (!is_positive(water_kg_m3)) {
        return Problem{ProblemCode::out_of_range, "/water", "more than 0 kg/m³",
                       "The density of the water must be a positive number."};
    }
    const ledger::Sum total = total_of(ledger);
    if (!is_positive(total.mass.kg) || !is_positive(total.displaced_m3)) {
        return Problem{ProblemCode::out_of_range, "", "more than " + plain_text(0.0, units::Quantity::mass),
                       "The finished lure has no mass or pushes no water aside."};
    }
    const FloatingHull hull(body, ledger, document);
    const Afloat afloat = afloat_of(hull, total, water_kg_m3);
    FloatAnswers a;
    a.under_water = under_water(afloat);
    a.floats = !afloat.sinks();
    if (!a.floats) return a;
    a.upright = upright_rest(afloat);
    a.righting = righting_curve(afloat, TrimMode::free);
    a.rests = rests(afloat, headings_of(a.righting));
    a.advice = upright_advice(afloat);
    a.warnings = warnings_of(a);
    return a;
}

std::optional<Problem> roll_over_warning(const shape::Body& body, const ledger::Ledger& ledger,
                                         const document::Document& document, double water_kg_m3) {
    const ledger::Sum total = total_of(ledger);
    if (!is_positive(water_kg_m3) || !is_positive(total.mass.kg) || !is_positive(total.displaced_m3))
        return std::nullopt;
    const FloatingHull hull(body, ledger, document);
    const Afloat afloat = afloat_of(hull, total, water_kg_m3);
    if (afloat.sinks()) return std::nullopt;
    const UprightAdvice advice = upright_advice(afloat);
    if (!advice.is_known || advice.is_stable) return std::nullopt;
    return rolls_over(advice);
}

std::optional<Rest> upright_answer(const shape::Body& body, const ledger::Ledger& ledger,
                                   const document::Document& document, double water_kg_m3) {
    const ledger::Sum total = total_of(ledger);
    if (!is_positive(water_kg_m3) || !is_positive(total.mass.kg) || !is_positive(total.displaced_m3))
        return std::nullopt;
    const FloatingHull hull(body, ledger, document);
    return upright_rest(afloat_of(hull, total, water_kg_m3));
}

} // namespace evenfall::afloat
