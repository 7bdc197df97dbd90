#include "cli/picture_file.hpp"

#include <algorithm>
#include <cstdlib>
#include <cstring>

namespace {

// The largest picture at 16 bits a channel takes 192 MB; a file that unpacks to more in one piece is hostile.
constexpr std::size_t most_block_bytes = 256'000'000;

void* allocate(std::size_t bytes) {
    return bytes <= most_block_bytes ? std::malloc(bytes) : nullptr;
}

void* reallocate(void* block, std::size_t bytes) {
    return bytes <= most_block_bytes ? std::realloc(block, bytes) : nullptr;
}

} // namespace

#define STB_IMAGE_IMPLEMENTATION
#define STB_IMAGE_STATIC
#define STBI_ONLY_JPEG
#define STBI_ONLY_PNG
#define STBI_NO_STDIO
#define STBI_NO_FAILURE_STRINGS
#define STBI_MALLOC allocate
#define STBI_REALLOC reallocate
#define STBI_FREE std::free
#include <stb/stb_image.h>

namespace evenfall::cli {

namespace {

Problem refuse(ProblemCode code, std::string limit, std::string sentence) {
    return {code, "/picture", std::move(limit), std::move(sentence)};
}

/// Bytes handed to the decoder, which on its own would take zeros for what a file lacks at its end.
struct Source {
    std::string_view rest;
    bool exhausted = false; ///< more was asked for than there is

    static int read(void* self, char* out, int wanted) {
        auto& source = *static_cast<Source*>(self);
        const std::size_t count = std::min(source.rest.size(), static_cast<std::size_t>(wanted));
        if (count == 0) source.exhausted = true;
        std::memcpy(out, source.rest.data(), count);
        source.rest.remove_prefix(count);
        return static_cast<int>(count);
    }
    static void skip(void* self, int count) {
        auto& source = *static_cast<Source*>(self);
        if (count > 0)
            source.rest.remove_prefix(std::min(source.rest.size(), static_cast<std::size_t>(count)));
    }
    static int at_end(void* self) { return static_cast<Source*>(self)->rest.empty() ? 1 : 0; }
};

constexpr stbi_io_callbacks from_source{Source::read, Source::skip, Source::at_end};

} // namespace

picture::Picture PictureFile::view() const {
    return {width,
            height,
            channels,
            {samples.get(), static_cast<std::size_t>(width) * static_cast<std::size_t>(height) *
                                static_cast<std::size_t>(channels)}};
}

Outcome<PictureFile> read_picture(std::string_view bytes) {
    if (bytes.size() > most_picture_bytes) {
        return refuse(ProblemCode::too_large, "64 MB",
                      "The picture's file is too large: 64 MB are the most that is read.");
    }
    PictureFile out{0, 0, 1, {nullptr, stbi_image_free}};
    Source head{bytes};
    if (stbi_info_from_callbacks(&from_source, &head, &out.width, &out.height, &out.channels) == 0) {
        return refuse(ProblemCode::wrong_type, "JPEG or PNG",
                      "This is no picture that can be read: it must be a JPEG or PNG file.");
    }
    if (Problems problems = picture::check_size(out.width, out.height); !problems.empty()) return problems;
    if (out.channels != 1) out.channels = 4;
    Source whole{bytes};
    int ignored = 0;
    out.samples.reset(
        stbi_load_from_callbacks(&from_source, &whole, &out.width, &out.height, &ignored, out.channels));
    if (whole.exhausted || out.samples == nullptr) {
        return refuse(
            ProblemCode::wrong_type, "a whole JPEG or PNG file",
            "The picture is cut off or damaged, or of a rare kind that is not read; save it anew as "
            "JPEG or PNG.");
    }
    return out;
}

} // namespace evenfall::cli
