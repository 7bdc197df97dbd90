#include "picture/regions.hpp"

#include <algorithm>

namespace evenfall::picture {

namespace {

Mask where_above(const Plane& plane, double level) {
    Mask out(plane.width, plane.height);
    for (std::size_t i = 0; i < plane.at.size(); ++i)
        out.at[i] = plane.at[i] > level ? 1 : 0;
    return out;
}

Mask inverse(Mask mask) {
    for (std::uint8_t& value : mask.at)
        value = value != 0 ? 0 : 1;
    return mask;
}

/// Turns `from` into `to` at the seed and all that hangs together with it up, down and sideways; how many.
std::size_t fill(Mask& mask, std::size_t seed, std::uint8_t from, std::uint8_t to) {
    std::vector<std::size_t> seeds;
    std::size_t count = 0;
    const auto visit = [&](std::size_t i) {
        if (mask.at[i] != from) return;
        mask.at[i] = to;
        ++count;
        seeds.push_back(i);
    };
    visit(seed);
    const auto w = static_cast<std::size_t>(mask.width);
    while (!seeds.empty()) {
        const std::size_t i = seeds.back();
        seeds.pop_back();
        if (i % w > 0) visit(i - 1);
        if (i % w + 1 < w) visit(i + 1);
        if (i >= w) visit(i - w);
        if (i + w < mask.at.size()) visit(i + w);
    }
    return count;
}

Mask only(Mask mask, std::uint8_t kept) {
    for (std::uint8_t& value : mask.at)
        value = value == kept ? 1 : 0;
    return mask;
}

/// What can be reached from the rim of the picture over open pixels.
Mask reached_from_rim(Mask open) {
    constexpr std::uint8_t reached = 2;
    for (int x = 0; x < open.width; ++x) {
        for (const int y : {0, open.height - 1})
            (void)fill(open, open.index(x, y), 1, reached);
    }
    for (int y = 0; y < open.height; ++y) {
        for (const int x : {0, open.width - 1})
            (void)fill(open, open.index(x, y), 1, reached);
    }
    return only(std::move(open), reached);
}

Patch largest_patch(Mask marked) {
    constexpr std::uint8_t seen = 2;
    constexpr std::uint8_t best = 3;
    std::size_t pixels = 0;
    std::size_t best_seed = 0;
    for (std::size_t i = 0; i < marked.at.size(); ++i) {
        const std::size_t count = fill(marked, i, 1, seen);
        if (count <= pixels) continue;
        pixels = count;
        best_seed = i;
    }
    if (pixels > 0) (void)fill(marked, best_seed, seen, best);
    return {only(std::move(marked), best), pixels};
}

} // namespace

Plane distance_to(const Mask& marked) {
    constexpr float straight = 1.0F;
    constexpr float aslant = 4.0F / 3.0F;
    Plane d(marked.width, marked.height, 1e9F);
    // One pixel from its neighbours in the row before and beside it; on the border a neighbour that is not
    // there is the pixel itself, which changes nothing.
    const auto visit = [&](int x, int y, int back) {
        float* row = d.at.data() + d.index(0, y);
        const float* before = d.at.data() + d.index(0, std::clamp(y - back, 0, d.height - 1));
        const int left = std::max(x - 1, 0);
        const int right = std::min(x + 1, d.width - 1);
        row[x] = std::min({row[x], row[back > 0 ? left : right] + straight, before[x] + straight,
                           before[left] + aslant, before[right] + aslant});
    };
    for (std::size_t i = 0; i < d.at.size(); ++i) {
        if (marked.at[i] != 0) d.at[i] = 0.0F;
    }
    for (int y = 0; y < d.height; ++y) {
        for (int x = 0; x < d.width; ++x)
            visit(x, y, 1);
    }
    for (int y = d.height - 1; y >= 0; --y) {
        for (int x = d.width - 1; x >= 0; --x)
            visit(x, y, -1);
    }
    return d;
}

Patch enclosed(const Plane& away, double reach, double spur, double least) {
    const Mask swept = reached_from_rim(where_above(away, reach));
    // The disc's own body is outside too, not only the path of its middle.
    const Patch inside = largest_patch(where_above(distance_to(swept), reach));
    if (inside.pixels == 0 || static_cast<double>(inside.pixels) < least) return {};
    const Patch core = largest_patch(where_above(distance_to(inverse(inside.mask)), 0.5 * spur));
    if (core.pixels == 0) return {};
    return largest_patch(inverse(where_above(distance_to(core.mask), 0.5 * spur)));
}

} // namespace evenfall::picture
