#pragma once

#include "answers/answers.hpp"
#include "bench/uncertainty/uncertainty.hpp"

#include <optional>

namespace evenfall {

/// The answers with what the bench log makes of them: of this piece of wood, where it has been weighed. The
/// same ones without an uncertainty or without readings. Stages and segments stay as they were.
[[nodiscard]] Answers believed(Answers answers, const Uncertainty* uncertainty);

struct BelievedAnswers {
    Answers answers;
    std::optional<Uncertainty> uncertainty; ///< absent where the core refuses it
};

/// From a document and its readings to its answers: stages and segments, too, are of the document as the
/// readings correct it. Refuses what evaluate() refuses.
[[nodiscard]] Outcome<BelievedAnswers> believed_answers(const document::Document& document);

} // namespace evenfall
