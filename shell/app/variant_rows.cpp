#include "app/variant_rows.hpp"

#include "look/words.hpp"
#include "look/words_log.hpp"
#include "look/words_shelf.hpp"

#include <algorithm>
#include <cmath>
#include <optional>

namespace evenfall::shell {
namespace {

namespace words = look::words;
using help::Topic;
using widgets::Quantity;
using widgets::Unit;

/// How a figure is written: its unit, the decimals (−1: the unit's usual ones), and whether + stands before
/// it.
struct Style {
    Unit unit;
    int decimals = -1;
    bool with_plus = false;
};

std::string text_of(double si, const Style& style) {
    std::string text = widgets::number_text(si, style.unit, style.decimals);
    return style.with_plus ? units::with_plus(si, std::move(text)) : text;
}

/// Taken in the unit: of times per length, not of speeds.
std::string difference(double here, double other, const Style& style) {
    const double more = widgets::to_unit(other, style.unit) - widgets::to_unit(here, style.unit);
    if (!std::isfinite(more)) return words::compare_none;
    if (std::abs(more) < 0.5 * widgets::resolution(style.unit, style.decimals)) return "0";
    const std::string amount =
        widgets::number_text(widgets::from_unit(std::abs(more), style.unit), style.unit, style.decimals);
    return (more > 0.0 ? "+" : "−") + amount;
}

/// `without` stands where a lure has no such figure.
VariantRow row(Topic topic, const char* title, const Style& style, std::optional<double> here,
               std::optional<double> other, const std::string& here_without,
               const std::string& other_without) {
    return {topic,
            title,
            std::string(widgets::symbol(style.unit)),
            here ? text_of(*here, style) : here_without,
            other ? text_of(*other, style) : other_without,
            here && other ? difference(*here, *other, style) : words::compare_none};
}

VariantRow row(Topic topic, const char* title, const Style& style, double here, double other) {
    return row(topic, title, style, here, other, {}, {});
}

std::optional<double> speed(const Answers& answers) {
    if (answers.behaviour != Behaviour::falls || !answers.fall) return std::nullopt;
    return answers.fall->speed_m_s;
}

const char* without_fall(const Answers& answers) {
    return words::no_fall[static_cast<std::size_t>(answers.behaviour)];
}

Style mass_style(const widgets::Units& units, int decimals_of_grams) {
    const Unit unit = units.of(Quantity::mass);
    return {unit, unit == Unit::gram ? decimals_of_grams : -1};
}

/// "3 Fore", from the lure that has the hole.
std::string title_of_hole(std::size_t index, const state::Variant& here, const state::Variant& other) {
    const auto& holes = index < here.fill_kg.size() ? here.document.holes : other.document.holes;
    const std::string number = std::to_string(index + 1);
    const std::string& name = holes[index].name;
    if (name.empty()) return number;
    return name.rfind(number, 0) == 0 ? name : number + " " + name;
}

} // namespace

std::vector<VariantRow> figure_rows(const state::Variant& here, const state::Variant& other,
                                    const widgets::Units& units) {
    const Answers& a = here.evaluation.answers;
    const Answers& b = other.evaluation.answers;
    Style in_water = mass_style(units, -1);
    in_water.with_plus = true;
    // A fraction of an inch is too coarse for this distance.
    const Unit length = units.of(Quantity::length);
    const Style righting{length == Unit::inch_fraction ? Unit::inch : length};
    return {row(Topic::finished, words::finished, mass_style(units, 1), a.mass.kg, b.mass.kg),
            row(Topic::in_water, words::in_water, in_water, a.in_water.kg, b.in_water.kg),
            row(Topic::fall, words::fall, {units.of(Quantity::fall)}, speed(a), speed(b), without_fall(a),
                without_fall(b)),
            row(Topic::hang, words::hang, {Unit::degree}, a.pitch_rad, b.pitch_rad, words::no_hang,
                words::no_hang),
            row(Topic::righting, words::righting, righting, a.bg_m, b.bg_m),
            row(Topic::chance, words::chance, {Unit::percent, 0}, here.chance, other.chance)};
}

std::vector<VariantRow> lead_rows(const state::Variant& here, const state::Variant& other,
                                  const widgets::Units& units) {
    std::vector<VariantRow> rows;
    const Style style = mass_style(units, -1);
    const auto fill = [](const state::Variant& v, std::size_t i) {
        return i < v.fill_kg.size() ? std::optional(v.fill_kg[i]) : std::nullopt;
    };
    for (std::size_t i = 0; i < std::max(here.fill_kg.size(), other.fill_kg.size()); ++i) {
        rows.push_back(row(Topic::hole_fill, "", style, fill(here, i), fill(other, i), words::compare_none,
                           words::compare_none));
        rows.back().title = title_of_hole(i, here, other);
    }
    return rows;
}

} // namespace evenfall::shell
