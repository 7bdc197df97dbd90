#include "steps/step_panels.hpp"

#include "look/words_steps.hpp"
#include "look/words_water.hpp"
#include "widgets/choice.hpp"
#include "widgets/plot.hpp"
#include "widgets/rows.hpp"
#include "widgets/words_of_panel.hpp"

#include <array>
#include <cmath>
#include <string>
#include <utility>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using widgets::Plot;
using widgets::PlotLine;
using widgets::Unit;

/// One sweep as it is drawn: by temperature or by salinity.
struct Along {
    const std::vector<fall::SweepPoint>& points;
    bool salt = false;
    Unit unit = Unit::celsius;
    [[nodiscard]] double x(const fall::SweepPoint& p) const {
        return widgets::to_unit(salt ? p.salinity_g_kg : p.temperature_c, unit);
    }
};

Plot empty_plot(const PanelContext& context, const Along& along, const fall::Sweep& sweep) {
    Plot plot;
    plot.topic = help::Topic::season;
    plot.x_unit = widgets::symbol(along.unit);
    plot.x_step = along.unit == Unit::fahrenheit ? 18.0 : 10.0;
    plot.x_least = along.x(along.points.front());
    plot.x_most = along.x(along.points.back());
    const document::Water& here = context.document().water;
    const double now = widgets::to_unit(along.salt ? here.salinity_g_kg : here.temperature_c, along.unit);
    bool still_is_here = false;
    if (!along.salt) {
        for (const double c : sweep.still_at_c) {
            plot.marks.push_back({widgets::to_unit(c, along.unit), words::still_mark});
            // Two labels in one place would be illegible.
            still_is_here = still_is_here || std::abs(c - here.temperature_c) < 4.0;
        }
    }
    if (!still_is_here) plot.marks.push_back({now, words::now_mark});
    return plot;
}

/// Draws the plot and stores where the finger reads it; `unit_text` and `decimals` are those of the figure.
void show(PanelContext& context, std::string_view id, Plot& plot, const Along& along,
          std::string_view unit_text, int decimals) {
    // Both plots are read at the same water, independent of the unit.
    const std::string_view key = along.salt ? "water.sweep.salt" : "water.sweep.warmth";
    auto& read_at = context.motion.read_off;
    std::optional<double> at;
    if (const auto found = read_at.find(key); found != read_at.end())
        at = widgets::to_unit(found->second, along.unit);
    std::string read;
    if (at) {
        read = widgets::number_text(*at, Unit::one, 0) + " " + plot.x_unit + ": ";
        std::optional<double> value;
        for (const PlotLine& line : plot.lines) {
            if (!value) value = widgets::read_off(line, *at);
        }
        read += value ? widgets::number_text(*value, Unit::one, decimals) + " " + std::string(unit_text)
                      : std::string("–");
    }
    if (const auto moved = widgets::plot(context.ui, id, plot, at, read))
        read_at.insert_or_assign(std::string(key), widgets::from_unit(*moved, along.unit));
}

void weight_plot(PanelContext& context, const Along& along, const fall::Sweep& sweep) {
    const Unit mass = context.ui.units.of(Quantity::mass);
    Plot plot = empty_plot(context, along, sweep);
    plot.title = std::string(words::sweep_weight) + ", " + std::string(widgets::symbol(mass));
    PlotLine stays;
    PlotLine swells;
    swells.dashed = true;
    for (const auto& p : along.points) {
        stays.points.push_back({along.x(p), widgets::to_unit(p.in_water_kg, mass)});
        swells.points.push_back({along.x(p), widgets::to_unit(p.swelled_in_water_kg, mass)});
    }
    plot.lines.push_back(std::move(stays));
    // Salt does not swell wood: the two lines would coincide.
    if (!along.salt) plot.lines.push_back(std::move(swells));
    show(context, "water.sweep.weight", plot, along, widgets::symbol(mass), mass == Unit::ounce ? 3 : 2);
}

void fall_plot(PanelContext& context, const Along& along, const fall::Sweep& sweep) {
    // Always in speeds: a time per length has no value at rest.
    Plot plot = empty_plot(context, along, sweep);
    const Unit speed = context.ui.units.way_in_time();
    plot.title = std::string(words::sweep_fall) + ", " + std::string(widgets::symbol(speed));
    PlotLine line;
    bool rises = false;
    for (const auto& p : along.points) {
        if (p.vertical_m_s) {
            line.points.push_back({along.x(p), widgets::to_unit(*p.vertical_m_s, speed)});
            rises = rises || *p.vertical_m_s < 0.0;
        } else if (!line.points.empty()) {
            plot.lines.push_back(std::exchange(line, {}));
        }
    }
    if (!line.points.empty()) plot.lines.push_back(std::move(line));
    if (plot.lines.empty()) return;
    show(context, "water.sweep.fall", plot, along, widgets::symbol(speed), speed == Unit::mm_per_s ? 0 : 1);
    if (rises) widgets::note(context.ui, words::sweep_rises);
}

} // namespace

void season_rows(PanelContext& context) {
    const fall::Sweep* sweep = context.motion.answers.sweep(context.session);
    if (sweep == nullptr || sweep->by_temperature.size() < 2 || sweep->by_salinity.size() < 2) {
        widgets::note(context.ui, words::not_known);
        return;
    }
    constexpr std::array<std::string_view, 2> ways{words::by_warmth, words::by_salt};
    if (const auto chosen =
            widgets::choice(context.ui, "water.sweep", ways, context.view.season_by_salt ? 1 : 0))
        context.view.season_by_salt = *chosen == 1;
    const bool salt = context.view.season_by_salt;
    const Along along{salt ? sweep->by_salinity : sweep->by_temperature, salt,
                      context.ui.units.of(salt ? Quantity::salinity : Quantity::temperature)};
    weight_plot(context, along, *sweep);
    if (!salt) widgets::note(context.ui, words::sweep_note);
    fall_plot(context, along, *sweep);
    widgets::gap();
    if (sweep->still_at_c.empty())
        widgets::note(context.ui,
                      words::still_nowhere + range_text(0.0, 40.0, units::Quantity::temperature) + ".");
    for (const double c : sweep->still_at_c) {
        widgets::figure_row(context.ui, words::still_row, number_of(context, c, Quantity::temperature),
                            unit_of(context, Quantity::temperature), {}, help::Topic::season);
    }
}

} // namespace evenfall::shell::steps
