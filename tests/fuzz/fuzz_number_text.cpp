// Any bytes as a typed number: refused, or finite and kept through writing.

#include "base/number_text.hpp"
#include "base/read_number.hpp"
#include "fuzz/law.hpp"

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <string>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    using namespace evenfall;
    const std::string text(reinterpret_cast<const char*>(bytes), size);
    for (const units::Unit unit :
         {units::Unit::mm, units::Unit::gram, units::Unit::s_per_ft, units::Unit::degree}) {
        const auto value = units::read_number(text, unit);
        if (!value.ok()) {
            fuzz::must(!value.problems().front().sentence.empty(), "a refusal has a sentence");
            continue;
        }
        fuzz::must(std::isfinite(*value), "an accepted number is finite");
        const std::string shown = units::number_text(*value, unit, 6);
        fuzz::must(!shown.empty(), "an accepted number can be shown");
    }
    return 0;
}
