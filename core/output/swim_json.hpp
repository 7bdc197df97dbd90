#pragma once

#include "document/document.hpp"
#include "water/swim/compare.hpp"
#include "water/swim/swim.hpp"

#include <optional>
#include <string>

namespace evenfall::output {

/// How a lure swims, as indented JSON with units in the keys; the keys are the program's `--json` contract:
/// verdict, swims, of, beats_per_m {low, mid, high} (null without a beat) by all that is known, counts, how
/// many counts of this lure that rests on, beats_per_m_worked_out {low, mid, high} before them, joints[]
/// {swing_deg, at_stop}, lag_deg[], tail_swing_mm {low, mid, high}, caution (null where there is none), and
/// left_out, what the answer leaves out. Against another lure: against {beats, swing (more, less, not told),
/// beats_ratio[], swing_ratio[], both_swim, swims_before}. At a speed [m/s]: speed_m_s, and beats_per_s {low,
/// mid, high}.
[[nodiscard]] std::string swim_json(const document::Document& document, const swim::SwimAnswer& answer,
                                    const swim::Change* against_other = nullptr,
                                    std::optional<double> speed_m_s = {});

[[nodiscard]] const char* way_word(swim::Way way); ///< "swims", "swims once jerked", …
[[nodiscard]] const char* told_word(swim::Told told);

/// What stands beside every answer.
[[nodiscard]] const char* swim_left_out();

} // namespace evenfall::output
