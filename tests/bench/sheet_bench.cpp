// How long a build sheet takes. Measured, never tested on time.

#include "evenfall.hpp"
#include "look/font_data.hpp"
#include "output/sheet/sheet.hpp"
#include "support/presets.hpp"

#include <catch2/benchmark/catch_benchmark.hpp>
#include <catch2/catch_test_macros.hpp>

#include <iterator>
#include <random>
#include <string>

using namespace evenfall;

TEST_CASE("sheet", "[bench]") {
    using namespace shell::look;
    for (const std::string name : {"millrace-170", "quarry-230"}) {
        const auto document = support::preset_named(name);
        SheetOptions options;
        options.typefaces = {{reinterpret_cast<const char*>(font_regular), font_regular_size},
                             {reinterpret_cast<const char*>(font_semibold), font_semibold_size}};
        options.format = SheetFormat::pdf;
        BENCHMARK("sheet " + name) {
            return build_sheet(document, options);
        };
        if (name != "quarry-230") continue;
        // A log of notes that no packing shortens: by far the longest link.
        std::mt19937 draw(7);
        document::Document wordy = document;
        for (std::size_t n = 0; n < document::max_readings; ++n) {
            document::Reading reading;
            reading.stage = Stage::carved;
            reading.mass_kg = 0.1;
            while (reading.note.size() < document::max_text)
                reading.note += static_cast<char>('a' + draw() % 26u);
            wordy.log.push_back(reading);
        }
        BENCHMARK("sheet " + name + " with a full log of notes") {
            return build_sheet(wordy, options);
        };
    }
}
