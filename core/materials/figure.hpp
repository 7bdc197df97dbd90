#pragma once

#include <string_view>

namespace evenfall::materials {

/// How a figure came into the tables. Shown beside it in the page and on paper.
enum class Provenance {
    read,        ///< read in the named source
    second_hand, ///< read in a transcription or reprint of the named source
    computed,    ///< follows from the named formula
    memory,      ///< recalled, not re-read: check before relying on it
    practice,    ///< common practice, no source
};

/// One tabulated number with its relative spread (one standard deviation) and where it comes from.
struct Figure {
    double value = 0.0;
    double spread = 0.0;
    Provenance provenance = Provenance::memory;
    std::string_view source;
};

} // namespace evenfall::materials
