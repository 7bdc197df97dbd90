#include "starter/hook_layout.hpp"

#include "body/body.hpp"
#include "materials/tackle.hpp"
#include "workshop/joint_answers.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace evenfall::starter {

namespace {

/// Where the hooks may hang, as shares of the length, the best first. Common practice, no source.
constexpr std::array front_shares{0.24, 0.22, 0.26, 0.20, 0.28, 0.18, 0.30, 0.16};
constexpr std::array rear_shares{0.62, 0.58, 0.66, 0.54, 0.70, 0.50, 0.46, 0.74, 0.42};
constexpr double hook_length_share = 0.2;

double half_mm(double m) {
    return std::round(m * 2e3) / 2e3;
}

double wire_for(double length_m) {
    return length_m > 0.19 ? 1.1e-3 : 0.9e-3;
}

/// No deeper than half way into the wood, so that lead beside it has room and hinge wire is not met.
document::Hanger hanger_at(const shape::Lines& lines, double x_m, double length_m) {
    document::Hanger h;
    h.on = document::HangerOn::belly;
    h.x_m = x_m;
    h.wire_m = wire_for(length_m);
    h.eye_inside_m = 2.5e-3;
    h.depth_m = std::min(14e-3, std::floor(0.9 * lines.at(x_m).half_height_m * 1e3) / 1e3);
    const double turn_m = wire::usual_pitch_in_wires * h.wire_m;
    h.turns = std::max(1.0, std::round((h.depth_m - 2e-3) / turn_m));
    h.depth_m = std::min(h.depth_m, std::floor((h.turns * turn_m + 2e-3) * 1e3) / 1e3);
    return h;
}

void hang(document::Document& d, const shape::Lines& lines, double x_m, const materials::Hook& hook,
          const char* name) {
    const document::Hanger hanger = hanger_at(lines, x_m, lines.length_m());
    const shape::Station s = lines.at(x_m);
    document::Part part;
    part.name = std::string(name) + " hook, size " + std::string(hook.size);
    part.stage = Stage::rigged;
    part.material = "steel";
    part.mass_kg = hook.mass_kg;
    part.reach_m = hook.reach_m;
    part.at_m = {x_m, 0.0,
                 s.centre_z_m - s.half_height_m - 0.5 * hanger.eye_inside_m -
                     joints::hanger_share * hook.reach_m};
    d.hangers.push_back(hanger);
    d.hangers.back().name = name;
    d.parts.push_back(part);
}

/// Hooks against the joints of a lure that has them already: what fouls is cheap to ask, strength is asked
/// last.
class HookRoom {
public:
    explicit HookRoom(joints::JointsAnswer answers, shape::Body body)
        : answers_(std::move(answers)), body_(std::move(body)) {
        for (const joints::JointAnswer& joint : answers_.joints) {
            pins_.push_back(joint.place.pin);
            for (std::size_t w = 0; w < swings_.size(); ++w)
                swings_[w].push_back(joint.swing_rad[w]);
        }
    }
    [[nodiscard]] bool is_clear(const document::Document& d) const {
        return joints::hook_fouls(d, body_, pins_, swings_).empty();
    }

private:
    joints::JointsAnswer answers_;
    shape::Body body_;
    std::vector<joints::Pin> pins_;
    joints::Swings swings_;
};

bool is_sound(const document::Document& d) {
    const auto answers = joints::joint_answers(d);
    return answers && answers->warnings.empty();
}

} // namespace

Outcome<document::Document> with_hooks(const document::Document& jointed, int hooks) {
    const auto made = shape::drawn_lines(jointed.shape);
    if (!made) return made.problems();
    const shape::Lines& lines = **made;
    const double length_m = lines.length_m();
    document::Document d = jointed;
    document::Hanger tie;
    tie.name = "Line tie";
    tie.on = document::HangerOn::nose;
    tie.z_m = lines.at(0.0).centre_z_m;
    tie.wire_m = wire_for(length_m);
    tie.depth_m = std::min(12e-3, std::floor(0.12 * length_m * 1e3) / 1e3);
    tie.turns = std::max(1.0, std::round((tie.depth_m - 2e-3) / (wire::usual_pitch_in_wires * tie.wire_m)));
    d.hangers.push_back(tie);
    if (hooks == 0) return d;
    const auto bare = joints::joint_answers(d);
    if (!bare) return bare.problems();
    auto body = shape::cut(*made, d.joints);
    if (!body) return body.problems();
    const HookRoom room(*bare, std::move(body).value());
    // Hooks keep clear, but a joint before one of them would give way: the joints had no warning without
    // hooks.
    bool gives_way = false;
    const auto table = materials::hooks();
    for (auto hook = table.rbegin(); hook != table.rend(); ++hook) {
        if (hook->reach_m > hook_length_share * length_m) continue;
        for (const double front : front_shares) {
            document::Document one = d;
            hang(one, lines, half_mm(front * length_m), *hook, "Front");
            if (!room.is_clear(one)) continue;
            if (!is_sound(one)) {
                gives_way = true;
                continue;
            }
            if (hooks == 1) return one;
            for (const double rear : rear_shares) {
                document::Document two = one;
                hang(two, lines, half_mm(rear * length_m), *hook, "Rear");
                if (!room.is_clear(two)) continue;
                if (is_sound(two)) return two;
                gives_way = true;
            }
        }
    }
    if (gives_way) {
        return Problem{
            ProblemCode::does_not_fit, "/hooks", std::to_string(hooks - 1),
            hooks == 1 ? "In this wood no joint holds a hook behind it: take fewer segments, or a "
                         "stronger wood."
                       : "In this wood no joint holds a hook behind it: take one hook, fewer segments, or "
                         "a stronger wood."};
    }
    return Problem{ProblemCode::does_not_fit, "/hooks", std::to_string(hooks - 1),
                   hooks == 1 ? "No hook keeps clear of joints and tail on this lure: take fewer segments."
                              : "Two hooks do not keep clear of each other, of joints and tail on this lure: "
                                "take one, or fewer segments."};
}

} // namespace evenfall::starter
