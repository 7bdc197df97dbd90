#include "picture/profile.hpp"

#include "base/sentence.hpp"
#include "base/trade.hpp"
#include "body/curve.hpp"
#include "body/tail_loft.hpp"
#include "picture/level.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <string>

namespace evenfall::picture {

namespace {

constexpr double least_step_m = 0.0002; ///< between two points of a line
constexpr double face_share = 0.4;      ///< of the tolerance, from a tip to its upright face

double hundredth_mm(double m) {
    return units::m_from_mm(std::round(units::mm_from_m(m) * 100.0) / 100.0);
}

/// Chooses places of a side as points of the bench's curve.
class Fit {
public:
    document::CurvePoints points;
    double worst_m = 0.0;

    Fit(const std::vector<Place>& line, double length_m, double tolerance_m, std::size_t most)
        : line_(line), length_m_(length_m), tolerance_m_(tolerance_m) {
        std::vector<std::size_t> knots{0, line.size() - 1};
        // A monotone curve turns only at its points: the highest and lowest place have to be among them.
        const auto by_z = [](const Place& a, const Place& b) { return a.z < b.z; };
        for (const auto at : {std::max_element(line.begin(), line.end(), by_z) - line.begin(),
                              std::min_element(line.begin(), line.end(), by_z) - line.begin()})
            add(knots, static_cast<std::size_t>(at));
        // Points where the curve is furthest off until it keeps the tolerance, then without those not needed.
        measure(knots);
        while (worst_m > tolerance_m && knots.size() < most && add(knots, worst_free_place(knots)))
            measure(knots);
        for (std::size_t k = knots.size() - 2; k > 0 && knots.size() > 3; --k) {
            std::vector<std::size_t> fewer = knots;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(k));
            measure(fewer);
            if (worst_m <= tolerance_m) knots = std::move(fewer);
        }
        measure(knots);
    }

private:
    [[nodiscard]] bool room_for(const std::vector<std::size_t>& knots, std::size_t at) const {
        return std::all_of(knots.begin(), knots.end(),
                           [&](std::size_t k) { return std::abs(line_[k].x - line_[at].x) >= least_step_m; });
    }

    bool add(std::vector<std::size_t>& knots, std::size_t at) const {
        if (!room_for(knots, at)) return false;
        knots.insert(std::upper_bound(knots.begin(), knots.end(), at), at);
        return true;
    }

    /// The points of these places, and how far the curve through them is off at each place of the line.
    void measure(const std::vector<std::size_t>& knots) {
        points.clear();
        for (const std::size_t k : knots)
            points.push_back({hundredth_mm(line_[k].x), hundredth_mm(line_[k].z)});
        points.front().x_m = 0.0;
        points.back().x_m = length_m_;
        const shape::Curve curve(points);
        std::vector<Place> drawn = line_;
        for (Place& p : drawn)
            p.z = curve.at(p.x).value;
        for (std::size_t i = 0; i < line_.size(); ++i) {
            double off = std::abs(drawn[i].z - line_[i].z);
            if (off > tolerance_m_) {
                // On a steep stretch the height is far off where the line is near; both ways, so that neither
                // may bulge.
                const double window = std::min(off, 2.0 * tolerance_m_);
                off = std::min(off, std::max(distance_near(drawn, line_[i], window),
                                             distance_near(line_, drawn[i], window)));
            }
            off_[i] = off;
        }
        worst_m = *std::max_element(off_.begin(), off_.end());
    }

    /// Place 0, which is a point already, where none is free.
    [[nodiscard]] std::size_t worst_free_place(const std::vector<std::size_t>& knots) const {
        std::size_t worst = 0;
        for (std::size_t i = 1; i + 1 < line_.size(); ++i) {
            if (off_[i] > (worst == 0 ? 0.0 : off_[worst]) && room_for(knots, i)) worst = i;
        }
        return worst;
    }

    const std::vector<Place>& line_;
    double length_m_;
    double tolerance_m_;
    std::vector<double> off_ = std::vector<double>(line_.size());
};

void want_kept(Problems& problems, const char* called, const Fit& fit, const Scale& scale) {
    if (fit.worst_m <= scale.tolerance_m) return;
    problems.push_back({ProblemCode::cannot_be_met, "/tolerance_mm", thickness_text(scale.tolerance_m),
                        std::string("The ") + called + " cannot be kept within " +
                            thickness_text(scale.tolerance_m, 2) + " of the outline with " +
                            std::to_string(scale.most_points) + " points; they reach " +
                            thickness_text(fit.worst_m, 2) + ". Allow more, or smooth the outline."});
}

} // namespace

Outcome<Profile> profile_from(const Contour& contour, const Scale& scale) {
    const auto outline = levelled(contour, scale);
    if (!outline.ok()) return outline.problems();
    const Sides sides = sides_of(*outline, face_share * scale.tolerance_m);

    Profile profile;
    profile.length_m = hundredth_mm(outline->length_m);
    profile.turned_rad = outline->turned_rad;
    profile.overhang_m = sides.overhang_m;
    for (std::size_t i = 0; i < sides.upper.size(); ++i)
        profile.greatest_height_m = std::max(profile.greatest_height_m, sides.upper[i].z - sides.lower[i].z);
    const auto most = static_cast<std::size_t>(scale.most_points);
    const Fit back(sides.upper, profile.length_m, scale.tolerance_m, most);
    const Fit belly(sides.lower, profile.length_m, scale.tolerance_m, most);
    Problems problems;
    want_kept(problems, "back line", back, scale);
    want_kept(problems, "belly line", belly, scale);
    if (!problems.empty()) return problems;
    profile.top = back.points;
    profile.bottom = belly.points;
    profile.off_top_m = back.worst_m;
    profile.off_bottom_m = belly.worst_m;
    return profile;
}

document::Document with_profile(const document::Document& document, const Profile& profile) {
    document::Document out = document;
    const double old_m = document.shape.half_width.empty() ? 0.0 : document.shape.half_width.back().x_m;
    const double stretch = old_m > 0.0 ? profile.length_m / old_m : 1.0;
    const auto place = [&](double& x_m) { x_m *= stretch; };
    out.shape.back = profile.top;
    out.shape.belly = profile.bottom;
    for (document::CurvePoint& p : out.shape.half_width)
        place(p.x_m);
    if (!out.shape.half_width.empty()) out.shape.half_width.back().x_m = profile.length_m;
    for (document::CurvePoint& p : out.shape.section.curve())
        place(p.x_m);
    for (document::Joint& joint : out.joints)
        place(joint.at_m);
    for (document::Hole& hole : out.holes)
        place(hole.x_m);
    // A tail is cast already: with its slot it only moves with the end of the wood.
    const double moved_m = profile.length_m - old_m;
    const int slot = tail::slot_of(document);
    for (int i = 0; i < static_cast<int>(out.pockets.size()); ++i) {
        document::Pocket& pocket = out.pockets[static_cast<std::size_t>(i)];
        for (double* x_m : {&pocket.x_from_m, &pocket.x_to_m}) {
            if (i == slot)
                *x_m += moved_m;
            else
                place(*x_m);
        }
    }
    for (document::Hanger& hanger : out.hangers)
        place(hanger.x_m);
    for (document::Part& part : out.parts)
        place(part.at_m.x);
    if (out.tail) out.tail->x_m += moved_m;
    return out;
}

document::Document new_lure(const Profile& profile) {
    constexpr double width_over_height = 0.5;
    constexpr int stations = 13;
    document::Document out;
    out.name = "Traced lure";
    out.note =
        "Back and belly traced from a picture. The width is a guess, half the height: draw the width line.";
    out.shape.back = profile.top;
    out.shape.belly = profile.bottom;
    const shape::Curve top(profile.top);
    const shape::Curve bottom(profile.bottom);
    for (int k = 0; k < stations; ++k) {
        const double s = static_cast<double>(k) / (stations - 1);
        const double x =
            k + 1 == stations ? profile.length_m : hundredth_mm(profile.length_m * s * s * (3.0 - 2.0 * s));
        const double height = top.at(x).value - bottom.at(x).value;
        out.shape.half_width.push_back({x, std::max(0.0005, hundredth_mm(0.5 * width_over_height * height))});
    }
    out.segment_names = {"Body"};
    return out;
}

} // namespace evenfall::picture
