#include "starter/joint_layout.hpp"

#include "body/body.hpp"
#include "starter/rounded.hpp"
#include "workshop/joint_answers.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::starter {

namespace {

/// Joints as shares of the length, by number of segments: the head is the longest. Common practice, no
/// source.
constexpr std::array<std::array<double, 5>, 7> places{{{},
                                                       {},
                                                       {0.52},
                                                       {0.40, 0.69},
                                                       {0.35, 0.58, 0.78},
                                                       {0.31, 0.50, 0.67, 0.82},
                                                       {0.28, 0.44, 0.59, 0.72, 0.84}}};

struct HingeSize {
    double wire_m;
    double pin_m;
    double eye_inside_m;
    double gap_m;
};
constexpr std::array sizes{
    HingeSize{1.0e-3, 1.5e-3, 2.0e-3, 3.0e-3}, HingeSize{0.8e-3, 1.2e-3, 1.6e-3, 2.5e-3},
    HingeSize{0.6e-3, 1.0e-3, 1.3e-3, 2.0e-3}, HingeSize{0.5e-3, 0.8e-3, 1.1e-3, 1.5e-3}};

/// Relief of the fore and the aft face.
struct Relief {
    double fore_rad;
    double aft_rad;
};
constexpr std::array reliefs{Relief{0.26, 0.35}, Relief{0.17, 0.26}, Relief{0.14, 0.14}};

/// Heights of the eyes over and under the middle, as shares of half the height there.
constexpr std::array eye_shares{0.52, 0.44, 0.36, 0.60};

/// The pin farther from the face: more wood holds it.
constexpr std::array pin_farther_m{0.0, 1e-3, 2e-3};

constexpr double pocket_play_m = 0.8e-3; ///< round the eye in its pocket
constexpr double pocket_high_m = 1.2e-3; ///< more than two wires

double up_to_tenth_mm(double m) {
    return std::ceil(m * 1e4 - 1e-6) / 1e4;
}

document::Joint joint_of(double at_m, const HingeSize& size, const Relief& relief, double farther_m,
                         double fore_length_m) {
    document::Joint joint;
    joint.at_m = tenth_mm(at_m);
    joint.gap_m = size.gap_m;
    joint.relief_fore_rad = relief.fore_rad;
    joint.relief_aft_rad = relief.aft_rad;
    document::Hinge hinge;
    hinge.wire_m = size.wire_m;
    hinge.pin_diameter_m = size.pin_m;
    hinge.eye_inside_m = size.eye_inside_m;
    hinge.glue = document::HingeGlue::epoxy;
    hinge.weighs = true;
    hinge.temper = document::usual_temper;
    // Wood before the pin: the pin's own width more than a thin wall.
    hinge.pin_aft_m = tenth_mm(0.5 * size.gap_m + 1.5 * size.pin_m + joints::thin_wall_m * 0.6 + farther_m);
    // The twist takes at most a third of its segment and 18 mm: the rest is for lead.
    const double twist_m = std::min(fore_length_m / 3.0 + hinge.pin_aft_m, 18e-3);
    const double turn_m = wire::usual_pitch_in_wires * hinge.wire_m;
    hinge.turns = std::max(2.0, std::floor((twist_m - 2e-3) / turn_m));
    const double reach_m = hinge.turns * turn_m + 2e-3 + 0.5 * hinge.eye_inside_m + hinge.wire_m -
                           hinge.pin_aft_m - 0.5 * size.gap_m;
    hinge.glued_m = std::max(1e-3, std::floor(reach_m * 1e3) / 1e3);
    joint.hinge = hinge;
    return joint;
}

/// The two pockets of the only joint, which will be the one numbered `joint`; their width is put right
/// afterwards.
void add_pockets(document::Document& d, const shape::Lines& lines, std::size_t joint, double eye_share) {
    const document::Joint& j = d.joints.front();
    const document::Hinge& h = *j.hinge;
    const double pin_m = j.at_m + h.pin_aft_m;
    const shape::Station s = lines.at(pin_m);
    const double outside_m = h.eye_inside_m + 2.0 * h.wire_m;
    for (const double side : {1.0, -1.0}) {
        document::Pocket p;
        p.name = "Joint " + std::to_string(joint + 1) + (side > 0.0 ? " upper" : " lower");
        p.x_from_m = tenth_mm(j.at_m + 0.4 * j.gap_m);
        p.x_to_m = up_to_tenth_mm(pin_m + 0.5 * outside_m + pocket_play_m);
        p.width_m = up_to_tenth_mm(outside_m + 2.0 * pocket_play_m);
        const double middle_m = tenth_mm(s.centre_z_m + side * eye_share * s.half_height_m);
        const double half_m = h.wire_m + 0.5 * pocket_high_m;
        p.z_from_m = tenth_mm(middle_m - half_m);
        p.z_to_m = tenth_mm(middle_m + half_m);
        d.pockets.push_back(p);
    }
}

/// Widens pockets whose mouth stops the swing before the wood does.
void open_mouths(document::Document& d) {
    for (int pass = 0; pass < 2; ++pass) {
        const auto answers = joints::joint_answers(d);
        if (!answers) return;
        bool opened = false;
        for (const joints::JointAnswer& joint : answers->joints) {
            for (const auto& mouth_m : joint.mouth_m) {
                if (!mouth_m) continue;
                for (const joints::EyeAnswer& eye : joint.eyes) {
                    if (!eye.place.pocket) continue;
                    double& width_m = d.pockets[static_cast<std::size_t>(*eye.place.pocket)].width_m;
                    opened = opened || *mouth_m > width_m;
                    width_m = std::max(width_m, up_to_tenth_mm(*mouth_m));
                }
            }
        }
        if (!opened) return;
    }
}

/// No warning of the joints, with a hook behind the last one or with none.
bool is_sound(document::Document d, bool hook_behind) {
    document::Part hook;
    hook.reach_m = 1e-4;
    hook.at_m = {0.01, 0.0, -0.2};
    hook.segment = hook_behind ? static_cast<int>(d.joints.size()) : 0;
    d.parts.push_back(hook);
    const auto answers = joints::joint_answers(d);
    return answers && answers->warnings.empty();
}

/// The best joint at a place, alone in the body: one that holds a hook, the stoutest wire, the widest relief;
/// then one that holds none.
std::optional<document::Document> joint_alone(const document::Document& body, const shape::Lines& lines,
                                              std::size_t joint, double at_m, double fore_m) {
    for (const bool holds_hook : {true, false}) {
        for (const HingeSize& size : sizes) {
            // The stoutest wire is for large lures.
            if (size.wire_m > 0.8e-3 && lines.length_m() < 0.19) continue;
            for (const Relief& relief : reliefs) {
                for (const double farther_m : pin_farther_m) {
                    for (const double eyes : eye_shares) {
                        document::Document trial = body;
                        trial.joints = {joint_of(at_m, size, relief, farther_m, fore_m)};
                        trial.segment_names.resize(2);
                        add_pockets(trial, lines, joint, eyes);
                        open_mouths(trial);
                        if (is_sound(trial, holds_hook)) return trial;
                    }
                }
            }
        }
    }
    return std::nullopt;
}

} // namespace

Outcome<document::Document> with_joints(const document::Document& body, int segments) {
    if (segments < 2) return body;
    const auto lines = shape::drawn_lines(body.shape);
    if (!lines) return lines.problems();
    const double length_m = (*lines)->length_m();
    const auto& shares = places[static_cast<std::size_t>(segments)];
    document::Document d = body;
    for (std::size_t j = 0; j + 1 < static_cast<std::size_t>(segments); ++j) {
        const double fore_m = (shares[j] - (j > 0 ? shares[j - 1] : 0.0)) * length_m;
        const auto next = joint_alone(body, **lines, j, shares[j] * length_m, fore_m);
        if (!next) {
            return Problem{ProblemCode::does_not_fit, "/segments", std::to_string(j + 1),
                           "The body is too small for a hinge at joint " + std::to_string(j + 1) +
                               ": take fewer segments, or a larger lure."};
        }
        d.joints.push_back(next->joints.front());
        // The body's own pockets are there already.
        d.pockets.insert(d.pockets.end(),
                         next->pockets.begin() + static_cast<std::ptrdiff_t>(body.pockets.size()),
                         next->pockets.end());
    }
    d.segment_names.clear();
    for (int s = 0; s < segments; ++s) {
        d.segment_names.push_back(s == 0              ? "Head"
                                  : s + 1 == segments ? "Tail"
                                  : segments == 3     ? "Middle"
                                                      : "Segment " + std::to_string(s + 1));
    }
    return d;
}

} // namespace evenfall::starter
