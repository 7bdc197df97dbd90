#pragma once

#include <string_view>

namespace evenfall::materials {

/// Where a number in the tables comes from. Shown beside it on the page and on paper.
enum class Provenance {
    read,        ///< read in the named source
    second_hand, ///< read in a transcription or reprint of the named source
    computed,    ///< follows from the named formula
    memory,      ///< from memory, not checked again: check before relying on it
    practice,    ///< common practice, no source
};

/// One tabulated number, its relative standard deviation (`spread`) and its source.
struct SourcedValue {
    double value = 0.0;
    double spread = 0.0;
    Provenance provenance = Provenance::memory;
    std::string_view source;
};

} // namespace evenfall::materials
