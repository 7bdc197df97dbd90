#pragma once

#include "base/outcome.hpp"
#include "body/body.hpp"
#include "ledger/line.hpp"

namespace evenfall {

/// A document as far as its ledger, without the answers: a fraction of their time.
struct Built {
    shape::Body body;
    ledger::Ledger ledger;
};

/// Refuses what evaluate() refuses.
[[nodiscard]] Outcome<Built> build(const document::Document& document);

} // namespace evenfall
