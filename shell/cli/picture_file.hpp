#pragma once

#include "picture.hpp"

#include <memory>
#include <string_view>

namespace evenfall::cli {

/// Most bytes of a picture file that are read.
inline constexpr std::size_t most_picture_bytes = 64'000'000;

/// A decoded picture with samples of its own.
struct PictureFile {
    int width = 0;
    int height = 0;
    int channels = 1;
    std::unique_ptr<std::uint8_t, void (*)(void*)> samples;

    [[nodiscard]] picture::Picture view() const;
};

/// Decodes a JPEG or PNG file (stb_image). Grey comes out as one channel, anything else as red, green, blue
/// and alpha; a turn that a camera noted in the file is not carried out. Problems, the first three before
/// anything is decoded: more bytes than are read, another format, sides off the limits of
/// picture::check_size; then bytes missing or damaged.
[[nodiscard]] Outcome<PictureFile> read_picture(std::string_view bytes);

} // namespace evenfall::cli
