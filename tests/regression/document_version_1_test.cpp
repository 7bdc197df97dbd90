// Files and links as version 1 of the form was written. They open for ever: never change what lies in
// version-1.

#include "document/write.hpp"
#include "evenfall.hpp"

#include <catch2/catch_test_macros.hpp>
#include <catch2/matchers/catch_matchers_floating_point.hpp>

#include <fstream>
#include <iterator>
#include <string>

using namespace evenfall;
using Catch::Matchers::WithinAbs;

namespace {

struct Frozen {
    const char* file;
    double mass_g; ///< as the program that wrote the file gave it
    double in_water_g;
};

constexpr Frozen lures[] = {{"millrace-170", 66.770011, 3.116447},
                            {"reedline-120", 41.91369, -1.499999},
                            {"quarry-230", 150.866399, 0.0},
                            {"estuary-150", 62.909207, 10.381873}};

std::string frozen_text(const std::string& name) {
    std::ifstream file(EVENFALL_TESTS_DIR "/regression/version-1/" + name, std::ios::binary);
    REQUIRE(file.good());
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

} // namespace

TEST_CASE("documents and links of version 1 open, say the same, and weigh what they weighed", "[document]") {
    for (const Frozen& lure : lures) {
        CAPTURE(lure.file);
        const auto read = read_document(frozen_text(lure.file + std::string(".json")));
        const auto linked = read_link(frozen_text(lure.file + std::string(".link")));
        REQUIRE(read.ok());
        REQUIRE(linked.ok());
        CHECK(document::same(*read, *linked));
        const auto evaluation = evaluate(*read);
        REQUIRE(evaluation.ok());
        // Half of the last digit that was printed.
        CHECK_THAT(evaluation->answers.mass.kg * 1e3, WithinAbs(lure.mass_g, 0.5e-6));
        CHECK_THAT(evaluation->answers.in_water.kg * 1e3, WithinAbs(lure.in_water_g, 0.5e-6));
    }
}
