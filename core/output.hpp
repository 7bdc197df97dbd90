#pragma once

// Answers as JSON, as text for the bench, as a build sheet; a text as a square code.

#include "document/json_guard.hpp"
#include "document/json_text.hpp"
#include "output/answers_json.hpp"
#include "output/bench_text.hpp"
#include "output/glue_json.hpp"
#include "output/joints_json.hpp"
#include "output/log_csv.hpp"
#include "output/mix_json.hpp"
#include "output/numbers.hpp"
#include "output/reach_json.hpp"
#include "output/sheet/sheet.hpp"
#include "output/sheet/writers.hpp"
#include "output/square_code.hpp"
#include "output/swim_json.hpp"
#include "output/tail_json.hpp"
#include "output/trees.hpp"
#include "output/uncertainty_json.hpp"
#include "output/water_json.hpp"
