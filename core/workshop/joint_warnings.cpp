#include "workshop/joint_warnings.hpp"

#include "base/sentence.hpp"
#include "materials/solids.hpp"

#include <algorithm>
#include <cstdio>

namespace evenfall::joints {

namespace {

std::string at_joint(std::size_t k) {
    return "/joints/" + std::to_string(k);
}
std::string joint_text(std::size_t k) {
    return "Joint " + std::to_string(k + 1);
}

std::string part_text(const document::Document& document, int part) {
    if (part < 0) return "the soft tail";
    const std::string& name = document.parts[static_cast<std::size_t>(part)].name;
    return name.empty() ? "part " + std::to_string(part + 1) : "“" + name + "”";
}

const char* between_text(WallKind between) {
    switch (between) {
    case WallKind::pin_and_face:
        return "in front of the pin";
    case WallKind::pin_and_skin:
        return "beside the pin";
    case WallKind::pin_and_hole:
        return "between the pin and";
    case WallKind::pocket_and_skin:
        return "beside the eye pocket";
    case WallKind::pocket_and_hole:
        return "between the eye pocket and";
    }
    return "";
}

const char* weakest_text(wire::Weakest weakest) {
    switch (weakest) {
    case wire::Weakest::eye_opens:
        return "the eye opens";
    case wire::Weakest::twist_pulls_out:
        return "the twist pulls out of its hole";
    case wire::Weakest::pin_shears:
        return "the pin shears";
    case wire::Weakest::pin_bends:
        return "the pin bends";
    case wire::Weakest::wood_under_pin:
        return "the wood under the pin is crushed";
    case wire::Weakest::wall_before_pin:
        return "the pin tears out through the face";
    }
    return "";
}

std::string newtons_text(double n) {
    char text[32];
    std::snprintf(text, sizeof text, "%.0f N", n);
    return text;
}

/// Whether a fish can pull on this joint: only where a hook is behind it.
enum class PullBehind { none, hook, unknown };

PullBehind pull_behind(const document::Document& document, const shape::Body& body, int joint) {
    bool known = false;
    bool hangs = false; // something that may be a hook, without its reach
    for (const document::Part& part : document.parts) {
        if (part.reach_m.value_or(0.0) > 0.0) {
            known = true;
            if (hanger_of(part, body).segment > joint) return PullBehind::hook;
        } else if (part.stage == Stage::rigged && part.embedded <= 0.0 &&
                   !materials::is_soft(part.material)) {
            hangs = true;
        }
    }
    return known || !hangs ? PullBehind::none : PullBehind::unknown;
}

void warn(Problems& out, ProblemCode code, std::string path, Sentence limit, Sentence sentence) {
    out.push_back({code, std::move(path), std::move(limit), std::move(sentence)});
}

/// What the wood does where something else stops the swing earlier.
Sentence wood_text(const Swing& wood) {
    return wood.stopped ? ", before the wood stops at " + angle_text(wood.angle_rad) + ". "
                        : Sentence("; no wood stops the tail. ");
}

/// Where the pocket's mouth stops the swing before the wood does; else empty.
Sentence mouth_text(const JointAnswer& j, std::size_t w, const char* with_the_tail) {
    if (j.wire_rad[w] >= j.finished[w].angle_rad) return "";
    const Sentence text = ": the wire meets the mouth of its pocket at " + angle_text(j.wire_rad[w]) +
                          with_the_tail + wood_text(j.finished[w]);
    if (!j.mouth_m[w]) return text + "No mouth is wide enough; a pin nearer to the face swings farther.";
    return text + "Open the mouth to " + length_text(*j.mouth_m[w]) + " at the face.";
}

void warn_of_swing(Problems& out, std::size_t k, const JointAnswer& j) {
    if (std::min(j.finished[0].angle_rad, j.finished[1].angle_rad) <= 0.0) {
        warn(out, ProblemCode::binds_joint, at_joint(k) + "/gap_mm", "",
             joint_text(k) + " is closed by its coats: the films on both faces fill the gap.");
        return;
    }
    // Reported once where both sides are equal.
    const bool alike = mouth_text(j, 0, "") == mouth_text(j, 1, "");
    for (std::size_t w = 0; w < 2; ++w) {
        const Sentence text = mouth_text(j, w,
                                         alike    ? ""
                                         : w == 0 ? " with the tail to port"
                                                  : " with the tail to starboard");
        if (!text.empty())
            warn(out, ProblemCode::binds_joint, at_joint(k), angle_text(j.wire_rad[w]), joint_text(k) + text);
        if (alike) return;
    }
}

void warn_of_links(Problems& out, std::size_t k, const JointAnswer& j) {
    if (j.play_per_eye_m < 0.0) {
        warn(out, ProblemCode::binds_joint, at_joint(k) + "/hinge/eye_inside_mm",
             thickness_text(j.place.hinge.wire_m),
             joint_text(k) +
                 ": the wire is thicker than the eye is wide; such eyes cannot hang in each other.");
        return;
    }
    for (std::size_t w = 0; w < 2; ++w) {
        if (j.stopped_by[w] != StoppedBy::eyes) continue;
        warn(out, ProblemCode::binds_joint, at_joint(k) + "/hinge", angle_text(j.eyes_rad[w]),
             joint_text(k) + ": the linked eyes meet each other at " + angle_text(j.eyes_rad[w]) +
                 wood_text(j.finished[w]) + "Wider eyes, or one level and one upright, swing farther.");
        return; // both sides are equal
    }
}

void warn_of_eyes(Problems& out, std::size_t k, const JointAnswer& j) {
    for (const EyeAnswer& eye : j.eyes) {
        if (!eye.room) continue;
        const std::string path = "/pockets/" + std::to_string(*eye.place.pocket);
        const std::string pocket = joint_text(k) + ", pocket " + std::to_string(*eye.place.pocket + 1) + ": ";
        const double least = std::min(eye.room->beside_m, eye.room->behind_m);
        if (!eye.room->opens) {
            warn(out, ProblemCode::binds_joint, path, "",
                 pocket + "wood stands between it and the joint; the eye cannot reach the pin.");
        }
        if (least < wire_room_m) {
            warn(out, ProblemCode::binds_joint, path, thickness_text(wire_room_m),
                 pocket + "the eye has " + thickness_text(least) +
                     (least == eye.room->beside_m ? " beside it" : " behind it") + "; it wants " +
                     thickness_text(wire_room_m) + " to turn freely.");
        }
        if (eye.room->up_down_m.value_or(0.0) < 0.0) {
            warn(out, ProblemCode::binds_joint, path, "", pocket + "it is lower than the wire is thick.");
        }
    }
    if (j.play) {
        warn_of_links(out, k, j);
    } else if (j.play_per_eye_m < 0.0) {
        warn(out, ProblemCode::binds_joint, at_joint(k) + "/hinge/eye_inside_mm",
             thickness_text(j.place.hinge.pin_diameter_m),
             joint_text(k) + ": the pin is thicker than the eye is wide.");
    }
}

/// Accuracy of a hand twist's length. Common practice, no source.
constexpr double twist_near_m = 0.5e-3;

void warn_of_glue(Problems& out, std::size_t k, const JointAnswer& j) {
    const double glued = j.place.hinge.glued_m;
    if (j.twist_reach_m > glued - twist_near_m) return;
    warn(out, ProblemCode::out_of_range, at_joint(k) + "/hinge/glued_mm", length_text(j.twist_reach_m),
         joint_text(k) + ": the twist reaches " + length_text(j.twist_reach_m) + " into the wood, not the " +
             length_text(glued) +
             " that it is glued deep; its strength counts what it reaches. Give it more turns.");
}

void warn_of_walls(Problems& out, std::size_t k, const document::Document& document, const JointAnswer& j) {
    for (const Wall& wall : j.walls) {
        if (wall.thickness_m >= thin_wall_m - 1e-6) break; // rounding in a written document
        std::string place = between_text(wall.between);
        if (wall.hole)
            place += " h" + hole_text(static_cast<std::size_t>(*wall.hole),
                                      document.holes[static_cast<std::size_t>(*wall.hole)].name)
                                .substr(1);
        const Sentence left = wall.thickness_m <= 0.0
                                  ? Sentence("no wood is left ")
                                  : "only " + length_text(wall.thickness_m) + " of wood is left ";
        warn(out, ProblemCode::through_wall, at_joint(k), length_text(thin_wall_m),
             joint_text(k) + ": " + left + place + ".");
    }
}

} // namespace

Problems joint_warnings(const document::Document& document, const shape::Body& body,
                        const JointsAnswer& answer) {
    Problems out;
    for (std::size_t k = 0; k < answer.joints.size(); ++k) {
        const JointAnswer& j = answer.joints[k];
        warn_of_swing(out, k, j);
        warn_of_eyes(out, k, j);
        if (!document.joints[k].hinge)
            continue; // no warnings about walls and strength where no hinge is drawn
        warn_of_glue(out, k, j);
        warn_of_walls(out, k, document, j);
        const PullBehind pull = pull_behind(document, body, static_cast<int>(k));
        if (j.strength.safety < least_safety && pull != PullBehind::none) {
            warn(out, ProblemCode::out_of_range, at_joint(k) + "/hinge",
                 newtons_text(least_safety * answer.line_n),
                 joint_text(k) + (pull == PullBehind::unknown ? ", if a hook hangs behind it" : "") +
                     ": at about " + newtons_text(j.strength.least_n) + " " +
                     weakest_text(j.strength.weakest) + ". That is less than twice the line's " +
                     newtons_text(answer.line_n) + ".");
        }
    }
    for (const HookFoul& foul : answer.hooks) {
        const std::string path = "/parts/" + std::to_string(foul.part) + "/reach_mm";
        const char* when = !foul.bent      ? "The hook "
                           : foul.part_way ? "With the joints swung part of the way, the hook "
                                           : "With the joints swung as far as they go, the hook ";
        const std::string hook = when + part_text(document, foul.part);
        if (foul.what == FoulKind::joint) {
            warn(out, ProblemCode::overlap, path, "",
                 hook + " reaches across joint " + std::to_string(foul.other + 1) + " by " +
                     length_text(foul.over_m) + "; its point can fall into the gap.");
        } else {
            warn(out, ProblemCode::overlap, path, "",
                 hook + " can swing into " + part_text(document, foul.other) + ": they overlap by " +
                     length_text(foul.over_m) + ".");
        }
    }
    return out;
}

} // namespace evenfall::joints
