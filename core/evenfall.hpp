#pragma once

// The public face of the core. Data flows one way: document → body → ledger → water → answers.
//
// This header reads, checks, writes and shares a document, evaluates it, plans its lead and says how sure the
// answers are; with units, numbers as typed, woods, metals and other materials. The other headers beside it
// offer one room each: body.hpp (geometry), water.hpp (hang, afloat, fall), workshop.hpp (joints, glue,
// resin, stock, tails), output.hpp (answers as JSON, text and build sheet), picture.hpp (outline from a
// picture).

#include "answers/answers.hpp"
#include "base/number_text.hpp"
#include "base/outcome.hpp"
#include "base/read_number.hpp"
#include "base/trade.hpp"
#include "base/unit.hpp"
#include "base/vec3.hpp"
#include "base/version.hpp"
#include "bench/compare.hpp"
#include "bench/lead/lead_plan.hpp"
#include "bench/uncertainty/uncertainty.hpp"
#include "document/check.hpp"
#include "document/coat_traits.hpp"
#include "document/document.hpp"
#include "document/link.hpp"
#include "document/own_wood.hpp"
#include "document/read.hpp"
#include "document/spelling.hpp"
#include "document/work_done.hpp"
#include "document/write.hpp"
#include "ledger/carved_size.hpp"
#include "ledger/fold.hpp"
#include "ledger/hung_on.hpp"
#include "materials/board.hpp"
#include "materials/cautions.hpp"
#include "materials/figure.hpp"
#include "materials/solids.hpp"
#include "materials/water_properties.hpp"
#include "materials/wire_twist.hpp"
#include "materials/woods.hpp"
