// Wire that is built in: hinges that weigh themselves, and hangers.

#include "body/fittings.hpp"

#include "body/glued_eyes.hpp"
#include "ledger/build_detail.hpp"
#include "materials/solids.hpp"

namespace evenfall::ledger {

namespace {

// Standard deviations over value (common practice, no source): wire to gauge, twisted by hand; weighed on a
// scale that reads 0.02 g.
constexpr double bent_wire_spread = 0.05;
constexpr double weighed_wire_spread = 0.01;

double density_of(document::HingeGlue glue) {
    return materials::find_solid(glue == document::HingeGlue::epoxy ? "epoxy" : "ca")->density_kg_m3.value;
}

/// A gap between wire and hole: its wood is gone; glue fills it, or water.
void append_gap(const LedgerInputs& w, Kind kind, int item, int segment, const Vec3& at_m, double gap_m3,
                document::HingeGlue glue, Ledger& out) {
    Line fill;
    fill.kind = kind;
    fill.item = item;
    fill.segment = segment;
    fill.stage = Stage::hardware;
    fill.at_m = at_m;
    if (glue == document::HingeGlue::none)
        fill.displaced_m3 = -gap_m3;
    else
        fill.mass_kg = gap_m3 * density_of(glue);
    out.push_back(fill);
    out.push_back(
        wood_line(w, kind, static_cast<std::size_t>(item), segment, Stage::hardware, -gap_m3, at_m));
}

/// Mass of all wire of one hinge or hanger, computed.
double computed_kg(const std::vector<fittings::Fitting>& all, const fittings::Fitting& one, double kg_m3) {
    const bool hanger = one.kind == fittings::FittingKind::hanger;
    double sum_m3 = 0.0;
    for (const fittings::Fitting& f : all) {
        if (f.item == one.item && (f.kind == fittings::FittingKind::hanger) == hanger) sum_m3 += f.wire_m3;
    }
    return sum_m3 * kg_m3;
}

} // namespace

Problems append_fittings(const LedgerInputs& w, RemovedWood& taken, Ledger& out) {
    const document::Document& d = *w.document;
    const bool any = std::any_of(d.joints.begin(), d.joints.end(),
                                 [](const document::Joint& j) { return j.hinge && j.hinge->weighs; });
    if (!any && d.hangers.empty()) return {};
    const double steel_kg_m3 = materials::find_solid("stainless")->density_kg_m3.value;
    const auto all = fittings::fittings(d, *w.body);
    Problems problems;
    for (const fittings::Fitting& f : all) {
        const auto i = static_cast<std::size_t>(f.item);
        const bool hanger = f.kind == fittings::FittingKind::hanger;
        if (!hanger && !(d.joints[i].hinge && d.joints[i].hinge->weighs)) continue;
        const std::optional<double>& weighed = hanger ? d.hangers[i].mass_kg : d.joints[i].hinge->mass_kg;
        const Kind kind = hanger ? Kind::hanger : Kind::hinge;
        Line line;
        line.kind = kind;
        line.item = f.item;
        line.segment = f.segment;
        line.stage = Stage::hardware;
        line.mass_kg = f.wire_m3 * steel_kg_m3;
        if (weighed) line.mass_kg *= *weighed / computed_kg(all, f, steel_kg_m3);
        line.displaced_m3 = f.outside_m3;
        line.at_m = f.at_m;
        line.spreads[0] = {hanger ? Cause::hanger_mass : Cause::hinge_mass, f.item,
                           weighed ? weighed_wire_spread : bent_wire_spread, true, false};
        out.push_back(line);
        const Vec3 bore_m = f.mouth_m + f.into * (0.5 * f.in_wood_m);
        const double inside_m3 = f.wire_m3 - f.outside_m3;
        if (taken.removes_last_wood(f.segment, inside_m3 + f.gap_m3)) {
            problems.push_back({ProblemCode::does_not_fit,
                                pointer(hanger ? "hangers" : "joints", i, hanger ? "depth_mm" : "hinge"),
                                "some wood left",
                                (hanger ? "Hanger " : "The hinge of joint ") + std::to_string(i + 1) +
                                    " takes the place of all the wood that is left of segment " +
                                    std::to_string(f.segment + 1) + "."});
        }
        out.push_back(wood_line(w, kind, i, f.segment, Stage::hardware, -inside_m3, bore_m));
        if (hanger && f.gap_m3 > 0.0)
            append_gap(w, kind, f.item, f.segment, bore_m, f.gap_m3, d.hangers[i].glue, out);
    }
    return problems;
}

void append_glue(const LedgerInputs& w, Ledger& out) {
    const auto counts = [](const document::Joint& j) {
        return j.hinge && (j.hinge->weighs || j.hinge->glue != document::HingeGlue::none);
    };
    if (std::none_of(w.document->joints.begin(), w.document->joints.end(), counts)) return;
    for (const glue::GluedEye& eye : glue::glued_eyes(*w.document, *w.body)) {
        const document::Joint& joint = w.document->joints[static_cast<std::size_t>(eye.joint)];
        if (counts(joint))
            append_gap(w, Kind::glue, eye.joint, eye.segment, eye.at_m, eye.gap_m3, joint.hinge->glue, out);
    }
}

} // namespace evenfall::ledger
