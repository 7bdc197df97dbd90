#pragma once

// What is said of a document, number by number: none of them may be NaN or infinite unless its declaration
// says so.

#include "bench/compare.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "evenfall.hpp"
#include "fuzz/law.hpp"
#include "output/sheet/model.hpp"
#include "output/water_json.hpp"
#include "workshop/joint_answers.hpp"

#include <cmath>

namespace evenfall::fuzz {

inline bool finite(double value) {
    return std::isfinite(value);
}
inline bool finite(const Vec3& v) {
    return std::isfinite(v.x) && std::isfinite(v.y) && std::isfinite(v.z);
}
inline bool finite(const Inertia& i) {
    return std::isfinite(i.xx) && std::isfinite(i.yy) && std::isfinite(i.zz) && std::isfinite(i.xy) &&
           std::isfinite(i.xz) && std::isfinite(i.yz);
}
inline bool finite(const Estimate& e) {
    return std::isfinite(e.value) && std::isfinite(e.sigma) && std::isfinite(e.sigma_before);
}
inline bool finite(const Fall& f) {
    return std::isfinite(f.speed_m_s) && std::isfinite(f.slow_m_s) && std::isfinite(f.fast_m_s) &&
           std::isfinite(f.pitch_rad) && std::isfinite(f.forward_m_s);
}
template <class T>
bool finite(const std::optional<T>& held) {
    return !held || finite(*held);
}
template <class A, class B, class... More>
bool finite(const A& a, const B& b, const More&... more) {
    return finite(a) && finite(b) && (finite(more) && ...);
}

inline void must_be_share(double value, const char* law) {
    must(value >= 0.0 && value <= 1.0, law);
}

inline void must_be_finite(const Answers& a) {
    bool all =
        finite(a.water_density_kg_m3, a.mass.kg, a.mass_sigma.kg, a.displaced_m3, a.in_water.kg,
               a.in_water_sigma.kg, a.g_m, a.b_m, a.bg_m, a.pitch_rad, a.roll_rad, a.fall, a.under_water);
    for (const SegmentAnswer& s : a.segments)
        all = all && finite(s.wood_m3, s.displaced_m3, s.mass.kg, s.in_water.kg, s.g_m, s.b_m);
    for (const StageAnswer& s : a.stages) {
        all = all && finite(s.mass.kg, s.mass_sigma.kg, s.displaced_m3, s.g_m, s.b_m, s.in_water.kg,
                            s.in_tub.kg, s.fall, s.tub_fall);
    }
    for (const CoatAnswer& c : a.coats)
        all = all && finite(c.mass.kg, c.displaced_m3, c.in_water.kg, c.in_water_share);
    must(all, "an accepted document has answers without NaN");
}

inline void must_be_finite(const Evaluation& evaluation) {
    must_be_finite(evaluation.answers);
    bool all = true;
    for (const shape::Segment& s : evaluation.body.segments) {
        all = all && finite(s.x_from_m, s.x_to_m, s.volume_m3, s.centroid_m, s.inertia_m5, s.skin_m2,
                            s.skin_centroid_m, s.curvature_m);
        for (const shape::Face& f : s.faces)
            all = all && finite(f.area_m2, f.centroid_m, f.rim_m);
        must(s.volume_m3 > 0.0 && s.skin_m2 > 0.0, "every segment has wood and skin");
    }
    for (const ledger::Line& line : evaluation.ledger) {
        all = all && finite(line.mass_kg, line.displaced_m3, line.at_m, line.own_kg_m2);
        for (const ledger::Variation& s : line.spreads)
            must(std::isfinite(s.relative) && s.relative >= 0.0, "a spread is a number from 0");
    }
    must(all, "body and ledger are without NaN");
}

inline void must_be_finite(const output::InWater& w) {
    bool all = finite(w.falls.hang_pitch_rad);
    for (const fall::SteadyFall& f : w.falls.falls) {
        all = all && finite(f.pitch_rad, f.vertical_m_s, f.forward_m_s, f.glide_rad, f.along_m_s,
                            f.across_m_s, f.reynolds);
        for (const fall::Band& b :
             {f.pitch_band_rad, f.vertical_band_m_s, f.forward_band_m_s, f.glide_band_rad})
            all = all && finite(b.low, b.high) && b.low <= b.high;
        for (const auto& mode : f.modes_1_s)
            all = all && finite(mode.real(), mode.imag());
    }
    must(all, "falls are without NaN");
    all = finite(w.track.reached_s, w.track.forward_m, w.track.vertical_m_s, w.track.start_up_share);
    for (const fall::TrackPoint& p : w.track.points) {
        all = all && finite(p.time_s, p.depth_m, p.forward_m, p.lost_j, p.state.along_m_s, p.state.across_m_s,
                            p.state.pitching_rad_s, p.state.pitch_rad);
    }
    must(all, "the way down is without NaN");
    must(w.track.points.size() <= 60 * 30 + 2,
         "the way down has a point each thirtieth of a second for a minute at most");
    const auto rest = [](const afloat::Rest& r) {
        return finite(r.up, r.depth_m, r.pitch_rad, r.heel_rad, r.draft_fore_m, r.draft_aft_m, r.deepest_m,
                      r.freeboard_m, r.volume_out, r.back_line_out, r.nose_waterline_z_m,
                      r.tail_waterline_z_m, r.gm_transverse_m, r.gm_longitudinal_m, r.least_gm_m,
                      r.righting_nm_per_deg, r.energy_j);
    };
    all = !w.afloat.upright || rest(*w.afloat.upright);
    for (const afloat::Rest& r : w.afloat.rests) {
        all = all && rest(r);
        must(r.volume_out >= 0.0 && r.volume_out <= 1.0, "what shows of a floating lure is a share of it");
    }
    const afloat::RightingCurve& c = w.afloat.righting;
    all = all && finite(c.peak_arm_m, c.peak_heel_rad, c.list_rad, c.vanishing_rad);
    for (const afloat::RightingPoint& p : c.points)
        all = all && finite(p.heel_rad, p.arm_m, p.pitch_rad);
    all = all &&
          finite(w.afloat.under_water.bg_m, w.afloat.under_water.righting_nm_per_deg, w.afloat.advice.gm_m,
                 w.afloat.advice.g_off_m, w.afloat.advice.lower_g_m, w.afloat.advice.heavier_kg);
    must(all, "what floats is told without NaN");
    all = true;
    for (const fall::SegmentLoad& s : w.hinges.segments)
        all = all && finite(s.in_water_kg, s.moment_n_m);
    for (const fall::JointLoad& j : w.hinges.joints) {
        all = all && finite(j.shear_n, j.moment_n_m, j.eye_force_n, j.eye_spacing_m, j.sag_rad,
                            j.pin_friction_n_m, j.swings_from_m_s);
    }
    for (const auto* list : {&w.sweep.by_temperature, &w.sweep.by_salinity}) {
        for (const fall::SweepPoint& p : *list)
            all = all && finite(p.temperature_c, p.salinity_g_kg, p.in_water_kg, p.swelled_in_water_kg,
                                p.vertical_m_s);
    }
    for (const double c_still : w.sweep.still_at_c)
        all = all && finite(c_still);
    must(all, "hinge loads and sweep are without NaN");
}

inline void must_be_finite(const joints::JointsAnswer& answer) {
    bool all = finite(answer.films.on_faces_m, answer.films.in_pockets_m, answer.line_n, answer.wrap_rad[0],
                      answer.wrap_rad[1]);
    for (const double radius : answer.turn_radius_m)
        must(radius > 0.0, "a turn has a radius, endless where nothing turns");
    for (const joints::JointAnswer& j : answer.joints) {
        for (const double angle : {j.bare[0].angle_rad, j.bare[1].angle_rad, j.finished[0].angle_rad,
                                   j.finished[1].angle_rad, j.swing_rad[0], j.swing_rad[1]}) {
            must(angle >= 0.0 && angle <= joints::most_swing_rad,
                 "a swing is an angle up to the one it is followed to");
        }
        for (const auto* pair : {&j.bare, &j.finished}) {
            for (const joints::Swing& s : *pair)
                all = all && (!s.stopped || finite(s.touches_z_m, s.touches_r_m));
        }
        all = all && finite(j.wire_rad[0], j.wire_rad[1], j.mouth_m[0].value_or(0.0),
                            j.mouth_m[1].value_or(0.0), j.play_per_eye_m, j.sag_rad, j.twist_reach_m,
                            j.pin_length_m, j.pin_middle_z_m, j.place.eye_spacing_m);
        for (const joints::EyeAnswer& e : j.eyes) {
            all = all && finite(e.place.z_m);
            if (e.room)
                all = all && finite(e.room->beside_m, e.room->behind_m, e.room->up_down_m.value_or(0.0),
                                    e.room->port_rad, e.room->starboard_rad);
        }
        for (const joints::Wall& wall : j.walls)
            all = all && finite(wall.thickness_m);
        const wire::TwistAnswer& eye = j.eye;
        all = all && finite(eye.cut_m, eye.twist_m, eye.finished_m, eye.eye_outside_m, eye.twist_outside_m,
                            eye.mass_kg, eye.mandrel_m);
        const wire::Strength& s = j.strength;
        all = all && finite(s.eye_n, s.pull_out_n, s.pin_shear_n, s.pin_bend_n, s.wood_n, s.wall_n, s.least_n,
                            s.safety);
    }
    must(all, "joints are told without NaN");
    for (const joints::HookFoul& foul : answer.hooks)
        must(std::isfinite(foul.over_m), "hooks are told without NaN");
}

inline void must_be_finite(const Uncertainty& s) {
    bool all = finite(s.mass_kg, s.in_water_kg, s.bg_m, s.g_sigma_m, s.b_sigma_m, s.fall_m_s,
                      s.target_in_water_kg, s.weight_band_kg) &&
               (std::isnan(s.pitch_rad.value) || finite(s.pitch_rad));
    for (const InputEstimate& b : s.inputs) {
        all = all && finite(b.factor, b.spread, b.spread_before);
        must(b.factor > 0.0 && b.spread >= 0.0 && b.spread_before >= 0.0,
             "an uncertain input is a factor above 0 with a spread from 0");
    }
    for (const Interval& i : s.fall_50_80_95_m_s)
        all = all && finite(i.low, i.high) && i.low <= i.high;
    for (const StagePrediction& b : s.stages)
        all = all && finite(b.mass_kg, b.displaced_kg, b.in_tub_kg, b.tub_fall_m_s);
    must(all, "estimates are without NaN");
    all = all && finite(s.under_water.speed_m_s.low, s.under_water.speed_m_s.high);
    for (const double chance : {s.under_water.rises, s.under_water.hangs, s.under_water.sinks})
        must_be_share(chance, "a chance is from 0 to 1");
    for (const Chances& c : {s.chances_now, s.chances_corrected}) {
        for (const double chance : {c.fall, c.pitch, c.both})
            must_be_share(chance, "a chance is a share");
    }
    for (const ReadingFit& v : s.readings) {
        if (v.used) all = all && finite(v.read, v.sigma, v.predicted, v.predicted_sigma, v.z_score);
    }
    must(all, "fits of readings are without NaN");
    for (const NextReading& n : s.next) {
        all = all && finite(n.sigma, n.in_water_sigma_kg, n.gain);
        must_be_share(n.chance, "the chance after a reading is a share");
    }
    all = all && finite(s.trim.reserve_kg, s.trim.room_up_kg, s.trim.room_down_kg, s.trim.x_m,
                        s.trim.diameter_m, s.trim.depth_m);
    must(all, "what to read next, and the hole for it, are without NaN");
}

inline void must_be_finite(const Draws& d) {
    must_be_share(d.floats, "those that float are a share");
    must_be_share(d.rolls, "those that roll are a share");
    bool all = true;
    for (const Quantiles& s : {d.mass_kg, d.in_water_kg, d.pitch_rad, d.fall_m_s}) {
        all = all && finite(s.low_95, s.low_50, s.median, s.high_50, s.high_95, s.mean, s.sigma);
    }
    must(all, "draws are without NaN");
}

inline void must_be_finite(const std::vector<compare::Option>& options) {
    for (const compare::Option& o : options) {
        must(finite(o.density_kg_m3, o.spread, o.bare_in_water_kg, o.fill_kg, o.deepest_m),
             "a comparison is without NaN");
        must(o.met || !o.why.empty(), "where a wood or metal will not do it says why");
    }
}

inline void must_be_finite(const sheet::Layout& layout) {
    bool all = true;
    for (const sheet::Page& page : layout.pages) {
        for (const sheet::Item& item : page.items) {
            if (const auto* text = std::get_if<sheet::Text>(&item)) {
                all = all && finite(text->at.x_mm, text->at.y_mm, text->size_mm);
            } else {
                for (const sheet::Polyline& line : std::get<sheet::Path>(item).lines) {
                    for (const sheet::Point& p : line.points)
                        all = all && finite(p.x_mm, p.y_mm);
                }
            }
        }
    }
    must(all, "nothing on the sheet stands nowhere");
}

} // namespace evenfall::fuzz
