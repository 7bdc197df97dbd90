// A reporter for comparisons: the least time of each benchmark in µs, a line each. Other programs on the
// machine only ever add time.

#include <catch2/benchmark/detail/catch_benchmark_stats.hpp>
#include <catch2/reporters/catch_reporter_registrars.hpp>
#include <catch2/reporters/catch_reporter_streaming_base.hpp>

#include <algorithm>
#include <ostream>

namespace {

class LeastTimes final : public Catch::StreamingReporterBase {
public:
    using StreamingReporterBase::StreamingReporterBase;
    static std::string getDescription() { return "The least time of each benchmark in µs"; }

    void benchmarkEnded(const Catch::BenchmarkStats<>& stats) override {
        m_stream << std::min_element(stats.samples.begin(), stats.samples.end())->count() / 1000.0 << ' '
                 << stats.info.name << '\n';
    }
};
CATCH_REGISTER_REPORTER("least", LeastTimes)

} // namespace
