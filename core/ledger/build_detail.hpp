#pragma once

// Shared by the files that build the ledger. Private to this folder.

#include "base/sentence.hpp"
#include "ledger/build.hpp"

#include <algorithm>
#include <string>

namespace evenfall::ledger {

[[nodiscard]] Problem unknown_material(std::string path, const std::string& id);

/// Wood with its spread of density; a negative volume is wood that is gone.
[[nodiscard]] Line wood_line(const LedgerInputs& inputs, Kind kind, std::size_t item, int segment,
                             Stage stage, double volume_m3, const Vec3& at_m);

/// Wood removed from each segment by pockets and embedded parts.
class RemovedWood {
public:
    explicit RemovedWood(const shape::Body& body) : body_(body), taken_m3_(body.segments.size(), 0.0) {}

    /// Counts the volume as removed; true where this step removes the segment's last wood.
    bool removes_last_wood(int segment, double volume_m3);

private:
    const shape::Body& body_;
    std::vector<double> taken_m3_;
};

/// All lines of all coats. Problems: an unknown material, a coat without a surface.
[[nodiscard]] Problems append_coats(const LedgerInputs& inputs,
                                    const std::vector<shape::PocketPiece>& pockets, Ledger& out);

/// Wire and bores of hinges that weigh themselves, and of hangers with their glue. Problems: no wood left.
[[nodiscard]] Problems append_fittings(const LedgerInputs& inputs, RemovedWood& taken, Ledger& out);

/// Glue, or water, in the holes round hinge eyes, for hinges that name their glue or weigh themselves, and
/// the wood drilled out for it. No standard deviation: it is below a scale's resolution.
void append_glue(const LedgerInputs& inputs, Ledger& out);

} // namespace evenfall::ledger
