#pragma once

#include "workshop/tail_pour.hpp"
#include "workshop/tail_pull.hpp"

#include <string>

namespace evenfall::output {

/// A soft tail with a drawn shape, its effect on the lure, its mould and its plastic, as indented JSON with
/// units in the keys. The keys are the program's `--json` contract: volume_cm3, mass_g, in_water_g of the
/// tail alone; with, without and pull of the lure; mould; plastic.
[[nodiscard]] std::string tail_json(const document::Document& document, const Evaluation& evaluation,
                                    const tail::TailEffect& tail_effect, const tail::TailCasting& pour);

} // namespace evenfall::output
