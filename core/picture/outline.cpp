#include "picture/outline.hpp"

#include "picture/edges.hpp"
#include "picture/refine.hpp"
#include "picture/regions.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace evenfall::picture {

namespace {

constexpr double smoothing_px = 1.4;
constexpr double spur_px = 7.0; ///< thinner than this no piece of a lure is drawn
constexpr double least_backed = 0.55;
constexpr double least_share = 0.01; ///< of what is looked at that the outline must enclose
constexpr double grown = 1.25;       ///< a wider reach must enclose this much more to be preferred

Problems check(const OutlineOptions& o, const Picture& picture) {
    Problems problems;
    const auto want = [&](bool kept, const char* path, const char* limit, const char* sentence) {
        if (!kept) problems.push_back({ProblemCode::out_of_range, path, limit, sentence});
    };
    want(o.sensitivity >= 0.2 && o.sensitivity <= 5.0, "/sensitivity", "0.2 to 5",
         "The sensitivity must be 0.2 to 5.");
    want(!o.gap_px || (*o.gap_px >= 0.0 && *o.gap_px <= 500.0), "/gap_px", "0 to 500 pixels",
         "The widest gap to bridge must be 0 to 500 pixels.");
    want(o.part_from.has_value() == o.part_to.has_value(), "/part", "two corners",
         "A part of the picture needs both of its corners.");
    if (!o.part_from || !o.part_to) return problems;
    const auto within = [&](Spot s) {
        return s.x >= 0.0 && s.y >= 0.0 && s.x <= picture.width && s.y <= picture.height;
    };
    want(within(*o.part_from) && within(*o.part_to) &&
             std::abs(o.part_from->x - o.part_to->x) >= least_side &&
             std::abs(o.part_from->y - o.part_to->y) >= least_side,
         "/part", "within the picture, at least 24 pixels each way",
         "The part to look at must lie within the picture and measure at least 24 pixels each way.");
    return problems;
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
    Plane plane; ///< grey, then smoothed
    Edges edges;
    Plane away;    ///< distance to the nearest edge
    int scale = 1; ///< pixels of the picture in one of the plane
    int left = 0;  ///< where the part looked at starts, pixels of the picture
    int upper = 0;
    std::vector<double> reaches;
    std::vector<Candidate> candidates;
    std::optional<Contour> found;
    bool finished = false;

    static constexpr int steps_before_reaches = 4;

    void take_in();
    void set_reaches();
    void try_reach(double reach);
    void follow_best();
    void run();
};

void OutlineSearch::Work::take_in() {
    int right = picture.width;
    int lower = picture.height;
    if (options.part_from) {
        const Spot a = *options.part_from;
        const Spot b = *options.part_to;
        left = static_cast<int>(std::min(a.x, b.x));
        upper = static_cast<int>(std::min(a.y, b.y));
        right = static_cast<int>(std::ceil(std::max(a.x, b.x)));
        lower = static_cast<int>(std::ceil(std::max(a.y, b.y)));
    }
    Reduced reduced = reduced_grey(picture, left, upper, right, lower);
    plane = std::move(reduced.plane);
    scale = reduced.factor;
    picture.samples = {};
}

void OutlineSearch::Work::set_reaches() {
    const double longer = std::max(plane.width, plane.height);
    const double gap = options.gap_px ? *options.gap_px / scale : longer / 60.0;
    const double most = std::max(1.5, 0.5 * gap + 1.0);
    for (double reach = 1.5; reach < most; reach *= 1.9)
        reaches.push_back(reach);
    reaches.push_back(most);
}

void OutlineSearch::Work::try_reach(double reach) {
    const auto before = candidates.empty() ? 0.0 : static_cast<double>(candidates.back().patch.pixels);
    const double least = std::max(least_share * static_cast<double>(plane.at.size()), grown * before);
    Patch patch = enclosed(away, reach, spur_px, least);
    if (static_cast<double>(patch.pixels) < least) return;
    candidates.push_back({std::move(patch), reach});
}

void OutlineSearch::Work::follow_best() {
    for (auto candidate = candidates.rbegin(); candidate != candidates.rend(); ++candidate) {
        const Refined fine =
            refined(plane, border_of(candidate->patch.mask), 8.0 + 0.5 * candidate->reach, edges.carry);
        if (fine.backed < least_backed || fine.ring.size() < 16) continue;
        Contour contour;
        contour.drawn_line = fine.drawn_line;
        contour.backed = fine.backed;
        contour.working_scale = scale;
        for (const Spot& s : fine.ring)
            contour.points.push_back({left + s.x * scale, upper + s.y * scale});
        contour.area_px2 = signed_area(contour.points);
        found = std::move(contour);
        return;
    }
}

void OutlineSearch::Work::run() {
    const int k = step - steps_before_reaches;
    if (step == 0) {
        take_in();
        set_reaches();
    } else if (step == 1) {
        plane = smoothed(plane, smoothing_px);
    } else if (step == 2) {
        edges = find_edges(plane, options.sensitivity);
    } else if (step == 3) {
        away = distance_to(edges.mask);
    } else if (k < static_cast<int>(reaches.size())) {
        try_reach(reaches[static_cast<std::size_t>(k)]);
    } else {
        follow_best();
        finished = true;
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
    return work_->step == 0 ? 0.0
                            : static_cast<double>(work_->step) /
                                  static_cast<double>(Work::steps_before_reaches + work_->reaches.size() + 1);
}

Outcome<Contour> OutlineSearch::result() const {
    if (work_->found) return *work_->found;
    if (!work_->finished)
        return Problem{ProblemCode::missing_key, "/picture", "",
                       "The search for the outline is not finished."};
    return Problem{
        ProblemCode::cannot_be_met, "/picture", "",
        "No closed outline was found: draw over gaps in the line, let plain ground show all round the lure, "
        "or choose a smaller part of the picture."};
}

Outcome<Contour> find_outline(const Picture& picture, const OutlineOptions& options) {
    auto search = OutlineSearch::begin(picture, options);
    if (!search.ok()) return search.problems();
    while (search->advance()) {
    }
    return search->result();
}

} // namespace evenfall::picture
