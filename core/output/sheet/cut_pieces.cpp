#include "base/number_text.hpp"
#include "body/bore.hpp"
#include "body/fittings.hpp"
#include "materials/cautions.hpp"
#include "materials/solids.hpp"
#include "output/sheet/parts.hpp"

#include <cmath>
#include <map>
#include <numbers>

namespace evenfall::sheet {

namespace {

/// A bit farther from the wanted size than this is no help.
constexpr double useful_m = 0.3e-3;

/// "1/4 in"; where it differs by a hundredth of a millimetre or more, "#36 +0.02", and the next size up where
/// it is thinner.
std::string nearest_text(bits::System system, double diameter_m, const Numbers& in) {
    const auto described = [&](const bits::Bit& bit) {
        const double off_m = bit.diameter_m - diameter_m;
        std::string text = bit.name();
        if (std::abs(units::mm_from_m(off_m)) < 0.005) return text;
        text += off_m > 0.0 ? " +" : " ";
        return text + in.thickness(off_m);
    };
    const bits::Bit bit = bits::nearest(system, diameter_m);
    if (std::abs(bit.diameter_m - diameter_m) > useful_m) return "–";
    std::string text = described(bit);
    if (units::mm_from_m(bit.diameter_m - diameter_m) > -0.005) return text;
    const auto up = bits::next_up(system, diameter_m);
    if (up && up->diameter_m - diameter_m <= useful_m) {
        text += "; ";
        text += described(*up);
    }
    return text;
}

} // namespace

std::vector<CutPiece> hinge_pieces(const SheetInput& job) {
    std::vector<CutPiece> out;
    for (std::size_t j = 0; j < job.joints.joints.size(); ++j) {
        if (!fittings::has_hinge(job.document, job.evaluation.body, static_cast<int>(j))) continue;
        const joints::JointAnswer& joint = job.joints.joints[j];
        const std::string where = "joint " + std::to_string(j + 1);
        const document::Hinge& hinge = joint.place.hinge;
        // Linked eyes come in pairs, one on either side.
        const int eyes =
            static_cast<int>(joint.eyes.size()) * (hinge.kind == document::HingeKind::linked ? 2 : 1);
        out.push_back({hinge.temper == document::WireTemper::soft ? "Eye, soft wire" : "Eye, spring wire",
                       where, hinge.wire_m, joint.eye.cut_m, joint.eye.finished_m, joint.eye.mandrel_m, eyes,
                       joint.eye_bits});
        if (joint.pin_length_m > 0.0)
            out.push_back({"Pin", where, hinge.pin_diameter_m, joint.pin_length_m, joint.pin_length_m, 0.0, 1,
                           joint.pin_bits});
    }
    return out;
}

std::vector<CutPiece> hanger_pieces(const SheetInput& job) {
    std::vector<CutPiece> out;
    for (const fittings::Fitting& f : fittings::fittings(job.document, job.evaluation.body)) {
        if (f.kind != fittings::FittingKind::hanger) continue;
        const document::Hanger& hanger = job.document.hangers[static_cast<std::size_t>(f.item)];
        const double area = 0.25 * std::numbers::pi * hanger.wire_m * hanger.wire_m;
        const double ring_m = 0.5 * hanger.eye_inside_m + hanger.wire_m;
        const double last_m =
            f.eyes_m.size() > 1 ? dot(f.eyes_m[1] - f.mouth_m, f.into) + ring_m : f.in_wood_m;
        CutPiece piece;
        piece.what = hanger.kind == document::HangerKind::twisted ? "Hanger, twisted"
                     : hanger.kind == document::HangerKind::screw ? "Hanger, screw eye"
                                                                  : "Hanger, wire through";
        piece.where = hanger.name.empty() ? "hanger " + std::to_string(f.item + 1) : hanger.name;
        piece.diameter_m = hanger.wire_m;
        piece.cut_m = f.wire_m3 / area;
        piece.finished_m = last_m - dot(f.eyes_m[0] - f.mouth_m, f.into) + ring_m;
        if (hanger.kind != document::HangerKind::screw) {
            piece.bend_round_m = wire::mandrel_m(hanger.eye_inside_m, hanger.wire_m,
                                                 wire::yield_pa(wire::Temper::soft, hanger.wire_m));
            piece.bits = hanger.kind == document::HangerKind::twisted
                             ? bits::for_glue(wire::twist_outside(2) * hanger.wire_m)
                             : bits::next_up(hanger.wire_m);
        }
        out.push_back(std::move(piece));
    }
    return out;
}

std::vector<CutPiece> fill_pieces(const SheetInput& job) {
    std::vector<CutPiece> out;
    for (std::size_t h = 0; h < job.document.holes.size(); ++h) {
        const document::Hole& hole = job.document.holes[h];
        const double mass = ledger_kg(job, ledger::Kind::fill, h);
        const materials::Solid* solid = mass > 0.0 ? materials::find_solid(hole.fill->material) : nullptr;
        if (solid == nullptr) continue;
        // Cut from round stock; in the hole it may be shorter, where it is hammered down into the drill
        // point.
        const double diameter = hole.fill->stock_diameter_m.value_or(hole.diameter_m);
        const double cut =
            mass / (solid->density_kg_m3.value * 0.25 * std::numbers::pi * diameter * diameter);
        const double stands = holes::contents(hole, holes::place(hole, job.evaluation.body)).fill_column_m;
        out.push_back({materials::name_of(hole.fill->material),
                       "hole " + hole_name(job.document, h),
                       diameter,
                       cut,
                       stands,
                       0.0,
                       1,
                       {}});
    }
    return out;
}

void add_bits(Composer& pages, const SheetInput& job) {
    std::map<double, std::string> wanted; // in whole micrometres, so that equal sizes share one row
    for (std::size_t h = 0; h < job.document.holes.size(); ++h) {
        std::string& names = wanted[std::round(units::mm_from_m(job.document.holes[h].diameter_m) * 1000.0)];
        if (!names.empty()) names += ", ";
        names += hole_name(job.document, h);
    }
    if (wanted.empty()) return;
    const Numbers& in = pages.numbers();
    const std::string unit = in.length_symbol();
    // With inches without the last system, the metric one.
    const int systems = in.units.inches() ? static_cast<int>(bits::System::metric) : bits::system_count;
    std::vector<Composer::TableColumn> columns{
        {"ø " + unit, 0.6, Anchor::end}, {"", 0.2}, {"Fraction", 1.5}, {"Number", 1.2}, {"Letter bit", 1.6}};
    if (systems == bits::system_count) columns.push_back({"Metric", 1.5});
    columns.push_back({"Holes", 1.4});
    std::vector<Composer::Row> rows;
    for (const auto& [micrometres, names] : wanted) {
        const double diameter = units::m_from_mm(micrometres / 1000.0);
        std::vector<std::string> cells{in.thickness(diameter), ""};
        for (int k = 0; k < systems; ++k)
            cells.push_back(nearest_text(static_cast<bits::System>(k), diameter, in));
        cells.push_back(names);
        rows.push_back({std::move(cells)});
    }
    pages.heading("Bits that come nearest");
    pages.table(columns, rows);
    pages.paragraph("Beside a bit: how much wider (+) or narrower (−) than the hole it is, " + unit +
                        "; after the semicolon the next one up. – : none within " +
                        in.thickness(useful_m, 1) + " " + unit +
                        ". Another width wants another length of fill.",
                    2.8, soft_ink);
}

void add_hinge_wire(Composer& pages, const SheetInput& job) {
    const Numbers& in = pages.numbers();
    const std::string unit = in.length_symbol();
    for (const Problem& problem : job.hinge_problems)
        pages.caution(problem.sentence.text(in.units));
    std::vector<CutPiece> pieces = hinge_pieces(job);
    for (CutPiece& piece : hanger_pieces(job))
        pieces.push_back(std::move(piece));
    if (pieces.empty()) return;
    std::vector<Composer::Row> rows;
    std::map<std::string, double> lengths;
    for (const CutPiece& piece : pieces) {
        const int count = piece.count * job.options.lures;
        const std::string bits = bits::names(piece.bits, in.units);
        rows.push_back(
            {{piece.what, piece.where, in.thickness(piece.diameter_m), in.length(piece.cut_m),
              in.length(piece.finished_m), piece.bend_round_m > 0.0 ? in.thickness(piece.bend_round_m) : "–",
              std::to_string(count), "", bits.empty() ? "–" : bits}});
        lengths["ø " + in.thickness(piece.diameter_m)] += count * piece.cut_m;
    }
    pages.heading("Hinges and hangers: wire and pins to cut");
    pages.caution(cautions::wire);
    pages.table({{"Piece", 1.5},
                 {"At", 0.8},
                 {"ø " + unit, 0.6, Anchor::end},
                 {"Cut " + unit, 0.8, Anchor::end},
                 {"Finished", 0.9, Anchor::end},
                 {"Bend on ø", 1.0, Anchor::end},
                 {"Pieces", 0.75, Anchor::end},
                 {"", 0.2},
                 {"Bit for its hole", 2.1}},
                rows);
    std::string together = "Together";
    for (const auto& [diameter, length] : lengths) {
        together += together.back() == 'r' ? ": " : "; ";
        together += diameter;
        together += " " + unit + ", " + in.length(length, 0) + " " + unit;
    }
    pages.paragraph(together + ". Nothing is added for holding the wire and for waste. Finished: crown of "
                               "the eye to the ends of the legs.",
                    2.8, soft_ink);
}

} // namespace evenfall::sheet
