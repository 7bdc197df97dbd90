#pragma once

#include "base/sentence.hpp"
#include "document/document.hpp"

#include <vector>

namespace evenfall::reach {

/// A recipe at another size, its lead not planned yet.
struct Resized {
    document::Document document;
    std::vector<Sentence> chosen; ///< what of the shop's sizes is another one now
};

/// The recipe with every length of its shape times `share`, as of a new piece: no log, nothing drilled.
/// Hooks, wire, pins and bits are those of the shop nearest to `sizes` times what they were. Coats stay as
/// thick; what is given by its mass goes with the surface (coats) or the volume (soft plastic). A weight in
/// water that is asked goes with the volume.
[[nodiscard]] Resized resized(const document::Document& document, double share, double sizes);

} // namespace evenfall::reach
