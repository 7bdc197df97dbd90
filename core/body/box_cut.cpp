#include "body/body.hpp"
#include "body/boxed_wood.hpp"

namespace evenfall::shape {

Box box_of(const document::Pocket& p) {
    constexpr double far = std::numeric_limits<double>::infinity();
    return {p.x_from_m,
            p.x_to_m,
            p.y_m - 0.5 * p.width_m,
            p.y_m + 0.5 * p.width_m,
            p.z_from_m.value_or(-far),
            p.z_to_m.value_or(far)};
}

BoxCut box_in_segment(const Body& body, int segment, const Box& box) {
    const BoxSums sums = BoxedWood(body, static_cast<std::size_t>(segment), box).sums();
    if (!(sums.volume > 0.0)) return {};
    return {sums.volume, {sums.x / sums.volume, sums.y / sums.volume, sums.z / sums.volume}};
}

} // namespace evenfall::shape
