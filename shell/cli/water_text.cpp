#include "cli/water_text.hpp"

#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::cli {

namespace {

using Side = Table::Side;
using units::number_text;
using units::Unit;

std::string percent(double share) {
    return number_text(share, Unit::percent, 0);
}

std::string righting_text(const afloat::FloatAnswers& afloat, const Numbers& in) {
    const afloat::RightingCurve& curve = afloat.righting;
    if (curve.points.empty()) return {};
    std::string text = "Righting arm, heeled and let trim";
    if (curve.vanishing_rad && curve.list_rad) text += " (gives out at " + degrees(curve.vanishing_rad) + ")";
    text += "\n";
    Table table({Side::right, Side::right});
    table.row({"heel °", "arm " + in.length_symbol()});
    for (std::size_t i = 0; i < curve.points.size(); i += 3) {
        if (curve.points[i].is_trimmed)
            table.row({degrees(curve.points[i].heel_rad), in.thickness(curve.points[i].arm_m)});
    }
    return text + table.text(in);
}

} // namespace

std::string floating_text(const output::InWater& water, const Numbers& in) {
    const afloat::FloatAnswers& afloat = water.afloat;
    std::string text = "Righting under water " +
                       number_text(1e3 * afloat.under_water.righting_nm_per_deg, Unit::one, 3) +
                       " N·mm for each degree of heel\n\n";
    if (!afloat.floats) return text;
    const std::string mm = std::string(1, ' ').append(in.length_symbol());
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right, Side::right, Side::right,
                 Side::right});
    table.row(
        {"Afloat", "pitch", "heel", "draft fore" + mm, "aft" + mm, "freeboard" + mm, "showing %", "GM" + mm});
    for (const afloat::Rest& r : afloat.rests) {
        table.row({std::string(output::posture_text(r.posture)) + (r.has_twin ? ", either side" : ""),
                   degrees(r.pitch_rad), afloat::stands(r.posture) ? "–" : degrees(r.heel_rad),
                   in.length(r.draft_fore_m), in.length(r.draft_aft_m), in.length(r.freeboard_m),
                   percent(r.volume_out), in.thickness(r.gm_transverse_m)});
    }
    text += table.text(in);
    return text + '\n' + righting_text(afloat, in) + '\n';
}

std::string hinges_text(const document::Document& document, const output::InWater& water, const Numbers& in) {
    if (water.hinges.joints.empty()) return {};
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right});
    table.row({"Joint", "shear mN", "moment N·mm", "eyes mN", "sag"});
    for (std::size_t j = 0; j < water.hinges.joints.size(); ++j) {
        const fall::JointLoad& load = water.hinges.joints[j];
        table.row({document.segment_names[j] + " – " + document.segment_names[j + 1],
                   number_text(1e3 * load.shear_n, Unit::one, 1),
                   number_text(1e3 * load.moment_n_m, Unit::one, 2),
                   number_text(1e3 * load.eye_force_n, Unit::one, 1), degrees(load.sag_rad)});
    }
    return table.text(in) + '\n';
}

std::string sweep_text(const output::InWater& water, const Numbers& in) {
    const auto rows = [&in](const std::vector<fall::SweepPoint>& points, bool by_temperature) {
        Table table({Side::right, Side::right, Side::right, Side::right});
        table.row({by_temperature ? "water " + in.temperature_symbol() : "salt g/kg",
                   "in water " + in.mass_symbol(), "to, if it swells " + in.mass_symbol(),
                   in.speed_symbol()});
        for (std::size_t i = 0; i < points.size(); i += 5) {
            const fall::SweepPoint& p = points[i];
            table.row({by_temperature ? in.temperature(p.temperature_c, 0)
                                      : number_text(p.salinity_g_kg, Unit::g_per_kg, 0),
                       in.signed_mass(p.in_water_kg), in.signed_mass(p.swelled_in_water_kg),
                       p.vertical_m_s ? in.speed(*p.vertical_m_s) : "–"});
        }
        return table.text(in);
    };
    std::string text = rows(water.sweep.by_temperature, true);
    for (const double c : water.sweep.still_at_c)
        text += "It suspends at " + in.temperature(c, 1) + " " + in.temperature_symbol() + ".\n";
    return text + '\n' + rows(water.sweep.by_salinity, false) + '\n';
}

std::string falls_text(const output::InWater& water, const Answers& answers, const Numbers& in) {
    if (answers.behaviour == Behaviour::suspends && water.falls.falls.empty()) return "It suspends.\n\n";
    const std::string held =
        water.falls.hang_pitch_rad
            ? "It hangs at " + degrees(water.falls.hang_pitch_rad) + ", held still under water.\n\n"
            : "Held still under water it rolls over.\n\n";
    if (water.falls.falls.empty()) return "It " + no_fall_words(answers.behaviour) + ".\n" + held;
    const std::string still = answers.behaviour == Behaviour::suspends ? "It suspends.\n\n" : "";
    Table table({Side::left, Side::left, Side::right, Side::right, Side::right, Side::right, Side::right});
    table.row({"Steady", "", "pitch", "down " + in.speed_symbol(), "band", "forward " + in.speed_symbol(),
               "glide"});
    for (std::size_t i = 0; i < water.falls.falls.size(); ++i) {
        const fall::SteadyFall& f = water.falls.falls[i];
        table.row({fall::fall_attitude_text(f),
                   f.stable ? (water.falls.main == i ? "the usual one" : "stable") : "not stable",
                   degrees(f.pitch_rad), in.speed(f.vertical_m_s),
                   in.speed(f.vertical_band_m_s.low) + " to " + in.speed(f.vertical_band_m_s.high),
                   in.speed(f.forward_m_s), degrees(f.glide_rad)});
    }
    return still + table.text(in) + held;
}

std::string track_text(const output::InWater& water, const Answers& answers, const Numbers& in) {
    const std::string mm = std::string(1, ' ').append(in.length_symbol());
    const fall::Track& track = water.track;
    if (track.points.size() < 2 || answers.behaviour == Behaviour::suspends) return {};
    Table table({Side::right, Side::right, Side::right, Side::right});
    table.row({"s", "depth" + mm, "forward" + mm, "pitch"});
    // Some twenty rows, whatever the time it takes; the last is the arrival.
    const std::size_t stride = std::max<std::size_t>(1, track.points.size() / 20);
    const auto row = [&](const fall::TrackPoint& p) {
        table.row({number_text(p.time_s, Unit::one, 2), in.length(p.depth_m, 0), in.length(p.forward_m, 0),
                   degrees(p.state.pitch_rad)});
    };
    for (std::size_t i = 0; i + 1 < track.points.size(); i += stride)
        row(track.points[i]);
    row(track.points.back());
    std::string text =
        (water.falls.hang_pitch_rad ? "From rest, as it hangs\n" : "From rest, level\n") + table.text(in);
    if (track.reached_s) {
        text += "There after " + number_text(*track.reached_s, Unit::one, 2) + " s, " +
                in.length(track.forward_m, 0) + mm + " forward";
        if (track.start_up_share)
            text += "; the start from rest takes " + percent(*track.start_up_share) + " % of the time";
        text += ".\n";
    } else {
        text += "It did not get there in the time looked at.\n";
    }
    return text;
}

std::string water_warnings_text(const output::InWater& water, const Numbers& in) {
    std::string text;
    for (const Problems* list : {&water.afloat.warnings, &water.hinges.warnings}) {
        for (const Problem& p : *list)
            text += "Note: " + p.sentence.text(in.units) + '\n';
    }
    return text;
}

} // namespace evenfall::cli
