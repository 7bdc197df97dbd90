#include "picture/filters.hpp"

#include <Eigen/Dense>

#include <algorithm>
#include <cmath>

namespace evenfall::picture {

namespace {

std::vector<float> gaussian_kernel(double sigma) {
    const int reach = static_cast<int>(std::lround(4.0 * sigma));
    std::vector<float> kernel(static_cast<std::size_t>(2 * reach + 1));
    double sum = 0.0;
    for (int i = -reach; i <= reach; ++i)
        sum += std::exp(-0.5 * i * i / (sigma * sigma));
    for (int i = -reach; i <= reach; ++i) {
        kernel[static_cast<std::size_t>(i + reach)] =
            static_cast<float>(std::exp(-0.5 * i * i / (sigma * sigma)) / sum);
    }
    return kernel;
}

using Terms = Eigen::Matrix<double, 10, 1>;

/// 1, x, y, x², xy, y², x³, x²y, xy², y³ for x and y from −1 to 1.
Terms cubic_terms(double x, double y) {
    Terms t;
    t << 1.0, x, y, x * x, x * y, y * y, x * x * x, x * x * y, x * y * y, y * y * y;
    return t;
}

struct Block {
    double x = 0.0; ///< middle, −1 to 1
    double y = 0.0;
    double value = 0.0;
};

constexpr int blocks_a_side = 40;
constexpr double least_divisor = 0.25; ///< brightness; own choice

double span_place(double pixel, int side) {
    return 2.0 * pixel / side - 1.0;
}

std::vector<Block> block_medians(const Plane& plane) {
    std::vector<Block> blocks;
    std::vector<float> values;
    for (int j = 0; j < blocks_a_side; ++j) {
        const int y0 = plane.height * j / blocks_a_side;
        const int y1 = std::max(y0 + 1, plane.height * (j + 1) / blocks_a_side);
        for (int i = 0; i < blocks_a_side; ++i) {
            const int x0 = plane.width * i / blocks_a_side;
            const int x1 = std::max(x0 + 1, plane.width * (i + 1) / blocks_a_side);
            values.clear();
            // A few hundred samples a block are enough for its median.
            const int step = std::max(1, (std::min(x1 - x0, y1 - y0)) / 12);
            for (int y = y0; y < std::min(y1, plane.height); y += step) {
                for (int x = x0; x < std::min(x1, plane.width); x += step)
                    values.push_back(plane.at[plane.index(x, y)]);
            }
            if (values.empty()) continue;
            const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
            std::nth_element(values.begin(), middle, values.end());
            blocks.push_back({span_place(0.5 * (x0 + x1), plane.width),
                              span_place(0.5 * (y0 + y1), plane.height), *middle});
        }
    }
    return blocks;
}

Terms ground_surface(const std::vector<Block>& blocks) {
    std::vector<double> weight(blocks.size());
    for (std::size_t k = 0; k < blocks.size(); ++k) {
        // The rim of a picture is mostly ground: the first surface leans on it.
        const double rim = std::max(std::abs(blocks[k].x), std::abs(blocks[k].y));
        weight[k] = rim > 0.8 ? 1.0 : 0.05;
    }
    Terms surface = Terms::Zero();
    std::vector<double> off(blocks.size());
    for (int pass = 0; pass < 12; ++pass) {
        Eigen::Matrix<double, 10, 10> normal = Eigen::Matrix<double, 10, 10>::Identity() * 1e-6;
        Terms right = Terms::Zero();
        for (std::size_t k = 0; k < blocks.size(); ++k) {
            const Terms t = cubic_terms(blocks[k].x, blocks[k].y);
            normal += weight[k] * t * t.transpose();
            right += weight[k] * blocks[k].value * t;
        }
        surface = normal.ldlt().solve(right);
        std::vector<double> sizes(blocks.size());
        for (std::size_t k = 0; k < blocks.size(); ++k) {
            off[k] = blocks[k].value - surface.dot(cubic_terms(blocks[k].x, blocks[k].y));
            sizes[k] = std::abs(off[k]);
        }
        const auto middle = sizes.begin() + static_cast<std::ptrdiff_t>(sizes.size() / 2);
        std::nth_element(sizes.begin(), middle, sizes.end());
        const double reach =
            4.685 * std::max(1.4826 * *middle, 0.004); // 95 % efficiency on clean normal data
        for (std::size_t k = 0; k < blocks.size(); ++k) {
            const double u = off[k] / reach;
            weight[k] = std::abs(u) < 1.0 ? (1.0 - u * u) * (1.0 - u * u) : 0.0;
        }
    }
    return surface;
}

} // namespace

Plane smoothed(const Plane& plane, double sigma) {
    const std::vector<float> kernel = gaussian_kernel(std::clamp(sigma, 0.3, 20.0));
    const int reach = static_cast<int>(kernel.size() / 2);
    Plane across(plane.width, plane.height);
    std::vector<float> padded(static_cast<std::size_t>(plane.width + 2 * reach));
    for (int y = 0; y < plane.height; ++y) {
        const float* row = plane.at.data() + plane.index(0, y);
        for (int x = 0; x < plane.width + 2 * reach; ++x)
            padded[static_cast<std::size_t>(x)] = row[std::clamp(x - reach, 0, plane.width - 1)];
        float* out = across.at.data() + across.index(0, y);
        for (std::size_t k = 0; k < kernel.size(); ++k) {
            const float w = kernel[k];
            const float* from = padded.data() + k;
            for (int x = 0; x < plane.width; ++x)
                out[x] += w * from[x];
        }
    }
    Plane down(plane.width, plane.height);
    for (int y = 0; y < plane.height; ++y) {
        float* out = down.at.data() + down.index(0, y);
        for (int k = -reach; k <= reach; ++k) {
            const float w = kernel[static_cast<std::size_t>(k + reach)];
            const float* from = across.at.data() + across.index(0, std::clamp(y + k, 0, plane.height - 1));
            for (int x = 0; x < plane.width; ++x)
                out[x] += w * from[x];
        }
    }
    return down;
}

Slopes sobel(const Plane& plane) {
    Slopes out{Plane(plane.width, plane.height), Plane(plane.width, plane.height)};
    for (int y = 0; y < plane.height; ++y) {
        const float* above = plane.at.data() + plane.index(0, std::max(y - 1, 0));
        const float* here = plane.at.data() + plane.index(0, y);
        const float* below = plane.at.data() + plane.index(0, std::min(y + 1, plane.height - 1));
        for (int x = 0; x < plane.width; ++x) {
            const int l = std::max(x - 1, 0);
            const int r = std::min(x + 1, plane.width - 1);
            const std::size_t i = plane.index(x, y);
            out.x.at[i] = (above[r] - above[l] + 2.0F * (here[r] - here[l]) + below[r] - below[l]) / 8.0F;
            out.y.at[i] = (below[l] - above[l] + 2.0F * (below[x] - above[x]) + below[r] - above[r]) / 8.0F;
        }
    }
    return out;
}

Plane evenly_lit(const Plane& plane) {
    const Terms s = ground_surface(block_medians(plane));
    Plane out(plane.width, plane.height);
    for (int j = 0; j < plane.height; ++j) {
        const double y = span_place(j + 0.5, plane.height);
        // Along one row the surface is a cubic in x.
        const double c0 = s[0] + y * (s[2] + y * (s[5] + y * s[9]));
        const double c1 = s[1] + y * (s[4] + y * s[8]);
        const double c2 = s[3] + y * s[7];
        const double c3 = s[6];
        for (int i = 0; i < plane.width; ++i) {
            const double x = span_place(i + 0.5, plane.width);
            const double ground = c0 + x * (c1 + x * (c2 + x * c3));
            const std::size_t k = plane.index(i, j);
            // On a dark ground, brightness over it: cut off or stretched by a quotient, the rim of bright
            // wood would move outwards.
            out.at[k] = static_cast<float>(ground >= least_divisor
                                               ? plane.at[k] / ground
                                               : 1.0 + (plane.at[k] - std::max(ground, 0.0)) / least_divisor);
        }
    }
    return out;
}

double value_at(const Plane& plane, Spot spot) {
    const double x = std::clamp(spot.x - 0.5, 0.0, plane.width - 1.0);
    const double y = std::clamp(spot.y - 0.5, 0.0, plane.height - 1.0);
    const int x0 = static_cast<int>(x);
    const int y0 = static_cast<int>(y);
    const int x1 = std::min(x0 + 1, plane.width - 1);
    const int y1 = std::min(y0 + 1, plane.height - 1);
    const double u = x - x0;
    const double v = y - y0;
    const auto at = [&](int i, int j) { return static_cast<double>(plane.at[plane.index(i, j)]); };
    return (1.0 - v) * ((1.0 - u) * at(x0, y0) + u * at(x1, y0)) +
           v * ((1.0 - u) * at(x0, y1) + u * at(x1, y1));
}

} // namespace evenfall::picture
