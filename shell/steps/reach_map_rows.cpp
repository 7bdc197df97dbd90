#include "steps/step_panels.hpp"

#include "look/words.hpp"
#include "look/words_reach.hpp"
#include "look/words_water.hpp"
#include "widgets/plot.hpp"
#include "widgets/words_of_panel.hpp"

#include <algorithm>
#include <iterator>
#include <string>

namespace evenfall::shell::steps {
namespace {

namespace words = look::words;
using reach::MapPoint;
using reach::ReachMap;
using widgets::PlotLine;
using widgets::Unit;

/// Weight in water across, hang upwards; hangs steeper than can be asked for are drawn at the edge.
widgets::PlotPoint place_of(const MapPoint& p, Unit mass) {
    const double hang = std::clamp(p.pitch_rad, -reach::steepest_hang_rad, reach::steepest_hang_rad);
    return {widgets::to_unit(p.in_water_kg, mass), widgets::to_unit(hang, Unit::degree)};
}

/// Falls by weight, as shown across; in metres a second.
PlotLine falls_of(const ReachMap& map, Unit mass) {
    PlotLine falls;
    for (const MapPoint& p : map.border) {
        if (p.fall_m_s) falls.points.push_back({widgets::to_unit(p.in_water_kg, mass), *p.fall_m_s});
    }
    std::sort(falls.points.begin(), falls.points.end(),
              [](const auto& a, const auto& b) { return a.x < b.x; });
    return falls;
}

widgets::Plot picture_of(const PanelContext& context, const ReachMap& map) {
    const Unit mass = context.ui.units.of(Quantity::mass);
    const Unit fall = context.ui.units.of(Quantity::fall);
    widgets::Plot plot;
    plot.title = std::string(words::map_title) + ", " + std::string(widgets::symbol(Unit::degree));
    plot.x_unit = widgets::symbol(mass);
    plot.region = true;
    plot.topic = help::Topic::reach_map;
    plot.lines.resize(2);
    // The border goes up one side and comes back on the other.
    const auto half = static_cast<std::ptrdiff_t>(map.border.size() / 2);
    const auto place = [mass](const MapPoint& p) { return place_of(p, mass); };
    std::transform(map.border.begin(), map.border.begin() + half, std::back_inserter(plot.lines[0].points),
                   place);
    std::transform(map.border.rbegin(), map.border.rbegin() + half, std::back_inserter(plot.lines[1].points),
                   place);
    plot.dots.push_back({place(map.asked), words::map_asked});
    if (!map.inside) plot.dots.push_back({place(map.nearest), words::map_nearest, true});
    plot.x_least = plot.lines[0].points.front().x;
    plot.x_most = plot.lines[0].points.back().x;
    for (const widgets::PlotDot& dot : plot.dots) {
        plot.x_least = std::min(plot.x_least, dot.at.x);
        plot.x_most = std::max(plot.x_most, dot.at.x);
    }
    plot.x_step = widgets::round_step(std::max(plot.x_most - plot.x_least, 1e-6), 4);
    plot.x_below = [falls = falls_of(map, mass), fall](double x) {
        const auto m_s = widgets::read_off(falls, x);
        return m_s ? widgets::number_text(*m_s, fall) : std::string();
    };
    return plot;
}

/// "+5.0 g: −12.3 to 8.1°"
std::string read_text(const widgets::Plot& plot, double x, Unit mass) {
    const auto up = widgets::read_off(plot.lines[0], x);
    const auto down = widgets::read_off(plot.lines[1], x);
    if (!up || !down) return {};
    return widgets::value_text(widgets::from_unit(x, mass), mass) + ": " +
           widgets::number_text(*down, Unit::one, 1) + " " + words::to + " " +
           widgets::number_text(*up, Unit::one, 1) + "°";
}

} // namespace

void reach_map_rows(PanelContext& context) {
    const auto& offer = context.session.offer();
    if (!section(context, {"section.lead.map", words::map_group, {}, offer && !offer->met})) return;
    const ReachMap* map = context.motion.reach.map(context.session);
    if (map == nullptr) {
        widgets::note(context.ui, words::not_known);
        return;
    }
    if (map->border.empty()) {
        widgets::note(context.ui, words::map_none);
        return;
    }
    widgets::paragraph(context.ui, map->inside ? words::map_inside : words::map_outside);
    constexpr std::string_view id = "lead.map";
    const widgets::Plot plot = picture_of(context, *map);
    auto& read_at = context.motion.read_off;
    std::optional<double> at;
    if (const auto found = read_at.find(id); found != read_at.end()) at = found->second;
    const Unit mass = context.ui.units.of(Quantity::mass);
    const std::string read = at ? read_text(plot, *at, mass) : std::string();
    if (const auto moved = widgets::plot(context.ui, id, plot, at, read, 240.0f))
        read_at.insert_or_assign(std::string(id), *moved);
    widgets::note(context.ui, std::string(words::map_axes) + std::string(unit_of(context, Quantity::fall)) +
                                  words::map_hatched);
}

} // namespace evenfall::shell::steps
