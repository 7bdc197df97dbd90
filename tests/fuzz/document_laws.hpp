#pragma once

#include "evenfall.hpp"
#include "fuzz/law.hpp"
#include "preset/fields.hpp"
#include "preset/write.hpp"

#include <cmath>

namespace evenfall::fuzz {

inline void must_explain(const Problems& problems) {
    must(!problems.empty() && problems.size() <= preset::max_problems, "a refusal tells one to twenty problems");
    for (const Problem& problem : problems) {
        must(!problem.sentence.empty() && problem.sentence.size() < 1500, "every problem has a sentence of bearable length");
    }
}

inline void must_be_finite(const Answers& answers) {
    bool finite = std::isfinite(answers.mass_kg) && std::isfinite(answers.displaced_m3) && std::isfinite(answers.in_water_kg) &&
                  std::isfinite(answers.mass_sigma_kg) && std::isfinite(answers.in_water_sigma_kg) && std::isfinite(answers.bg_m) &&
                  std::isfinite(length(answers.g_m)) && std::isfinite(length(answers.b_m)) &&
                  std::isfinite(answers.pitch_rad.value_or(0.0)) && std::isfinite(answers.roll_rad.value_or(0.0));
    if (answers.fall) finite = finite && std::isfinite(answers.fall->speed_m_s);
    for (const StageAnswer& stage : answers.stages) {
        finite = finite && std::isfinite(stage.mass_kg) && std::isfinite(stage.in_water_kg) && std::isfinite(stage.in_tub_kg);
        if (stage.fall) finite = finite && std::isfinite(stage.fall->speed_m_s);
    }
    must(finite, "an accepted document has answers without NaN");
}

/// Laws of every document that the reader took.
inline void must_keep(const preset::Document& document) {
    const std::string text = write_document(document);
    const Outcome<preset::Document> again = read_document(text);
    must(again.ok(), "what was written is read");
    must(write_document(*again) == text, "read and written again, the text is the same");
    const Outcome<preset::Document> linked = read_link(write_link(document));
    must(linked.ok() || write_link(document).size() > 32 * 1024, "what was linked is read, or its link is too long");
    if (linked.ok()) must(preset::same(*linked, document), "a link keeps the document");

    const Outcome<Evaluation> evaluation = evaluate(document);
    if (evaluation.ok()) must_be_finite(evaluation->answers);
    else must_explain(evaluation.problems());
}

}  // namespace evenfall::fuzz
