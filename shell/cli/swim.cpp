#include "cli/commands.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "look/words_swim.hpp"
#include "output.hpp"
#include "state/retrieve.hpp"
#include "water.hpp"
#include "workshop.hpp"

#include <array>

namespace evenfall::cli {
namespace {

namespace words = shell::look::words;
using shell::state::least_retrieve_m_s;
using shell::state::most_retrieve_m_s;
using shell::state::usual_retrieves_m_s;
using units::number_text;
using units::Unit;
using Side = Table::Side;

struct SwimOptions : PresetOptions {
    std::optional<double> speed_m_s;
    std::string against;
};

struct Swum {
    document::Document document;
    swim::SwimAnswer answer;
};

Outcome<Swum> swum(const std::string& path) {
    Outcome<document::Document> document = load(path);
    if (!document.ok()) return document.problems();
    const Outcome<Evaluation> evaluation = evaluate(*document);
    if (!evaluation.ok()) return evaluation.problems();
    const Outcome<swim::Chain> chain = swim::chain_of(*document, *evaluation);
    if (!chain.ok()) return chain.problems();
    return Swum{std::move(document).value(), swim::swim(*chain)};
}

std::string beats_per_s(double per_m, double speed_m_s) {
    return number_text(per_m * speed_m_s, Unit::one, 1);
}

/// Beats on a way and, at the speed asked for or at three usual ones, beats a second.
std::string beats_text(const swim::SwimAnswer& answer, const std::optional<double>& speed_m_s,
                       const Numbers& in) {
    if (!answer.beats_per_m) return {};
    const swim::Beats& beats = *answer.beats_per_m;
    const Unit way = in.units.of(units::Quantity::beats);
    const auto shown = [&](double per_m) { return number_text(per_m, way, 1); };
    std::string text = std::string(way == Unit::per_m ? words::beats_a_metre : words::beats_in_ten_feet) +
                       ": " + shown(beats.mid) + " (" + shown(beats.low) + " " + words::to_word + " " +
                       shown(beats.high) + ")\n\n";
    const Unit unit = in.units.of(units::Quantity::retrieve);
    Table table({Side::left, Side::right, Side::right, Side::right});
    table.row({"Retrieve", std::string(units::symbol(unit)), "beats a second", "from – to"});
    const auto row = [&](const char* name, double m_s) {
        table.row({name, number_text(m_s, unit, 2), beats_per_s(beats.mid, m_s),
                   beats_per_s(beats.low, m_s) + " – " + beats_per_s(beats.high, m_s)});
    };
    if (speed_m_s) {
        row("as asked", *speed_m_s);
    } else {
        for (std::size_t i = 0; i < usual_retrieves_m_s.size(); ++i)
            row(words::retrieve_names[i], usual_retrieves_m_s[i]);
    }
    return text + table.text() + '\n';
}

std::string joints_text(const Swum& of) {
    if (of.answer.joints.empty()) return {};
    Table table({Side::left, Side::right, Side::left, Side::right});
    table.row({"Joint", "swings ±", "", "behind, of a beat"});
    for (std::size_t j = 0; j < of.answer.joints.size(); ++j) {
        const swim::JointSwing& joint = of.answer.joints[j];
        const std::string lag =
            j < of.answer.lag_rad.size()
                ? number_text(units::deg_from_rad(of.answer.lag_rad[j]) / 360.0, Unit::percent, 0) + " %"
                : "–";
        table.row({of.document.segment_names[j] + " – " + of.document.segment_names[j + 1],
                   degrees(joint.swing_rad), joint.at_stop ? words::at_stop : words::within_stop, lag});
    }
    return table.text() + '\n';
}

std::string against_text(const Swum& other, const swim::Change& change) {
    const auto told = [](swim::Told what, const char* up, const char* down,
                         const std::array<double, 3>& ratio) {
        if (what == swim::Told::not_told) return std::string(words::change_not_told);
        return std::string(what == swim::Told::more ? up : down) + ", " +
               number_text(ratio.front(), Unit::one, 2) + " " + words::to_word + " " +
               number_text(ratio.back(), Unit::one, 2) + words::change_times;
    };
    return "Against " + other.document.name + "\n  " + words::change_beats +
           told(change.beats, words::change_more, words::change_fewer, change.beats_ratio) + "\n  " +
           words::change_swing +
           told(change.swing, words::change_wider, words::change_narrower, change.swing_ratio) + "\n\n";
}

/// Nothing is wrong with a lure that lies outside what was tried.
Ended refused(const Problems& problems) {
    return {problems.front().code == ProblemCode::swim_unknown ? cannot_be_met : bad_input, problems};
}

Ended run(const SwimOptions& o, const Printing& in) {
    if (o.speed_m_s && !(*o.speed_m_s >= least_retrieve_m_s && *o.speed_m_s <= most_retrieve_m_s))
        return misuse("--speed", "A retrieve is from 0.02 to 5 m/s.");
    const Outcome<Swum> lure = swum(o.preset);
    if (!lure.ok()) return refused(lure.problems());
    std::optional<Swum> other;
    std::optional<swim::Change> change;
    if (!o.against.empty()) {
        Outcome<Swum> found = swum(o.against);
        if (!found.ok()) return refused(found.problems());
        other = std::move(found).value();
        change = swim::compare(other->answer.draws, lure->answer.draws);
    }
    const swim::SwimAnswer& answer = lure->answer;
    if (o.json) {
        print(output::swim_json(answer, change ? &*change : nullptr, o.speed_m_s));
        return done;
    }
    std::string text = lure->document.name + "\n\n" + words::ways[static_cast<std::size_t>(answer.way)] +
                       ". " + words::share_beats_in + std::to_string(answer.swims) + words::share_of +
                       std::to_string(answer.of) + words::share_assumptions + "\n";
    text += beats_text(answer, o.speed_m_s, in) + joints_text(*lure);
    if (change) text += against_text(*other, *change);
    print(text + output::swim_left_out() + '\n');
    return done;
}

} // namespace

void swim_verb(Options& options) {
    const auto o =
        declare<SwimOptions>(options, "whether it swims, how many beats, and what a change does to it", run);
    options.number("--speed", o->speed_m_s, Unit::m_per_s, "SPEED",
                   "of the retrieve: 0.5m/s, 2km/h, 1.5ft/s; three usual ones where not given");
    options.text("--against", o->against, "OTHER",
                 "the same lure before a change: tells whether this one beats more or less");
}

} // namespace evenfall::cli
