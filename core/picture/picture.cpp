#include "picture/picture.hpp"

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

Reduced reduced_grey(const Picture& picture, int left, int upper, int right, int lower) {
    const int width = right - left;
    const int height = lower - upper;
    Reduced out;
    while (static_cast<long long>(width / out.factor) * (height / out.factor) > most_working_pixels)
        ++out.factor;
    out.plane = Plane(width / out.factor, height / out.factor);
    const auto channels = static_cast<std::size_t>(picture.channels);
    const float share = 1.0F / static_cast<float>(out.factor * out.factor);
    for (int y = 0; y < out.plane.height * out.factor; ++y) {
        const std::size_t first =
            static_cast<std::size_t>(upper + y) * static_cast<std::size_t>(picture.width) +
            static_cast<std::size_t>(left);
        const std::uint8_t* sample = picture.samples.data() + first * channels;
        float* row = out.plane.at.data() + out.plane.index(0, y / out.factor);
        for (int x = 0; x < out.plane.width * out.factor; ++x, sample += channels)
            row[x / out.factor] += share * brightness(sample, picture.channels);
    }
    return out;
}

} // namespace evenfall::picture
