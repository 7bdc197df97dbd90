#include "picture/outline.hpp"

#include "picture/edges.hpp"
#include "picture/filters.hpp"
#include "picture/refine.hpp"
#include "picture/regions.hpp"

#include <algorithm>
#include <array>
#include <cmath>
#include <string>

namespace evenfall::picture {

namespace {

constexpr double smoothing_px = 1.4;
constexpr double spur_px = 7.0;     ///< thinner than this no piece of a lure is drawn
constexpr double clear_share = 0.5; ///< of the steepness that carries an edge on
constexpr double least_backed = 0.55;
constexpr double grown = 1.25; ///< a wider reach must enclose this much more to be preferred

Problem off_range(const char* path, const char* limit, const char* sentence) {
    return {ProblemCode::out_of_range, path, limit, sentence};
}

Problems check(const OutlineOptions& o, const Picture& picture) {
    Problems problems;
    if (!(o.sensitivity >= 0.2 && o.sensitivity <= 5.0)) {
        problems.push_back(off_range("/sensitivity", "0.2 to 5", "The sensitivity must be 0.2 to 5."));
    }
    if (o.gap_px && !(*o.gap_px >= 0.0 && *o.gap_px <= 500.0)) {
        problems.push_back(
            off_range("/gap_px", "0 to 500 pixels", "The widest gap to bridge must be 0 to 500 pixels."));
    }
    if (!(o.least_share >= 0.0005 && o.least_share <= 0.9)) {
        problems.push_back(off_range("/least_share", "0.05 to 90 %",
                                     "The outline's least share of the picture must be 0.05 to 90 %."));
    }
    if (o.part_from.has_value() != o.part_to.has_value()) {
        problems.push_back(
            off_range("/part", "two corners", "A part of the picture needs both of its corners."));
    } else if (o.part_from) {
        const Spot a = *o.part_from;
        const Spot b = *o.part_to;
        const bool numbers =
            std::isfinite(a.x) && std::isfinite(a.y) && std::isfinite(b.x) && std::isfinite(b.y);
        const auto within = [](double v, int side) { return v >= 0.0 && v <= static_cast<double>(side); };
        if (!numbers || !within(a.x, picture.width) || !within(b.x, picture.width) ||
            !within(a.y, picture.height) || !within(b.y, picture.height) ||
            std::abs(a.x - b.x) < least_side || std::abs(a.y - b.y) < least_side) {
            problems.push_back(off_range(
                "/part", "within the picture, at least 24 pixels each way",
                "The part to look at must lie within the picture and measure at least 24 pixels each way."));
        }
    }
    return problems;
}

/// The part of a plane between two corners given as whole pixels, the second excluded.
Plane cut_out(const Plane& plane, int x0, int y0, int x1, int y1) {
    Plane out(x1 - x0, y1 - y0);
    for (int y = 0; y < out.height; ++y) {
        const auto from = plane.at.begin() + static_cast<std::ptrdiff_t>(plane.index(x0, y0 + y));
        std::copy(from, from + out.width, out.at.begin() + static_cast<std::ptrdiff_t>(out.index(0, y)));
    }
    return out;
}

/// 1 inside the patch, 0 outside, blurred a little: its half level is a smooth outline. One pixel of rim all
/// round.
Ring outline_of(const Patch& patch) {
    constexpr int rim = 6;
    Plane field(patch.x_to - patch.x_from + 1 + 2 * rim, patch.y_to - patch.y_from + 1 + 2 * rim);
    for (int y = patch.y_from; y <= patch.y_to; ++y) {
        for (int x = patch.x_from; x <= patch.x_to; ++x) {
            field.at[field.index(x - patch.x_from + rim, y - patch.y_from + rim)] =
                patch.mask.at[patch.mask.index(x, y)];
        }
    }
    Ring ring = level_line(smoothed(field, 1.2), 0.5);
    for (Spot& spot : ring) {
        spot.x += patch.x_from - rim;
        spot.y += patch.y_from - rim;
    }
    return ring;
}

struct Candidate {
    Patch patch;
    double reach = 0.0;
};

} // namespace

struct OutlineSearch::Work {
    Picture picture;
    OutlineOptions options;

    int step = 0;
    Plane plane; ///< grey, then evenly lit, then smoothed
    Slopes slopes;
    EdgeLevels levels;
    Plane away;           ///< distance to the nearest edge
    double scale_x = 1.0; ///< pixels of the picture in one of the plane
    double scale_y = 1.0;
    double left = 0.0; ///< where the plane starts, pixels of the plane
    double upper = 0.0;
    std::vector<double> reaches;
    std::vector<Candidate> candidates;
    std::optional<Contour> found;
    bool finished = false;

    static constexpr int steps_before_reaches = 6;

    [[nodiscard]] int steps() const { return steps_before_reaches + static_cast<int>(reaches.size()) + 1; }

    void take_in();
    void set_reaches();
    void try_reach(double reach);
    void follow_best();
    void run();
};

void OutlineSearch::Work::take_in() {
    plane = grey(picture);
    scale_x = static_cast<double>(picture.width) / plane.width;
    scale_y = static_cast<double>(picture.height) / plane.height;
    picture.samples = {};
    if (!options.part_from) return;
    const auto low = [](double a, double b, double scale) {
        return static_cast<int>(std::floor(std::min(a, b) / scale));
    };
    const auto high = [](double a, double b, double scale, int most) {
        return std::min(static_cast<int>(std::ceil(std::max(a, b) / scale)), most);
    };
    const int x0 = low(options.part_from->x, options.part_to->x, scale_x);
    const int y0 = low(options.part_from->y, options.part_to->y, scale_y);
    const int x1 = high(options.part_from->x, options.part_to->x, scale_x, plane.width);
    const int y1 = high(options.part_from->y, options.part_to->y, scale_y, plane.height);
    plane = cut_out(plane, std::min(x0, plane.width - 2), std::min(y0, plane.height - 2), x1, y1);
    left = x0;
    upper = y0;
}

void OutlineSearch::Work::set_reaches() {
    const double longer = std::max(plane.width, plane.height);
    const double gap = options.gap_px ? *options.gap_px / std::max(scale_x, scale_y) : longer / 60.0;
    const double most = std::max(1.5, 0.5 * gap + 1.0);
    for (double reach = 1.5; reach < most; reach *= 1.9)
        reaches.push_back(reach);
    reaches.push_back(most);
}

void OutlineSearch::Work::try_reach(double reach) {
    Patch patch = enclosed(away, reach, spur_px);
    const double share = static_cast<double>(patch.pixels) / static_cast<double>(plane.at.size());
    if (share < options.least_share) return;
    const auto before = candidates.empty() ? 0.0 : static_cast<double>(candidates.back().patch.pixels);
    if (static_cast<double>(patch.pixels) < grown * before) return;
    candidates.push_back({std::move(patch), reach});
}

void OutlineSearch::Work::follow_best() {
    for (auto candidate = candidates.rbegin(); candidate != candidates.rend(); ++candidate) {
        const Ring rough = outline_of(candidate->patch);
        if (rough.size() < 16) continue;
        Refined fine = refined(plane, rough, 8.0 + 0.5 * candidate->reach, clear_share * levels.carry);
        if (fine.backed < least_backed || fine.ring.size() < 16) continue;
        Contour contour;
        contour.drawn_line = fine.drawn_line;
        contour.backed = fine.backed;
        contour.working_scale = std::sqrt(scale_x * scale_y);
        for (const Spot& s : fine.ring)
            contour.points.push_back({(s.x + left) * scale_x, (s.y + upper) * scale_y});
        if (signed_area(contour.points) < 0.0) std::reverse(contour.points.begin(), contour.points.end());
        contour.area_px2 = signed_area(contour.points);
        found = std::move(contour);
        return;
    }
}

void OutlineSearch::Work::run() {
    switch (step) {
    case 0:
        take_in();
        set_reaches();
        break;
    case 1:
        plane = evenly_lit(plane);
        break;
    case 2:
        plane = smoothed(plane, smoothing_px);
        break;
    case 3:
        slopes = sobel(plane);
        break;
    case 4:
        levels = edge_levels(slopes, options.sensitivity);
        break;
    case 5:
        away = distance_to(edges(slopes, levels));
        slopes = {};
        break;
    default: {
        const auto k = static_cast<std::size_t>(step - steps_before_reaches);
        if (k < reaches.size()) {
            try_reach(reaches[k]);
        } else {
            follow_best();
            finished = true;
        }
    }
    }
    ++step;
}

OutlineSearch::OutlineSearch(std::unique_ptr<Work> work) : work_(std::move(work)) {}
OutlineSearch::OutlineSearch(OutlineSearch&&) noexcept = default;
OutlineSearch& OutlineSearch::operator=(OutlineSearch&&) noexcept = default;
OutlineSearch::~OutlineSearch() = default;

Outcome<OutlineSearch> OutlineSearch::begin(const Picture& picture, const OutlineOptions& options) {
    Problems problems = picture::check(picture);
    if (problems.empty()) problems = check(options, picture);
    if (!problems.empty()) return problems;
    auto work = std::make_unique<Work>();
    work->picture = picture;
    work->options = options;
    return OutlineSearch(std::move(work));
}

bool OutlineSearch::advance() {
    if (!work_->finished) work_->run();
    return !work_->finished;
}

double OutlineSearch::done_share() const {
    if (work_->finished) return 1.0;
    return work_->step == 0 ? 0.0 : static_cast<double>(work_->step) / work_->steps();
}

Outcome<Contour> OutlineSearch::result() const {
    if (work_->found) return *work_->found;
    if (!work_->finished)
        return Problem{ProblemCode::missing_key, "/picture", "",
                       "The search for the outline is not finished."};
    return Problem{
        ProblemCode::cannot_be_met, "/picture", "",
        "No closed outline was found: draw over gaps in the line, let plain ground show all round the piece, "
        "choose a smaller part of the picture, or raise the sensitivity."};
}

Outcome<Contour> find_outline(const Picture& picture, const OutlineOptions& options) {
    auto search = OutlineSearch::begin(picture, options);
    if (!search.ok()) return search.problems();
    while (search->advance()) {
    }
    return search->result();
}

} // namespace evenfall::picture
