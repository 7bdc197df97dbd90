#pragma once

// Laws of safe advice: what has been done to the piece stays done, and what is advised can be done.

#include "evenfall.hpp"
#include "fuzz/document_laws.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::fuzz {

inline constexpr double same_depth_m = 1e-9; ///< hair of a depth that was worked out twice

inline void must_be_sound(const TubTest& tub) {
    must(finite(tub.in_water_kg, tub.fall_m_s.value_or(0.0), tub.half_metre_s.value_or(0.0)),
         "what the tub should show is in numbers");
    must(!tub.half_metre_s || *tub.half_metre_s > 0.0, "a fall takes its time");
}

/// Whatever lure it is for.
inline void must_be_sound(const DoNow& now) {
    must_be_finite(now.after);
    for (const double chance : {now.chances.fall, now.chances.pitch, now.chances.both})
        must_be_share(chance, "the chance after advice is a share");
    must(now.met == now.shortfalls.empty(), "advice meets what is asked, or says what is short");
    must(!now.nothing_to_do || (now.met && now.changes.empty()),
         "nothing is to be done where all is met, and only there");
    double sum_kg = 0.0;
    for (const HoleChange& c : now.changes) {
        must(finite(c.change_kg, c.diameter_m, c.depth_m, c.column_m) && c.depth_m >= 0.0 &&
                 c.column_m >= 0.0,
             "a change of lead is in numbers");
        sum_kg += c.change_kg;
    }
    must(std::abs(sum_kg - now.change_kg) < 1e-12, "the change of lead is the sum of the holes'");
    for (const HoleStep& s : now.holes) {
        must(finite(s.diameter_m, s.depth_m, s.fill_kg, s.column_m) && s.depth_m >= 0.0 && s.fill_kg >= 0.0 &&
                 s.column_m >= 0.0,
             "a step at a hole is in numbers");
    }
    must_be_sound(now.tub);
    if (now.with_all) must_be_sound(*now.with_all);
}

inline bool same_place(const document::Hole& a, const document::Hole& b) {
    return a.from == b.from && a.x_m == b.x_m && a.y_m == b.y_m && a.diameter_m == b.diameter_m &&
           a.end == b.end;
}

inline bool same_contents(const document::Hole& a, const document::Hole& b) {
    if (a.fill.has_value() != b.fill.has_value()) return false;
    if (!a.fill) return true;
    return a.fill->material == b.fill->material && a.fill->mass_kg == b.fill->mass_kg &&
           a.fill->length_m == b.fill->length_m;
}

/// Of the holes after a plan or advice for the piece as it lies there.
inline void must_keep_work(const document::Document& lying, const std::vector<document::Hole>& after,
                           bool lead_is_in) {
    must(after.size() >= lying.holes.size(), "no advice takes a hole away");
    for (std::size_t i = 0; i < lying.holes.size(); ++i) {
        const document::Hole& was = lying.holes[i];
        const document::Hole& is = after[i];
        must(same_place(was, is), "no advice moves a hole");
        if (document::is_cut(was))
            must(is.depth_m >= was.depth_m - same_depth_m, "what was drilled is never asked shallower");
        if (was.use == document::HoleUse::fixed)
            must(is.depth_m == was.depth_m && same_contents(was, is), "a hole that is to stay stays");
        if (was.use != document::HoleUse::leaded) continue;
        must(std::abs(is.depth_m - was.depth_m) <= same_depth_m,
             "lead that is in is changed through its cap");
        must(lead_is_in || same_contents(was, is), "lead that is in is no part of a plan for the rest");
    }
}

/// The advice for a document, against the piece as it lies there.
inline void must_be_safe(const document::Document& document, const DoNow& now) {
    const document::Document lying = document::as_it_lies(document);
    must_keep_work(lying, now.document.holes, now.lead_is_in);
    must(now.lead_is_in || now.document.holes.size() == document.holes.size(),
         "no hole is invented before the lead is in");
    must(now.document.holes.size() <= document.holes.size() + 1, "one trim hole is enough");
    for (const HoleStep& step : now.holes) {
        const auto index = static_cast<std::size_t>(step.hole);
        must(index < now.document.holes.size(), "a step is at a hole that there is");
        must(step.is_new == (index >= document.holes.size()), "a new hole is one that was not there");
        const bool was_leaded =
            !step.is_new && lying.holes[index].use == document::HoleUse::leaded && now.lead_is_in;
        must(!was_leaded || step.work == HoleWork::take_out || step.work == HoleWork::add,
             "lead that is in is drilled out, or more laid on it");
    }
}

inline bool same_reading(document::Reading a, const document::Reading& b) {
    // The mark that it is of the holes as they were is all that advice may put on it.
    if (!a.before_change) a.before_change = b.before_change;
    document::Document one, other;
    one.log.push_back(std::move(a));
    other.log.push_back(b);
    return write_document(one) == write_document(other);
}

inline document::Document without_holes_and_log(document::Document document) {
    document.holes.clear();
    document.log.clear();
    return document;
}

/// The document after advice is taken, against the one before it.
inline void must_keep_the_rest(const document::Document& before, const document::Document& after) {
    must(after.log.size() == before.log.size(), "no reading is lost by advice");
    for (std::size_t i = 0; i < before.log.size(); ++i)
        must(same_reading(before.log[i], after.log[i]), "no reading is changed by advice");
    must(write_document(without_holes_and_log(before)) == write_document(without_holes_and_log(after)),
         "advice changes holes and nothing else");
    for (std::size_t i = 0; i < before.holes.size(); ++i)
        must(after.holes[i].use >= before.holes[i].use, "advice undoes no mark at a hole");
}

/// Warnings about holes: one in the way of wire, a pin or a pocket.
inline std::size_t hole_warnings(const Evaluation& evaluation) {
    const Problems& all = evaluation.answers.warnings;
    return static_cast<std::size_t>(
        std::count_if(all.begin(), all.end(), [](const Problem& p) { return p.path.starts_with("/holes"); }));
}

} // namespace evenfall::fuzz
