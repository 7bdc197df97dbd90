#pragma once

#include "document/fields.hpp"
#include "document/link.hpp"
#include "document/write.hpp"
#include "evenfall.hpp"
#include "fuzz/finite.hpp"
#include "fuzz/law.hpp"

namespace evenfall::fuzz {

inline void must_explain(const Problems& problems) {
    must(!problems.empty() && problems.size() <= document::max_problems,
         "a refusal tells one to twenty problems");
    for (const Problem& problem : problems) {
        must(!problem.sentence.empty() && problem.sentence.text(evenfall::units::inches).size() < 1500,
             "every problem has a sentence of bearable length");
    }
}

/// Laws of every document that the reader took: text and link keep it.
inline void must_round_trip(const document::Document& document) {
    const std::string text = write_document(document);
    const Outcome<document::Document> again = read_document(text);
    must(again.ok(), "what was written is read");
    must(write_document(*again) == text, "read and written again, the text is the same");
    const std::string link = write_link(document);
    const Outcome<document::Document> linked = read_link(link);
    must(linked.ok() || link.size() > document::max_link_bytes,
         "what was linked is read, or its link is too long");
    if (linked.ok()) must(document::same(*linked, document), "a link keeps the document");
}

/// The same, and what evaluate() makes of it is sound.
inline void must_keep(const document::Document& document) {
    must_round_trip(document);
    const Outcome<Evaluation> evaluation = evaluate(document);
    if (evaluation.ok())
        must_be_finite(*evaluation);
    else
        must_explain(evaluation.problems());
}

} // namespace evenfall::fuzz
