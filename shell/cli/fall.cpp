#include "cli/commands.hpp"
#include "cli/water_text.hpp"
#include "cli/words.hpp"

#include <memory>

namespace evenfall::cli {
namespace {

struct FallOptions : PresetOptions {
    double depth_m = 2.0;
};

Ended run(const FallOptions& o, const Printing& in) {
    const Outcome<document::Document> document = load(o.preset);
    if (!document.ok()) return document.problems();
    const Outcome<Evaluation> evaluation = evaluate(*document);
    if (!evaluation.ok()) return evaluation.problems();
    const auto water = output::in_water(*document, *evaluation, o.depth_m);
    if (!water.ok()) return water.problems();
    if (o.json) {
        print(output::water_json(*document, *water, in.json));
    } else {
        print(document->name + "\n\n" + falls_text(*water, evaluation->answers, in) +
                  near_neutral_text(*document, in) + floating_text(*water, in) +
                  track_text(*water, evaluation->answers, in) + warnings_text(evaluation->answers, in) +
                  water_warnings_text(*water, in),
              in);
    }
    return done;
}

} // namespace

void fall(Options& options) {
    const auto o =
        declare<FallOptions>(options, "its ways of falling or floating, and the way down from rest", run);
    options.number("--depth", o->depth_m, units::Unit::m, "DEPTH",
                   "how far down: 2m, 6ft; 2 m where not given");
}

} // namespace evenfall::cli
