#include "picture/regions.hpp"

#include <algorithm>
#include <cmath>

namespace evenfall::picture {

namespace {

/// Lower envelope of parabolas: d[q] = min over p of (q − p)² + f[p], in place.
class Envelope {
public:
    explicit Envelope(int longest)
        : at_(static_cast<std::size_t>(longest)), from_(static_cast<std::size_t>(longest) + 1),
          copy_(static_cast<std::size_t>(longest)) {}

    void apply(float* f, int n, std::size_t stride) {
        for (int q = 0; q < n; ++q)
            copy_[static_cast<std::size_t>(q)] = f[static_cast<std::size_t>(q) * stride];
        int k = 0;
        at_[0] = 0;
        from_[0] = -far;
        from_[1] = far;
        for (int q = 1; q < n; ++q) {
            float s = crossing(q, at_[static_cast<std::size_t>(k)]);
            while (k > 0 && s <= from_[static_cast<std::size_t>(k)])
                s = crossing(q, at_[static_cast<std::size_t>(--k)]);
            if (s <= from_[static_cast<std::size_t>(k)]) {
                at_[static_cast<std::size_t>(k)] = q;
            } else {
                ++k;
                at_[static_cast<std::size_t>(k)] = q;
                from_[static_cast<std::size_t>(k)] = s;
            }
            from_[static_cast<std::size_t>(k) + 1] = far;
        }
        k = 0;
        for (int q = 0; q < n; ++q) {
            while (from_[static_cast<std::size_t>(k) + 1] < static_cast<float>(q))
                ++k;
            const int p = at_[static_cast<std::size_t>(k)];
            const auto off = static_cast<float>(q - p);
            f[static_cast<std::size_t>(q) * stride] = off * off + copy_[static_cast<std::size_t>(p)];
        }
    }

private:
    static constexpr float far = 1e20F;

    float crossing(int q, int p) const {
        const auto fq = static_cast<float>(q);
        const auto fp = static_cast<float>(p);
        return ((copy_[static_cast<std::size_t>(q)] + fq * fq) -
                (copy_[static_cast<std::size_t>(p)] + fp * fp)) /
               (2.0F * (fq - fp));
    }

    std::vector<int> at_;
    std::vector<float> from_;
    std::vector<float> copy_;
};

Mask where(const Plane& plane, float above) {
    Mask out(plane.width, plane.height);
    for (std::size_t i = 0; i < plane.at.size(); ++i)
        out.at[i] = plane.at[i] > above ? 1 : 0;
    return out;
}

Mask inverse(const Mask& mask) {
    Mask out = mask;
    for (std::uint8_t& value : out.at)
        value = value != 0 ? std::uint8_t{0} : std::uint8_t{1};
    return out;
}

/// Spreads from the seeds over pixels of `mask` that hold `from`, turning them to `to`.
std::size_t spread(Mask& mask, std::vector<std::size_t>& seeds, std::uint8_t from, std::uint8_t to) {
    const auto w = static_cast<std::size_t>(mask.width);
    std::size_t count = seeds.size();
    while (!seeds.empty()) {
        const std::size_t i = seeds.back();
        seeds.pop_back();
        const std::size_t x = i % w;
        const auto visit = [&](std::size_t k) {
            if (mask.at[k] != from) return;
            mask.at[k] = to;
            ++count;
            seeds.push_back(k);
        };
        if (x > 0) visit(i - 1);
        if (x + 1 < w) visit(i + 1);
        if (i >= w) visit(i - w);
        if (i + w < mask.at.size()) visit(i + w);
    }
    return count;
}

} // namespace

Plane distance_to(const Mask& marked) {
    Plane d(marked.width, marked.height);
    // Whole squares up to 2²⁴ are exact in a float; this stands for "none", beyond any square of a picture's
    // side.
    constexpr float none = 4e9F;
    for (std::size_t i = 0; i < d.at.size(); ++i)
        d.at[i] = marked.at[i] != 0 ? 0.0F : none;
    Envelope envelope(std::max(marked.width, marked.height));
    // Columns first: there the squares are those of whole steps, found by two sweeps.
    const auto w = static_cast<std::size_t>(d.width);
    std::vector<float> steps(w, 64'000.0F);
    const auto sweep = [&](int y) {
        float* row = d.at.data() + d.index(0, y);
        for (std::size_t x = 0; x < w; ++x) {
            steps[x] = row[x] == 0.0F ? 0.0F : steps[x] + 1.0F;
            row[x] = std::min(row[x], steps[x] * steps[x]);
        }
    };
    for (int y = 0; y < d.height; ++y)
        sweep(y);
    std::fill(steps.begin(), steps.end(), 64'000.0F);
    for (int y = d.height - 1; y >= 0; --y)
        sweep(y);
    for (int y = 0; y < d.height; ++y)
        envelope.apply(d.at.data() + d.index(0, y), d.width, 1);
    for (float& value : d.at)
        value = std::sqrt(value);
    return d;
}

Mask reached_from_rim(const Mask& open) {
    constexpr std::uint8_t reached = 2;
    Mask out = open;
    std::vector<std::size_t> seeds;
    const auto start = [&](int x, int y) {
        const std::size_t i = out.index(x, y);
        if (out.at[i] != 1) return;
        out.at[i] = reached;
        seeds.push_back(i);
    };
    for (int x = 0; x < out.width; ++x) {
        start(x, 0);
        start(x, out.height - 1);
    }
    for (int y = 0; y < out.height; ++y) {
        start(0, y);
        start(out.width - 1, y);
    }
    (void)spread(out, seeds, 1, reached);
    for (std::uint8_t& value : out.at)
        value = value == reached ? std::uint8_t{1} : std::uint8_t{0};
    return out;
}

Patch largest_patch(const Mask& marked) {
    constexpr std::uint8_t seen = 2;
    constexpr std::uint8_t best = 3;
    Mask work = marked;
    Patch patch;
    std::size_t best_seed = 0;
    std::vector<std::size_t> seeds;
    for (std::size_t i = 0; i < work.at.size(); ++i) {
        if (work.at[i] != 1) continue;
        work.at[i] = seen;
        seeds.assign(1, i);
        const std::size_t count = spread(work, seeds, 1, seen);
        if (count <= patch.pixels) continue;
        patch.pixels = count;
        best_seed = i;
    }
    if (patch.pixels == 0) return patch;
    work.at[best_seed] = best;
    seeds.assign(1, best_seed);
    (void)spread(work, seeds, seen, best);
    patch.x_from = work.width;
    patch.y_from = work.height;
    for (int y = 0; y < work.height; ++y) {
        for (int x = 0; x < work.width; ++x) {
            std::uint8_t& value = work.at[work.index(x, y)];
            value = value == best ? std::uint8_t{1} : std::uint8_t{0};
            if (value == 0) continue;
            patch.x_from = std::min(patch.x_from, x);
            patch.x_to = std::max(patch.x_to, x);
            patch.y_from = std::min(patch.y_from, y);
            patch.y_to = std::max(patch.y_to, y);
        }
    }
    patch.mask = std::move(work);
    return patch;
}

Patch enclosed(const Plane& away, double reach, double spur) {
    const auto r = static_cast<float>(reach);
    const Mask swept = reached_from_rim(where(away, r));
    // The disc's own body is outside too, not only the path of its middle.
    const Mask inside = where(distance_to(swept), r);
    Patch patch = largest_patch(inside);
    if (patch.pixels == 0 || spur <= 0.0) return patch;
    const auto half = static_cast<float>(0.5 * spur);
    // Within the patch's own box and a margin: the rest of the picture has no say in it.
    const int margin = static_cast<int>(spur) + 2;
    const int x0 = patch.x_from - margin;
    const int y0 = patch.y_from - margin;
    Mask box(patch.x_to + margin + 1 - x0, patch.y_to + margin + 1 - y0);
    for (int y = patch.y_from; y <= patch.y_to; ++y) {
        const auto from =
            patch.mask.at.begin() + static_cast<std::ptrdiff_t>(patch.mask.index(patch.x_from, y));
        std::copy(from, from + (patch.x_to - patch.x_from + 1),
                  box.at.begin() + static_cast<std::ptrdiff_t>(box.index(margin, y - y0)));
    }
    const Patch kept = largest_patch(where(distance_to(inverse(box)), half));
    if (kept.pixels == 0) return {};
    Patch smooth = largest_patch(inverse(where(distance_to(kept.mask), half)));
    Mask whole(away.width, away.height);
    for (int y = smooth.y_from; y <= smooth.y_to; ++y) {
        for (int x = smooth.x_from; x <= smooth.x_to; ++x) {
            const int at_x = x + x0;
            const int at_y = y + y0;
            if (at_x < 0 || at_y < 0 || at_x >= whole.width || at_y >= whole.height) continue;
            whole.at[whole.index(at_x, at_y)] = smooth.mask.at[smooth.mask.index(x, y)];
        }
    }
    smooth.mask = std::move(whole);
    smooth.x_from = std::max(0, smooth.x_from + x0);
    smooth.y_from = std::max(0, smooth.y_from + y0);
    smooth.x_to = std::min(away.width - 1, smooth.x_to + x0);
    smooth.y_to = std::min(away.height - 1, smooth.y_to + y0);
    return smooth;
}

} // namespace evenfall::picture
