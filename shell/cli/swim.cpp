#include "cli/commands.hpp"
#include "cli/swum.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "look/words_swim.hpp"
#include "output.hpp"
#include "state/retrieve.hpp"

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

/// Reports name the file where there are two: nothing else tells which is meant.
Ended refused(const std::string& file, bool is_one_of_two, Problems problems) {
    // Nothing is wrong with a lure that lies outside what was tried.
    const int status = problems.front().code == ProblemCode::swim_unknown ? cannot_be_met : bad_input;
    if (is_one_of_two) {
        for (Problem& p : problems)
            p.sentence = Sentence("“" + file + "”: ") + p.sentence;
    }
    return {status, std::move(problems)};
}

Outcome<Swum> swum_file(const std::string& file) {
    Outcome<document::Document> document = load(file);
    if (!document.ok()) return document.problems();
    Outcome<swim::SwimAnswer> answer = swum(*document);
    if (!answer.ok()) return answer.problems();
    return Swum{std::move(document).value(), std::move(answer).value()};
}

std::string beats_per_s(double per_m, double speed_m_s) {
    return number_text(per_m * speed_m_s, Unit::one, 1);
}

/// Beats on a way and, at the speed asked for or at three usual ones, beats a second.
std::string beats_text(const Swum& of, const std::optional<double>& speed_m_s, const Numbers& in) {
    if (!of.answer.beats_per_m) return {};
    const bench::KnownBeats known = bench::known_beats(of.document, *of.answer.beats_per_m);
    const swim::Beats& beats = known.per_m;
    const Unit way = in.units.of(units::Quantity::beats);
    const auto band = [&](const swim::Beats& b) {
        const auto shown = [&](double per_m) { return number_text(per_m, way, 1); };
        return shown(b.mid) + " (" + shown(b.low) + " " + words::to_word + " " + shown(b.high) + ")";
    };
    std::string text = std::string(way == Unit::per_m ? words::beats_a_metre : words::beats_in_ten_feet) +
                       ": " + band(beats) + "\n";
    if (known.is_learnt)
        text += (known.counts == 0   ? "As earlier lures of this recipe were counted"
                 : known.counts == 1 ? "After 1 count"
                                     : "After " + std::to_string(known.counts) + " counts") +
                std::string("; worked out: ") + band(*of.answer.beats_per_m) + "\n";
    text += '\n';
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
    return text + table.text(in) + '\n';
}

std::string joints_text(const Swum& of, const Numbers& in) {
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
    return table.text(in) + '\n';
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

Ended run(const SwimOptions& o, const Printing& in) {
    if (o.speed_m_s && !(*o.speed_m_s >= least_retrieve_m_s && *o.speed_m_s <= most_retrieve_m_s))
        return misuse("--speed", "A retrieve is from 0.02 to 5 m/s.");
    const bool two = !o.against.empty();
    const Outcome<Swum> lure = swum_file(o.preset);
    if (!lure.ok()) return refused(o.preset, two, lure.problems());
    std::optional<Swum> other;
    std::optional<swim::Change> change;
    if (two) {
        Outcome<Swum> found = swum_file(o.against);
        if (!found.ok()) return refused(o.against, two, found.problems());
        other = std::move(found).value();
        change = swim::compare(other->answer.draws, lure->answer.draws);
    }
    const swim::SwimAnswer& answer = lure->answer;
    if (o.json) {
        print(output::swim_json(lure->document, answer, change ? &*change : nullptr, o.speed_m_s));
        return done;
    }
    std::string text = lure->document.name + "\n\n" + words::ways[static_cast<std::size_t>(answer.way)] +
                       ". " + words::share_beats_in + std::to_string(answer.swims) + words::share_of +
                       std::to_string(answer.of) + words::share_assumptions + "\n";
    text += beats_text(*lure, o.speed_m_s, in) + joints_text(*lure, in);
    if (change) text += against_text(*other, *change);
    if (!answer.caution.empty()) text += answer.caution + '\n';
    print(text + output::swim_left_out() + '\n', in);
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
