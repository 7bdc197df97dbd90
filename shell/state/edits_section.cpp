#include "state/edits.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace evenfall::shell::state {
namespace {

using Outline = std::vector<document::OutlinePoint>;

bool between_ends(const Outline& outline, int index) {
    return index > 0 && index + 1 < static_cast<int>(outline.size());
}

double side_length(const Outline& outline, std::size_t to) {
    return std::hypot(outline[to].y - outline[to - 1].y, outline[to].z - outline[to - 1].z);
}

} // namespace

SectionSpot nearest_on_section(const Outline& outline, double y, double z) {
    SectionSpot best{0, {}, std::numeric_limits<double>::infinity()};
    for (std::size_t i = 1; i < outline.size(); ++i) {
        const auto& a = outline[i - 1];
        const auto& b = outline[i];
        const double length = side_length(outline, i);
        if (!(length > 0.0)) continue;
        const double along = ((y - a.y) * (b.y - a.y) + (z - a.z) * (b.z - a.z)) / (length * length);
        const double share = std::clamp(along, 0.0, 1.0);
        const document::OutlinePoint at{a.y + share * (b.y - a.y), a.z + share * (b.z - a.z)};
        const double away = std::hypot(y - at.y, z - at.z);
        if (away < best.away) best = {static_cast<int>(i), at, away};
    }
    return best;
}

Edit add_section_point(int place, document::OutlinePoint at) {
    return on_document([=](document::Document& d) {
        auto& outline = d.shape.section.half_outline;
        if (place < 1 || place >= static_cast<int>(outline.size())) return;
        const auto hundredth = [](double share) { return std::round(share * 100.0) / 100.0; };
        outline.insert(outline.begin() + place, {hundredth(at.y), hundredth(at.z)});
    });
}

Edit add_section_point() {
    return on_document([](document::Document& d) {
        auto& outline = d.shape.section.half_outline;
        if (outline.size() < 2) return;
        std::size_t longest = 1;
        for (std::size_t i = 2; i < outline.size(); ++i) {
            if (side_length(outline, i) > side_length(outline, longest)) longest = i;
        }
        const auto& a = outline[longest - 1];
        const auto& b = outline[longest];
        d = add_section_point(static_cast<int>(longest),
                              {0.5 * (a.y + b.y), 0.5 * (a.z + b.z)})(std::move(d));
    });
}

Edit remove_section_point(int index) {
    return on_document([index](document::Document& d) {
        auto& outline = d.shape.section.half_outline;
        if (!between_ends(outline, index) || outline.size() <= 3) return;
        // The widest point stands for the width line; without it the section would be narrower than drawn
        // from above.
        const auto widest =
            std::count_if(outline.begin(), outline.end(), [](const auto& p) { return p.y >= 1.0; });
        if (outline[static_cast<std::size_t>(index)].y >= 1.0 && widest < 2) return;
        outline.erase(outline.begin() + index);
    });
}

Edit put_section_point(int index, double y, double z) {
    return on_document([=](document::Document& d) {
        auto& outline = d.shape.section.half_outline;
        if (!between_ends(outline, index)) return;
        outline[static_cast<std::size_t>(index)] = {std::clamp(y, 0.0, 1.0), std::clamp(z, -1.0, 1.0)};
    });
}

} // namespace evenfall::shell::state
