#pragma once

// The table of a document's fields: key, unit, limits and words of each, asked by member.

#include "document/field_of.hpp"
#include "document/field_table.hpp"
#include "document/fields.hpp"
