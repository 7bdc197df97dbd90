#include "reach/by_hand.hpp"

#include "base/limits.hpp"
#include "base/root.hpp"
#include "bench/lead/lead_plan.hpp"
#include "document/field_of.hpp"
#include "document/scale.hpp"
#include "document/work_done.hpp"
#include "reach/resized.hpp"
#include "reach/shortage.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::reach {

namespace {

constexpr double shortest_lure_m = 0.03;
constexpr double near_share = 1e-3; ///< of a size, where the search for its limits ends
constexpr double same_share = 1e-5; ///< of a size: finer than what sizes are rounded to

double length_of(const document::Document& document) {
    return document.shape.back.back().x_m;
}

Problem beyond(const char* path, const char* figure, double least, double most) {
    const Sentence range = range_text(least, most, units::Quantity::mass, 2);
    return {ProblemCode::out_of_range, path, range,
            std::string("The ") + figure + " goes from " + range + " with sizes that can be built."};
}

/// A search for the share of a size that gives a figure: from a share that can be built, between two others.
struct Between {
    double least = 0.4;
    double from = 1.0;
    double most = 2.5;
};

/// Where the figure of the lure is `wanted`. `figure_at` gives nothing where the lure cannot be built.
template <class FigureAt>
Outcome<double> share_for(const FigureAt& figure_at, double wanted, const Between& shares, const char* path,
                          const char* figure) {
    const auto can = [&](double share) { return figure_at(share).has_value(); };
    const double low =
        can(shares.least) ? shares.least : last_where(can, shares.from, shares.least, near_share);
    const double high =
        can(shares.most) ? shares.most : last_where(can, shares.from, shares.most, near_share);
    const auto off = [&](double share) { return figure_at(share).value_or(wanted) - wanted; };
    const double at_low = off(low);
    const double at_high = off(high);
    if ((at_low > 0.0) == (at_high > 0.0)) {
        const auto [least, most] = std::minmax({wanted + at_low, wanted + at_high});
        return beyond(path, figure, least, most);
    }
    return root_between(off, low, high, at_low, at_high, {.x = same_share});
}

document::Document with_thickness(document::Document document, double share) {
    for (document::CurvePoint& p : document.shape.half_width)
        p.value *= share;
    return document;
}

Outcome<Scaled> planned(Resized resized) {
    auto plan = plan_lead(cleared(std::move(resized.document)));
    if (!plan) return plan.problems();
    return Scaled{std::move(plan->document), std::move(resized.chosen)};
}

Problems off_length(double length_m) {
    constexpr document::NumberField at = document::field_of<&document::Joint::at_m>;
    Problems out;
    units::check_limit(
        {"/length_mm", "The length", length_m, shortest_lure_m, most_si(at), units::Unit::mm, 0}, out);
    return out;
}

} // namespace

Outcome<document::Document> thickness_for(const document::Document& document, double in_water_kg) {
    if (const auto own = evaluate(document); !own) return own.problems();
    const auto weight = [&](double share) -> std::optional<double> {
        const auto lure = evaluate(with_thickness(document, share));
        return lure ? std::optional(lure->answers.in_water.kg) : std::nullopt;
    };
    const auto share = share_for(weight, in_water_kg, {}, "/in_water_g", "weight in water");
    if (!share) return share.problems();
    double half_m = 0.0;
    for (const document::CurvePoint& p : document.shape.half_width)
        half_m = std::max(half_m, p.value);
    const double rounded_m = std::round(*share * 2.0 * half_m * 1e5) / 1e5;
    return with_thickness(document, rounded_m / (2.0 * half_m));
}

Outcome<Scaled> at_length(const document::Document& document, double length_m) {
    if (const auto own = evaluate(document); !own) return own.problems();
    if (Problems problems = off_length(length_m); !problems.empty()) return problems;
    const double share = length_m / length_of(document);
    return planned(resized(document, share, share));
}

Outcome<Scaled> length_for(const document::Document& document, double mass_kg) {
    if (const auto own = evaluate(document); !own) return own.problems();
    const double now_m = length_of(document);
    const auto mass_with = [&](double share, double sizes) -> std::optional<double> {
        if (!off_length(share * now_m).empty()) return std::nullopt;
        const auto lure = planned(resized(document, share, sizes));
        if (!lure) return std::nullopt;
        const auto evaluated = evaluate(lure->document);
        return evaluated ? std::optional(evaluated->answers.mass.kg) : std::nullopt;
    };
    // Sizes of the shop go in steps: first near which length it is, then with the sizes of that length.
    constexpr const char* path = "/mass_g";
    constexpr const char* figure = "finished mass";
    const auto near =
        share_for([&](double share) { return mass_with(share, share); }, mass_kg, {}, path, figure);
    if (!near) return near.problems();
    const auto share = share_for([&](double at) { return mass_with(at, *near); }, mass_kg,
                                 {0.8 * *near, *near, 1.25 * *near}, path, figure);
    if (!share) return share.problems();
    const double length_m = std::round(*share * now_m * 1e4) / 1e4;
    return planned(resized(document, length_m / now_m, *near));
}

} // namespace evenfall::reach
