#include "cli/commands.hpp"
#include "cli/water_text.hpp"
#include "cli/words.hpp"

namespace evenfall::cli {

int fall(const Arguments& arguments) {
    const Outcome<document::Document> document = load(arguments.operand);
    if (!document.ok()) return report(document.problems());
    const Outcome<Evaluation> evaluation = evaluate(*document);
    if (!evaluation.ok()) return report(evaluation.problems());
    constexpr double usual_depth_m = 2.0;
    const auto water = output::in_water(*document, *evaluation, arguments.depth_m.value_or(usual_depth_m));
    if (!water.ok()) return report(water.problems());
    if (arguments.json) {
        print(output::water_json(*document, *water));
    } else {
        print(document->name + "\n\n" + falls_text(*water, evaluation->answers) + floating_text(*water) +
              track_text(*water, evaluation->answers) + warnings_text(evaluation->answers) +
              water_warnings_text(*water));
    }
    return done;
}

} // namespace evenfall::cli
