#pragma once

#include "picture/picture.hpp"

#include <string_view>

namespace evenfall::picture {

/// Most bytes of a file that is read: the largest picture in colour and a header with comments.
inline constexpr std::size_t most_file_bytes = static_cast<std::size_t>(most_pixels) * 3 + 4096;

/// A picture with samples of its own.
struct Decoded {
    int width = 0;
    int height = 0;
    int channels = 1;
    std::vector<std::uint8_t> samples;

    [[nodiscard]] Picture view() const { return {width, height, channels, samples}; }
};

/// One picture in the plainest of formats: PGM ("P5", grey) or PPM ("P6", red green blue), raw bytes, up to
/// 255 a sample (the Netpbm formats, from memory). Colour comes out as red, green, blue and full cover.
/// Problems: another format, sides or depth off the limits, bytes missing or left over.
[[nodiscard]] Outcome<Decoded> read_netpbm(std::string_view bytes);

} // namespace evenfall::picture
