#include "reach.hpp"

#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <memory>

namespace evenfall::cli {
namespace {

using Side = Table::Side;
using units::number_text;
using units::Unit;

struct ReachOptions : PresetOptions {
    std::optional<double> fall_m_s, in_water_kg, pitch_rad, chance;
    std::optional<double> thickness_for_kg, length_m, length_for_kg;
    bool family = false;
    int take = 0;
    std::optional<std::string> write_to;

    [[nodiscard]] bool asks_for_goal() const {
        return fall_m_s || in_water_kg || pitch_rad || chance || take != 0;
    }
    [[nodiscard]] int by_hand() const {
        return (thickness_for_kg ? 1 : 0) + (length_m ? 1 : 0) + (length_for_kg ? 1 : 0) + (family ? 1 : 0);
    }
};

evenfall::reach::Goal goal_of(const document::Document& document, const ReachOptions& o) {
    evenfall::reach::Goal goal{document.targets, o.chance};
    if (o.fall_m_s) {
        goal.targets.by = document::TargetBy::fall;
        goal.targets.fall_m_s = *o.fall_m_s;
    }
    if (o.in_water_kg) {
        goal.targets.by = document::TargetBy::in_water;
        goal.targets.in_water_kg = *o.in_water_kg;
    }
    if (o.pitch_rad) goal.targets.pitch_rad = *o.pitch_rad;
    return goal;
}

std::string fall_text(const std::optional<double>& m_s, const Numbers& in) {
    return m_s ? in.speed(*m_s) : std::string("–");
}

std::vector<std::string> figure_heads(const Numbers& in) {
    const std::string gram = in.mass_symbol();
    return {"mass " + gram,
            "in water " + gram,
            "fall " + in.speed_symbol(),
            "hang",
            "B above G " + in.length_symbol(),
            "chance"};
}

std::vector<std::string> figure_cells(const evenfall::reach::Figures& f, const Numbers& in) {
    return {in.mass(f.mass_kg),        in.signed_mass(f.in_water_kg),
            fall_text(f.fall_m_s, in), degrees(f.pitch_rad),
            in.thickness(f.bg_m),      number_text(f.chance, Unit::percent, 0) + " %"};
}

/// A row of a name, a number before the figures, and the figures.
void figure_row(Table& table, std::vector<std::string> first, const std::vector<std::string>& figures) {
    first.insert(first.end(), figures.begin(), figures.end());
    table.row(std::move(first));
}

std::string map_text(const evenfall::reach::ReachMap& map, const Numbers& in) {
    if (map.border.empty()) return "No hole may be filled: lead can reach nothing.\n";
    const auto by_weight = [](const evenfall::reach::MapPoint& a, const evenfall::reach::MapPoint& b) {
        return a.in_water_kg < b.in_water_kg;
    };
    const auto by_hang = [](const evenfall::reach::MapPoint& a, const evenfall::reach::MapPoint& b) {
        return a.pitch_rad < b.pitch_rad;
    };
    const auto [light, heavy] = std::minmax_element(map.border.begin(), map.border.end(), by_weight);
    const auto [low, high] = std::minmax_element(map.border.begin(), map.border.end(), by_hang);
    const auto end = [&](const evenfall::reach::MapPoint& p) {
        return in.signed_mass(p.in_water_kg) + " " + in.mass_symbol() +
               (p.fall_m_s ? " (" + in.speed(*p.fall_m_s) + " " + in.speed_symbol() + ")" : "");
    };
    return "Lead alone reaches from " + end(*light) + " to " + end(*heavy) + " in water, and hangs from " +
           degrees(low->pitch_rad) + " to " + degrees(high->pitch_rad) + ", not every one at every weight.\n";
}

std::string ways_text(const evenfall::reach::Ways& ways, const evenfall::reach::ReachMap& map,
                      const Numbers& in) {
    std::string text = ways.document.name + "\n" + map_text(map, in) + '\n';
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right, Side::right, Side::right,
                 Side::right});
    figure_row(table, {"", "cost"}, figure_heads(in));
    figure_row(table, {"by lead alone", ""}, figure_cells(ways.before, in));
    for (std::size_t k = 0; k < ways.ways.size(); ++k)
        figure_row(table, {"way " + std::to_string(k + 1), number_text(ways.ways[k].cost, Unit::one, 1)},
                   figure_cells(ways.ways[k].after, in));
    text += table.text(in);
    if (ways.met) return text + "\nLead alone does it: “evenfall lead” is its drill table.\n";
    if (ways.ways.empty()) return text + "\nNo small change of one or two things does it.\n";
    text += '\n';
    for (std::size_t k = 0; k < ways.ways.size(); ++k) {
        text += std::to_string(k + 1) + "  " + ways.ways[k].change.text(in.units) + ".\n";
        for (const Sentence& says : ways.ways[k].also)
            text += "   " + says.text(in.units) + '\n';
    }
    return text + "\n--take N --write FILE keeps one, its lead planned.\n";
}

Ended written(const ReachOptions& o, HeldFile& file, const document::Document& document) {
    if (!o.write_to) return done;
    if (const Problems problems = keep(file, document); !problems.empty()) return problems;
    return done;
}

Ended tell_family(const ReachOptions& o, const document::Document& document, const Printing& in) {
    const auto members = evenfall::reach::family(document);
    if (!members.ok()) return members.problems();
    if (o.json) {
        print(output::family_json(*members, in.json));
        return done;
    }
    constexpr std::array names{"floats", "suspends", "sinks slowly", "sinks fast"};
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right, Side::right, Side::right,
                 Side::right});
    figure_row(table, {"", "fill " + in.mass_symbol()}, figure_heads(in));
    std::string short_of;
    for (std::size_t k = 0; k < members->size(); ++k) {
        const evenfall::reach::Member& member = (*members)[k];
        double fill_kg = 0.0;
        for (const HolePlan& hole : member.plan.holes)
            fill_kg += hole.mass_kg;
        figure_row(table, {names[k], in.mass(fill_kg)}, figure_cells(member.figures, in));
        if (!member.plan.met)
            short_of +=
                std::string(names[k]) + ": " + member.plan.shortfalls.front().sentence.text(in.units) + '\n';
    }
    print(document.name + "\n\n" + table.text(in) + (short_of.empty() ? "" : '\n' + short_of), in);
    return done;
}

Ended tell_hand(const ReachOptions& o, HeldFile& file, const document::Document& document,
                const Printing& in) {
    std::vector<Sentence> chosen;
    document::Document made;
    if (o.thickness_for_kg) {
        auto thick = evenfall::reach::thickness_for(document, *o.thickness_for_kg);
        if (!thick.ok()) return thick.problems();
        made = std::move(thick).value();
    } else {
        auto scaled = o.length_m ? evenfall::reach::at_length(document, *o.length_m)
                                 : evenfall::reach::length_for(document, *o.length_for_kg);
        if (!scaled.ok()) return scaled.problems();
        made = std::move(scaled->document);
        chosen = std::move(scaled->chosen);
    }
    const auto before = evenfall::reach::figures_of(document);
    const auto after = evenfall::reach::figures_of(made);
    if (!before.ok()) return before.problems();
    if (!after.ok()) return after.problems();
    if (o.json) {
        print(write_document(made));
        return written(o, file, made);
    }
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right, Side::right, Side::right,
                 Side::right, Side::right});
    const auto sizes = [&](const document::Document& d) {
        double half_m = 0.0;
        for (const document::CurvePoint& p : d.shape.half_width)
            half_m = std::max(half_m, p.value);
        return std::vector<std::string>{in.length(d.shape.back.back().x_m), in.thickness(2.0 * half_m)};
    };
    const auto row = [&](const char* name, const document::Document& d, const evenfall::reach::Figures& f) {
        std::vector<std::string> first = sizes(d);
        first.insert(first.begin(), name);
        figure_row(table, std::move(first), figure_cells(f, in));
    };
    const std::string symbol = in.length_symbol();
    figure_row(table, {"", "long " + symbol, "thick " + symbol}, figure_heads(in));
    row("as it is", document, *before);
    row("then", made, *after);
    std::string text = document.name + "\n\n" + table.text(in);
    for (const Sentence& says : chosen)
        text += says.text(in.units) + '\n';
    print(text, in);
    return written(o, file, made);
}

Ended run(const ReachOptions& o, const Printing& in) {
    if (o.fall_m_s && o.in_water_kg)
        return misuse("--in-water", "Ask for a fall or for a mass in water, not for both.");
    if (o.by_hand() > 1 || (o.by_hand() == 1 && o.asks_for_goal()))
        return misuse("", "Ask for one thing at a time: ways out, a thickness, a length or the family.");
    if (o.write_to && o.take == 0 && (o.by_hand() == 0 || o.family))
        return misuse("--write", "Say which way is to be written: --take N.");
    Outcome<HeldFile> file = HeldFile::hold(o.write_to.value_or("-"));
    if (!file.ok()) return file.problems();
    Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    if (o.family) return tell_family(o, *document, in);
    if (o.by_hand() == 1) return tell_hand(o, *file, *document, in);

    const evenfall::reach::Goal goal = goal_of(*document, o);
    const auto ways = evenfall::reach::ways_out(*document, goal);
    if (!ways.ok()) return ways.problems();
    const auto map = evenfall::reach::reach_map(*document, goal);
    if (!map.ok()) return map.problems();
    const auto count = static_cast<int>(ways->ways.size());
    if (o.take != 0 && (o.take < 0 || o.take > count))
        return misuse("--take",
                      "There " +
                          std::string(count == 1 ? "is one way" : "are " + std::to_string(count) + " ways") +
                          " out here: " + std::to_string(o.take) + " is none of them.");
    o.json ? print(output::reach_json(*ways, *map, in.json)) : print(ways_text(*ways, *map, in), in);
    if (o.take != 0) return written(o, *file, ways->ways[static_cast<std::size_t>(o.take - 1)].document);
    if (!ways->met && ways->ways.empty()) return {cannot_be_met, ways->shortfalls};
    return done;
}

} // namespace

void reach(Options& options) {
    const auto o = declare<ReachOptions>(
        options, "what lead can reach, and the smallest change that does what it cannot", run);
    options.number("--fall", o->fall_m_s, Unit::mm_per_s, "RATE", "asked rate of fall: 0.9s/ft, 300mm/s");
    options.number("--in-water", o->in_water_kg, Unit::gram, "MASS", "or asked mass in water: 2.5g");
    options.number("--pitch", o->pitch_rad, Unit::degree, "ANGLE", "asked pitch, nose-up positive: -3deg");
    options.number("--chance", o->chance, Unit::percent, "PERCENT", "of a right first fall, least");
    options.read("--take", read_whole, o->take, "N", "the way to keep, as they are numbered");
    options.text("--write", o->write_to, "FILE", "write the lure of that way, or the one made by hand");
    options.flag("--family", o->family, "this body as floater, suspender, slow and fast sinker");
    options.number("--thickness-for", o->thickness_for_kg, Unit::gram, "MASS",
                   "by hand: another thickness for this mass in water, lead held");
    options.number("--length", o->length_m, Unit::mm, "LENGTH",
                   "by hand: the recipe at this length, hooks, wire and bits anew");
    options.number("--length-for", o->length_for_kg, Unit::gram, "MASS",
                   "by hand: the length at which the finished lure has this mass: 1.25oz");
    options.remark(
        "Without options the targets are those of the preset. Ways are told the easiest first; the cost is\n"
        "about millimetres of thickness changed on the whole body (common practice, no source).");
}

} // namespace evenfall::cli
