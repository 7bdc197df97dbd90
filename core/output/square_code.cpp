#include "output/square_code.hpp"

#include <algorithm>
#include <cstdint>
#include <qrcodegen.h>

namespace evenfall {

Outcome<SquareCode> square_code(std::string_view text, int largest_side) {
    // A side has 17 + 4 × version squares (ISO/IEC 18004:2015 §5.3.1.1).
    const int largest = std::min((largest_side - 17) / 4, qrcodegen_VERSION_MAX);
    const auto refused = [&] {
        std::string sentence = "These ";
        sentence += std::to_string(text.size());
        sentence += " characters do not fit into a square code; use the link itself.";
        return Problem{ProblemCode::too_large, "", "", std::move(sentence)};
    };
    if (largest < qrcodegen_VERSION_MIN) return refused();
    const std::size_t room = qrcodegen_BUFFER_LEN_FOR_VERSION(static_cast<std::size_t>(largest));
    if (text.size() > room) return refused();
    std::vector<std::uint8_t> work(room), made(room);
    const std::string ended(text);
    if (!qrcodegen_encodeText(ended.c_str(), work.data(), made.data(), qrcodegen_Ecc_LOW,
                              qrcodegen_VERSION_MIN, largest, qrcodegen_Mask_AUTO, true)) {
        return refused();
    }
    SquareCode code;
    code.side = qrcodegen_getSize(made.data());
    code.dark.reserve(static_cast<std::size_t>(code.side) * static_cast<std::size_t>(code.side));
    for (int row = 0; row < code.side; ++row) {
        for (int column = 0; column < code.side; ++column)
            code.dark.push_back(qrcodegen_getModule(made.data(), column, row));
    }
    return code;
}

double printed_square_mm(const SquareCode& code) {
    constexpr double usual_mm = 0.5, widest_code_mm = 74.0;
    return std::min(usual_mm, widest_code_mm / whole_side(code));
}

std::vector<DarkRun> dark_runs(const SquareCode& code) {
    std::vector<DarkRun> runs;
    for (int row = 0; row < code.side; ++row) {
        for (int from = 0; from < code.side;) {
            int to = from;
            while (to < code.side && code.at(to, row))
                ++to;
            if (to > from) runs.push_back({from, row, to - from});
            from = std::max(to, from + 1);
        }
    }
    return runs;
}

std::string path_of(const SquareCode& code) {
    std::string path;
    for (const DarkRun& run : dark_runs(code)) {
        const std::string length = std::to_string(run.length);
        path.append("M")
            .append(std::to_string(run.column + quiet_squares))
            .append(" ")
            .append(std::to_string(run.row + quiet_squares));
        path.append("h").append(length).append("v1h-").append(length).append("z");
    }
    return path;
}

} // namespace evenfall
