#pragma once

// The public face of the core: read a document, evaluate it, plan its lead, write it, share it.
// Data flows one way: document → body → ledger → water → answers.

#include "answers/answers.hpp"
#include "bench/lead/lead_plan.hpp"
#include "document/link.hpp"
#include "document/read.hpp"
#include "document/write.hpp"
