#include "picture/picture.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace evenfall::picture {

namespace {

float brightness(const std::uint8_t* sample, int channels) {
    if (channels == 1) return static_cast<float>(sample[0]) / 255.0F;
    const float colour = 0.2126F * static_cast<float>(sample[0]) + 0.7152F * static_cast<float>(sample[1]) +
                         0.0722F * static_cast<float>(sample[2]);
    const float cover = static_cast<float>(sample[3]) / 255.0F;
    return (colour * cover + 255.0F * (1.0F - cover)) / 255.0F;
}

/// What one reduced pixel takes from a row or column of the full picture.
struct Take {
    int first = 0;
    int last = 0;          ///< included
    float first_share = 1; ///< of the first and of the last pixel; those between count whole
    float last_share = 1;
};

std::vector<Take> takes(int from, int to) {
    std::vector<Take> out(static_cast<std::size_t>(to));
    const double step = static_cast<double>(from) / static_cast<double>(to);
    for (int i = 0; i < to; ++i) {
        const double left = step * i;
        const double right = std::min(step * (i + 1), static_cast<double>(from));
        Take t;
        t.first = std::min(static_cast<int>(left), from - 1);
        t.last = std::clamp(static_cast<int>(std::ceil(right)) - 1, t.first, from - 1);
        t.first_share = static_cast<float>(std::min(right, t.first + 1.0) - left);
        t.last_share = t.last == t.first ? t.first_share : static_cast<float>(right - t.last);
        out[static_cast<std::size_t>(i)] = t;
    }
    return out;
}

Problems refuse(ProblemCode code, std::string limit, std::string sentence) {
    return {{code, "/picture", std::move(limit), std::move(sentence)}};
}

} // namespace

Problems check_size(int width, int height) {
    if (width < least_side || height < least_side) {
        const std::string limit = "at least " + std::to_string(least_side) + " pixels each way";
        return refuse(ProblemCode::out_of_range, limit,
                      "The picture is too small to find an outline in: it needs " + limit + ".");
    }
    if (width > greatest_side || height > greatest_side ||
        static_cast<long long>(width) * height > most_pixels) {
        return refuse(ProblemCode::too_large, "24 million pixels, 32000 a side",
                      "The picture is too large: 24 million pixels and 32000 a side are the most.");
    }
    return {};
}

Problems check(const Picture& picture) {
    if (Problems problems = check_size(picture.width, picture.height); !problems.empty()) return problems;
    if (picture.channels != 1 && picture.channels != 4) {
        return refuse(ProblemCode::wrong_type, "1 or 4 channels",
                      "The picture must be grey, or red, green, blue and alpha.");
    }
    const std::size_t wanted = static_cast<std::size_t>(picture.width) *
                               static_cast<std::size_t>(picture.height) *
                               static_cast<std::size_t>(picture.channels);
    if (picture.samples.size() != wanted) {
        return refuse(ProblemCode::out_of_range, std::to_string(wanted) + " bytes",
                      "The picture is cut off: its width and height do not fit the bytes that came with it.");
    }
    return {};
}

Plane grey(const Picture& picture, long long pixels) {
    const double all = static_cast<double>(picture.width) * static_cast<double>(picture.height);
    const double shrink = std::min(1.0, std::sqrt(static_cast<double>(std::max(pixels, 1LL)) / all));
    const int width = std::max(1, static_cast<int>(picture.width * shrink));
    const int height = std::max(1, static_cast<int>(picture.height * shrink));
    Plane out(width, height);
    const auto channels = static_cast<std::size_t>(picture.channels);
    const std::uint8_t* samples = picture.samples.data();

    if (width == picture.width && height == picture.height) {
        for (std::size_t i = 0; i < out.at.size(); ++i)
            out.at[i] = brightness(samples + i * channels, picture.channels);
        return out;
    }

    const std::vector<Take> columns = takes(picture.width, width);
    const std::vector<Take> rows = takes(picture.height, height);
    std::vector<float> row(static_cast<std::size_t>(picture.width));
    std::vector<float> sum(static_cast<std::size_t>(width));
    const auto add_row = [&](int y, float share) {
        const std::uint8_t* from =
            samples + static_cast<std::size_t>(y) * static_cast<std::size_t>(picture.width) * channels;
        for (std::size_t x = 0; x < row.size(); ++x)
            row[x] = brightness(from + x * channels, picture.channels);
        for (std::size_t i = 0; i < sum.size(); ++i) {
            const Take& t = columns[i];
            float value = t.first_share * row[static_cast<std::size_t>(t.first)];
            for (int x = t.first + 1; x < t.last; ++x)
                value += row[static_cast<std::size_t>(x)];
            if (t.last > t.first) value += t.last_share * row[static_cast<std::size_t>(t.last)];
            sum[i] += share * value;
        }
    };
    const float scale = static_cast<float>(static_cast<double>(width) * height / all);
    for (int j = 0; j < height; ++j) {
        std::fill(sum.begin(), sum.end(), 0.0F);
        const Take& t = rows[static_cast<std::size_t>(j)];
        add_row(t.first, t.first_share);
        for (int y = t.first + 1; y < t.last; ++y)
            add_row(y, 1.0F);
        if (t.last > t.first) add_row(t.last, t.last_share);
        for (std::size_t i = 0; i < sum.size(); ++i)
            out.at[out.index(0, j) + i] = scale * sum[i];
    }
    return out;
}

} // namespace evenfall::picture
