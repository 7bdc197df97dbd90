#pragma once

#include <cstdio>
#include <cstdlib>

namespace evenfall::fuzz {

/// Stops the fuzzer when a law is broken; refusals of bad input break none.
inline void must(bool holds, const char* law) {
    if (holds) return;
    std::fprintf(stderr, "broken: %s\n", law);
    std::abort();
}

} // namespace evenfall::fuzz
