#include "picture/netpbm.hpp"

#include <string>

namespace evenfall::picture {

namespace {

Problem refuse(ProblemCode code, std::string limit, std::string sentence) {
    return {code, "/picture", std::move(limit), std::move(sentence)};
}

bool is_blank(char c) {
    return c == ' ' || (c >= '\t' && c <= '\r');
}

/// The next whole number of the header, comments and blanks before it skipped; −1 where there is none, or a
/// longer one than any side or depth may have.
long next_number(std::string_view bytes, std::size_t& at) {
    while (at < bytes.size() && (is_blank(bytes[at]) || bytes[at] == '#')) {
        if (bytes[at] == '#') {
            while (at < bytes.size() && bytes[at] != '\n' && bytes[at] != '\r')
                ++at;
        } else {
            ++at;
        }
    }
    long value = -1;
    for (int digits = 0; at < bytes.size() && bytes[at] >= '0' && bytes[at] <= '9'; ++at, ++digits) {
        if (digits == 6) return -1;
        value = (value < 0 ? 0 : 10 * value) + (bytes[at] - '0');
    }
    return value;
}

} // namespace

Outcome<Decoded> read_netpbm(std::string_view bytes) {
    const bool grey = bytes.substr(0, 2) == "P5";
    if (!grey && bytes.substr(0, 2) != "P6") {
        return refuse(ProblemCode::wrong_type, "PGM (P5) or PPM (P6)",
                      "This is no picture in raw PGM or PPM form; save the picture as one of these.");
    }
    std::size_t at = 2;
    const long width = next_number(bytes, at);
    const long height = next_number(bytes, at);
    const long depth = next_number(bytes, at);
    if (width < 0 || height < 0 || depth < 0 || at >= bytes.size() || !is_blank(bytes[at])) {
        return refuse(ProblemCode::wrong_type, "width, height, depth",
                      "The picture's header is damaged: after P5 or P6 come width, height and depth.");
    }
    ++at;
    if (depth < 1 || depth > 255) {
        return refuse(ProblemCode::out_of_range, "depth 1 to 255",
                      "The picture must have one byte a sample: a depth of 1 to 255.");
    }
    if (width < 1 || height < 1 || width > greatest_side || height > greatest_side ||
        static_cast<long long>(width) * height > most_pixels) {
        return refuse(
            ProblemCode::too_large, "24 million pixels, 32000 a side",
            "The picture's sides must be 1 to 32000 pixels, and 24 million pixels in all are the most.");
    }
    const std::size_t pixels = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    const std::size_t wanted = grey ? pixels : 3 * pixels;
    if (bytes.size() - at != wanted) {
        return refuse(ProblemCode::out_of_range, std::to_string(wanted) + " bytes",
                      bytes.size() - at < wanted ? "The picture is cut off: bytes are missing at its end."
                                                 : "There is more in the file than one picture.");
    }
    Decoded out;
    out.width = static_cast<int>(width);
    out.height = static_cast<int>(height);
    out.channels = grey ? 1 : 4;
    out.samples.resize(grey ? pixels : 4 * pixels, 255);
    const auto sample = [&](std::size_t i) {
        const long value = static_cast<unsigned char>(bytes[at + i]);
        return static_cast<std::uint8_t>(value >= depth ? 255 : (255 * value + depth / 2) / depth);
    };
    for (std::size_t i = 0; i < wanted; ++i)
        out.samples[grey ? i : i / 3 * 4 + i % 3] = sample(i);
    return out;
}

} // namespace evenfall::picture
