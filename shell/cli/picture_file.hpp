#pragma once

// Pictures in the two plain formats that need no codec: binary PGM and PPM (netpbm's own manual pages pgm(5), ppm(5)).

#include "base/outcome.hpp"
#include "picture/level_line.hpp"

#include <cstdint>
#include <string>
#include <utility>
#include <vector>

namespace evenfall::cli {

inline constexpr std::size_t largest_picture_file = 80u * 1024u * 1024u;

struct PictureFile {
    int width = 0;
    int height = 0;
    std::vector<std::uint8_t> grey;  ///< rows from the top
};

/// "P5" or "P6" with 255 levels. Colours become grey by ITU-R BT.709 (from memory). Refuses anything else, and files that
/// are cut.
[[nodiscard]] Outcome<PictureFile> read_picture_file(const std::string& bytes);

/// The two spots of a closed line that lie farthest apart, the left one first.
[[nodiscard]] std::pair<picture::Spot, picture::Spot> ends_of(const picture::Ring& ring);

}  // namespace evenfall::cli
