#include "picture/edges.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::picture {

namespace {

/// Weighs the neighbours along each row and writes rows as columns: done twice, both ways are smoothed.
Plane weighed_and_turned(const Plane& plane, const std::vector<float>& kernel) {
    const int reach = static_cast<int>(kernel.size() / 2);
    Plane out(plane.height, plane.width);
    std::vector<float> row(static_cast<std::size_t>(plane.width + 2 * reach));
    for (int y = 0; y < plane.height; ++y) {
        for (int x = -reach; x < plane.width + reach; ++x)
            row[static_cast<std::size_t>(x + reach)] =
                plane.at[plane.index(std::clamp(x, 0, plane.width - 1), y)];
        for (int x = 0; x < plane.width; ++x) {
            float sum = 0.0F;
            for (std::size_t k = 0; k < kernel.size(); ++k)
                sum += kernel[k] * row[static_cast<std::size_t>(x) + k];
            out.at[out.index(y, x)] = sum;
        }
    }
    return out;
}

struct Slopes {
    Plane x;
    Plane y;
    Plane steep;
};

/// Brightness per pixel; 0 on the border.
Slopes slopes_of(const Plane& plane) {
    Slopes out{Plane(plane.width, plane.height), Plane(plane.width, plane.height),
               Plane(plane.width, plane.height)};
    for (int y = 1; y + 1 < plane.height; ++y) {
        for (int x = 1; x + 1 < plane.width; ++x) {
            const std::size_t i = plane.index(x, y);
            const float* above = plane.at.data() + plane.index(x, y - 1);
            const float* here = plane.at.data() + i;
            const float* below = plane.at.data() + plane.index(x, y + 1);
            out.x.at[i] = (above[1] - above[-1] + 2.0F * (here[1] - here[-1]) + below[1] - below[-1]) / 8.0F;
            out.y.at[i] = (below[-1] - above[-1] + 2.0F * (below[0] - above[0]) + below[1] - above[1]) / 8.0F;
            out.steep.at[i] = std::sqrt(out.x.at[i] * out.x.at[i] + out.y.at[i] * out.y.at[i]);
        }
    }
    return out;
}

/// The value that this share of all lies below.
double quantile(std::vector<float> values, double share) {
    const auto at =
        values.begin() + static_cast<std::ptrdiff_t>(share * static_cast<double>(values.size() - 1));
    std::nth_element(values.begin(), at, values.end());
    return static_cast<double>(*at);
}

/// Is this pixel at least as steep as its neighbours up and down the slope?
bool is_crest(const Slopes& slopes, int x, int y) {
    const std::size_t i = slopes.steep.index(x, y);
    const float m = slopes.steep.at[i];
    const int dx = static_cast<int>(std::lround(slopes.x.at[i] / m));
    const int dy = static_cast<int>(std::lround(slopes.y.at[i] / m));
    return m >= slopes.steep.at[slopes.steep.index(x + dx, y + dy)] &&
           m > slopes.steep.at[slopes.steep.index(x - dx, y - dy)];
}

} // namespace

Plane smoothed(const Plane& plane, double sigma) {
    const int reach = static_cast<int>(std::lround(4.0 * sigma));
    std::vector<float> kernel;
    float sum = 0.0F;
    for (int i = -reach; i <= reach; ++i) {
        kernel.push_back(static_cast<float>(std::exp(-0.5 * i * i / (sigma * sigma))));
        sum += kernel.back();
    }
    for (float& weight : kernel)
        weight /= sum;
    return weighed_and_turned(weighed_and_turned(plane, kernel), kernel);
}

Edges find_edges(const Plane& smooth, double sensitivity) {
    constexpr double least = 0.002; // half a grey level a pixel: below that an 8-bit picture holds nothing
    const Slopes slopes = slopes_of(smooth);
    const double grain = quantile(slopes.steep.at, 0.5) / 1.17741; // median of Rayleigh: σ·√(2 ln 2)
    const double strong = quantile(slopes.steep.at, 0.999);
    const double start = std::max({6.0 * grain, 0.20 * strong, 2.0 * least}) / sensitivity;
    Edges out{Mask(smooth.width, smooth.height), 0.0};
    out.carry = std::max({3.0 * grain, 0.08 * strong, least}) / sensitivity;

    constexpr std::uint8_t weak = 2;
    std::vector<std::size_t> grow;
    for (int y = 1; y + 1 < smooth.height; ++y) {
        for (int x = 1; x + 1 < smooth.width; ++x) {
            const std::size_t i = smooth.index(x, y);
            const double m = slopes.steep.at[i];
            if (m < out.carry || !is_crest(slopes, x, y)) continue;
            out.mask.at[i] = m >= start ? 1 : weak;
            if (m >= start) grow.push_back(i);
        }
    }
    const auto w = static_cast<std::size_t>(smooth.width);
    while (!grow.empty()) {
        const std::size_t i = grow.back();
        grow.pop_back();
        // No crest lies on the border, so that all eight neighbours are there.
        for (const std::size_t k : {i - w - 1, i - w, i - w + 1, i - 1, i + 1, i + w - 1, i + w, i + w + 1}) {
            if (out.mask.at[k] != weak) continue;
            out.mask.at[k] = 1;
            grow.push_back(k);
        }
    }
    std::replace(out.mask.at.begin(), out.mask.at.end(), weak, std::uint8_t{0});
    return out;
}

} // namespace evenfall::picture
