#include "workshop/tail_pull.hpp"

namespace evenfall::tail {

Outcome<TailEffect> tail_effect(const document::Document& document, const Evaluation& evaluation) {
    document::Document bare = document;
    bare.tail.reset();
    auto without = evaluate(bare);
    if (!without) return without.problems();
    return TailEffect{ledger::sum_of(evaluation.ledger, ledger::Kind::tail),
                      std::move(without).value().answers};
}

} // namespace evenfall::tail
