#pragma once

#include "bench/lead/candidates.hpp"
#include "reach/ways.hpp"

#include <functional>
#include <vector>

namespace evenfall::reach {

/// One change of a lure in one direction, in steps that a bench can work to: 0.1 mm of a line, half a
/// millimetre of a place, a size of bit or hook.
struct Move {
    Kind kind = Kind::thickness;
    int most = 1; ///< steps
    double once = 0.0;
    double each = 0.0; ///< cost of a step
    /// Changes a document by so many steps. It may have been changed otherwise since the move was made, but
    /// its lists are as long or longer.
    std::function<void(document::Document&, int)> apply;
    std::function<Sentence(int)> says;

    [[nodiscard]] double cost(int steps) const { return once + each * steps; }
};

/// The lure that moves are looked for.
struct Piece {
    const document::Document& document; ///< as it lies on the bench
    const ledger::LedgerInputs& inputs;
    const std::vector<lead::Candidate>& candidates;
    bool is_wood = false;       ///< nothing is carved yet: wood, shape and joints are free
    Stage done = Stage::carved; ///< of a piece that there is: stages up to here stay
};

/// All moves that the piece still allows, both directions.
[[nodiscard]] std::vector<Move> moves_of(const Piece& piece);

// The same by what is changed.
void add_shape_moves(const Piece& piece, std::vector<Move>& out);
void add_hole_moves(const Piece& piece, std::vector<Move>& out);
void add_bought_moves(const Piece& piece, std::vector<Move>& out); ///< wood, metal, hooks, coats, tail
void add_place_moves(const Piece& piece, std::vector<Move>& out);  ///< hangers and joints

} // namespace evenfall::reach
