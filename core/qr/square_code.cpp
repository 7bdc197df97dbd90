#include "qr/square_code.hpp"

#include <algorithm>
#include <cstdint>
#include <qrcodegen.h>

namespace evenfall {

Outcome<SquareCode> square_code(std::string_view text, int largest_side) {
    // An edge has 17 + 4 × version squares (ISO/IEC 18004:2015 §5.3.1.1).
    const int largest = std::min((largest_side - 17) / 4, qrcodegen_VERSION_MAX);
    const auto refused = [&] {
        std::string sentence = "These ";
        sentence += std::to_string(text.size());
        sentence += " characters do not fit into a code that a camera reads; use the link itself.";
        return Problem{ProblemCode::too_large, "", "", std::move(sentence)};
    };
    if (largest < qrcodegen_VERSION_MIN) return refused();
    const std::size_t room = qrcodegen_BUFFER_LEN_FOR_VERSION(static_cast<std::size_t>(largest));
    if (text.size() > room) return refused();
    std::vector<std::uint8_t> work(room), made(room);
    const std::string ended(text);
    if (!qrcodegen_encodeText(ended.c_str(), work.data(), made.data(), qrcodegen_Ecc_LOW, qrcodegen_VERSION_MIN, largest,
                              qrcodegen_Mask_AUTO, true)) {
        return refused();
    }
    SquareCode code;
    code.side = qrcodegen_getSize(made.data());
    code.dark.reserve(static_cast<std::size_t>(code.side) * static_cast<std::size_t>(code.side));
    for (int row = 0; row < code.side; ++row) {
        for (int column = 0; column < code.side; ++column) code.dark.push_back(qrcodegen_getModule(made.data(), column, row));
    }
    return code;
}

std::string path_of(const SquareCode& code, int border) {
    std::string path;
    for (int row = 0; row < code.side; ++row) {
        for (int from = 0; from < code.side;) {
            int to = from;
            while (to < code.side && code.at(to, row)) ++to;
            if (to > from) {
                path.append("M").append(std::to_string(from + border)).append(" ").append(std::to_string(row + border));
                path.append("h").append(std::to_string(to - from)).append("v1h-").append(std::to_string(to - from)).append("z");
            }
            from = std::max(to, from + 1);
        }
    }
    return path;
}

} // namespace evenfall
