#pragma once

#include "document/log.hpp"

namespace evenfall::bench {

/// A lure at this stage, in the middle of a sentence: "the lure sealed".
[[nodiscard]] constexpr const char* stage_words(Stage stage) {
    switch (stage) {
    case Stage::carved:
        return "carved";
    case Stage::drilled:
        return "drilled";
    case Stage::hardware:
        return "with its hardware in";
    case Stage::leaded:
        return "leaded and capped";
    case Stage::sealed:
        return "sealed";
    case Stage::painted:
        return "painted";
    case Stage::clear_coated:
        return "clear coated";
    case Stage::rigged:
        return "rigged";
    }
    return "";
}

} // namespace evenfall::bench
