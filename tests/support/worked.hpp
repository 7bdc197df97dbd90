#pragma once

#include "answers/answers.hpp"

#include <catch2/catch_test_macros.hpp>

namespace evenfall::support {

/// A document worked through; the test ends with the problems where it is refused.
inline Evaluation worked(const document::Document& document) {
    auto outcome = evaluate(document);
    for (const Problem& p : outcome.ok() ? Problems{} : outcome.problems())
        UNSCOPED_INFO(p.path << ": " << p.sentence.text(evenfall::units::metric));
    REQUIRE(outcome.ok());
    return std::move(outcome).value();
}

} // namespace evenfall::support
