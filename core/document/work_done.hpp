#pragma once

// What has been done to the piece on the bench: how far the log says it is, and its holes before and after.

#include "document/document.hpp"

namespace evenfall::document {

/// The latest lure in the log, and the latest stage of which that lure has a reading.
struct LogState {
    int lure = 0;
    Stage stage = Stage::carved;
    bool has_readings = false; ///< of that lure
};
[[nodiscard]] LogState log_state(const Document& document);

/// True where the hole is in the wood, whoever asks: no plan may make it shallower.
[[nodiscard]] inline bool is_cut(const Hole& hole) {
    return hole.use != HoleUse::ballast && hole.depth_m > 0.0;
}

/// How far the holes themselves say the work is: leaded where every hole that is cut or to be cut has its
/// lead in, drilled where every one is cut, else carved. Holes that stay as they are say nothing.
[[nodiscard]] Stage stage_of_holes(const Document& document);

/// The document with its holes marked by the stage of the piece: those with a depth are drilled from that
/// stage on, and have their lead in from the leaded stage on.
[[nodiscard]] Document as_it_lies(Document document, Stage stage);
/// The same by log and holes.
[[nodiscard]] Document as_it_lies(Document document);

/// Unmarks every hole that was drilled or leaded: another piece of wood.
void begin_anew(std::vector<Hole>& holes);

/// Puts a reading at the end of the log. With the first of another lure the holes begin anew.
void put_down(Document& document, Reading reading);

/// The document with its holes as they were before that change.
[[nodiscard]] Document before_change(Document document, int change);

/// Changes the holes of the piece. Readings of the drilled piece and later ones stay readings of the holes as
/// they were. `holes` begins with the document's own, in their order; new ones stand behind them.
void change_holes(Document& document, const std::vector<Hole>& holes);

} // namespace evenfall::document
