#pragma once

// When lead alone cannot: ways out, what the holes can reach, changes by hand, and a recipe's whole family.

#include "document/scale.hpp"
#include "reach/by_hand.hpp"
#include "reach/family.hpp"
#include "reach/reach_map.hpp"
#include "reach/ways.hpp"
