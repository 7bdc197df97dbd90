#pragma once

// A whole lure from a card of few choices; usual hooks.

#include "materials/tackle.hpp"
#include "starter/new_lure.hpp"
