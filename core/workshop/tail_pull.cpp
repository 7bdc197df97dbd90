#include "workshop/tail_pull.hpp"

namespace evenfall::tail {

Outcome<TailEffect> tail_effect(const document::Document& document, const Evaluation& evaluation) {
    document::Document bare = document;
    bare.tail.reset();
    auto without = evaluate(bare);
    if (!without) return without.problems();
    TailEffect result{{}, std::move(without).value().answers};
    for (const ledger::Line& line : evaluation.ledger) {
        if (line.kind == ledger::Kind::tail) result.own += line;
    }
    return result;
}

} // namespace evenfall::tail
