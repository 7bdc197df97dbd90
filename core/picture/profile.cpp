#include "picture/profile.hpp"

#include "base/sentence.hpp"
#include "base/trade.hpp"
#include "body/curve.hpp"
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

/// A choice of places of a hull, as points of a curve.
class Fit {
public:
    Fit(const std::vector<Place>& line, double length_m)
        : line_(line), length_m_(length_m), off_(line.size()), knots_{0, line.size() - 1} {}

    /// Adds points where the curve is furthest off until it keeps the tolerance, then takes out those that
    /// are not needed.
    void within(double tolerance_m, std::size_t most) {
        tolerance_m_ = tolerance_m;
        seed();
        double worst = measure(knots_);
        while (worst > tolerance_m && knots_.size() < most) {
            const std::size_t at = worst_free_place();
            if (at == 0) break;
            knots_.insert(std::upper_bound(knots_.begin(), knots_.end(), at), at);
            worst = measure(knots_);
        }
        for (std::size_t k = knots_.size() - 2; k > 0 && knots_.size() > 3; --k) {
            std::vector<std::size_t> fewer = knots_;
            fewer.erase(fewer.begin() + static_cast<std::ptrdiff_t>(k));
            const double without = measure(fewer);
            if (without > tolerance_m) continue;
            knots_ = std::move(fewer);
        }
        worst_ = measure(knots_);
    }

    [[nodiscard]] double worst_m() const { return worst_; }
    [[nodiscard]] document::CurvePoints points() const { return points_of(knots_); }

private:
    /// A monotone curve turns only at its points: the highest and lowest place have to be among them.
    void seed() {
        const auto by_z = [](const Place& a, const Place& b) { return a.z < b.z; };
        for (const auto at : {std::max_element(line_.begin(), line_.end(), by_z) - line_.begin(),
                              std::min_element(line_.begin(), line_.end(), by_z) - line_.begin()}) {
            const auto k = static_cast<std::size_t>(at);
            if (room_for(k)) knots_.insert(std::upper_bound(knots_.begin(), knots_.end(), k), k);
        }
    }

    [[nodiscard]] bool room_for(std::size_t at) const {
        return std::all_of(knots_.begin(), knots_.end(),
                           [&](std::size_t k) { return std::abs(line_[k].x - line_[at].x) >= least_step_m; });
    }

    [[nodiscard]] document::CurvePoints points_of(const std::vector<std::size_t>& knots) const {
        document::CurvePoints points;
        for (const std::size_t k : knots)
            points.push_back({hundredth_mm(line_[k].x), hundredth_mm(line_[k].z)});
        points.front().x_m = 0.0;
        points.back().x_m = length_m_;
        return points;
    }

    double measure(const std::vector<std::size_t>& knots) {
        const shape::Curve curve(points_of(knots));
        std::vector<Place> drawn(line_.size());
        for (std::size_t i = 0; i < line_.size(); ++i)
            drawn[i] = {line_[i].x, curve.at(line_[i].x).value};
        double worst = 0.0;
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
            worst = std::max(worst, off);
        }
        return worst;
    }

    [[nodiscard]] std::size_t worst_free_place() const {
        std::size_t worst = 0;
        double most = 0.0;
        for (std::size_t i = 1; i + 1 < line_.size(); ++i) {
            if (off_[i] <= most || !room_for(i)) continue;
            most = off_[i];
            worst = i;
        }
        return worst;
    }

    const std::vector<Place>& line_;
    double length_m_;
    double tolerance_m_ = 0.0;
    double worst_ = 0.0;
    std::vector<double> off_;
    std::vector<std::size_t> knots_;
};

Problem too_few(const char* called, double tolerance_m, double reached_m, int most) {
    return {ProblemCode::cannot_be_met, "/tolerance_mm", millimetres_text(tolerance_m),
            std::string("The ") + called + " cannot be kept within " +
                std::to_string(units::mm_from_m(tolerance_m)).substr(0, 4) + " mm of the outline with " +
                std::to_string(most) + " points; they reach " +
                std::to_string(units::mm_from_m(reached_m)).substr(0, 4) +
                " mm. Allow more, or smooth the outline."};
}

} // namespace

Outcome<Profile> profile_from(const Contour& contour, const Scale& scale) {
    const auto outline = levelled(contour, scale);
    if (!outline.ok()) return outline.problems();
    const double face_m = face_share * scale.tolerance_m;
    const Hull upper = upper_hull(*outline, face_m);
    const Hull lower = lower_hull(*outline, face_m);

    Profile profile;
    profile.length_m = hundredth_mm(outline->length_m);
    profile.metres_per_pixel = outline->metres_per_pixel;
    profile.turned_rad = outline->turned_rad;
    profile.overhang_m = std::max(upper.overhang_m, lower.overhang_m);
    for (std::size_t i = 0; i < upper.line.size(); ++i) {
        profile.greatest_height_m = std::max(profile.greatest_height_m, upper.line[i].z - lower.line[i].z);
    }
    const auto most = static_cast<std::size_t>(scale.most_points);
    Fit back(upper.line, profile.length_m);
    back.within(scale.tolerance_m, most);
    Fit belly(lower.line, profile.length_m);
    belly.within(scale.tolerance_m, most);
    Problems problems;
    if (back.worst_m() > scale.tolerance_m)
        problems.push_back(too_few("back line", scale.tolerance_m, back.worst_m(), scale.most_points));
    if (belly.worst_m() > scale.tolerance_m)
        problems.push_back(too_few("belly line", scale.tolerance_m, belly.worst_m(), scale.most_points));
    if (!problems.empty()) return problems;
    profile.top = back.points();
    profile.bottom = belly.points();
    profile.off_top_m = back.worst_m();
    profile.off_bottom_m = belly.worst_m();
    return profile;
}

document::Document with_profile(const document::Document& document, const Profile& profile) {
    document::Document out = document;
    const double old_m = document.shape.half_width.empty() ? 0.0 : document.shape.half_width.back().x_m;
    const double stretch = old_m > 0.0 ? profile.length_m / old_m : 1.0;
    const auto place = [&](double& x_m) { x_m *= stretch; };
    out.shape.top = profile.top;
    out.shape.bottom = profile.bottom;
    for (document::CurvePoint& p : out.shape.half_width)
        place(p.x_m);
    if (!out.shape.half_width.empty()) out.shape.half_width.back().x_m = profile.length_m;
    for (document::CurvePoint& p : out.shape.section.fullness)
        place(p.x_m);
    for (document::Joint& joint : out.joints)
        place(joint.at_m);
    for (document::Hole& hole : out.holes)
        place(hole.x_m);
    for (document::Pocket& pocket : out.pockets) {
        place(pocket.x_from_m);
        place(pocket.x_to_m);
    }
    for (document::Part& part : out.parts)
        place(part.at_m.x);
    if (out.tail)
        out.tail->x_m +=
            profile.length_m - old_m; // it is cast already: it only moves with the end of the wood
    return out;
}

document::Document new_lure(const Profile& profile) {
    constexpr double width_over_height = 0.5;
    constexpr int stations = 13;
    document::Document out;
    out.name = "Traced lure";
    out.note =
        "Back and belly traced from a picture. The width is a guess, half the height: draw the plan line.";
    out.shape.top = profile.top;
    out.shape.bottom = profile.bottom;
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
