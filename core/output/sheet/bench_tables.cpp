#include "base/number_text.hpp"
#include "body/bore.hpp"
#include "document/coat_traits.hpp"
#include "ledger/hung_on.hpp"
#include "materials/cautions.hpp"
#include "materials/solids.hpp"
#include "output/bench_text.hpp"
#include "output/sheet/parts.hpp"
#include "workshop/coat_schedule.hpp"

#include <algorithm>
#include <array>
#include <map>
#include <optional>
#include <utility>

namespace evenfall::sheet {

namespace {

bool fills_with_lead(const document::Document& document) {
    return std::any_of(document.holes.begin(), document.holes.end(), [](const document::Hole& hole) {
        return hole.fill && cautions::is_lead(hole.fill->material);
    });
}

bool caps_with(const document::Document& document, const char* material) {
    return std::any_of(document.holes.begin(), document.holes.end(), [&](const document::Hole& hole) {
        return hole.cap && hole.cap->material == material;
    });
}

/// Where a coat lies: "skin, joints".
std::string surfaces_text(const document::Coat& coat) {
    std::string text;
    const auto add = [&text](bool coated, const char* word) {
        if (coated) text.append(text.empty() ? "" : ", ").append(word);
    };
    add(coat.on_skin, "skin");
    add(coat.on_joint_faces, "joints");
    add(coat.on_pockets, "pockets");
    return text;
}

std::string times(int lures) {
    return lures == 1 ? std::string("one lure") : std::to_string(lures) + " lures";
}

} // namespace

void add_drill_tables(Composer& pages, const SheetInput& job) {
    const Numbers& in = pages.numbers();
    const document::Document& d = job.document;
    const shape::Body& body = job.evaluation.body;
    if (d.holes.empty() && d.pockets.empty()) return;
    const bool inches = in.units.inches();
    pages.new_page("Drilling and pockets");
    pages.caution(cautions::drilling);
    pages.paragraph("Depth is from the skin to the shoulder of the hole. Tape: set the mark this far from "
                    "the tip of the bit. Datum: the fore "
                    "face of the segment on its middle line (of the first segment, the nose). Off middle: to "
                    "starboard positive.",
                    2.8, soft_ink);
    for (std::size_t s = 0; s < body.segments.size(); ++s) {
        std::vector<Composer::Row> rows;
        for (std::size_t h = 0; h < d.holes.size(); ++h) {
            const document::Hole& hole = d.holes[h];
            const holes::Bore bore = holes::place(hole, body);
            if (bore.segment != static_cast<int>(s)) continue;
            const bool left_whole = hole.depth_m <= 0.0;
            const double tip = hole.end == document::HoleEnd::point_118 ? bore.cone_height_m : 0.0;
            const std::string bit =
                inches ? bits::inch_name(hole.diameter_m) : output::bit_inch_text(hole.diameter_m);
            rows.push_back(
                {{hole_name(d, h), hole.from == document::HoleFrom::belly ? "▼ BELLY" : "▲ BACK",
                  in.thickness(hole.diameter_m), bit, left_whole ? "leave" : in.length(hole.depth_m),
                  left_whole ? "–" : in.length(hole.depth_m + tip),
                  in.length(hole.x_m - body.segments[s].x_from_m), in.length(hole.x_m - body.lines->nose_m()),
                  in.length(hole.y_m), in.length(hole.wall_m)}});
        }
        if (rows.empty()) continue;
        pages.heading("Segment " + std::to_string(s + 1) + ": " + d.segment_names[s]);
        pages.table({{"Hole", 1.5},
                     {"From", 1.25},
                     {inches ? "Bit ø" : "Bit mm", 0.9, Anchor::end},
                     {inches ? "Bit" : "Bit inch", 1.5, Anchor::end},
                     {"Depth", 0.85, Anchor::end},
                     {"Tape", 0.8, Anchor::end},
                     {"From datum", 1.3, Anchor::end},
                     {"From nose", 1.2, Anchor::end},
                     {"Off middle", 1.2, Anchor::end},
                     {"Wall", 0.75, Anchor::end}},
                    rows);
    }
    if (d.pockets.empty()) return;
    std::vector<Composer::Row> rows;
    for (std::size_t p = 0; p < d.pockets.size(); ++p) {
        const document::Pocket& pocket = d.pockets[p];
        const auto s =
            static_cast<std::size_t>(shape::nearest_segment(body, 0.5 * (pocket.x_from_m + pocket.x_to_m)));
        rows.push_back({{pocket.name.empty() ? std::to_string(p + 1) : pocket.name, d.segment_names[s],
                         in.length(pocket.x_from_m - body.lines->nose_m()),
                         in.length(pocket.x_to_m - body.lines->nose_m()),
                         in.length(pocket.x_from_m - body.segments[s].x_from_m), in.length(pocket.width_m),
                         pocket.z_from_m ? in.length(*pocket.z_from_m) : "belly",
                         pocket.z_to_m ? in.length(*pocket.z_to_m) : "back"}});
    }
    pages.heading("Pockets and slots");
    pages.table({{"Pocket", 2.4},
                 {"Segment", 1.2},
                 {"From nose", 1.1, Anchor::end},
                 {"to", 0.8, Anchor::end},
                 {"From datum", 1.2, Anchor::end},
                 {"Wide", 0.8, Anchor::end},
                 {"Height from", 1.2, Anchor::end},
                 {"to", 0.8, Anchor::end}},
                rows);
    pages.paragraph("Heights are from the datum line, up positive. A minus in “From datum”: the pocket "
                    "begins ahead of the face, in the joint's gap.",
                    2.8, soft_ink);
}

void add_cut_lists(Composer& pages, const SheetInput& job) {
    const Numbers& in = pages.numbers();
    const document::Document& d = job.document;
    const int lures = job.options.lures;
    const std::string gram = in.mass_symbol();
    pages.new_page("Lead, wire and parts");
    std::map<std::string, double> by_material;
    std::vector<Composer::Row> fills;
    for (std::size_t h = 0; h < d.holes.size(); ++h) {
        const double mass = ledger_kg(job, ledger::Kind::fill, h);
        if (mass <= 0.0) continue;
        const document::Hole& hole = d.holes[h];
        const holes::HoleContents contents = holes::contents(hole, holes::place(hole, job.evaluation.body));
        const double stock = hole.fill->stock_diameter_m.value_or(hole.diameter_m);
        by_material[hole.fill->material] += mass;
        fills.push_back(
            {{hole_name(d, h), materials::name_of(hole.fill->material), in.mass(mass),
              in.mass(mass * lures, 1), in.thickness(stock), in.length(contents.fill_column_m), "",
              hole.cap ? materials::name_of(hole.cap->material) + ", " + in.length(hole.cap->length_m)
                       : "open"}});
    }
    pages.heading("Fills");
    if (fills.empty()) {
        pages.paragraph("No hole is filled.");
    } else {
        if (fills_with_lead(d)) pages.caution(cautions::lead);
        if (caps_with(d, "ca")) pages.caution(cautions::ca);
        if (caps_with(d, "ca_soda")) pages.caution(cautions::ca_on_soda);
        pages.table({{"Hole", 1.5},
                     {"Fill", 1.8},
                     {gram + " each", 0.9, Anchor::end},
                     {gram + " for " + times(lures), 1.5, Anchor::end},
                     {"Stock ø", 1.0, Anchor::end},
                     {"Length", 0.9, Anchor::end},
                     {"", 0.2},
                     {"Cap, " + in.length_symbol() + " long", 2.2}},
                    fills);
        std::vector<Composer::Row> totals;
        for (const auto& [material, mass] : by_material)
            totals.push_back({{materials::name_of(material), in.mass(mass), in.mass(mass * lures, 1),
                               units::number_text(mass * lures, units::Unit::ounce, 2)},
                              true});
        pages.table({{"Together", 2.0},
                     {gram + " each lure", 1.0, Anchor::end},
                     {gram + " for " + times(lures), 1.4, Anchor::end},
                     {"oz", 1.0, Anchor::end}},
                    totals);
    }
    add_hinge_wire(pages, job);
    std::vector<Composer::Row> parts;
    ledger::Sum sum;
    for (const ledger::Line& line : job.evaluation.ledger) {
        if (line.kind == ledger::Kind::part || line.kind == ledger::Kind::tail) sum += line;
    }
    for (std::size_t p = 0; p < d.parts.size(); ++p) {
        const document::Part& part = d.parts[p];
        parts.push_back(
            {{part.name.empty() ? std::to_string(p + 1) : part.name, materials::name_of(part.material),
              stage_name(part.stage), in.mass(ledger_kg(job, ledger::Kind::part, p)), std::to_string(lures),
              in.length(part.at_m.x - job.evaluation.body.lines->nose_m()), in.length(part.at_m.z)}});
    }
    if (d.tail) {
        parts.push_back(
            {{"Soft tail, cast", materials::name_of(d.tail->material), stage_name(Stage::rigged),
              in.mass(tail_kg(job)), std::to_string(lures),
              in.length(d.tail->x_m - job.evaluation.body.lines->nose_m()), in.length(d.tail->z_m)}});
    }
    if (parts.empty()) return;
    parts.push_back({{"Together", "", "", in.mass(sum.mass.kg), "", "", ""}, true});
    pages.heading("Wire, eyes, pins, hooks and dress");
    pages.table({{"Part", 2.4},
                 {"Material", 1.5},
                 {"Goes in", 1.3},
                 {gram + " each", 0.9, Anchor::end},
                 {"Pieces", 0.8, Anchor::end},
                 {"From nose", 1.1, Anchor::end},
                 {"Height", 0.8, Anchor::end}},
                parts);
    pages.paragraph("Weigh each part; a part off its mass by more than a tenth of a gram belongs in the "
                    "recipe before the lead is cut.",
                    2.8, soft_ink);
}

/// Resin and hardener of each epoxy film for common ratios of labels: the builder uses the row of his own.
void add_resin(Composer& pages, const SheetInput& job) {
    const Numbers& in = pages.numbers();
    constexpr std::array<std::pair<const char*, resin::Ratio>, 5> ratios{{
        {"1 : 1 by weight", {false, 1.0, 1.0}},
        {"2 : 1 by weight", {false, 2.0, 1.0}},
        {"1 : 1 by volume", {true, 1.0, 1.0}},
        {"2 : 1 by volume", {true, 2.0, 1.0}},
        {"3 : 1 by volume", {true, 3.0, 1.0}},
    }};
    std::vector<Composer::Row> rows;
    std::optional<resin::Mix> any;
    for (std::size_t c = 0; c < job.document.coats.size(); ++c) {
        const document::Coat& coat = job.document.coats[c];
        if (!resin::is_resin(coat)) continue;
        for (const auto& [label, ratio] : ratios) {
            resin::MixRequest request;
            request.on_lure_kg = ledger_kg(job, ledger::Kind::coat, c);
            request.lures = job.options.lures;
            request.ratio = ratio;
            const Outcome<resin::Mix> mix = resin::mix(request);
            if (!mix.ok()) continue; // a coat too thin to weigh needs no mix
            any = *mix;
            rows.push_back({{coat.name.empty() ? std::to_string(c + 1) : coat.name, label,
                             in.mass(mix->all.resin_kg, 1), in.mass(mix->all.hardener_kg, 1),
                             units::number_text(mix->all.resin_m3, units::Unit::cm3, 1),
                             units::number_text(mix->all.hardener_m3, units::Unit::cm3, 1)}});
        }
    }
    if (!any) return;
    const auto minutes = [](double seconds) { return units::number_text(seconds, units::Unit::minute, 0); };
    const auto degrees = [&](double celsius) {
        return in.temperature(celsius, 0) + " " + in.temperature_symbol();
    };
    const std::string ten = in.units.temperature == units::Unit::celsius ? "ten" : "eighteen";
    pages.heading("Epoxy to mix for " + times(job.options.lures));
    pages.table({{"Coat", 1.6},
                 {"If the label says", 1.6},
                 {"resin " + in.mass_symbol(), 1.0, Anchor::end},
                 {"hardener " + in.mass_symbol(), 1.1, Anchor::end},
                 {"resin ml", 1.0, Anchor::end},
                 {"hardener ml", 1.1, Anchor::end}},
                rows);
    pages.paragraph(
        percent(resin::usual_loss) +
            " of it stays in cup and brush (common practice, no source). Ratios by volume are "
            "weighed by densities of 1.15 and 0.98 g/ml "
            "(from memory; the maker's sheet has yours): one to one by volume is not one to one by "
            "weight. If your label gives 20 minutes at " +
            degrees(23.0) + ", count on " + minutes(any->working_s) + " at " + degrees(20.0) +
            ", half as long " + ten + " degrees warmer, and less in a fuller cup: " +
            (any->mixes > 1 ? std::to_string(any->mixes) + " mixes of " + times(any->lures_a_mix) +
                                  " each, at four minutes a lure. "
                            : std::string()) +
            "Warm the bottles in warm water, never over a flame. The label decides.",
        2.8, soft_ink);
}

void add_coats(Composer& pages, const SheetInput& job) {
    const Numbers& in = pages.numbers();
    const document::Document& d = job.document;
    if (d.coats.empty()) return;
    const int lures = job.options.lures;
    const std::string gram = in.mass_symbol();
    pages.new_page("Coats and time");
    const auto coats_of = [&](const char* material) {
        return std::any_of(d.coats.begin(), d.coats.end(),
                           [&](const document::Coat& coat) { return coat.material == material; });
    };
    if (coats_of("ca")) pages.caution(cautions::ca);
    if (coats_of("epoxy")) pages.caution(cautions::epoxy);
    pages.caution(cautions::sanding);
    pages.caution(cautions::spray);
    std::vector<Composer::Row> rows;
    double start = 0.0;
    std::vector<double> starts;
    for (std::size_t c = 0; c < d.coats.size(); ++c) {
        const document::Coat& coat = d.coats[c];
        const double mass = ledger_kg(job, ledger::Kind::coat, c);
        rows.push_back(
            {{coat.name.empty() ? std::to_string(c + 1) : coat.name, materials::name_of(coat.material),
              !traits_of(coat.kind).takes_room ? "soaks in"
              : coat.thickness_m               ? in.thickness(*coat.thickness_m) + " " + in.length_symbol()
                                               : "film",
              surfaces_text(coat), in.mass(mass), in.mass(mass * lures, 1),
              traits_of(coat.kind).is_mixed ? in.mass(to_mix_kg(mass * lures), 1) : "–",
              units::number_text(job.coat_hours[c], units::Unit::one, 1)}});
        starts.push_back(start);
        start += job.coat_hours[c];
    }
    pages.table({{"Coat", 1.7},
                 {"Material", 1.6},
                 {"Thick", 0.9},
                 {"On", 1.2},
                 {gram + " each", 0.8, Anchor::end},
                 {gram + " for " + times(lures), 1.3, Anchor::end},
                 {"mix " + gram, 0.8, Anchor::end},
                 {"wait h", 0.8, Anchor::end}},
                rows);
    for (std::size_t c = 0; c < d.coats.size(); ++c) {
        const document::Coat& coat = d.coats[c];
        if (!coat.note.empty())
            pages.paragraph((coat.name.empty() ? std::to_string(c + 1) : coat.name) + ": " + coat.note);
    }
    pages.paragraph("Grams are what stays on the lure, dry. To mix: with what stays in cup and brush, " +
                        percent(resin::usual_loss) +
                        " of the mix (common practice, no source); a paint or "
                        "sealer that dries loses its thinner on top. Waits " +
                        std::string(job.options.cure_hours.empty()
                                        ? "are usual ones (common practice, no source)"
                                        : "are as given") +
                        "; the label, the cold and thick coats make them longer.",
                    2.8, soft_ink);
    add_resin(pages, job);
    pages.heading("Time line of " + times(lures) + ", waits only");
    std::vector<Wait> waits;
    for (std::size_t c = 0; c < d.coats.size(); ++c)
        waits.push_back({d.coats[c].name.empty() ? std::to_string(c + 1) : d.coats[c].name, starts[c],
                         job.coat_hours[c]});
    add_time_line(pages, waits);
}

void add_weigh_in(Composer& pages, const SheetInput& job) {
    const Numbers& in = pages.numbers();
    const std::string gram = in.mass_symbol();
    pages.new_page("Weigh-in card");
    const std::vector<StageAnswer> tests = stages_with_all(job.document, job.evaluation);
    if (!tests.empty()) pages.caution(cautions::hooks);
    pages.paragraph("Weigh dry after each step and write it down. Tub readings count from the sealed stage "
                    "on; before that the wood drinks water. The test that tells most: sealed, with hooks and "
                    "tail hung on as they will be, let go under water and timed over a measured depth.");
    std::vector<Composer::Row> rows;
    const auto add = [&](const StageAnswer& stage, const std::string& after, bool strong) {
        rows.push_back({{after, in.mass(stage.mass.kg), "± " + in.mass(stage.mass_sigma.kg), "",
                         in.signed_mass(stage.in_tub.kg), "", "",
                         fall_text(stage.tub_fall, stage.tub_behaviour, in.units), ""},
                        strong});
    };
    for (const StageAnswer& stage : job.evaluation.answers.stages) {
        add(stage, stage_name(stage.stage), stage.stage == Stage::sealed && tests.empty());
        for (const StageAnswer& test : tests) {
            // Leaded only it drinks; clear coated with all on it is the rigged lure.
            if (test.stage == stage.stage && (test.stage == Stage::sealed || test.stage == Stage::painted))
                add(test, "  " + ledger::rigging_words(job.document) + " on", test.stage == Stage::sealed);
        }
    }
    pages.table({{"After", 1.5},
                 {"Scale " + gram, 0.85, Anchor::end},
                 {"", 0.8},
                 {"Read", 1.3},
                 {"In tub " + gram, 0.9, Anchor::end},
                 {"", 0.2},
                 {"Read", 1.2},
                 {"Tub fall", 1.5},
                 {"Read", 1.2}},
                rows, 11.0);
    pages.paragraph(
        "± is one standard deviation: two weighings of three fall within it. In tub: mass less the water "
        "pushed aside, weighed hanging "
        "on a thread; below nothing it floats and wants a sinker of known weight in water beside it.",
        2.8, soft_ink);
    pages.paragraph(
        "Finished: count its beats on a steady retrieve, the tail there and back as one: ______ beats "
        "over ______ " +
            std::string(in.units.inches() ? "ft" : "m") + ".",
        3.2);
    pages.table(
        {{"Lure number", 1.0}, {"Date", 1.0}, {"Tub " + in.temperature_symbol(), 0.7}, {"Remarks", 2.6}},
        {{{"", "", "", ""}}, {{"", "", "", ""}}, {{"", "", "", ""}}}, 12.0);
}

} // namespace evenfall::sheet
