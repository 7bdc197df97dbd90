#include "body/cut_check.hpp"

#include "base/trade.hpp"
#include "body/relief.hpp"
#include "document/fields.hpp"

#include <algorithm>
#include <cmath>
#include <string>

namespace evenfall::shape {

namespace {

constexpr double mm = 1e-3;
constexpr double degree = units::degree_rad;
constexpr double hair = 1e-9; ///< tolerance for rounding of limits read from text

std::string path_of(std::size_t joint, const char* key) {
    return "/joints/" + std::to_string(joint) + "/" + key;
}

bool check_number(std::size_t joint, const char* key, const std::string& name, double value, double least,
                  double greatest, const Sentence& limit, Problems& out) {
    const Sentence sentence =
        "The " + name + " of joint " + std::to_string(joint + 1) + " must be " + limit + ".";
    if (!std::isfinite(value)) {
        out.push_back({ProblemCode::not_a_number, path_of(joint, key), limit, sentence});
        return false;
    }
    if (value < least - hair || value > greatest + hair) {
        out.push_back({ProblemCode::out_of_range, path_of(joint, key), limit, sentence});
        return false;
    }
    return true;
}

bool check_joint(const Lines& lines, std::size_t k, const document::Joint& j, Problems& out) {
    const double tail_m = std::floor(lines.tail_m() / mm * 100.0 + hair) / 100.0 * mm;
    bool fine = check_number(k, "at_mm", "place", j.at_m / mm, lines.nose_m() / mm, lines.tail_m() / mm,
                             range_text(0.0, tail_m, units::Quantity::length), out);
    fine = check_number(k, "gap_mm", "gap", j.gap_m / mm, least_gap_mm, greatest_gap_mm,
                        range_text(least_gap_mm * mm, greatest_gap_mm * mm, units::Quantity::length), out) &&
           fine;
    fine = check_number(k, "relief_fore_deg", "fore relief", j.relief_fore_rad / degree, 0.0,
                        greatest_relief_deg, "0 to 60°", out) &&
           fine;
    fine = check_number(k, "relief_aft_deg", "aft relief", j.relief_aft_rad / degree, 0.0,
                        greatest_relief_deg, "0 to 60°", out) &&
           fine;
    return fine;
}

struct End {
    double x_m;
    double depth_m; ///< length of a relief along the skin
};

/// True where each flank leaves the wood exactly once. Sampled along the whole segment.
bool meets_skin_once(const Lines& lines, const FacePlane& plane, double depth_m, double from_m, double to_m) {
    if (plane.tangent == 0.0) return true;
    constexpr int steps = 6; // per interval between stations, where the plan is one cubic
    const std::span<const double> breaks = lines.breakpoints_m();
    for (std::size_t k = 0; k + 1 < breaks.size(); ++k) {
        const double from = std::max(from_m, breaks[k]);
        const double to = std::min(to_m, breaks[k + 1]);
        for (int i = 0; from < to && i < steps; ++i) {
            const double x = from + (to - from) * (i + 0.5) / steps;
            const double away = plane.side * (plane.x_m - x);
            const Station s = lines.at(x);
            if (away < depth_m) {
                if (!(1.0 + plane.side * plane.tangent * s.half_width_slope > least_opening)) return false;
            } else if (plane.tangent * s.half_width_m > away) {
                return false;
            }
        }
    }
    return true;
}

/// The segment between joint k − 1 and joint k. Problems are reported at the joint behind it, or at the last
/// joint.
void check_segment(const Lines& lines, const std::vector<document::Joint>& joints, std::size_t k,
                   Problems& out) {
    const bool has_fore = k > 0;
    const bool has_aft = k < joints.size();
    const std::size_t told = has_aft ? k : k - 1;
    const std::string segment = "segment " + std::to_string(k + 1);
    const Sentence least = at_least_text(least_wood_mm * mm, units::Quantity::length);
    double from_m = lines.nose_m();
    double to_m = lines.tail_m();
    if (has_fore) from_m = joints[k - 1].at_m + 0.5 * joints[k - 1].gap_m;
    if (has_aft) to_m = joints[k].at_m - 0.5 * joints[k].gap_m;
    if (!(to_m - from_m >= least_wood_mm * mm - hair * mm)) {
        out.push_back({ProblemCode::out_of_order, path_of(told, "at_mm"), "at least " + least + " of wood",
                       "Joint " + std::to_string(told + 1) + " leaves no wood for " + segment +
                           ": at least " + least + " must stay between its ends, gaps taken off."});
        return;
    }
    const auto reach = [&](const FacePlane& plane, std::size_t joint, const char* key, double& end_m) {
        const Station s = lines.at(plane.x_m);
        if (!(s.half_width_m > 0.0 && s.half_height_m > 0.0)) {
            out.push_back({ProblemCode::crossed_profile, path_of(joint, "at_mm"), "wood at the face",
                           "Joint " + std::to_string(joint + 1) +
                               " lies where the body has no section to make a face of."});
            return false;
        }
        const double depth = relief_depth(lines, plane, 1.0);
        if (std::isnan(depth) || !meets_skin_once(lines, plane, depth, from_m, to_m)) {
            out.push_back(flank_problem(joint, key, k));
            return false;
        }
        end_m = plane.x_m - plane.side * depth;
        return true;
    };
    double wood_from = from_m;
    double wood_to = to_m;
    if (has_fore &&
        !reach({from_m, std::tan(joints[k - 1].relief_aft_rad), -1.0}, k - 1, "relief_aft_deg", wood_from))
        return;
    if (has_aft && !reach({to_m, std::tan(joints[k].relief_fore_rad), 1.0}, k, "relief_fore_deg", wood_to))
        return;
    if (wood_to - wood_from >= least_wood_mm * mm - hair * mm) return;
    const bool both = has_fore && has_aft;
    out.push_back({ProblemCode::overlap, path_of(told, has_aft ? "relief_fore_deg" : "relief_aft_deg"),
                   "at least " + least + " of skin",
                   both ? "The two reliefs of " + segment + " meet in its wood: at least " + least +
                              " of skin must stay between them. Use smaller angles or move a joint."
                        : "The relief of joint " + std::to_string(told + 1) + " runs off the end of " +
                              segment + ": at least " + least + " of skin must stay. Use a smaller angle."});
}

} // namespace

Problem flank_problem(std::size_t joint, const char* key, std::size_t segment) {
    return {
        ProblemCode::out_of_range, path_of(joint, key), "one clear edge between flank and skin",
        "The relief of joint " + std::to_string(joint + 1) + " runs almost along the skin of segment " +
            std::to_string(segment + 1) +
            " or cuts it twice: the body narrows nearly as fast as the relief leans. Use a smaller angle."};
}

Problems cut_problems(const Lines& lines, const std::vector<document::Joint>& joints) {
    Problems out;
    if (joints.size() > document::max_joints) {
        const std::string cap = std::to_string(document::max_joints);
        out.push_back({ProblemCode::too_large, "/joints", "at most " + cap + " joints",
                       "The lure has more than " + cap + " joints."});
        return out;
    }
    bool fine = true;
    for (std::size_t k = 0; k < joints.size(); ++k)
        fine = check_joint(lines, k, joints[k], out) && fine;
    for (std::size_t k = 1; fine && k < joints.size(); ++k) {
        if (joints[k].at_m > joints[k - 1].at_m) continue;
        out.push_back({ProblemCode::out_of_order, path_of(k, "at_mm"), "behind the joint before",
                       "Joint " + std::to_string(k + 1) + " must lie behind joint " + std::to_string(k) +
                           ": joints go from nose to tail."});
        fine = false;
    }
    for (std::size_t k = 0; fine && !joints.empty() && k <= joints.size(); ++k)
        check_segment(lines, joints, k, out);
    return out;
}

} // namespace evenfall::shape
