// How long a build sheet takes. Measured, never tested on time.

#include "evenfall.hpp"
#include "look/font_data.hpp"
#include "sheet/sheet.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <fstream>
#include <iterator>
#include <string>

using namespace evenfall;

TEST_CASE("sheet", "[bench]") {
    using namespace shell::look;
    for (const std::string name : {"millrace-170", "quarry-230"}) {
        std::ifstream file(std::string(EVENFALL_PRESETS_DIR) + "/" + name + ".json");
        const auto document = read_document({std::istreambuf_iterator<char>(file), {}});
        REQUIRE(document.ok());
        SheetOptions options;
        options.typefaces = {{reinterpret_cast<const char*>(font_regular), font_regular_size},
                             {reinterpret_cast<const char*>(font_semibold), font_semibold_size}};
        options.format = SheetFormat::pdf;
        BENCHMARK("sheet " + name) { return build_sheet(*document, options); };
    }
}
