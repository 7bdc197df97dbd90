#pragma once

// Other languages than English.

#include "words/catalogues.hpp"
#include "words/language.hpp"
