#pragma once

// The outline of a sketch or of a carved piece from its picture.

#include "picture/outline.hpp"
#include "picture/profile.hpp"
