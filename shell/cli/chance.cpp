#include "cli/commands.hpp"
#include "cli/files.hpp"
#include "cli/table.hpp"
#include "cli/words.hpp"
#include "evenfall.hpp"
#include "output.hpp"

#include <cmath>
#include <memory>

namespace evenfall::cli {
namespace {

using units::number_text;
using units::Unit;
using Side = Table::Side;

std::string plus_minus(const Estimate& e, Unit unit, int decimals) {
    return number_text(e.value, unit, decimals) + " ± " + number_text(e.sigma, unit, decimals);
}

std::string percent(double share) {
    return number_text(share, Unit::percent, 0) + " %";
}

std::string answers_text(const Uncertainty& s) {
    Table table({Side::left, Side::right, Side::right});
    table.row({"finished", "now", "spread before any reading"});
    table.row(
        {"mass g", plus_minus(s.mass_kg, Unit::gram, 2), number_text(s.mass_kg.sigma_before, Unit::gram, 2)});
    table.row({"in water g", plus_minus(s.in_water_kg, Unit::gram, 2),
               number_text(s.in_water_kg.sigma_before, Unit::gram, 2)});
    if (s.fall_m_s) {
        table.row({"fall mm/s", plus_minus(*s.fall_m_s, Unit::mm_per_s, 0),
                   number_text(s.fall_m_s->sigma_before, Unit::mm_per_s, 0)});
    }
    table.row({"pitch °", plus_minus(s.pitch_rad, Unit::degree, 1),
               number_text(s.pitch_rad.sigma_before, Unit::degree, 1)});
    const Interval& most = s.fall_50_80_95_m_s[1];
    const auto speed = [](double v) { return number_text(v, Unit::mm_per_s, 0); };
    std::string text = table.text() + "Four in five such lures ";
    if (!(most.high > 0.0)) return text + "or more float.\n";
    text += most.low > 0.0 ? "fall at " + speed(most.low) + " to " : std::string("float, or fall at up to ");
    return text + speed(most.high) + " mm/s.\n";
}

std::string stages_text(const Uncertainty& s) {
    Table table({Side::left, Side::right, Side::right, Side::right, Side::right});
    table.row({"Stage", "dry g", "held under g", "hung in tub g", "tub fall mm/s"});
    for (const StagePrediction& b : s.stages) {
        table.row({output::stage_name(b.stage), plus_minus(b.mass_kg, Unit::gram, 2),
                   plus_minus(b.displaced_kg, Unit::gram, 2), plus_minus(b.in_tub_kg, Unit::gram, 2),
                   b.tub_fall_m_s ? plus_minus(*b.tub_fall_m_s, Unit::mm_per_s, 0)
                                  : no_fall_words({b.in_tub_kg.value})});
    }
    return table.text();
}

std::string next_text(const Uncertainty& s) {
    Table table({Side::left, Side::left, Side::right, Side::right, Side::right});
    table.row({"Next reading", "stage", "good to", "in water ± g", "chance, put right"});
    std::size_t shown = 0;
    for (const NextReading& n : s.next) {
        if (++shown > 6) break;
        table.row({output::reading_name(n.kind) + (n.with_dry_weight ? ", and dry" : ""),
                   output::stage_name(n.stage),
                   units::reading_text(n.sigma, document::number_of(n.kind).judged_in),
                   number_text(n.in_water_sigma_kg, Unit::gram, 2), percent(n.chance)});
    }
    return table.text();
}

/// What is asked besides the hang.
const char* asked_word(const document::Document& document) {
    return document.targets.by == document::TargetBy::in_water ? "weight in water" : "first fall";
}

std::string draws_text(const document::Document& document, const Draws& d) {
    Table table({Side::left, Side::right, Side::right, Side::right});
    table.row(
        {"of " + std::to_string(d.count) + " drawn", "middle", "half lie from – to", "95 % lie from – to"});
    const auto row = [&](const std::string& what, const Quantiles& x, Unit unit, int decimals) {
        const auto t = [&](double v) { return number_text(v, unit, decimals); };
        table.row(
            {what, t(x.median), t(x.low_50) + " – " + t(x.high_50), t(x.low_95) + " – " + t(x.high_95)});
    };
    row("mass g", d.mass_kg, Unit::gram, 2);
    row("in water g", d.in_water_kg, Unit::gram, 2);
    if (d.floats < 1.0)
        row(d.floats > 0.0 ? "fall mm/s, where it sinks" : "fall mm/s", d.fall_m_s, Unit::mm_per_s, 0);
    row("pitch °", d.pitch_rad, Unit::degree, 1);
    return table.text() + "Float: " + percent(d.floats) + ". Right " + asked_word(document) + ": " +
           percent(d.chances.fall) + ", hang: " + percent(d.chances.pitch) +
           ", both: " + percent(d.chances.both) + ".\n";
}

struct ChanceOptions : PresetOptions {
    std::optional<int> draws;
};

int run(const ChanceOptions& o) {
    if (o.draws && (*o.draws < 1 || *o.draws > 1000000))
        return report({misuse("--draws", "Draw from 1 to 1000000 lures.")});
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return report(document.problems());
    const Outcome<Uncertainty> s = evenfall::uncertainty(*document);
    if (!s.ok()) return report(s.problems());
    std::optional<DoNow> now;
    Outcome<DoNow> found = do_now(*document);
    if (!found.ok()) return report(found.problems());
    now = std::move(found).value();
    std::optional<Draws> draws;
    if (o.draws) {
        const Outcome<Draws> drawn = uncertainty_by_draws(*document, static_cast<std::size_t>(*o.draws));
        if (!drawn.ok()) return report(drawn.problems());
        draws = *drawn;
    }
    if (o.json) {
        print(output::uncertainty_json(*document, *s, now, draws));
        return done;
    }
    std::string text = document->name + (s->lure > 0 ? ", lure " + std::to_string(s->lure + 1) : "") +
                       "\n\n" + answers_text(*s) + '\n';
    const bool by_weight = document->targets.by == document::TargetBy::in_water;
    const std::string band =
        by_weight ? grams(s->weight_band_kg) + " g" : percent(document->targets.fall_band);
    text += std::string("Chance that the ") + asked_word(*document) + " is right (band ±" + band +
            ") and the hang (±" + degrees(document->targets.pitch_band_rad) +
            "): " + percent(s->chances_now.both) + " as it stands, " + percent(s->chances_corrected.both) +
            " with the lead put right for what is known now.\n\n";
    text += stages_text(*s) + '\n';
    for (const ReadingFit& v : s->readings) {
        if (v.warning.empty()) continue;
        text += "! " + v.warning + '\n';
        for (const std::string& why : v.explanations)
            text += "    " + why + '\n';
    }
    if (now) {
        text += "Do now:\n";
        for (const std::string& step : now->steps)
            text += "  " + step + '\n';
        for (const Problem& p : now->shortfalls)
            text += "  ! " + p.sentence + '\n';
        text += '\n';
    }
    if (!s->trim.sentence.empty()) text += s->trim.sentence + "\n\n";
    text += next_text(*s);
    if (draws) text += '\n' + draws_text(*document, *draws);
    print(text);
    return done;
}

} // namespace

void chance(Options& options) {
    const auto o =
        declare<ChanceOptions>(options, "how sure the answers are, what to do now, what to read next", run);
    options.read("--draws", read_whole, o->draws, "N", "and by N lures drawn by chance");
}

} // namespace evenfall::cli
