// Looks for lures and logs that take long to answer. The engine is told how long each verb took, in steps of
// half an octave, so that a slower input counts as something new. Time breaks no law here: it is measured,
// and with EVENFALL_SLOW set to a folder the slowest input of each verb is kept there, to be timed natively
// by tests/bench/slow_bench.cpp once it is in the corpus.

#include "fuzz/slow_verbs.hpp"

#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <string>

namespace {

using namespace evenfall;

constexpr std::size_t buckets = 40;
constexpr double first_bucket_s = 20e-6;

#if defined(__clang__)
__attribute__((section("__libfuzzer_extra_counters")))
#endif
std::uint8_t reached[fuzz::slow_figures * buckets];

std::size_t bucket_of(double seconds) {
    const double octaves = std::log2(std::max(seconds / first_bucket_s, 1.0));
    return std::min(static_cast<std::size_t>(2.0 * octaves), buckets - 1);
}

/// Keeps the input of a verb where it is the slowest so far.
void keep_slowest(std::size_t what, double seconds, const std::uint8_t* data, std::size_t size) {
    static fuzz::SlowTimes slowest{};
    const char* folder = std::getenv("EVENFALL_SLOW");
    if (folder == nullptr || seconds <= slowest[what]) return;
    slowest[what] = seconds;
    const std::string path = std::string(folder) + "/" + fuzz::slow_name(what);
    std::FILE* file = std::fopen(path.c_str(), "wb");
    if (file == nullptr) return;
    std::fwrite(data, 1, size, file);
    std::fclose(file);
    std::fprintf(stderr, "slowest: %s %.1f ms\n", fuzz::slow_name(what), 1e3 * seconds);
}

} // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
    fuzz::Bytes bytes(data, size);
    const auto input = fuzz::SlowInputs(bytes).draw();
    if (!input) return 0;
    const auto times = fuzz::slow_times(input->asked % fuzz::slow_asked, *input);
    if (!times) return 0;
    for (std::size_t what = 0; what < fuzz::slow_figures; ++what) {
        const double seconds = (*times)[what];
        if (!(seconds > 0.0)) continue;
        reached[what * buckets + bucket_of(seconds)] = 1;
        keep_slowest(what, seconds, data, size);
    }
    return 0;
}
