#include "reach/proof.hpp"

#include "body/board.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace evenfall::reach {

namespace {

constexpr double swing_noticed_rad = 0.5 * units::degree_rad;
constexpr double length_noticed_m = 5e-5;

double least_swing_rad(const joints::JointAnswer& joint) {
    return std::min(joint.swing_rad[0], joint.swing_rad[1]);
}

/// "Joint 2 swings 31.0° instead of 33.5°."
void tell_swings(const Known& before, const Known& after, std::vector<Sentence>& out) {
    for (std::size_t k = 0; k < std::min(before.joints.joints.size(), after.joints.joints.size()); ++k) {
        const double was = least_swing_rad(before.joints.joints[k]);
        const double is = least_swing_rad(after.joints.joints[k]);
        if (std::abs(is - was) < swing_noticed_rad) continue;
        out.push_back("Joint " + std::to_string(k + 1) + " swings " + angle_text(is) + " instead of " +
                      angle_text(was) + ".");
    }
}

double thinnest_wall_m(const joints::JointAnswer& joint) {
    return joint.walls.empty() ? std::numeric_limits<double>::infinity() : joint.walls.front().thickness_m;
}

void tell_walls(const Known& before, const Known& after, std::vector<Sentence>& out) {
    for (std::size_t k = 0; k < std::min(before.joints.joints.size(), after.joints.joints.size()); ++k) {
        const double was = thinnest_wall_m(before.joints.joints[k]);
        const double is = thinnest_wall_m(after.joints.joints[k]);
        if (!(std::abs(is - was) >= length_noticed_m) || !std::isfinite(is)) continue;
        out.push_back("The thinnest wall at joint " + std::to_string(k + 1) + " is " + length_text(is) +
                      (std::isfinite(was) ? " instead of " + length_text(was) : Sentence()) + ".");
    }
}

void tell_board(const Known& before, const Known& after, std::vector<Sentence>& out) {
    const shape::BodyBox was = shape::body_box(*before.evaluation.body.lines);
    const shape::BodyBox is = shape::body_box(*after.evaluation.body.lines);
    const auto tell = [&](const char* side, double was_m, double is_m) {
        if (std::abs(is_m - was_m) < length_noticed_m) return;
        out.push_back("It takes a board " + length_text(is_m) + side + " instead of " + length_text(was_m) +
                      ", the saw's share not counted.");
    };
    tell(" long", was.length_m, is.length_m);
    tell(" high", was.high_z_m - was.low_z_m, is.high_z_m - is.low_z_m);
    tell(" thick", 2.0 * was.half_width_m, 2.0 * is.half_width_m);
}

} // namespace

Outcome<Known> known_of(const document::Document& document) {
    auto evaluation = evaluate(document);
    if (!evaluation) return evaluation.problems();
    auto joints = joints::joint_answers(document, evaluation->body);
    if (!joints) return joints.problems();
    Problems warnings = evaluation->answers.warnings;
    warnings.insert(warnings.end(), joints->warnings.begin(), joints->warnings.end());
    return Known{std::move(evaluation).value(), std::move(joints).value(), std::move(warnings)};
}

bool warns_anew(const Problems& before, const Problems& after) {
    const auto same = [](const Problem& a) {
        return [&a](const Problem& b) { return a.code == b.code && a.path == b.path; };
    };
    return std::any_of(after.begin(), after.end(), [&](const Problem& p) {
        return std::count_if(after.begin(), after.end(), same(p)) >
               std::count_if(before.begin(), before.end(), same(p));
    });
}

std::vector<Sentence> side_effects(const Known& before, const Known& after) {
    std::vector<Sentence> out;
    tell_swings(before, after, out);
    tell_walls(before, after, out);
    tell_board(before, after, out);
    return out;
}

} // namespace evenfall::reach
