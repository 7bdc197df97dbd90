#include "document/log_check.hpp"

#include "document/check.hpp"
#include "document/field_of.hpp"
#include "document/fields.hpp"
#include "materials/solids.hpp"

#include <algorithm>
#include <array>
#include <string>
#include <vector>

namespace evenfall::document {
namespace {

enum Field : unsigned {
    mass = 1u,
    holder = 2u,
    length = 4u,
    time = 8u,
    clip = 16u,
    freeboard = 32u,
    angle = 64u,
    temperature = 128u,
    mass_sigma = 256u,
    time_sigma = 512u,
    length_sigma = 1024u,
    angle_sigma = 2048u,
    one_segment = 4096u,
    hung = 8192u,
    width = 16384u,
    height = 32768u,
    station = 65536u,
    depth = 1u << 17,
    beats = 1u << 18,
    travel = 1u << 19,
    speed = 1u << 20,
    beats_sigma = 1u << 21,
    foretold = 1u << 22,
};

struct Needs {
    std::string_view called;
    unsigned wanted;
    unsigned allowed;
};

Needs needs_of(ReadingKind kind) {
    switch (kind) {
    case ReadingKind::dry_weight:
        return {"a dry weight", mass, mass_sigma | one_segment | hung};
    case ReadingKind::held_under:
        return {"a lure held under", mass, mass_sigma | holder | temperature | one_segment | hung};
    case ReadingKind::hung_in_water:
        return {"a lure hung in water", mass, mass_sigma | holder | temperature | one_segment | hung};
    case ReadingKind::board:
        return {"a board", mass | length | width | height, mass_sigma};
    case ReadingKind::tub_fall:
        return {"a fall in the tub", time | depth, time_sigma | temperature | hung};
    case ReadingKind::suspends:
        return {"a lure that suspends", mass, mass_sigma | clip | temperature | hung};
    case ReadingKind::freeboard:
        return {"a floating lure", freeboard, length_sigma | temperature | hung};
    case ReadingKind::hang_angle:
        return {"a hang", angle, angle_sigma | temperature | hung};
    case ReadingKind::caliper:
        return {"a caliper", station, width | height | length_sigma};
    case ReadingKind::beats:
        return {"beats counted", beats, travel | time | speed | foretold | beats_sigma};
    }
    return {"this", 0u, 0u};
}

struct Given {
    std::string_view key;
    unsigned field;
    bool there;
};

template <auto Member>
Given given_number(unsigned field, const Reading& r) {
    return {field_of<Member>.key, field, (r.*Member).has_value()};
}

std::array<Given, 23> given_in(const Reading& r) {
    return {given_number<&Reading::mass_kg>(mass, r),
            given_number<&Reading::holder_kg>(holder, r),
            given_number<&Reading::length_m>(length, r),
            given_number<&Reading::width_m>(width, r),
            given_number<&Reading::height_m>(height, r),
            given_number<&Reading::x_m>(station, r),
            given_number<&Reading::time_s>(time, r),
            given_number<&Reading::depth_m>(depth, r),
            Given{"clip_material", clip, !r.clip_material.empty()},
            given_number<&Reading::freeboard_m>(freeboard, r),
            given_number<&Reading::angle_rad>(angle, r),
            given_number<&Reading::beats>(beats, r),
            given_number<&Reading::travel_m>(travel, r),
            given_number<&Reading::speed_m_s>(speed, r),
            given_number<&Reading::foretold_per_m>(foretold, r),
            given_number<&Reading::temperature_c>(temperature, r),
            given_number<&Reading::mass_sigma_kg>(mass_sigma, r),
            given_number<&Reading::time_sigma_s>(time_sigma, r),
            given_number<&Reading::length_sigma_m>(length_sigma, r),
            given_number<&Reading::angle_sigma_rad>(angle_sigma, r),
            given_number<&Reading::beats_sigma>(beats_sigma, r),
            Given{"segment", one_segment, r.segment.has_value()},
            Given{"with", hung, !r.with.empty()}};
}

/// Why a thing cannot hang on a lure, the end of a sentence; "" where it can.
std::string hung_refusal(const HungOn& on, const Document& document) {
    if (on.what != HungKind::part && on.part) return "is no part, but names one.";
    if (on.what != HungKind::weight && (on.mass_kg || !on.material.empty()))
        return "is no test weight, but has a mass or a material.";
    switch (on.what) {
    case HungKind::all:
        return "";
    case HungKind::tail:
        return document.tail ? "" : "is the tail, but the lure has none.";
    case HungKind::part:
        if (!on.part) return "needs the number of its part.";
        if (*on.part >= static_cast<int>(document.parts.size()))
            return "is part " + std::to_string(*on.part + 1) + ", but the lure has " +
                   std::to_string(document.parts.size()) + '.';
        return "";
    case HungKind::weight:
        if (!on.mass_kg || !(*on.mass_kg > 0.0)) return "is a test weight and needs its mass.";
        if (materials::find_solid(on.material) == nullptr)
            return "is a test weight of no known material: “" + quotable(on.material) + "”.";
        return "";
    }
    return "";
}

void check_hung(Problems& problems, const Document& document, const Reading& r, const std::string& path,
                const std::string& subject) {
    if (r.with.empty()) return;
    if (r.stage < Stage::leaded || r.segment) {
        add_problem(problems,
                    {ProblemCode::out_of_range, path + "with", "a whole lure, leaded at least",
                     subject + " has something hung on: that is for a whole lure with its lead in."});
    }
    for (std::size_t i = 0; i < r.with.size(); ++i) {
        const std::string refusal = hung_refusal(r.with[i], document);
        if (refusal.empty()) continue;
        add_problem(problems, {ProblemCode::out_of_range, path + "with/" + std::to_string(i), "",
                               subject + ": thing " + std::to_string(i + 1) + " hung on " + refusal});
    }
}

/// A clip of no mass needs no material.
bool lacks_clip(const Reading& r) {
    return r.kind == ReadingKind::suspends && r.mass_kg && *r.mass_kg > 0.0 &&
           materials::find_solid(r.clip_material) == nullptr;
}

/// A caliper lies across one of both.
bool lacks_side(const Reading& r) {
    return r.kind == ReadingKind::caliper && r.width_m.has_value() == r.height_m.has_value();
}

/// Beats are counted over a way, or over a time at a speed.
bool lacks_way(const Reading& r) {
    if (r.kind != ReadingKind::beats) return false;
    return r.travel_m ? r.time_s || r.speed_m_s : !r.time_s || !r.speed_m_s;
}

bool is_date(const std::string& text) {
    if (text.size() != 10 || text[4] != '-' || text[7] != '-') return false;
    for (const std::size_t i : {0u, 1u, 2u, 3u, 5u, 6u, 8u, 9u}) {
        if (text[i] < '0' || text[i] > '9') return false;
    }
    const int month = 10 * (text[5] - '0') + text[6] - '0';
    const int day = 10 * (text[8] - '0') + text[9] - '0';
    return month >= 1 && month <= 12 && day >= 1 && day <= 31;
}

void check_reading(Problems& problems, const Document& document, std::size_t index) {
    const Reading& r = document.log[index];
    const std::string path = "/log/" + std::to_string(index) + '/';
    const std::string subject = "Reading " + std::to_string(index + 1);
    const Needs needs = needs_of(r.kind);
    for (const Given& g : given_in(r)) {
        const bool wanted = (needs.wanted & g.field) != 0u;
        if (wanted && !g.there) {
            add_problem(problems, {ProblemCode::missing_key, path + std::string(g.key), "",
                                   subject + " is of " + std::string(needs.called) + " and needs its “" +
                                       std::string(g.key) + "”."});
        } else if (g.there && !wanted && (needs.allowed & g.field) == 0u) {
            add_problem(problems, {ProblemCode::unknown_key, path + std::string(g.key), "",
                                   subject + " is of " + std::string(needs.called) + "; “" +
                                       std::string(g.key) + "” has no place in it."});
        }
    }
    const Sentence none = plain_text(0.0, units::Quantity::mass);
    const bool light_allowed = r.kind == ReadingKind::hung_in_water;
    if (r.mass_kg && !light_allowed &&
        (*r.mass_kg < 0.0 || (*r.mass_kg == 0.0 && r.kind != ReadingKind::suspends))) {
        add_problem(problems, {ProblemCode::out_of_range, path + "mass_g", "more than " + none,
                               subject + " needs a mass of more than " + none + "."});
    }
    if (lacks_clip(r)) {
        add_problem(problems,
                    {ProblemCode::unknown_name, path + "clip_material", "",
                     subject + " names no known material for what was clipped on" +
                         (r.clip_material.empty() ? "." : ": “" + quotable(r.clip_material) + "”.")});
    }
    if (lacks_side(r)) {
        add_problem(problems, {ProblemCode::missing_key, path + "width_mm", "",
                               subject + " is of a caliper and needs its “width_mm” or its “height_mm”, "
                                         "one of both."});
    }
    if (lacks_way(r)) {
        add_problem(problems, {ProblemCode::missing_key, path + "travel_mm", "",
                               subject + " is of beats counted and needs its “travel_mm”, or its “time_s” "
                                         "and “speed_mm_s”."});
    }
    const auto segments = static_cast<int>(document.segment_names.size());
    if (r.segment && *r.segment >= segments && *r.segment <= static_cast<int>(max_joints)) {
        add_problem(problems,
                    {ProblemCode::out_of_range, path + "segment", "1 to " + std::to_string(segments),
                     subject + " is of segment " + std::to_string(*r.segment + 1) + ", but the lure has " +
                         std::to_string(segments) + '.'});
    }
    check_hung(problems, document, r, path, subject);
    if (!r.date.empty() && !is_date(r.date)) {
        add_problem(problems,
                    {ProblemCode::wrong_type, path + "date", "year-month-day",
                     subject + " has the date “" + quotable(r.date) + "”; write it like 2026-03-14."});
    }
}

/// Each factor may be within its limits and all of them together beyond any number.
void check_together(Problems& problems, const std::vector<Correction>& corrections) {
    for (std::size_t i = 0; i < corrections.size(); ++i) {
        const auto of_same = [&](const Correction& c) {
            // Drag is one for the whole lure, whatever entry stands there.
            return c.of == corrections[i].of &&
                   (c.of == Cause::drag || group_of(c) == group_of(corrections[i]));
        };
        const auto end = corrections.begin() + static_cast<std::ptrdiff_t>(i);
        if (std::any_of(corrections.begin(), end, of_same)) continue;
        double factor = 1.0;
        std::size_t last = i;
        for (std::size_t k = i; k < corrections.size(); ++k) {
            if (!of_same(corrections[k])) continue;
            factor *= corrections[k].factor;
            last = k;
        }
        if (last == i || (factor >= least_factor && factor <= most_factor)) continue;
        const std::string limit = plain_number(least_factor) + " to " + plain_number(most_factor);
        add_problem(problems,
                    {ProblemCode::out_of_range, "/corrections/" + std::to_string(last) + "/factor", limit,
                     "Corrections " + std::to_string(i + 1) + " to " + std::to_string(last + 1) +
                         " are partly of one and the same thing and together make a factor of " +
                         plain_number(factor) + "; the limit is " + limit + '.'});
    }
}

} // namespace

bool is_complete(const Reading& reading) {
    const unsigned wanted = needs_of(reading.kind).wanted;
    const auto given = given_in(reading);
    return !lacks_clip(reading) && !lacks_side(reading) && !lacks_way(reading) &&
           std::all_of(given.begin(), given.end(),
                       [wanted](const Given& g) { return g.there || (wanted & g.field) == 0u; });
}

void check_log(Problems& problems, const Document& document) {
    for (std::size_t i = 0; i < document.log.size() && i < max_readings; ++i)
        check_reading(problems, document, i);
    if (document.corrections.size() <= max_corrections) check_together(problems, document.corrections);
}

} // namespace evenfall::document
