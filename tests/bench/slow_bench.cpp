// What the fuzzer for slow inputs came to (tests/fuzz/corpus/slow), natively: the worst of each verb, draws
// and sheet left out. Measured, never tested on time.

#include "fuzz/slow_verbs.hpp"

#include <catch2/catch_test_macros.hpp>

#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <string>

using namespace evenfall;

namespace {

/// The least of three runs; of what takes long, of one.
fuzz::SlowTimes least_of(std::size_t asked, const fuzz::SlowInput& input) {
    constexpr double long_s = 0.2;
    fuzz::SlowTimes least{};
    for (int run = 0; run < 3; ++run) {
        const auto now = fuzz::slow_times(asked, input);
        if (!now) break;
        for (std::size_t what = 0; what < fuzz::slow_figures; ++what)
            least[what] = run > 0 ? std::min(least[what], (*now)[what]) : (*now)[what];
        if (*std::max_element(now->begin(), now->end()) > long_s) break;
    }
    return least;
}

} // namespace

TEST_CASE("slow inputs", "[bench]") {
    fuzz::SlowTimes worst{};
    std::array<std::string, fuzz::slow_figures> of;
    for (const auto& entry : std::filesystem::directory_iterator(EVENFALL_TESTS_DIR "/fuzz/corpus/slow")) {
        std::ifstream file(entry.path(), std::ios::binary);
        const std::string text{std::istreambuf_iterator<char>(file), {}};
        fuzz::Bytes bytes(reinterpret_cast<const std::uint8_t*>(text.data()), text.size());
        const auto input = fuzz::SlowInputs(bytes).draw();
        if (!input) continue;
        for (std::size_t asked = 0; asked < fuzz::slow_asked; ++asked) {
            const fuzz::SlowTimes least = least_of(asked, *input);
            for (std::size_t what = 0; what < fuzz::slow_figures; ++what) {
                if (least[what] <= worst[what]) continue;
                worst[what] = least[what];
                of[what] = entry.path().filename().string();
            }
        }
    }
    for (std::size_t what = 0; what < fuzz::slow_figures; ++what)
        std::printf("| %s | %.1f ms | %s |\n", fuzz::slow_name(what), 1e3 * worst[what], of[what].c_str());
}
