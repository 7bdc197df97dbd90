#pragma once

#include "document/document.hpp"

namespace evenfall::document {

/// Stretch a lure along one axis by a factor > 0: body, joints, places of holes, pockets, hangers and parts,
/// and the soft tail with its tenon. Depths of holes and masses of their fills follow the height. Bits, gaps,
/// wire, masses of parts and coats stay, since they are bought.
void stretch_along(Document& document, double factor);
void stretch_across(Document& document, double factor);
void stretch_up(Document& document, double factor);

/// The soft tail alone, each way by its factor > 0; the tenon stays.
void stretch_tail(Tail& tail, double along, double up, double across);

} // namespace evenfall::document
