#pragma once

// Geometry of a document: curves, cut segments, holes, hinges, a soft tail by its lines.

#include "body/board.hpp"
#include "body/body.hpp"
#include "body/bore.hpp"
#include "body/curve.hpp"
#include "body/drawing_check.hpp"
#include "body/fittings.hpp"
#include "body/hinge_place.hpp"
#include "body/lines.hpp"
#include "body/tail_loft.hpp"
