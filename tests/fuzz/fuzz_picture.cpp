// Any bytes as a picture file, and as bare pixels: refused with a sentence, or an outline that lies within the picture.

#include "fuzz/law.hpp"
#include "picture/netpbm.hpp"
#include "picture/outline.hpp"

#include <cmath>
#include <cstddef>
#include <string_view>

namespace {

using namespace evenfall;
using evenfall::fuzz::must;

void look_at(const picture::Picture& picture) {
    const auto contour = picture::find_outline(picture);
    if (!contour.ok()) {
        must(!contour.problems().front().sentence.empty(), "a refusal has a sentence");
        return;
    }
    must(contour->points.size() >= 16, "an outline has a length");
    must(contour->backed >= 0.0 && contour->backed <= 1.0, "what is seen is a share");
    for (const picture::Spot& spot : contour->points) {
        must(std::isfinite(spot.x) && std::isfinite(spot.y), "places are finite");
        must(spot.x > -40.0 && spot.y > -40.0 && spot.x < picture.width + 40.0 && spot.y < picture.height + 40.0, "an outline lies in its picture");
    }
}

}  // namespace

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* bytes, std::size_t size) {
    const auto decoded = picture::read_netpbm({reinterpret_cast<const char*>(bytes), size});
    if (decoded.ok()) {
        look_at(decoded->view());
    } else {
        must(!decoded.problems().front().sentence.empty(), "a refusal has a sentence");
    }
    if (size < 2) return 0;
    // The first two bytes as sides, whatever follows as the pixels.
    look_at({bytes[0], bytes[1], size % 2 == 0 ? 1 : 4, {bytes + 2, size - 2}});
    return 0;
}
