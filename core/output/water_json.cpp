#include "output/water_json.hpp"

#include "answers/answers.hpp"
#include "base/trade.hpp"
#include "document/json_text.hpp"
#include "output/trees.hpp"

namespace evenfall::output {

namespace {

Tree band(const fall::Band& b, double scale) {
    return Tree::array({number(b.low * scale), number(b.high * scale)});
}

Tree falls_tree(const fall::SteadyFalls& falls) {
    Tree list = Tree::array();
    for (std::size_t i = 0; i < falls.falls.size(); ++i) {
        const fall::SteadyFall& f = falls.falls[i];
        list.push_back({{"manner", fall::fall_attitude_text(f)},
                        {"stable", f.stable},
                        {"main", falls.main == i},
                        {"pitch_deg", degrees(f.pitch_rad)},
                        {"vertical_mm_s", speed(f.vertical_m_s)},
                        {"vertical_band_mm_s", band(f.vertical_band_m_s, units::mm_s_from_m_s(1.0))},
                        {"forward_mm_s", speed(f.forward_m_s)},
                        {"glide_deg", degrees(f.glide_rad)}});
    }
    return list;
}

Tree track_tree(const fall::Track& track) {
    Tree points = list_of(track.points, [](const fall::TrackPoint& p) {
        return Tree::array(
            {number(p.time_s), millimetres(p.depth_m), millimetres(p.forward_m), degrees(p.state.pitch_rad)});
    });
    return {
        {"reached_s", number(track.reached_s)},
        {"forward_mm", millimetres(track.forward_m)},
        {"vertical_mm_s", speed(track.vertical_m_s)},
        {"start_up_percent", track.start_up_share ? number(100.0 * *track.start_up_share) : Tree(nullptr)},
        {"points", std::move(points)}};
}

Tree rest_tree(const afloat::Rest& r) {
    return {{"posture", posture_text(r.posture)},
            {"pitch_deg", degrees(r.pitch_rad)},
            {"heel_deg", degrees(r.heel_rad)},
            {"draft_fore_mm", millimetres(r.draft_fore_m)},
            {"draft_aft_mm", millimetres(r.draft_aft_m)},
            {"freeboard_mm", millimetres(r.freeboard_m)},
            {"volume_out_percent", number(100.0 * r.volume_out)},
            {"back_line_out_percent", number(100.0 * r.back_line_out)},
            {"gm_transverse_mm", millimetres(r.gm_transverse_m)},
            {"gm_longitudinal_mm", millimetres(r.gm_longitudinal_m)},
            {"neutral", r.is_neutral},
            {"has_twin", r.has_twin}};
}

Tree afloat_tree(const afloat::FloatAnswers& a) {
    Tree righting = Tree::array();
    for (const afloat::RightingPoint& p : a.righting.points) {
        if (p.is_trimmed) righting.push_back(Tree::array({degrees(p.heel_rad), millimetres(p.arm_m)}));
    }
    Tree tree{
        {"floats", a.floats}, {"rests", list_of(a.rests, rest_tree)}, {"righting", std::move(righting)}};
    tree["vanishing_deg"] = degrees(a.righting.vanishing_rad);
    tree["advice"] = {{"known", a.advice.is_known},
                      {"stable", a.advice.is_stable},
                      {"gm_mm", millimetres(a.advice.gm_m)},
                      {"lower_g_mm", millimetres(a.advice.lower_g_m)},
                      {"heavier_g", grams(a.advice.heavier_kg)}};
    return tree;
}

Tree hinges_tree(const fall::HingeLoads& loads) {
    Tree segments = list_of(loads.segments, [](const fall::SegmentLoad& s) {
        return Tree{{"in_water_g", grams(s.in_water_kg)}, {"moment_n_mm", number(1e3 * s.moment_n_m)}};
    });
    Tree joints = list_of(loads.joints, [](const fall::JointLoad& j) {
        return Tree{{"shear_n", number(j.shear_n)},
                    {"moment_n_mm", number(1e3 * j.moment_n_m)},
                    {"sag_deg", degrees(j.sag_rad)},
                    {"may_bind", j.may_bind}};
    });
    return {{"segments", std::move(segments)}, {"joints", std::move(joints)}};
}

Tree sweep_list(const std::vector<fall::SweepPoint>& points) {
    return list_of(points, [](const fall::SweepPoint& p) {
        return Tree{{"temperature_C", number(p.temperature_c)},
                    {"salinity_g_kg", number(p.salinity_g_kg)},
                    {"in_water_g", grams(p.in_water_kg)},
                    {"swelled_in_water_g", grams(p.swelled_in_water_kg)},
                    {"vertical_mm_s", speed(p.vertical_m_s)}};
    });
}

} // namespace

const char* posture_text(afloat::Posture posture) {
    switch (posture) {
    case afloat::Posture::upright:
        return "upright";
    case afloat::Posture::on_its_side:
        return "on its side";
    case afloat::Posture::on_its_back:
        return "on its back";
    case afloat::Posture::nose_up:
        return "nose up";
    case afloat::Posture::nose_down:
        return "nose down";
    }
    return "";
}

Outcome<InWater> in_water(const document::Document& document, const Evaluation& evaluation, double depth_m) {
    const Outcome<Waters> water = waters_of(document);
    if (!water) return water.problems();
    const fall::FallingLure descent(evaluation.kept.hull, evaluation.body, evaluation.ledger, document,
                                    water->fishing);
    fall::TrackRequest request;
    request.depth_m = depth_m;
    auto track = descent.track(request);
    if (!track) return track.problems();
    auto afloat =
        afloat::float_answers(evaluation.body, evaluation.ledger, document, water->fishing.density_kg_m3);
    if (!afloat) return afloat.problems();
    auto sweep = fall::water_sweep(descent, document.water);
    if (!sweep) return sweep.problems();
    fall::SteadyFalls falls = descent.steady();
    const double pitch = falls.main ? falls.falls[*falls.main].pitch_rad : falls.hang_pitch_rad.value_or(0.0);
    fall::HingeLoads hinges =
        fall::hinge_loads(evaluation.body, evaluation.ledger, document, water->fishing, pitch);
    Problems warnings = evaluation.answers.warnings;
    for (const Problems* list : {&afloat->warnings, &hinges.warnings})
        warnings.insert(warnings.end(), list->begin(), list->end());
    return InWater{std::move(falls),  std::move(track).value(), std::move(afloat).value(),
                   std::move(hinges), std::move(sweep).value(), std::move(warnings)};
}

std::string water_json(const document::Document& document, const InWater& water,
                       const units::UnitSet& units) {
    Tree tree{{"name", document.name}};
    tree["hang_pitch_deg"] = degrees(water.falls.hang_pitch_rad);
    tree["falls"] = falls_tree(water.falls);
    tree["track"] = track_tree(water.track);
    tree["afloat"] = afloat_tree(water.afloat);
    tree["under_water"] = {
        {"bg_mm", millimetres(water.afloat.under_water.bg_m)},
        {"righting_n_mm_per_deg", number(1e3 * water.afloat.under_water.righting_nm_per_deg)}};
    tree["hinges"] = hinges_tree(water.hinges);
    tree["sweep"] = {{"by_temperature", sweep_list(water.sweep.by_temperature)},
                     {"by_salinity", sweep_list(water.sweep.by_salinity)},
                     {"still_at_C", list_of(water.sweep.still_at_c, number)}};
    tree["warnings"] = problem_list(water.warnings, units);
    return document::laid_out_text(tree);
}

} // namespace evenfall::output
