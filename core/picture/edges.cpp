#include "picture/edges.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::picture {

EdgeLevels edge_levels(const Slopes& slopes, double sensitivity) {
    std::vector<float> steep;
    const std::size_t step =
        std::max<std::size_t>(1, slopes.x.at.size() / 200'000) | 1U; // odd: does not keep to columns
    steep.reserve(slopes.x.at.size() / step + 1);
    for (std::size_t i = 0; i < slopes.x.at.size(); i += step)
        steep.push_back(std::hypot(slopes.x.at[i], slopes.y.at[i]));
    const auto share = [&](double part) {
        const auto at =
            steep.begin() + static_cast<std::ptrdiff_t>(part * static_cast<double>(steep.size() - 1));
        std::nth_element(steep.begin(), at, steep.end());
        return static_cast<double>(*at);
    };
    const double grain = share(0.5) / 1.17741; // median of a Rayleigh distribution: σ·√(2 ln 2)
    const double strong = share(0.999);
    constexpr double least = 0.002; // half a grey level a pixel: below that an 8-bit picture holds nothing
    EdgeLevels levels;
    levels.start = std::max({6.0 * grain, 0.20 * strong, 2.0 * least}) / sensitivity;
    levels.carry = std::max({3.0 * grain, 0.08 * strong, least}) / sensitivity;
    return levels;
}

Mask edges(const Slopes& slopes, EdgeLevels levels) {
    const int w = slopes.x.width;
    const int h = slopes.x.height;
    Plane steep(w, h);
    for (std::size_t i = 0; i < steep.at.size(); ++i)
        steep.at[i] = std::sqrt(slopes.x.at[i] * slopes.x.at[i] + slopes.y.at[i] * slopes.y.at[i]);

    constexpr std::uint8_t weak = 2;
    Mask out(w, h);
    std::vector<std::size_t> grow;
    for (int y = 1; y + 1 < h; ++y) {
        for (int x = 1; x + 1 < w; ++x) {
            const std::size_t i = steep.index(x, y);
            const float m = steep.at[i];
            if (m < levels.carry) continue;
            // The crest test: steepness between the neighbours that the slope points at, either way.
            const float gx = slopes.x.at[i];
            const float gy = slopes.y.at[i];
            const bool level = std::abs(gx) >= std::abs(gy);
            const float t = level ? gy / gx : gx / gy; // −1 to 1
            const int side = t < 0.0F ? -1 : 1;
            const float u = std::abs(t);
            const auto along = [&](int way) {
                const int ax = level ? x + way : x;
                const int ay = level ? y : y + way;
                const int bx = level ? x + way : x + way * side;
                const int by = level ? y + way * side : y + way;
                return (1.0F - u) * steep.at[steep.index(ax, ay)] + u * steep.at[steep.index(bx, by)];
            };
            if (m < along(1) || m <= along(-1)) continue;
            out.at[i] = weak;
            if (m >= levels.start) grow.push_back(i);
        }
    }
    for (const std::size_t i : grow)
        out.at[i] = 1;
    while (!grow.empty()) {
        const std::size_t i = grow.back();
        grow.pop_back();
        const auto width = static_cast<std::size_t>(w);
        // Weak pixels never touch the border, so that all eight neighbours are there.
        for (const std::size_t k : {i - width - 1, i - width, i - width + 1, i - 1, i + 1, i + width - 1,
                                    i + width, i + width + 1}) {
            if (out.at[k] != weak) continue;
            out.at[k] = 1;
            grow.push_back(k);
        }
    }
    for (std::uint8_t& value : out.at)
        value = value == 1 ? std::uint8_t{1} : std::uint8_t{0};
    return out;
}

} // namespace evenfall::picture
