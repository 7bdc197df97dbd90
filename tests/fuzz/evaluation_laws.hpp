#pragma once

// Laws of a document that evaluate() took, and of everything else that can be asked of it.

#include "base/trade.hpp"
#include "bench/beats.hpp"
#include "fuzz/bytes.hpp"
#include "fuzz/document_laws.hpp"
#include "fuzz/swim_laws.hpp"
#include "ledger/fold.hpp"
#include "look/font_data.hpp"
#include "output/answers_json.hpp"
#include "output/joints_json.hpp"
#include "output/log_csv.hpp"
#include "output/mix_json.hpp"
#include "output/sheet/sheet.hpp"
#include "output/swim_json.hpp"
#include "output/uncertainty_json.hpp"
#include "workshop/coat_schedule.hpp"
#include "workshop/stock.hpp"
#include "workshop/swim_chain.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::fuzz {

/// Equal but for the rounding of a sum whose terms are together as large as `scale`.
inline bool equal_in(double a, double b, double scale) {
    return std::abs(a - b) <= 1e-11 * scale + 1e-18;
}

/// The ledger and nothing else makes the totals; stages and segments are parts of the same sum.
inline void must_add_up(const Evaluation& evaluation) {
    const Answers& a = evaluation.answers;
    double mass = 0.0, displaced = 0.0, gross_kg = 0.0, gross_m3 = 0.0;
    Vec3 moment, b_moment;
    double gross_moment = 0.0, gross_b_moment = 0.0;
    for (const ledger::Line& line : evaluation.ledger) {
        mass += line.mass_kg;
        displaced += line.displaced_m3;
        moment += line.mass_kg * line.mass_at_m();
        b_moment += line.displaced_m3 * line.at_m;
        gross_kg += std::abs(line.mass_kg);
        gross_m3 += std::abs(line.displaced_m3);
        gross_moment += std::abs(line.mass_kg) * length(line.at_m);
        gross_b_moment += std::abs(line.displaced_m3) * length(line.at_m);
    }
    const double rho = a.water_density_kg_m3;
    const auto same_place = [](const Vec3& x, const Vec3& y, double scale) {
        return equal_in(x.x, y.x, scale) && equal_in(x.y, y.y, scale) && equal_in(x.z, y.z, scale);
    };
    must(equal_in(a.mass.kg, mass, gross_kg) && equal_in(a.displaced_m3, displaced, gross_m3),
         "the total is the sum of the lines");
    must(equal_in(a.in_water.kg, mass - rho * displaced, gross_kg + rho * gross_m3),
         "in-water mass is mass less the water pushed aside");
    must(same_place(a.mass.kg * a.g_m, moment, gross_moment), "G is where the lines' moments put it");
    must(same_place(a.displaced_m3 * a.b_m, b_moment, gross_b_moment),
         "B is where the lines' moments put it");
    must(equal_in(a.stages.back().mass.kg, mass, gross_kg) &&
             equal_in(a.stages.back().displaced_m3, displaced, gross_m3),
         "the last stage is the whole lure");

    double segments_kg = 0.0, segments_m3 = 0.0, segments_in_water = 0.0;
    Vec3 segments_moment;
    for (const SegmentAnswer& s : a.segments) {
        segments_kg += s.mass.kg;
        segments_m3 += s.displaced_m3;
        segments_in_water += s.in_water.kg;
        segments_moment += s.mass.kg * s.g_m;
    }
    must(a.segments.size() == evaluation.body.segments.size(), "every segment has its answer");
    must(equal_in(segments_kg, mass, gross_kg) && equal_in(segments_m3, displaced, gross_m3),
         "the segments are the whole lure");
    must(equal_in(segments_in_water, a.in_water.kg, gross_kg + rho * gross_m3),
         "the segments weigh in water what the lure does");
    must(same_place(segments_moment, moment, gross_moment), "the segments balance where the lure does");

    double coats_kg = 0.0, coat_lines_kg = 0.0;
    for (const CoatAnswer& c : a.coats)
        coats_kg += c.mass.kg;
    for (const ledger::Line& line : evaluation.ledger) {
        if (line.kind == ledger::Kind::coat) coat_lines_kg += line.mass_kg;
    }
    must(equal_in(coats_kg, coat_lines_kg, gross_kg), "the coats are their lines");
    must(a.fall.has_value() == a.stages.back().fall.has_value(),
         "the finished lure falls as its last stage does");
    must(!a.fall || a.in_water.kg > 0.0, "what falls is heavier than its water");
    must(a.pitch_rad.has_value() == (a.bg_m > 0.0), "it hangs upright where G lies below B, and only there");
}

/// One more part adds its mass and its volume, and changes no other line.
inline void must_add_a_part(const document::Document& document, const Evaluation& before, Bytes& bytes) {
    if (document.parts.size() >= document::max_hardware) return;
    document::Document more = document;
    document::Part part;
    part.mass_kg = units::kg_from_g(bytes.number(0.0, 500.0));
    part.at_m = {units::m_from_mm(bytes.number(0.0, 1000.0)), units::m_from_mm(bytes.number(-600.0, 600.0)),
                 units::m_from_mm(bytes.number(-600.0, 600.0))};
    if (!(std::isfinite(part.mass_kg) && finite(part.at_m))) return;
    more.parts.push_back(part);
    const Outcome<Evaluation> after = evaluate(more);
    if (!after.ok()) return must(bytes.astray(), "a lure that can be built can carry one more part");
    const auto item = static_cast<int>(document.parts.size());
    ledger::Ledger others;
    ledger::Sum added;
    for (const ledger::Line& line : after->ledger) {
        if (line.kind == ledger::Kind::part && line.item == item)
            added += line;
        else
            others.push_back(line);
    }
    must(others.size() == before.ledger.size(), "a part adds one line");
    for (std::size_t i = 0; i < others.size(); ++i) {
        must(others[i].mass_kg == before.ledger[i].mass_kg &&
                 others[i].displaced_m3 == before.ledger[i].displaced_m3,
             "a part leaves the other lines alone");
    }
    const bool corrected = std::any_of(
        document.corrections.begin(), document.corrections.end(), [&](const document::Correction& c) {
            return c.of == document::Cause::part_mass && document::group_of(c) == item;
        });
    must(corrected || added.mass.kg == part.mass_kg, "a part adds its mass");
    const double gross = std::abs(before.answers.mass.kg) + added.mass.kg;
    must(std::abs(after->answers.mass.kg - before.answers.mass.kg - added.mass.kg) <= 1e-10 * gross,
         "the lure is heavier by the part");
    must(std::abs(after->answers.displaced_m3 - before.answers.displaced_m3 - added.displaced_m3) <=
             1e-10 * (before.answers.displaced_m3 + added.displaced_m3),
         "the lure is larger by the part");
}

/// A document that the core itself made of a good one: it can be written, read, linked and worked through.
inline Evaluation must_be_good(const document::Document& document) {
    must_round_trip(document);
    const Outcome<document::Document> read = read_document(write_document(document));
    Outcome<Evaluation> evaluation = evaluate(*read);
    must(evaluation.ok(), "what the core made can be worked through again");
    must_be_finite(*evaluation);
    return std::move(evaluation).value();
}

/// How it swims, or the limits that it breaks.
inline void must_beat(const document::Document& document, const Evaluation& evaluation) {
    const Outcome<swim::Chain> chain = swim::chain_of(document, evaluation);
    if (!chain.ok()) return must_explain(chain.problems());
    const auto answer = must_beat(*chain);
    if (!answer) return;
    if (answer->beats_per_m) {
        const swim::Beats known = bench::known_beats(document, *answer->beats_per_m).per_m;
        must(finite(known.low, known.mid, known.high) && known.low <= known.mid && known.mid <= known.high,
             "a band that was counted goes upwards");
    }
    static_cast<void>(output::swim_json(document, *answer));
}

inline void must_plan(const document::Document& document) {
    const Outcome<LeadPlan> plan = plan_lead(document);
    must(plan.ok(), "a lure that can be built can be planned, met or not");
    must_be_finite(plan->before);
    must_be_finite(plan->after);
    must(plan->met == plan->shortfalls.empty(), "a plan is met, or says what is short");
    for (const HolePlan& h : plan->holes) {
        must(finite(h.mass_kg, h.column_m, h.depth_m) && h.mass_kg >= 0.0 && h.column_m >= 0.0 &&
                 h.depth_m >= 0.0,
             "a plan fills holes with something");
        const document::Hole& was = document.holes[static_cast<std::size_t>(h.hole)];
        must(was.use != document::HoleUse::fixed, "a plan leaves fixed holes alone");
        must(was.use != document::HoleUse::leaded, "a plan leaves lead that is in alone");
        must(was.use == document::HoleUse::drilled || h.depth_m <= was.max_depth_m + 1e-6,
             "a plan keeps to the stop on the bit");
    }
    const Evaluation again = must_be_good(plan->document);
    must(std::abs(again.answers.mass.kg - plan->after.mass.kg) < 1e-7 * (1.0 + plan->after.mass.kg),
         "a plan weighs what it says");
    static_cast<void>(output::lead_json(*plan));
}

inline void must_know(const document::Document& document) {
    const Outcome<Uncertainty> s = uncertainty(document);
    if (!s.ok()) return must_explain(s.problems());
    must_be_finite(*s);
    const Outcome<DoNow> now = do_now(document);
    std::optional<DoNow> shown;
    if (now.ok()) {
        must_be_finite(now->after);
        must_be_good(now->document);
        shown = *now;
    } else {
        must_explain(now.problems());
    }
    static_cast<void>(output::uncertainty_json(document, *s, shown, std::nullopt));
    static_cast<void>(output::log_csv(document));
}

inline void must_teach(const document::Document& document) {
    for (const auto& made : {corrected(document), for_next_lure(document)}) {
        if (made.ok())
            must_be_good(*made);
        else
            must_explain(made.problems());
    }
    const auto draws = uncertainty_by_draws(document, 40);
    if (draws.ok())
        must_be_finite(*draws);
    else
        must_explain(draws.problems());
}

inline void must_swim(const document::Document& document, const Evaluation& evaluation, double depth_m) {
    const auto water = output::in_water(document, evaluation, depth_m);
    if (!water.ok()) return must_explain(water.problems());
    must_be_finite(*water);
    static_cast<void>(output::water_json(document, *water));
}

inline void must_hinge(const document::Document& document, const Evaluation& evaluation) {
    const auto answer = joints::joint_answers(document, evaluation.body);
    if (!answer.ok()) return must_explain(answer.problems());
    must_be_finite(*answer);
    static_cast<void>(output::joints_json(document, *answer));
}

/// The whole sheet as its pages, and as a file of bounded size.
inline void must_print(const document::Document& document, Bytes& bytes) {
    SheetOptions options;
    options.paper = bytes.one_of(SheetPaper::letter);
    options.format = bytes.one_of(SheetFormat::html_pages);
    options.lures = 1 + static_cast<int>(bytes.below(500));
    options.station_m = bytes.usual(0.01, 0.03, 0.002, 0.1);
    if (bytes.yes()) {
        for (std::size_t i = 0; i < document.coats.size(); ++i)
            options.cure_hours.push_back(bytes.number(0.0, 1000.0));
    }
    options.typefaces = {
        {reinterpret_cast<const char*>(shell::look::font_regular), shell::look::font_regular_size},
        {reinterpret_cast<const char*>(shell::look::font_semibold), shell::look::font_semibold_size}};
    const auto layout = sheet_layout(document, options);
    const auto file = build_sheet(document, options);
    must(layout.ok() == file.ok(), "a sheet that can be laid out can be written");
    if (!layout.ok()) return must_explain(layout.problems());
    must_be_finite(*layout);
    must(layout->pages.size() <= 400, "a sheet is a heap of paper, not a book");
    must(file->size() <= 16u << 20, "a sheet's file goes through a mail");
}

inline void must_compare(const document::Document& document, const Evaluation& evaluation, Bytes& bytes) {
    for (const auto& options : {compare::woods(document), compare::metals(document)}) {
        must(options.ok(), "a lure that can be built can be compared");
        must_be_finite(*options);
    }
    stock::Stock stock;
    stock.form = bytes.one_of(stock::Form::sheet);
    stock.size_m = units::m_from_mm(bytes.number(0.1, 50.0));
    const auto list = stock::list(document, evaluation, stock);
    if (!list.ok()) return must_explain(list.problems());
    must(finite(list->fill_kg, list->length_m, list->over_kg, list->area_m2),
         "a shopping list is without NaN");
    static_cast<void>(output::stock_json(document, *list));
    for (const resin::CoatGrams& grams : resin::schedule(document, evaluation)) {
        must(finite(grams.skin_kg, grams.faces_kg, grams.pockets_kg, grams.skin_m2, grams.faces_m2,
                    grams.pockets_m2),
             "coats by surface are without NaN");
    }
}

} // namespace evenfall::fuzz
