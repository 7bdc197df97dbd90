#include "workshop/glue.hpp"

#include "base/limits.hpp"
#include "base/sentence.hpp"
#include "body/bore.hpp"
#include "body/fittings.hpp"
#include "materials/solids.hpp"

#include <algorithm>

namespace evenfall::glue {

namespace {

/// With a tolerance of 1 nm for rounding.
bool fills(GlueKind sort, double width_m) {
    return width_m <= fills_to_m[static_cast<std::size_t>(sort)] + 1e-9;
}

double density_kg_m3(GlueKind sort) {
    return materials::find_solid(sort == GlueKind::epoxy ? "epoxy" : "ca")->density_kg_m3.value;
}

Problems off_limits(const GlueRequest& r) {
    Problems out;
    const auto number = [&out](const char* path, const char* what, double value, double least, double most,
                               units::Unit unit = units::Unit::one) {
        units::check_limit({path, what, value, least, most, unit, 0}, out);
    };
    constexpr double day_s = 86400.0;
    number("/lures", "The number of lures", r.lures, 1.0, 1000.0);
    number("/loss", "The loss", r.loss, 0.0, 0.9, units::Unit::percent);
    number("/fitting_s", "The seconds for fitting one joint", r.fitting_s, 1.0, 7200.0);
    number("/times/thin_ca_s", "The working time of thin CA in seconds", r.times.thin_ca_s, 1.0, day_s);
    number("/times/thick_ca_s", "The working time of thick CA in seconds", r.times.thick_ca_s, 1.0, day_s);
    number("/times/epoxy_s", "The working time of epoxy in seconds", r.times.epoxy_s, 1.0, day_s);
    if (r.hangers) number("/hangers", "The number of hangers", *r.hangers, 0.0, 20.0);
    return out;
}

/// Described hangers with glue round their wire; together one row, with the mean gap.
std::optional<GluedRow> described_hangers(const document::Document& document, const shape::Body& body,
                                          const GlueRequest& r) {
    GluedRow row;
    for (const fittings::Fitting& f : fittings::fittings(document, body)) {
        if (f.kind != fittings::FittingKind::hanger || !(f.gap_m3 > 0.0)) continue;
        const document::Hanger& hanger = document.hangers[static_cast<std::size_t>(f.item)];
        const double wire_m = hanger.wire_m * (hanger.kind == document::HangerKind::twisted ? 2.0 : 1.0);
        row.width_m = std::max(row.width_m, 0.5 * (f.hole_m - wire_m));
        row.gap_m3 = (row.gap_m3 * row.eyes + f.gap_m3) / (row.eyes + 1);
        ++row.eyes;
    }
    if (row.eyes == 0) return std::nullopt;
    row.sort = glue_for(row.width_m, r.fitting_s, r.times);
    return row;
}

int hooks_of(const document::Document& document) {
    return static_cast<int>(
        std::count_if(document.parts.begin(), document.parts.end(),
                      [](const document::Part& p) { return p.reach_m.value_or(0.0) > 0.0; }));
}

GlueKind sort_of(const document::Hinge& hinge, double width, const GlueRequest& r) {
    if (hinge.glue == document::HingeGlue::epoxy) return GlueKind::epoxy;
    const GlueKind fitting = glue_for(width, r.fitting_s, r.times);
    if (hinge.glue == document::HingeGlue::none || fitting != GlueKind::epoxy) return fitting;
    return fills(GlueKind::thin_ca, width) ? GlueKind::thin_ca : GlueKind::thick_ca;
}

std::string of_row(const GluedRow& row) {
    return row.joint ? "Joint " + std::to_string(*row.joint + 1) : std::string("The hangers");
}

void warn_of(const GluedRow& row, const GlueRequest& r, Problems& out) {
    const std::string path =
        row.joint ? "/joints/" + std::to_string(*row.joint) + "/hinge" : std::string("/hangers");
    if (!fills(row.sort, row.width_m)) {
        out.push_back({ProblemCode::cannot_be_met, path,
                       thickness_text(fills_to_m[static_cast<std::size_t>(row.sort)]),
                       of_row(row) + ": the gap is " + thickness_text(row.width_m) +
                           " wide, more than this glue fills: a thinner bit or another glue."});
    }
    if (r.times.of(row.sort) < r.fitting_s) {
        out.push_back(
            {ProblemCode::cannot_be_met, path, "",
             of_row(row) +
                 ": the glue sets before the eyes are lined up: fit faster, or take a slower one."});
    }
}

} // namespace

GlueKind glue_for(double width_m, double fitting_s, const WorkingTimes& times) {
    for (const GlueKind sort : {GlueKind::thin_ca, GlueKind::thick_ca}) {
        if (fills(sort, width_m) && times.of(sort) >= fitting_s) return sort;
    }
    return GlueKind::epoxy;
}

Outcome<GlueAnswer> glue(const document::Document& document, const shape::Body& body, const GlueRequest& r) {
    Problems problems = off_limits(r);
    const int hangers = r.hangers.value_or(hooks_of(document));
    const Outcome<double> hanger_gap = gap_m3(r.hanger);
    if (hangers > 0 && !hanger_gap.ok())
        problems.insert(problems.end(), hanger_gap.problems().begin(), hanger_gap.problems().end());
    if (!problems.empty()) return problems;

    GlueAnswer out;
    for (const GluedEye& eye : glued_eyes(document, body)) {
        if (out.rows.empty() || out.rows.back().joint != eye.joint) {
            const double width = width_m(eye.hole);
            out.rows.push_back(
                {eye.joint, 0, 0.0, width,
                 sort_of(*document.joints[static_cast<std::size_t>(eye.joint)].hinge, width, r), 0.0});
        }
        GluedRow& row = out.rows.back();
        row.gap_m3 = (row.gap_m3 * row.eyes + eye.gap_m3) / (row.eyes + 1);
        ++row.eyes;
    }
    if (const auto described = described_hangers(document, body, r); described && !r.hangers)
        out.rows.push_back(*described);
    else if (hangers > 0)
        out.rows.push_back({std::nullopt, hangers, *hanger_gap, width_m(r.hanger),
                            glue_for(width_m(r.hanger), r.fitting_s, r.times), 0.0});
    const double taken = r.lures / (1.0 - r.loss);
    for (GluedRow& row : out.rows) {
        row.glue_kg = row.eyes * row.gap_m3 * density_kg_m3(row.sort);
        out.take_m3[static_cast<std::size_t>(row.sort)] += taken * row.eyes * row.gap_m3;
        out.take_kg[static_cast<std::size_t>(row.sort)] += taken * row.glue_kg;
        warn_of(row, r, out.warnings);
    }
    for (std::size_t h = 0; h < document.holes.size(); ++h) {
        const document::Hole& hole = document.holes[h];
        if (!hole.cap || hole.cap->material != "ca_soda" || hole.depth_m <= 0.0) continue;
        const holes::Bore bore = holes::place(hole, body);
        if (bore.segment < 0) continue;
        const holes::HoleContents contents = holes::contents(hole, bore);
        const bool all_cap = contents.room_m <= 0.0 && contents.fill_kg <= 0.0;
        const double volume = contents.cap.volume_m3 + (all_cap ? bore.cone_m3 : 0.0);
        if (volume <= 0.0) continue;
        const CapRow cap{static_cast<int>(h), volume, volume * soda_bulk_kg_m3, volume * soda_voids};
        out.soda_kg += r.lures * cap.soda_kg;
        out.take_m3[0] += taken * cap.ca_m3;
        out.take_kg[0] += taken * cap.ca_m3 * liquid_ca_kg_m3;
        out.caps.push_back(cap);
    }
    return out;
}

} // namespace evenfall::glue
