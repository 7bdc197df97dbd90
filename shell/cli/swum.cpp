#include "cli/swum.hpp"

#include "workshop.hpp"

namespace evenfall::cli {

Outcome<swim::SwimAnswer> swum(const document::Document& document) {
    const Outcome<Evaluation> evaluation = evaluate(document);
    if (!evaluation.ok()) return evaluation.problems();
    const Outcome<swim::Chain> chain = swim::chain_of(document, *evaluation);
    if (!chain.ok()) return chain.problems();
    return swim::swim(*chain);
}

} // namespace evenfall::cli
