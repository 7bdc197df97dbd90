#include "reach/moves.hpp"

namespace evenfall::reach {

std::vector<Move> moves_of(const Piece& piece) {
    std::vector<Move> out;
    add_hole_moves(piece, out);
    add_bought_moves(piece, out);
    add_place_moves(piece, out);
    add_shape_moves(piece, out);
    return out;
}

} // namespace evenfall::reach
