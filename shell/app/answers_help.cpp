#include "app/parts.hpp"

#include "look/words_help.hpp"

#include <cmath>

namespace evenfall::shell {
namespace {

namespace words = look::words;
using ledger::Kind;
using widgets::Quantity;
using widgets::Unit;

/// Collects figures in the units that are set.
struct Figures {
    const widgets::Units& units;
    std::vector<help::Figure> list{};

    void add(const char* label, double si, Quantity quantity, int decimals = -1) {
        list.push_back({label, widgets::value_text(si, units.of(quantity), decimals)});
    }
};

ledger::Sum sum_of(const ledger::Ledger& ledger, std::initializer_list<Kind> kinds) {
    ledger::Sum sum;
    for (const Kind kind : kinds)
        sum += ledger::sum_of(ledger, kind);
    return sum;
}

void finished(Figures& f, const Evaluation& e) {
    const auto mass = [&](const char* label, std::initializer_list<Kind> kinds) {
        const double kg = sum_of(e.ledger, kinds).mass.kg;
        if (kg != 0.0) f.add(label, kg, Quantity::mass);
    };
    mass(words::went_wood, {Kind::wood, Kind::hole_wood, Kind::pocket_wood, Kind::bore_wood});
    mass(words::went_lead, {Kind::fill, Kind::cap});
    mass(words::went_hardware, {Kind::hinge, Kind::glue, Kind::hanger, Kind::part});
    mass(words::went_tail, {Kind::tail});
    mass(words::went_coats, {Kind::coat});
    f.add(words::went_sigma, e.answers.mass_sigma.kg, Quantity::mass);
}

void in_water(Figures& f, const Answers& a) {
    f.add(words::went_mass, a.mass.kg, Quantity::mass);
    f.add(words::went_volume, a.displaced_m3, Quantity::volume, 2);
    f.add(words::went_water, a.water_density_kg_m3, Quantity::density);
    f.add(words::went_sigma, a.in_water_sigma.kg, Quantity::mass);
}

void fall(Figures& f, const Answers& a, const document::Document& lure) {
    f.add(words::went_in_water, a.in_water.kg, Quantity::mass);
    f.add(words::went_temperature, lure.water.temperature_c, Quantity::temperature);
    if (!a.fall) return;
    f.add(words::went_angle, a.fall->pitch_rad, Quantity::angle);
    f.list.push_back(
        {words::went_model_fast, widgets::value_text(a.fall->fast_m_s, f.units.of(Quantity::fall))});
    f.list.push_back(
        {words::went_model_slow, widgets::fall_end_text(a.fall->slow_m_s, f.units.of(Quantity::fall))});
}

void chance(Figures& f, const Uncertainty& s, const document::Targets& targets) {
    f.add(words::went_fall_chance, s.chances_now.fall, Quantity::percent, 0);
    f.add(words::went_hang_chance, s.chances_now.pitch, Quantity::percent, 0);
    f.add(words::went_fall_band, targets.fall_band, Quantity::percent, 0);
    f.add(words::went_hang_band, targets.pitch_band_rad, Quantity::angle);
    f.add(words::went_in_water_sigma, s.in_water_kg.sigma, Quantity::mass);
    if (std::isfinite(s.pitch_rad.sigma)) f.add(words::went_hang_sigma, s.pitch_rad.sigma, Quantity::angle);
}

} // namespace

help::Asked asked_of(const state::Session& session, state::BenchAnswerCache& bench,
                     const widgets::Units& units, const widgets::Answer& answer) {
    Figures f{units};
    f.list.push_back(
        {answer.title, answer.number + (answer.unit.empty() || answer.unit == "°" ? "" : " ") + answer.unit});
    if (!session.evaluation()) return {answer.topic, f.list};
    const Uncertainty* sure = bench.uncertainty(session);
    const Evaluation& e = evaluation_shown(session, sure);
    switch (answer.topic) {
    case help::Topic::finished:
        finished(f, e);
        break;
    case help::Topic::in_water:
        in_water(f, e.answers);
        break;
    case help::Topic::fall:
        fall(f, e.answers, session.document());
        break;
    case help::Topic::hang:
        f.add(words::went_g_aft, e.answers.g_m.x, Quantity::length);
        f.add(words::went_b_aft, e.answers.b_m.x, Quantity::length);
        f.add(words::went_bg, e.answers.bg_m, Quantity::length);
        break;
    case help::Topic::righting:
        f.add(words::went_b_up, e.answers.b_m.z, Quantity::length);
        f.add(words::went_g_up, e.answers.g_m.z, Quantity::length);
        break;
    case help::Topic::chance:
        if (sure != nullptr) chance(f, *sure, session.document().targets);
        break;
    default:
        break;
    }
    return {answer.topic, f.list};
}

} // namespace evenfall::shell
