#include "shape/body.hpp"
#include "shape/boxed_wood.hpp"

namespace evenfall::shape {

BoxCut box_in_segment(const Body& body, int segment, const Box& box) {
    const BoxSums sums = BoxedWood(body, static_cast<std::size_t>(segment), box).sums();
    if (!(sums.volume > 0.0)) return {};
    return {sums.volume, {sums.x / sums.volume, sums.y / sums.volume, sums.z / sums.volume}};
}

} // namespace evenfall::shape
