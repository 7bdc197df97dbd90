#include "cli/picture_file.hpp"

#include "picture/picture.hpp"

#include <cmath>
#include <optional>

namespace evenfall::cli {
namespace {

Problem refused(ProblemCode code, const char* sentence) { return {code, "PICTURE", "PGM (P5) or PPM (P6), 255 levels", sentence}; }

/// The next whole number of the head, over blanks and lines of remarks.
std::optional<int> next_number(const std::string& bytes, std::size_t& at) {
    for (;;) {
        while (at < bytes.size() && (bytes[at] == ' ' || bytes[at] == '\t' || bytes[at] == '\n' || bytes[at] == '\r')) ++at;
        if (at >= bytes.size() || bytes[at] != '#') break;
        while (at < bytes.size() && bytes[at] != '\n') ++at;
    }
    int value = 0;
    std::size_t digits = 0;
    for (; at < bytes.size() && bytes[at] >= '0' && bytes[at] <= '9'; ++at, ++digits) {
        if (digits == 6) return std::nullopt;
        value = 10 * value + (bytes[at] - '0');
    }
    return digits == 0 ? std::nullopt : std::optional(value);
}

}  // namespace

Outcome<PictureFile> read_picture_file(const std::string& bytes) {
    if (bytes.size() > largest_picture_file) return refused(ProblemCode::too_large, "The picture's file is larger than 80 MB.");
    const bool colour = bytes.rfind("P6", 0) == 0;
    if (!colour && bytes.rfind("P5", 0) != 0) {
        return refused(ProblemCode::wrong_type, "The file is no plain picture; any picture program saves one as PGM or PPM, binary.");
    }
    std::size_t at = 2;
    const auto width = next_number(bytes, at);
    const auto height = next_number(bytes, at);
    const auto levels = next_number(bytes, at);
    if (!width || !height || !levels || *levels != 255 || at >= bytes.size()) {
        return refused(ProblemCode::wrong_type, "The picture's head must name its width, its height and 255 levels.");
    }
    ++at;  // one blank parts head and samples
    const std::size_t channels = colour ? 3 : 1;
    const std::size_t pixels = static_cast<std::size_t>(*width) * static_cast<std::size_t>(*height);
    if (bytes.size() - at != pixels * channels) {
        return refused(ProblemCode::out_of_range, "The picture is cut off, or longer than its head says.");
    }
    PictureFile file{*width, *height, std::vector<std::uint8_t>(pixels)};
    const auto* sample = reinterpret_cast<const std::uint8_t*>(bytes.data() + at);
    for (std::uint8_t& grey : file.grey) {
        grey = colour ? static_cast<std::uint8_t>(std::lround(0.2126 * sample[0] + 0.7152 * sample[1] + 0.0722 * sample[2])) : *sample;
        sample += channels;
    }
    return file;
}

std::pair<picture::Spot, picture::Spot> ends_of(const picture::Ring& ring) {
    std::pair<picture::Spot, picture::Spot> ends;
    double farthest = -1.0;
    for (std::size_t i = 0; i < ring.size(); ++i) {
        for (std::size_t k = i + 1; k < ring.size(); ++k) {
            const double away = std::hypot(ring[k].x - ring[i].x, ring[k].y - ring[i].y);
            if (away <= farthest) continue;
            farthest = away;
            ends = {ring[i], ring[k]};
        }
    }
    if (ends.first.x > ends.second.x) std::swap(ends.first, ends.second);
    return ends;
}

}  // namespace evenfall::cli
